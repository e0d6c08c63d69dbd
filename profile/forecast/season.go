package forecast

import (
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat/distuv"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// The least that a rate of sinking is worked out from.
const (
	LeastDrops = 3
	LeastDays  = 21
)

// Sinking is how fast the thermocline sinks, m a day, with its 80 % interval: the straight
// line of least squares through a season's drops. ok is false with fewer than LeastDrops with
// a thermocline, or where those lie within fewer than LeastDays.
func Sinking(drops []Drop) (perDay profile.Estimate, n int, days float64, ok bool) {
	var t, z []float64
	own := 0.0
	drops = slices.Clone(drops)
	slices.SortStableFunc(drops, func(a, b Drop) int { return a.When.Compare(b.When) })
	for _, d := range drops {
		if e := d.Layers.Thermocline; e != nil {
			t, z = append(t, d.When.Sub(drops[0].When).Hours()/24), append(z, e.Best)
			const halfOf80 = 1.2816 // standard errors
			own += math.Pow((e.High-e.Low)/2/halfOf80, 2)
		}
	}
	if n = len(t); n > 0 {
		days = t[n-1] - t[0]
	}
	if n < LeastDrops || days < LeastDays {
		return perDay, n, days, false
	}
	meanT, meanZ := mean(t), mean(z)
	tt, tz := 0.0, 0.0
	for i := range t {
		tt += (t[i] - meanT) * (t[i] - meanT)
		tz += (t[i] - meanT) * (z[i] - meanZ)
	}
	slope, rest := tz/tt, 0.0
	for i := range t {
		rest += math.Pow(z[i]-meanZ-slope*(t[i]-meanT), 2)
	}
	free := float64(n - 2)
	variance := math.Max(rest/free, own/float64(n)) // never surer than the drops themselves
	half := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: free}.Quantile(0.9) * math.Sqrt(variance/tt)
	return profile.Estimate{Best: slope, Low: slope - half, High: slope + half}, n, days, true
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}

// Of the autumns that TestTurnover looks at: 15 of measured lakes whose deepest reading lay at
// 9 to 14 m.
const (
	fromDay      = 213  // of the year: 1 August; what is read before says nothing of the autumn
	firstTurnDay = 272  // 29 September
	lastTurnDay  = 318  // 14 November
	fastCPerDay  = 0.45 // how the difference between top and bottom shrinks, at most
	slowCPerDay  = 0.17 // and at least
	galeDays     = 5.0  // what a cold gale brings forward
	leastRange   = 14.0 // days
	MostTurnM    = 15.0 // deeper lakes turn over later: none was measured
)

// WhyNot is the code of why nothing is said of the autumn.
type WhyNot string

// The reasons.
const (
	NotYet     WhyNot = "not yet"     // the drop was taken before August
	OneAlready WhyNot = "one already" // it has no layers
	NotRead    WhyNot = "not read"    // under three depths
	IcedOver   WhyNot = "iced over"   // colder on top, as under ice
	TooDeep    WhyNot = "too deep"    // the lake is
)

// Turnover is between which days a layered water will be one layer again: why is "" then.
// deepestM is the greatest depth known of the lake.
func Turnover(d Drop, deepestM float64, south bool) (from, to time.Time, why WhyNot) {
	_, day := place(d.When, south)
	l := d.Layers
	switch {
	case l.Structure == layers.TooFew:
		return from, to, NotRead
	case l.Structure == layers.Inverse:
		return from, to, IcedOver
	case l.Thermocline == nil:
		return from, to, OneAlready
	case day < fromDay:
		return from, to, NotYet
	case deepestM > MostTurnM:
		return from, to, TooDeep
	}
	difference := math.Max(0, l.MixedTempC-l.Curve.At(l.Curve.Bottom()))
	first := math.Max(math.Max(day, firstTurnDay), day+difference/fastCPerDay-galeDays)
	last := math.Max(first+leastRange, math.Min(day+difference/slowCPerDay, lastTurnDay))
	at := func(yearDay float64) time.Time { return d.When.AddDate(0, 0, int(math.Round(yearDay-day))) }
	return at(first), at(last), ""
}
