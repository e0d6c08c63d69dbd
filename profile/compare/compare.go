// Package compare says which of several drops to fish, by their plans: where there is water
// that suits, where it is more likely to hold oxygen, where it begins shallower; whether the
// readings can show a difference at all; and whether wind alone can be the cause. It answers
// with codes and numbers: package report has the words.
package compare

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/plan"
	"coldseam/profile/tilt"
)

// Reason is the code of what speaks for one drop against another.
type Reason string

// The reasons.
const (
	OnlyWater    Reason = "only water"    // the other has no water that suits
	SuitsBetter  Reason = "suits better"  // the other's is warmer or colder than the fish likes
	SurerOxygen  Reason = "surer oxygen"  // measured or likely there, unknown at the other
	Shallower    Reason = "shallower"     // water that suits begins nearer to the surface
	Warmer       Reason = "warmer"        // both are colder than the fish likes
	ReadOxygen   Reason = "read oxygen"   // measured there, likely at the other
	NoDifference Reason = "no difference" // that the readings can show
	NoWater      Reason = "no water"      // none suits at either
)

// Cause is the code of whether wind alone can be the cause of two thermoclines' difference.
type Cause string

// The causes.
const (
	NoThermocline  Cause = "no thermocline"   // at one of them: there is nothing to compare
	OtherWater     Cause = "other water"      // or other days: wind is no question
	WithinDoubt    Cause = "within doubt"     // the readings cannot tell the two apart
	WindNotKnown   Cause = "wind not known"   // or the length of the lake
	TooShallow     Cause = "too shallow"      // hardly any water is known below the thermocline
	WindCan        Cause = "wind can"         // tilt them so far
	WindCannot     Cause = "wind cannot"      // the difference is more
	NoWindToTiltIt Cause = "no wind to do it" // it is calm
)

// Answer says which drop to fish. Numbers of drops are places in the list that was given.
type Answer struct {
	Order []int // the best first; drops between which the readings show no difference by their place
	Why   []Reason
	But   []Reason // what speaks for the second of the order
	TopM  float64  // how much shallower water that suits begins at the first; below 0 deeper
	WarmC float64  // how much warmer it is where the fly starts at the first

	OneFish   bool // for different fish there is no order
	OneWater  bool
	DaysApart int // the most between two of them; 0 where days are not known

	Cause       Cause
	High, Low   int              // the drops with the shallowest and the deepest thermocline
	Apart       profile.Estimate // of these two, m; meaningless where there are not two
	Tilt        tilt.Tilt        // of WindCan and WindCannot
	NeedsWind   bool             // of WindNotKnown
	NeedsLength bool
}

// Of compares the plans of two drops or more.
func Of(plans []plan.Plan) Answer {
	a := Answer{OneFish: true, OneWater: true, DaysApart: daysApart(plans)}
	for i := range plans {
		a.Order = append(a.Order, i)
		a.OneFish = a.OneFish && plans[i].Fish.Key == plans[0].Fish.Key
		for j := range i {
			x, y := strings.TrimSpace(plans[i].Drop.Water), strings.TrimSpace(plans[j].Drop.Water)
			a.OneWater = a.OneWater && (x == "" || y == "" || strings.EqualFold(x, y))
		}
	}
	slices.SortStableFunc(a.Order, func(i, j int) int { return before(&plans[i], &plans[j]) })
	a.weigh(&plans[a.Order[0]], &plans[a.Order[1]])
	if len(a.Why) == 0 && len(a.But) > 0 { // what cannot be told by depth is by what was measured
		a.Order[0], a.Order[1] = a.Order[1], a.Order[0]
		a.Why, a.But, a.TopM, a.WarmC = a.But, nil, -a.TopM, -a.WarmC
	}
	if len(a.Why) == 0 {
		a.Why = []Reason{NoDifference}
	}
	a.cause(plans)
	return a
}

