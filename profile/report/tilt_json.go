package report

import (
	"coldseam/profile"
	"coldseam/profile/plan"
	"coldseam/profile/tilt"
	"coldseam/profile/unit"
)

// TiltJSON is the stable form of a tilt.
type TiltJSON struct {
	Water       string            `json:"water,omitempty"`
	Spot        string            `json:"spot,omitempty"`
	Date        string            `json:"date,omitempty"`
	For         string            `json:"for"`
	WindMps     float64           `json:"wind_mps"`
	WindFrom    string            `json:"wind_from,omitempty"`
	BlowsTo     string            `json:"wind_to,omitempty"`
	LengthM     float64           `json:"lake_length_m"`
	AfterS      *float64          `json:"blown_s,omitempty"`
	At          tilt.Place        `json:"at,omitempty"`
	UpperM      float64           `json:"upper_layer_m"`
	LowerM      float64           `json:"lower_layer_m"`
	Above       float64           `json:"density_above_kgm3"`
	Below       float64           `json:"density_below_kgm3"`
	BottomKnown bool              `json:"bottom_known"`
	Thermocline *profile.Estimate `json:"thermocline_m"`
	Up          *profile.Estimate `json:"upwind_thermocline_m"`
	Down        *profile.Estimate `json:"downwind_thermocline_m"`
	End         *profile.Estimate `json:"end_displacement_m"`
	Steady      *profile.Estimate `json:"steady_displacement_m"`
	Share       *profile.Estimate `json:"share_of_steady"`
	Period      *profile.Estimate `json:"period_s"`
	Wedderburn  *profile.Estimate `json:"wedderburn,omitempty"` // absent without wind
	Rise        tilt.Rise         `json:"cold_water_upwind"`
	Try         tilt.End          `json:"try"`
	Why         tilt.Reason       `json:"why"`
	Text        string            `json:"text"`
	Warnings    []string          `json:"warnings"`
	Notes       []string          `json:"notes"`
}

// TiltAsJSON makes the stable form.
func TiltAsJSON(p plan.Plan, t tilt.Tilt) TiltJSON {
	s := tilted{speak(p), t}
	out := TiltJSON{
		Water: p.Drop.Water, Spot: p.Drop.Spot, Date: p.Drop.Date, For: p.Fish.Key,
		WindMps: unit.RoundTo(t.WindMps, 3), WindFrom: p.Drop.WindFrom, BlowsTo: tilt.To(p.Drop.WindFrom), LengthM: unit.RoundTo(t.LengthM, 3), At: t.At,
		UpperM: unit.RoundTo(t.Layers.UpperM, 3), LowerM: unit.RoundTo(t.Layers.LowerM, 3), Above: unit.RoundTo(t.Layers.Above, 3), Below: unit.RoundTo(t.Layers.Below, 3),
		BottomKnown: t.BottomKnown, Thermocline: rounded(&t.Thermocline, 3), Up: rounded(&t.Up, 3), Down: rounded(&t.Down, 3),
		End: rounded(&t.End, 3), Steady: rounded(&t.Steady, 3), Share: rounded(&t.Share, 3), Period: rounded(&t.Period, 1),
		Rise: t.Rise, Try: t.Choice.End, Why: t.Choice.Why, Text: s.choice(),
		Warnings: append([]string{}, s.warnings()...), Notes: append([]string{}, s.notes()...),
	}
	if t.BlownKnown {
		out.AfterS = known(profile.Some(t.AfterS))
	}
	if t.WindMps > 0 {
		out.Wedderburn = rounded(&t.Wedderburn, 3)
	}
	return out
}
