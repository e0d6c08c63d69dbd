package report

import (
	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/layers"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// The JSON forms: SI, keys named with their unit, an unknown value absent, 0 and
// false printed. Depths, lengths and temperatures are rounded to 0.001, seconds to
// 0.1.

// ReadingJSON is one reading.
type ReadingJSON struct {
	DepthM    float64      `json:"depth_m"`
	TempC     float64      `json:"temp_c"`
	OxygenMgL *float64     `json:"oxygen_mgl,omitempty"`
	Flag      profile.Flag `json:"flag,omitempty"`
}

// LayersJSON is package layers' answer.
type LayersJSON struct {
	Structure     layers.Structure  `json:"structure"`
	MixedLayer    *profile.Estimate `json:"mixed_layer_m,omitempty"`
	MetaTop       *profile.Estimate `json:"metalimnion_top_m,omitempty"`
	MetaBottom    *profile.Estimate `json:"metalimnion_bottom_m,omitempty"`
	Thermocline   *profile.Estimate `json:"thermocline_m,omitempty"`
	SteepestCPerM *float64          `json:"steepest_c_per_m,omitempty"`
	OtherBreaks   []layers.Break    `json:"other_breaks"`
	BottomReached bool              `json:"bottom_reached_first"`
}

// IntervalJSON is water that suits but is not the band.
type IntervalJSON struct {
	TopM    float64 `json:"top_m"`
	BottomM float64 `json:"bottom_m"`
	Why     string  `json:"why"`
}

// SpanJSON is a run of depths: of the band that in which there is oxygen enough in most
// lakes, or was measured, between the edges that are printed.
type SpanJSON struct {
	TopM    float64 `json:"top_m"`
	BottomM float64 `json:"bottom_m"`
}

// BandJSON is package band's answer.
type BandJSON struct {
	Found         bool              `json:"found"`
	Top           *profile.Estimate `json:"top_m,omitempty"`
	Bottom        *profile.Estimate `json:"bottom_m,omitempty"`
	Start         *profile.Estimate `json:"start_m,omitempty"`
	CastShallowM  *float64          `json:"cast_shallow_m,omitempty"`
	CastDeepM     *float64          `json:"cast_deep_m,omitempty"`
	Suspended     bool              `json:"suspended"`
	Oxygen        string            `json:"oxygen"`
	DoubtfulBelow *profile.Estimate `json:"doubtful_below_m,omitempty"`
	BestBet       *SpanJSON         `json:"best_bet,omitempty"` // absent where oxygen is unknown in all of the band
	Others        []IntervalJSON    `json:"others"`
	Why           []string          `json:"why"`
	Changes       []string          `json:"changes"`
}

// FlyJSON is one fly of the rig.
type FlyJSON struct {
	DepthM float64 `json:"depth_m"`
}

// PartJSON is one piece of the leader.
type PartJSON struct {
	Name       string   `json:"name"`
	LengthM    float64  `json:"length_m"`
	DiameterMM *float64 `json:"diameter_mm,omitempty"`
}

// RigJSON is package rig's answer.
type RigJSON struct {
	Kind      rig.Kind          `json:"kind"`
	Leader    profile.Estimate  `json:"leader_m"`
	RuleM     float64           `json:"rule_leader_m"`
	FlyDepthM float64           `json:"fly_depth_m"`
	Flies     []FlyJSON         `json:"flies"`
	Reachable bool              `json:"reachable"`
	Wait      *profile.Estimate `json:"wait_s,omitempty"`
	RuleWait  *profile.Estimate `json:"rule_wait_s,omitempty"`
	Slowest   *float64          `json:"slowest_retrieve_mps,omitempty"`
	Fastest   *float64          `json:"fastest_retrieve_mps,omitempty"`
	RuleHolds *float64          `json:"rule_holds_to_mps,omitempty"`
	Parts     []PartJSON        `json:"parts"`
	RunnerUp  rig.Kind          `json:"runner_up"`
	HangM     *float64          `json:"hang_m,omitempty"`     // under the indicator
	Sliding   *bool             `json:"sliding,omitempty"`    // the indicator must slide
	SwivelM   *float64          `json:"swivel_m,omitempty"`   // above the fly
	Class     int               `json:"line_class,omitempty"` // of the sinking line to take
	FlyG      float64           `json:"fly_g"`
	FlyTaken  bool              `json:"fly_assumed"`
	Spool     string            `json:"spool,omitempty"` // of several, which to take
	AddBite   bool              `json:"add_bite_tippet"`
}

// ConfidenceJSON is how sure the plan is: of its depths good, fair or poor; of oxygen
// measured, likely (not measured, but most lakes have enough where the fly starts) or
// unknown. A script may rely on these words, not on those of why.
type ConfidenceJSON struct {
	Depth  SureJSON `json:"depth"`
	Oxygen SureJSON `json:"oxygen"`
}

// SureJSON is how sure one of them is, and why.
type SureJSON struct {
	Level plan.Level `json:"level"`
	Why   []string   `json:"why"`
}

// CautionJSON is one caution.
type CautionJSON struct {
	Code   plan.Caution `json:"code"`
	Text   string       `json:"text"`
	Source string       `json:"source"`
}

// PlanJSON is the whole plan.
type PlanJSON struct {
	Water      string         `json:"water,omitempty"`
	Spot       string         `json:"spot,omitempty"`
	Date       string         `json:"date,omitempty"`
	For        string         `json:"for"`
	BottomM    *float64       `json:"bottom_m,omitempty"`
	SecchiM    *float64       `json:"secchi_m,omitempty"`
	AltitudeM  *float64       `json:"altitude_m,omitempty"`
	Readings   []ReadingJSON  `json:"readings"`
	Layers     LayersJSON     `json:"layers"`
	Band       BandJSON       `json:"band"`
	Rig        *RigJSON       `json:"rig,omitempty"`
	Sun        *SunJSON       `json:"sun,omitempty"`   // absent without day and latitude
	Basin      *BasinJSON     `json:"basin,omitempty"` // absent without a table of depth and area
	Confidence ConfidenceJSON `json:"confidence"`
	Cautions   []CautionJSON  `json:"cautions"`
	Notes      []string       `json:"notes"`
	Usual      *UsualJSON     `json:"caught_before,omitempty"`
	Check      *Check         `json:"check,omitempty"`
}

// JSON makes the stable form of a plan; notes are those on how its page was read.
func JSON(p plan.Plan, notes []notebook.Note) PlanJSON {
	s := speak(p)
	out := PlanJSON{
		Water: p.Drop.Water, Spot: p.Drop.Spot, Date: p.Drop.Date, For: p.Fish.Key,
		BottomM: known(p.Drop.Bottom), SecchiM: known(p.Drop.Secchi), AltitudeM: known(p.Drop.Altitude),
		Layers: Layers(p.Layers), Band: s.band(), Sun: sunJSON(p.Sun), Basin: s.basin(), Cautions: []CautionJSON{}, Notes: append(append([]string{}, AsRead(p, notes)[1:]...), Assumed(p)...),
		Confidence: ConfidenceJSON{SureJSON{p.Depths.Level, s.doubts(p.Depths)}, SureJSON{p.Oxygen.Level, s.doubts(p.Oxygen)}},
	}
	out.Usual = usualJSON(p)
	for _, r := range p.Drop.Readings {
		out.Readings = append(out.Readings, ReadingJSON{unit.RoundTo(r.DepthM, 3), unit.RoundTo(r.TempC, 3), known(r.Oxygen), r.Flag})
	}
	if p.Rig != nil {
		r := Rig(*p.Rig)
		out.Rig = &r
	}
	for _, c := range p.Cautions {
		said := cautionOf(c)
		out.Cautions = append(out.Cautions, CautionJSON{c, said.text(s), said.source})
	}
	return out
}

// Layers makes the stable form of layers.
func Layers(l layers.Layers) LayersJSON {
	out := LayersJSON{
		Structure: l.Structure, MixedLayer: rounded(l.MixedLayer, 3), MetaTop: rounded(l.MetalimnionTop, 3), MetaBottom: rounded(l.MetalimnionBottom, 3),
		Thermocline: rounded(l.Thermocline, 3), OtherBreaks: []layers.Break{}, BottomReached: l.BottomReached,
	}
	if l.Structure == layers.Layered {
		v := unit.RoundTo(l.SteepestCPerM, 3)
		out.SteepestCPerM = &v
	}
	for _, b := range l.OtherBreaks {
		out.OtherBreaks = append(out.OtherBreaks, layers.Break{DepthM: unit.RoundTo(b.DepthM, 3), CPerM: unit.RoundTo(b.CPerM, 3)})
	}
	return out
}

func (s speaker) band() BandJSON {
	b := s.p.Band
	out := BandJSON{Found: b.Found, Suspended: b.Suspended, Oxygen: "not measured", Others: []IntervalJSON{}, Why: s.why(), Changes: s.changes()}
	if b.Oxygen {
		out.Oxygen = "measured"
	}
	for _, o := range b.Others {
		out.Others = append(out.Others, IntervalJSON{unit.RoundTo(o.TopM, 3), unit.RoundTo(o.BottomM, 3), s.flaw(o.Why)})
	}
	if !b.Found {
		return out
	}
	shallow, deep := unit.RoundTo(b.CastShallowM, 3), unit.RoundTo(b.CastDeepM, 3)
	out.Top, out.Bottom, out.Start = rounded(&b.Top, 3), rounded(&b.Bottom, 3), rounded(&b.Start, 3)
	out.CastShallowM, out.CastDeepM = &shallow, &deep
	out.DoubtfulBelow = rounded(b.DoubtfulBelow, 3)
	if top, bottom, bet := b.BestBet(s.p.Column.Last().DepthM); bet != band.NoPart {
		out.BestBet = &SpanJSON{unit.RoundTo(top, 3), unit.RoundTo(bottom, 3)}
	}
	return out
}

// Rig makes the stable form of a rig.
func Rig(r rig.Rig) RigJSON {
	out := RigJSON{
		Kind: r.Kind, Leader: *rounded(&r.Leader, 3), RuleM: unit.RoundTo(r.RuleLeaderM, 3),
		FlyDepthM: unit.RoundTo(r.FlyM, 3), Flies: []FlyJSON{}, Reachable: r.Reachable, Parts: []PartJSON{}, RunnerUp: r.RunnerUp,
		Wait: rounded(r.SinkTime, 1), RuleWait: rounded(r.RuleSinkTime, 1),
	}
	out.Class, out.FlyG, out.FlyTaken, out.AddBite = r.Class, unit.RoundTo(r.FlyKg*1000, 4), r.FlyAssumed, r.AddBite
	if r.Kind == rig.Hung {
		out.HangM, out.Sliding = known(profile.Some(r.HangM)), &r.SlidingNeeded
	}
	if r.SwivelM > 0 {
		out.SwivelM = known(profile.Some(r.SwivelM))
	}
	if r.Spool != nil {
		out.Spool = r.Spool.Name
	}
	for _, z := range r.FlyDepths {
		out.Flies = append(out.Flies, FlyJSON{unit.RoundTo(z, 3)})
	}
	if r.Window.Known {
		slowest, fastest := unit.RoundTo(r.Window.Slowest, 4), unit.RoundTo(r.Window.Fastest, 4)
		out.Slowest, out.Fastest = &slowest, &fastest
	}
	if r.RuleWindow.Known {
		holds := unit.RoundTo(r.RuleWindow.Fastest, 4)
		out.RuleHolds = &holds
	}
	for _, p := range r.Parts {
		part := PartJSON{Name: p.Name, LengthM: unit.RoundTo(p.LengthM, 4)}
		if p.DiameterMM > 0 {
			part.DiameterMM = known(profile.Some(p.DiameterMM))
		}
		out.Parts = append(out.Parts, part)
	}
	return out
}

func known(o profile.Optional) *float64 {
	if !o.Known {
		return nil
	}
	v := unit.RoundTo(o.Value, 3)
	return &v
}

func rounded(e *profile.Estimate, decimals int) *profile.Estimate {
	if e == nil {
		return nil
	}
	return &profile.Estimate{Best: unit.RoundTo(e.Best, decimals), Low: unit.RoundTo(e.Low, decimals), High: unit.RoundTo(e.High, decimals)}
}