// daysApart is the most between the days of two drops.
func daysApart(plans []plan.Plan) int {
	var days []int
	for _, p := range plans {
		if len(p.Drop.Date) < len(time.DateOnly) {
			continue
		}
		if at, err := time.Parse(time.DateOnly, p.Drop.Date[:len(time.DateOnly)]); err == nil {
			days = append(days, int(at.Unix()/(24*3600)))
		}
	}
	if len(days) < 2 {
		return 0
	}
	return slices.Max(days) - slices.Min(days)
}

// before puts the drop with water that suits first, then that with surer oxygen, then that
// where it begins shallower, or is warmer where all of it is colder than the fish likes.
func before(p, q *plan.Plan) int {
	first := func(x, y bool) int {
		switch {
		case x == y:
			return 0
		case x:
			return -1
		}
		return 1
	}
	byDepth := cmp.Compare(top(p).Best, top(q).Best)
	if p.Band.Cold && q.Band.Cold {
		byDepth = cmp.Compare(atFly(q).Best, atFly(p).Best)
	}
	return cmp.Or(first(p.Band.Found, q.Band.Found), first(suits(p), suits(q)), first(hopeful(p), hopeful(q)), byDepth,
		first(p.Oxygen.Level == plan.Measured, q.Oxygen.Level == plan.Measured))
}

// suits reports whether the water of the band is what the fish likes.
func suits(p *plan.Plan) bool {
	return p.Band.Found && p.Wants() != tilt.Warmer && !p.Band.Cold && !overWarm(p)
}

// hopeful reports whether oxygen is measured or likely where the fly starts.
func hopeful(p *plan.Plan) bool { return p.Band.Found && p.Oxygen.Level != plan.Unknown }

// top is where water that suits begins.
func top(p *plan.Plan) profile.Estimate {
	if p.Band.ToSurface || !p.Band.Found {
		return profile.Estimate{}
	}
	return p.Band.Top
}

// atFly is the temperature where the fly starts.
func atFly(p *plan.Plan) profile.Estimate { return p.Layers.Curve.TempInterval(p.FlyM()) }

// Least differences that are worth a word: a foot, a degree Fahrenheit.
const (
	worthM = 0.3048
	worthC = 0.55
)

// weigh says what speaks for the first and for the second of the order.
func (a *Answer) weigh(p, q *plan.Plan) {
	switch {
	case !p.Band.Found:
		a.Why = []Reason{NoWater}
		return
	case !q.Band.Found:
		a.Why = []Reason{OnlyWater}
		return
	}
	if suits(p) != suits(q) {
		a.Why = append(a.Why, SuitsBetter)
	}
	if hopeful(p) != hopeful(q) {
		a.side(hopeful(p), SurerOxygen)
	}
	if p.Band.Cold && q.Band.Cold {
		x, y := atFly(p), atFly(q)
		a.WarmC = x.Best - y.Best
		a.real(a.WarmC, between(x, y), worthC, Warmer)
	} else {
		x, y := top(p), top(q)
		a.TopM = y.Best - x.Best
		a.real(a.TopM, between(x, y), worthM, Shallower)
	}
	if x, y := p.Oxygen.Level == plan.Measured, q.Oxygen.Level == plan.Measured; x != y && hopeful(p) && hopeful(q) && len(a.Why) == 0 {
		a.side(x, ReadOxygen)
	}
}

// side gives a reason to the first of the order, or to the second.
func (a *Answer) side(first bool, r Reason) {
	if first {
		a.Why = append(a.Why, r)
	} else {
		a.But = append(a.But, r)
	}
}

// real gives a reason where a difference is worth a word and beyond doubt.
func (a *Answer) real(by, doubt, worth float64, r Reason) {
	if math.Abs(by) > doubt && math.Abs(by) >= worth {
		a.side(by > 0, r)
	}
}

// between is the doubt about the difference of two estimates, at 80 %.
func between(x, y profile.Estimate) float64 {
	return math.Hypot(x.High-x.Low, y.High-y.Low) / 2
}
