package plan

import (
	"math"
	"slices"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/forecast"
	"coldseam/profile/layers"
)

// Season is what a water's drops say of its season: what changed, and what is to come.
type Season struct {
	South      bool   // of the equator
	Drops      []Plan // of this season, the oldest first
	When       []time.Time
	Before     *Plan   // the drop before the last one, of another day, nil without one,
	DaysBefore float64 // so many days before it,
	Elsewhere  bool    // and at another spot
	Last       *Plan

	Thermocline, Edge Difference // of the last drop against the one before; Edge is where it is no longer too warm
	Oxygen            Difference // the depth at which it falls to what the fish needs
	Years             []int      // the earlier years with a drop within a week of that day, the oldest first
	Typical           Difference // the last thermocline against the middle of those years'

	Sinking     profile.Estimate // m a day; meaningless unless SinkingOK
	SinkingOK   bool
	Thermos     int     // drops with a thermocline,
	ThermosDays float64 // and the days between the first and the last of them

	TurnFrom, TurnTo time.Time
	NoTurn           forecast.WhyNot // "" where the two are known
}

// Difference is that of a depth or a temperature from one time to another.
type Difference struct {
	Now, Was *profile.Estimate // nil where there is none
	By       float64           // meaningless without both
	Shown    bool              // it is more than the doubt about both
}

// anotherDay apart two drops are no longer two spots of one day.
const anotherDay = 12 * time.Hour

// aWeek on both sides of a day are the same fortnight of another year.
const aWeek = 7.5

// Dated is the plan of a drop with its time.
type Dated struct {
	When time.Time
	Plan Plan
}

// SeasonOf makes the season of drops of one water, the oldest first, at least one: that of the
// last, in the north or in the south.
func SeasonOf(all []Dated, south bool) Season {
	last := &all[len(all)-1]
	s := Season{Last: &last.Plan, South: south}
	var drops []forecast.Drop
	var years []float64
	for _, d := range all {
		p := d.Plan
		switch days, same := forecast.SeasonDays(d.When, last.When, south); {
		case same:
			s.Drops, s.When = append(s.Drops, p), append(s.When, d.When)
			drops = append(drops, forecast.Drop{When: d.When, Layers: p.Layers})
		case math.Abs(days) <= aWeek && p.Layers.Thermocline != nil:
			s.Years, years = append(s.Years, d.When.Year()), append(years, p.Layers.Thermocline.Best)
		}
	}
	s.findBefore(last.When)
	if s.Before != nil {
		s.compare()
	}
	s.Years = slices.Compact(s.Years)
	s.typical(years)
	s.Sinking, s.Thermos, s.ThermosDays, s.SinkingOK = forecast.Sinking(drops)
	s.TurnFrom, s.TurnTo, s.NoTurn = forecast.Turnover(drops[len(drops)-1], s.Last.lakeM(), south)
	return s
}

// sameSpotDays is how much older a drop at the same spot may be than one at another and
// still tell more: wind sets spots of one day apart.
const sameSpotDays = 7

// findBefore finds the drop to compare the last with: the last of another day, at the same
// spot if there is one about as young.
func (s *Season) findBefore(when time.Time) {
	for i := len(s.Drops) - 1; i >= 0; i-- {
		days := when.Sub(s.When[i]).Hours() / 24
		elsewhere := !strings.EqualFold(strings.TrimSpace(s.Drops[i].Drop.Spot), strings.TrimSpace(s.Last.Drop.Spot))
		switch {
		case days < anotherDay.Hours()/24:
		case s.Before == nil, s.Elsewhere && !elsewhere && days-s.DaysBefore <= sameSpotDays:
			s.Before, s.DaysBefore, s.Elsewhere = &s.Drops[i], days, elsewhere
		}
	}
}

// compare fills in what changed since the drop before.
func (s *Season) compare() {
	now, was := s.Last, s.Before
	s.Thermocline = difference(now.Layers.Thermocline, was.Layers.Thermocline)
	s.Edge = difference(now.Edge(), was.Edge())
	s.Oxygen = difference(now.oxygenEndsM(), was.oxygenEndsM())
}

// typical compares the last thermocline with those of earlier years.
func (s *Season) typical(years []float64) {
	if len(years) == 0 {
		return
	}
	slices.Sort(years)
	k := len(years)
	middle := (years[(k-1)/2] + years[k/2]) / 2
	s.Typical = difference(s.Last.Layers.Thermocline, &profile.Estimate{Best: middle, Low: years[0], High: years[k-1]})
}

// difference compares two estimates, whose intervals are taken to be independent.
func difference(now, was *profile.Estimate) Difference {
	c := Difference{Now: now, Was: was}
	if now == nil || was == nil {
		return c
	}
	c.By = now.Best - was.Best
	half := func(e *profile.Estimate) float64 { return (e.High - e.Low) / 2 }
	c.Shown = math.Abs(c.By) > math.Hypot(half(now), half(was))
	return c
}

// Edge is where the water is no longer too warm for the fish; of fish that need it warm,
// where it begins to be too cold. nil where the drop has no such depth.
func (p *Plan) Edge() *profile.Estimate {
	level := p.Fish.ComfortHighC.Value
	if p.Fish.Kind != fish.Coldwater {
		level = p.Fish.ComfortLowC.Value
	}
	k := p.Layers.Curve
	if p.Column.Len() < 2 || k.At(k.Top()) <= level {
		return nil
	}
	z, ok := k.Crossing(level, k.Top(), k.Bottom())
	if !ok {
		return nil
	}
	e := k.CrossingInterval(z, level)
	return &e
}

// oxygenEndsM is the depth at which measured oxygen falls to what the fish needs; its interval
// is that of the readings around it. nil where it was not measured, or does not fall so far.
func (p *Plan) oxygenEndsM() *profile.Estimate {
	var z, v []float64
	for _, q := range p.Column.Points() {
		if q.Oxygen.Known {
			z, v = append(z, q.DepthM), append(v, q.Oxygen.Value)
		}
	}
	depth, ok := layers.Linear(z, v, p.Fish.OxygenMgL.Value)
	if !ok {
		return nil
	}
	i := min(max(slices.IndexFunc(z, func(d float64) bool { return d >= depth }), 1), len(z)-1)
	return &profile.Estimate{Best: depth, Low: z[i-1], High: z[i]}
}
