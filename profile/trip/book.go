package trip

import (
	"math"
	"slices"
	"time"

	"coldseam/profile"
	"coldseam/profile/forecast"
	"coldseam/profile/layers"
)

// before are the drops taken before the day.
func (in Input) before() []Drop {
	return slices.DeleteFunc(slices.Clone(in.Drops), func(d Drop) bool { return !d.When.Before(in.Day) })
}

// season expects by a forecast.
func (in Input) season() (e Expectation, ok bool) {
	var drops []forecast.Drop
	for _, d := range in.before() {
		drops = append(drops, forecast.Drop{When: d.When, Layers: d.Layers})
	}
	f, err := forecast.Make(forecast.Input{Day: in.Day, Drops: drops, South: in.south()})
	if err != nil {
		return e, false
	}
	e = Expectation{State: Layered, From: Season, Drops: f.Drops, Last: f.Last, Thermocline: &f.Thermocline, MixedC: profile.Some(f.MixedC.Best)}
	if !in.LimitC.Known {
		e.Water = in.waterOfYears()
		return e, true
	}
	surface := f.Surface(in.LimitC.Value)
	if edge, ok := f.Reaches(in.LimitC.Value); ok && surface != forecast.Colder {
		e.Edge, e.MaybeTop = &edge, surface == forecast.Unknown
	} else {
		e.Water = in.waterOfYears()
	}
	return e, true
}

// Limits of years: drops this near to the day of the year, in other years, and of this
// season the last so many days.
const (
	aboutDays = 14.0
	lastDays  = 21.0
)

// Half the 80 % intervals, in the logarithm of the depth, by whether one year stands for
// the day or several; fitted on the lakes of the Cascade Project, and shown on reservoirs of
// Virginia by this package's TestYearsHold.
const (
	thermoclineOfOne, thermoclineOfSeveral = 0.45, 0.40
	edgeOfOne, edgeOfSeveral               = 0.32, 0.27
)

// ofYear is the mean of a year's drops about the day.
type ofYear struct {
	layered, iced, n         int
	thermocline, edge, water mean
}

type mean struct {
	sum float64
	n   int
}

func (m *mean) add(o profile.Optional) {
	if o.Known {
		m.sum += o.Value
		m.n++
	}
}

func (m mean) value() profile.Optional {
	if m.n == 0 {
		return profile.Optional{}
	}
	return profile.Some(m.sum / float64(m.n))
}

// about are the drops about the day of the year, by their year, and the last of them.
func (in Input) about() (years map[int]*ofYear, drops int, last time.Time) {
	year, day := in.yearDay(in.Day)
	years = map[int]*ofYear{}
	for _, d := range in.before() {
		y, on := in.yearDay(d.When)
		off := math.Abs(on - day)
		off = min(off, 365-off) // over the turn of the year
		near := off <= aboutDays && !(y == year && off > lastDays)
		if recent := in.Day.Sub(d.When).Hours() / 24; recent <= lastDays {
			near = true
		}
		if !near || d.Layers.Structure == layers.TooFew && !d.Ice {
			continue
		}
		if years[y] == nil {
			years[y] = &ofYear{}
		}
		o := years[y]
		o.n++
		drops++
		if d.When.After(last) {
			last = d.When
		}
		if d.Ice {
			o.iced++
		}
		if t := d.Layers.Thermocline; t != nil {
			o.layered++
			o.thermocline.add(profile.Some(t.Best))
		}
		o.edge.add(d.Edge)
		o.water.add(d.WaterM)
	}
	return years, drops, last
}

// years expects what the drops about the day had.
func (in Input) years() (e Expectation, ok bool) {
	years, drops, last := in.about()
	if drops == 0 {
		return e, false
	}
	e = Expectation{State: OneLayer, From: Years, Drops: drops, Years: len(years), Last: last}
	iced, layered, edged := 0, 0, 0
	var thermocline, edge, water mean
	for _, o := range years {
		if 2*o.iced > o.n {
			iced++
		}
		if 2*o.layered > o.n {
			layered++
		}
		if 2*o.edge.n > o.n {
			edged++
		}
		thermocline.add(o.thermocline.value())
		edge.add(o.edge.value())
		water.add(o.water.value())
	}
	switch n := len(years); {
	case 2*iced > n:
		e.State = Iced
		return e, true
	case 2*layered > n:
		e.State, e.Thermocline = Layered, thermocline.spread(thermoclineOfOne, thermoclineOfSeveral)
	case 2*layered == n:
		e.State = Unsure
	}
	if 2*edged > len(years) && in.LimitC.Known {
		e.Edge = edge.spread(edgeOfOne, edgeOfSeveral)
	} else {
		e.Water = water.spread(edgeOfOne, edgeOfSeveral)
	}
	return e, true
}

// spread is the mean of the years with its interval; nil without one.
func (m mean) spread(one, several float64) *profile.Estimate {
	half := several
	switch m.n {
	case 0:
		return nil
	case 1:
		half = one
	}
	best := m.sum / float64(m.n)
	return &profile.Estimate{Best: best, Low: best * math.Exp(-half), High: best * math.Exp(half)}
}

// waterOfYears is the depth of water that the plans of the drops about the day begin over;
// nil where there are none.
func (in Input) waterOfYears() *profile.Estimate {
	years, _, _ := in.about()
	var water mean
	for _, o := range years {
		water.add(o.water.value())
	}
	return water.spread(edgeOfOne, edgeOfSeveral)
}
