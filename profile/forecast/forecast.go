package forecast

import (
	"math"
	"slices"
	"time"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// Drop is one drop of the water: when, and the layers found in it.
type Drop struct {
	When   time.Time
	Layers layers.Layers
}

// Input is what a forecast is made from.
type Input struct {
	Day   time.Time // the day asked for
	Drops []Drop    // of one water, of all years, in any order
	South bool      // south of the equator, where the seasons are half a year apart
}

// Forecast is what can be expected of a water on a day.
type Forecast struct {
	Thermocline  profile.Estimate // m
	MixedC       profile.Estimate // temperature of the mixed layer
	DaysAhead    float64          // since the last drop
	Last         time.Time        // the last drop
	Drops        int              // of this season that were used, the last among them
	EarlierYears int              // that had a thermocline about that day

	water
}

// Limits of what the measured lakes can speak for.
const (
	MostDays = 35  // the last drop may be this old
	firstDay = 120 // of the year: 30 April, when the last drop must have been
	lastDay  = 270 // 27 September: by then some lakes have begun to turn over
)

// Of the model, by this package's TestFitted on the lakes that package measured reads.
const (
	tenDays       = 10.0
	fortnight     = 14.0  // days
	midSeason     = 200.0 // day of the year from which the season is counted,
	seasonDays    = 30.0  // in so many days
	sinkMPerDay   = 0.02  // how drops of other days are brought to one
	meanDays      = 42.0  // how far back drops go into the mean column,
	meanHalfDays  = 14.0  // with half the weight every so many days
	aboutDays     = 25.0  // how far from the day an earlier year's drop may be,
	aboutHalfDays = 7.0   // with half the weight every so many days
	yearsPerTen   = 0.08  // the weight of earlier years for every ten days ahead,
	yearsMost     = 0.4   // at most
)

// Make makes the forecast, or refuses: the error is a Refusal.
func Make(in Input) (Forecast, error) {
	w, err := newWater(in)
	if err != nil {
		return Forecast{}, err
	}
	f := Forecast{
		DaysAhead: w.ahead, Last: w.last().When, Drops: len(w.season), water: w,
	}
	q := thermocline{}
	f.Thermocline = w.expect(q)
	_, f.EarlierYears = w.years(q)
	f.MixedC = w.mixedC()
	return f, nil
}

// Reaches is the depth, m, at which the water is expected to have cooled to a temperature;
// ok is false where the last drop did not reach it, see Surface.
func (f Forecast) Reaches(tempC float64) (e profile.Estimate, ok bool) {
	q := isotherm(tempC)
	if _, ok = q.of(f.last().Layers); ok {
		e = f.expect(q)
	}
	return e, ok
}

// Surface is whether the water will be warmer than a temperature at the top.
type Surface string

// The surfaces.
const (
	Warmer  Surface = "warmer" // in 8 of 10 cases or more
	Colder  Surface = "colder"
	Unknown Surface = "unknown" // it may be either
)

// Surface compares the expected mixed layer with a temperature.
func (f Forecast) Surface(tempC float64) Surface {
	switch {
	case f.MixedC.Low > tempC:
		return Warmer
	case f.MixedC.High < tempC:
		return Colder
	}
	return Unknown
}

// expect forecasts a depth that the last drop has.
func (w *water) expect(q quantity) profile.Estimate {
	c, v := q.coefficients(), q.interval(w.last().Layers)
	best, _ := q.of(w.last().Layers)
	for i, x := range q.features(w) {
		best += c.change[i] * x
	}
	if typical, n := w.years(q); n > 0 {
		best = blend(best, typical, w.ahead)
	}
	half := c.scale * q.doubt(w, (v.High-v.Low)/2)
	return profile.Estimate{Best: math.Max(best, 0), Low: math.Max(best-half, 0), High: math.Max(best+half, 0)}
}

// blend moves a forecast towards what is typical of the day.
func blend(best, typical, days float64) float64 {
	return best + math.Min(yearsPerTen*days/tenDays, yearsMost)*(typical-best)
}

// years is what earlier years had on that day of the year: the middle of the years, and how
// many there are.
func (w *water) years(q quantity) (depthM float64, n int) {
	type sum struct{ depth, weight float64 }
	years := map[int]sum{}
	for _, d := range w.earlier {
		off := w.yearDay - d.yearDay
		v, ok := q.of(d.Layers)
		if math.Abs(off) > aboutDays || !ok {
			continue
		}
		weight := math.Exp2(-math.Abs(off) / aboutHalfDays)
		s := years[d.year]
		years[d.year] = sum{s.depth + weight*(v+sinkMPerDay*off), s.weight + weight}
	}
	var all []float64
	for _, s := range years {
		all = append(all, s.depth/s.weight)
	}
	if len(all) == 0 {
		return 0, 0
	}
	slices.Sort(all)
	return (all[(len(all)-1)/2] + all[len(all)/2]) / 2, len(all)
}

// jumps are what a depth of this water did from one drop to the next beyond sinking, in this
// season and earlier ones: the mean of a measure of a jump, m, in so many days. A water read
// seldom is drawn to what is usual.
func (w *water) jumps(q quantity, usual float64, measure func(jumpM, days float64) float64) float64 {
	const usualCounts = 3.0
	sum, n := usualCounts*usual, usualCounts
	all := slices.Concat(w.earlier, w.season)
	for i := 1; i < len(all); i++ {
		a, b := all[i-1], all[i]
		days := b.When.Sub(a.When).Hours() / 24
		before, okA := q.of(a.Layers)
		after, okB := q.of(b.Layers)
		if okA && okB && days > 0.5 && days <= MostDays && a.yearDay >= firstDay && b.yearDay <= lastDay {
			sum, n = sum+measure(after-before-sinkMPerDay*days, days), n+1
		}
	}
	return sum / n
}
