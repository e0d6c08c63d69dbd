package trip

import (
	"math"
	"sort"

	"coldseam/profile"
	"coldseam/profile/sampling"
)

// What measured lakes of 4.5 m and more do from June to September of the north: the
// thermocline lies about depthAt1M times the lake's greatest depth to the power depthPower,
// and sinks by a share of seasonPerDay a day; of the depth so found the thermocline is
// lowShare to highShare in 8 of 10 lakes, and midShare in the middle one.
//
// Fitted on every other lake of the National Lakes Assessments 2007 and 2017 (U.S. EPA), the
// edges from the 9th to the 91st lake of 100, and shown on the rest by this package's
// TestLakesHold.
const (
	depthAt1M, depthPower         = 1.6828, 0.4196
	midSeason, seasonPerDay       = 200, 0.14442 / 30
	lowShare, midShare, highShare = 0.601, 1.064, 1.616
	summerFromDay, summerToDay    = 152, 273 // 1 June to 30 September
	deepestFitM                   = 60       // few of the lakes are deeper: those count as so deep
	layeredFromM                  = 4.5      // of shallower lakes about half are layered, of deeper ones more
)

// edges is where the same lakes have cooled to a temperature, where their top is warmer, as
// a share of that depth.
var edges = []struct{ tempC, low, mid, high float64 }{
	{13, 0.752, 1.326, 1.957}, {16, 0.701, 1.228, 1.984}, {19, 0.627, 1.109, 1.730}, {21, 0.587, 1.026, 1.550}, {24, 0.516, 0.862, 1.444},
}

// lakes expects what lakes of that depth do; by the length where the depth is not known, and
// by both where both are.
func (in Input) lakes() Expectation {
	e := Expectation{State: Layered, From: Lakes}
	_, day := in.yearDay(in.Day)
	if day < summerFromDay || day > summerToDay {
		return Expectation{State: Unsure, From: Month}
	}
	base := depthAt1M * math.Pow(math.Min(in.Deepest.Value, deepestFitM), depthPower) * math.Exp(seasonPerDay*(day-midSeason))
	switch byLength := sampling.ByLength(in.Length.Value, in.Secchi); {
	case !in.Deepest.Known:
		e.From, base = Length, byLength
	case in.Deepest.Value < layeredFromM:
		return Expectation{State: Unsure, From: Lakes}
	case in.lengthCounts():
		base = math.Sqrt(base * math.Min(byLength, in.Deepest.Value))
	}
	e.Thermocline = &profile.Estimate{Best: midShare * base, Low: lowShare * base, High: highShare * base}
	in.within(e.Thermocline)
	if in.LimitC.Known {
		low, mid, high := edgeShares(in.LimitC.Value)
		e.Edge = &profile.Estimate{Best: mid * base, Low: low * base, High: high * base}
	}
	return e
}

// within keeps a depth above the lake's greatest.
func (in Input) within(e *profile.Estimate) {
	if in.Deepest.Known {
		e.Best, e.Low, e.High = min(e.Best, in.Deepest.Value), min(e.Low, in.Deepest.Value), min(e.High, in.Deepest.Value)
	}
}

// edgeShares are those of edges at a temperature, straight between two of them.
func edgeShares(tempC float64) (low, mid, high float64) {
	i := sort.Search(len(edges), func(i int) bool { return edges[i].tempC >= tempC })
	i = min(max(i, 1), len(edges)-1)
	a, b := edges[i-1], edges[i]
	share := min(max((tempC-a.tempC)/(b.tempC-a.tempC), 0), 1)
	at := func(x, y float64) float64 { return x + share*(y-x) }
	return at(a.low, b.low), at(a.mid, b.mid), at(a.high, b.high)
}
