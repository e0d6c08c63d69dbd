package plan

import (
	"slices"

	"coldseam/profile/layers"
	"coldseam/profile/remark"
)

// Caution is the code of one caution that applies. The texts are in package report.
//
// The codes:
//
//	warm-65     mixed layer at 18.3 C (65 F) or more: consider keeping fish or stopping early
//	warm-68     at 20 C (68 F) or more: fish are stressed; land them fast
//	warm-70     at 21.1 C (70 F) or more: no catch and release
//	pressure    fish from deeper than 25 ft suffer from the change of pressure
//	cold        water cold enough for cold shock, here or brought up by wind
//	ice         water near freezing: ice
//	wind        wind of 15 mph or more, or whitecaps: come in
//	thunder     thunder, lightning or a storm noted: off the water
//	anchors     two anchors: how to set and free them
//	rules       the local rules come first
type Caution string

// The cautions.
const (
	Warm65   Caution = "warm-65"
	Warm68   Caution = "warm-68"
	Warm70   Caution = "warm-70"
	Pressure Caution = "pressure"
	Cold     Caution = "cold"
	Ice      Caution = "ice"
	Wind     Caution = "wind"
	Thunder  Caution = "thunder"
	Anchors  Caution = "anchors"
	Rules    Caution = "rules"
)

// Thresholds, which package report prints. The handling temperatures are 65, 68 and 70 F: state agencies advise
// against catch and release of trout above 70 F (New York DEC 2019); 68 F is common
// advice; 65 F a note of care. Barotrauma from 25 ft: agencies' advice to anglers.
// Cold shock is possible in water under 70 F (US Coast Guard's advice to boaters).
const (
	note65C   = 18.3
	caution68 = 20.0
	StopC     = 21.1         // of the top layer: no catch and release
	PressureM = 25 * 0.3048  // fish from deeper suffer
	WindMps   = 15 * 0.44704 // too much at anchor
	ShockC    = 21.1         // a fall into colder water can take the breath
	iceC      = 4.0
	freezeC   = 0.6 // 33 F on top
	winterC   = 2.0 // of the top, in a winter month
	iceRiseC  = 0.5 // how much warmer the lower of two readings must be
)

// Gate reports whether the mixed layer is so warm that coldwater fish brought up
// through it are likely to die if released.
func (p *Plan) Gate() bool { return p.Fish.Salmonid && p.Layers.MixedTempC >= StopC-0.05 }

// UnderIce reports whether the column is one found under ice: colder above, and
// near freezing at the top. Two readings are enough to say so. Ice is likely too where the
// top is at most 33 F, or nearly so cold in a winter month (common practice).
func (p *Plan) UnderIce() bool {
	top, bottom := p.Column.First().TempC, p.Column.Last().TempC
	inverse := p.Layers.Structure == layers.Inverse || p.Layers.Structure == layers.TooFew && bottom-top >= iceRiseC
	return inverse && top < iceC || top <= freezeC || top <= winterC && p.winter()
}

// winter reports whether the drop is of a month in which lakes freeze: of the north, where
// no latitude says that it is of the south.
func (p *Plan) winter() bool {
	if len(p.Drop.Date) < len("2027-01") {
		return false
	}
	months := []string{"12", "01", "02", "03"}
	if p.Drop.Latitude.Known && p.Drop.Latitude.Value < 0 {
		months = []string{"06", "07", "08", "09"}
	}
	return slices.Contains(months, p.Drop.Date[5:7])
}

// cautions lists those that apply: the water's rules where they were noted, then the
// gravest first.
func (p *Plan) cautions() []Caution {
	var out []Caution
	add := func(when bool, c Caution) {
		if when {
			out = append(out, c)
		}
	}
	sky, wind, iced := remark.Sky(p.Drop.Sky), p.Drop.Wind, p.UnderIce()
	warm := p.warm()
	add(warm != "", warm)
	add(sky.Has(remark.Thunder), Thunder)
	add(wind.Known && wind.Value >= WindMps-0.01 || sky.Has(remark.Whitecaps), Wind)
	add(p.Band.Found && p.Band.Start.Best > PressureM, Pressure)
	add(iced, Ice)
	add(!iced && p.ColdestC() < ShockC, Cold)
	add(!iced && p.Band.Found, Anchors)
	if p.Rules.Water != "" { // noted rules come before all advice
		return append([]Caution{Rules}, out...)
	}
	return append(out, Rules)
}

// warm is the caution for a mixed layer too warm for fish of the salmon family, "" where
// it is none.
func (p *Plan) warm() Caution {
	switch warm := p.Layers.MixedTempC; {
	case !p.Fish.Salmonid:
		return ""
	case p.Gate():
		return Warm70
	case warm >= caution68-0.02:
		return Warm68
	case warm >= note65C-0.02:
		return Warm65
	}
	return ""
}
