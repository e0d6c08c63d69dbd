package report

import (
	"coldseam/profile"
	"coldseam/profile/compare"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// ComparedDropJSON is one of the drops that are compared.
type ComparedDropJSON struct {
	Letter      string            `json:"letter"`
	Name        string            `json:"name"`
	Water       string            `json:"water,omitempty"`
	Spot        string            `json:"spot,omitempty"`
	Date        string            `json:"date,omitempty"`
	For         string            `json:"for"`
	Found       bool              `json:"found"`
	Top         *profile.Estimate `json:"top_m,omitempty"`
	Bottom      *profile.Estimate `json:"bottom_m,omitempty"`
	FlyM        *float64          `json:"fly_depth_m,omitempty"`
	CastM       *float64          `json:"cast_over_m,omitempty"`
	LeaderM     *float64          `json:"leader_m,omitempty"`
	Thermocline *profile.Estimate `json:"thermocline_m,omitempty"`
	MixedC      float64           `json:"mixed_layer_c"`
	Depth       plan.Level        `json:"depth_confidence"`
	Oxygen      plan.Level        `json:"oxygen_confidence"`
}

// CompareJSON is the stable form of a comparison.
type CompareJSON struct {
	Drops       []ComparedDropJSON `json:"drops"`
	Order       []string           `json:"order"` // the best first; none for different fish
	Why         []compare.Reason   `json:"why"`
	But         []compare.Reason   `json:"but"`
	OneFish     bool               `json:"one_fish"`
	OneWater    bool               `json:"one_water"`
	DaysApart   int                `json:"days_apart"`
	Cause       compare.Cause      `json:"cause"`
	Thermocline *profile.Estimate  `json:"thermoclines_apart_m,omitempty"`
	TiltM       *profile.Estimate  `json:"wind_tilts_ends_apart_m,omitempty"`
	Text        string             `json:"text"`
	Warnings    []string           `json:"warnings"`
	Notes       []string           `json:"notes"`
}

// CompareAsJSON makes the stable form.
func CompareAsJSON(plans []plan.Plan, names []string) CompareJSON {
	c := newCompared(plans, names)
	a := c.a
	out := CompareJSON{
		Order: []string{}, Why: append([]compare.Reason{}, a.Why...), But: append([]compare.Reason{}, a.But...), OneFish: a.OneFish, OneWater: a.OneWater, DaysApart: a.DaysApart,
		Cause: a.Cause, Text: c.answer(), Warnings: append([]string{}, c.warnings()...), Notes: append([]string{}, c.notes()...),
	}
	for i, s := range c.s {
		out.Drops = append(out.Drops, s.comparedDrop(letter(i), names[i]))
	}
	if a.OneFish {
		for _, i := range a.Order {
			out.Order = append(out.Order, letter(i))
		}
	} else {
		out.Why, out.But = []compare.Reason{}, []compare.Reason{}
	}
	if a.Cause != compare.NoThermocline {
		out.Thermocline = rounded(&a.Apart, 3)
	}
	if e := a.Tilt.Steady; a.Cause == compare.WindCan || a.Cause == compare.WindCannot {
		out.TiltM = rounded(&profile.Estimate{Best: 2 * e.Best, Low: 2 * e.Low, High: 2 * e.High}, 3)
	}
	return out
}

func (s speaker) comparedDrop(letter, name string) ComparedDropJSON {
	p := s.p
	out := ComparedDropJSON{
		Letter: letter, Name: name, Water: p.Drop.Water, Spot: p.Drop.Spot, Date: p.Drop.Date, For: p.Fish.Key, Found: p.Band.Found,
		Thermocline: rounded(p.Layers.Thermocline, 3), MixedC: unit.RoundTo(p.Layers.MixedTempC, 3), Depth: p.Depths.Level, Oxygen: p.Oxygen.Level,
	}
	if p.Band.Found {
		out.Top, out.Bottom = rounded(&p.Band.Top, 3), rounded(&p.Band.Bottom, 3)
		out.FlyM, out.CastM = known(profile.Some(p.FlyM())), known(profile.Some(p.Band.WaterM))
		if p.Rig != nil && len(p.Rig.Parts) > 0 {
			out.LeaderM = known(profile.Some(p.Rig.LeaderM))
		}
	}
	return out
}
