package plan

import (
	"math"
	"time"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/basin"
	"coldseam/profile/catches"
	"coldseam/profile/check"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
	"coldseam/profile/light"
	"coldseam/profile/oxygen"
	"coldseam/profile/rig"
	"coldseam/profile/sun"
)

// Input is a drop as it was read, and what the angler has settled beforehand.
type Input struct {
	Drop       profile.Drop
	Fish       fish.Fish
	Rules      rig.Rules
	ClearanceM float64         // of the fly above the bottom
	FlyDensity float64         // kg/m3 of the fly; 0: not known
	Zone       *time.Location  // of the page's clock, nil where it is not known
	Basin      *basin.Basin    // the water's table of depth and area, nil where there is none
	Taken      []catches.Taken // what was caught before, of all fish and waters
	rig.Tackle
}

// ClearanceM is how far above the bottom the fly is kept when the angler has not
// said: 1 ft (common practice, 1 to 2 ft).
const ClearanceM = 0.3048

// Plan is the whole answer.
type Plan struct {
	Drop       profile.Drop // corrected, its readings flagged
	Fish       fish.Fish
	Column     profile.Column
	Layers     layers.Layers
	Band       band.Band
	Rig        *rig.Rig // nil when there is no band to fish
	Rules      rig.Rules
	ClearanceM float64
	Depths     Confidence       // how sure the thermocline and the band's edges are
	Oxygen     Confidence       // how sure it is that the fish have oxygen enough
	LakeClass  oxygen.LakeClass // that the doubt about oxygen nobody measured is a false alarm
	Usual      *catches.Usual   // where this fish was taken before; nil where that is too seldom
	StepM      float64          // m, where a fitted step puts the break, if that is a doubt; else 0
	Assumed    []Assumption
	Cautions   []Caution
	Sun        *sun.Outlook // the light of the day; nil where the day or the latitude is not known
	Basin      *Basin       // nil without a table of depth and area
}

// Make makes the plan. It refuses a drop with no usable reading; Plan.Drop then still
// says which were flagged.
func Make(in Input) (Plan, error) {
	checked := check.Of(in.Drop)
	p := Plan{Drop: checked.Drop(), Fish: in.Fish, Rules: in.Rules, ClearanceM: in.ClearanceM}
	column, err := checked.Column()
	if err != nil {
		return p, err
	}
	p.Column = column
	p.Sun = sunOf(&p.Drop, in.Zone)
	p.Layers = layers.Find(column)
	if u, ok := catches.UsualOf(in.Taken, p.Fish.Key, p.Drop.Water); ok {
		p.Usual = &u
	}
	p.Band = p.findBand(column, p.Layers)
	if p.Band.Found {
		r := rig.Find(p.rigInput(in))
		p.Rig = &r
	}
	if p.Band.DoubtfulBelow != nil && !in.Drop.AnchorBlack() {
		p.LakeClass = oxygen.ClassOf(p.lakeM(), in.Drop.Secchi, in.Drop.Colour)
	}
	p.Depths, p.Oxygen = p.sureOfDepth(), p.sureOfOxygen()
	p.Assumed = p.assumed()
	p.Cautions = p.cautions()
	p.Basin = p.inBasin(in.Basin)
	return p, nil
}

// findBand finds the band of a column of this drop.
func (p *Plan) findBand(c profile.Column, l layers.Layers) band.Band {
	d := &p.Drop
	sky := light.Sky{Date: d.Date, Text: d.Sky, Wind: d.Wind, SunDeg: p.sunDeg()}
	lit := light.Advise(sky)
	if lit.Why == "" && sky.Noted() {
		lit.Why = light.NoEffect
	}
	b := band.Find(band.Input{Column: c, Layers: l, Fish: p.Fish, Bottom: d.Bottom, Deepest: d.Deepest, ClearanceM: p.ClearanceM,
		Secchi: d.Secchi, AnchorBlack: d.AnchorBlack(),
		Light: lit, Usual: p.secondOpinion()})
	if b.Found {
		b.WaterM = wholeMarks(b, d.Units.DepthStepM())
	}
	return b
}

// lakeM is the greatest depth known of the lake, m.
func (p *Plan) lakeM() float64 {
	return max(p.Column.Last().DepthM, p.Drop.Bottom.Or(0), p.Drop.Deepest.Or(0))
}

// Richness is what clarity and colour say of the water's richness, and so of the oxygen
// below the break; Unknown where there is no break.
func (p *Plan) Richness() light.Richness {
	if p.Layers.Thermocline == nil {
		return light.Unknown
	}
	return light.Noted(p.Drop.Secchi, p.Drop.Colour)
}

// wholeMarks rounds the depth of water to begin in to a mark on the line, so that
// the leader is worked out for the depth that is printed; within what may be cast
// over where that leaves room for a mark.
func wholeMarks(b band.Band, markM float64) float64 {
	water := math.Round(b.WaterM/markM) * markM
	switch {
	case water > b.CastDeepM+1e-9:
		water -= markM
	case water < b.CastShallowM-1e-9:
		water += markM
	}
	if water < b.CastShallowM-1e-9 || water > b.CastDeepM+1e-9 {
		return b.WaterM
	}
	return water
}

// flyM is the depth of the fly in a band.
func (p *Plan) flyM(b band.Band) float64 {
	fly := b.WaterM - p.ClearanceM
	if b.Suspended {
		fly = math.Min(b.Start.Best, fly)
	}
	return math.Max(0, fly)
}

func (p *Plan) rigInput(in Input) rig.Input {
	b, fly := p.Band, p.flyM(p.Band)
	return rig.Input{
		WaterM: b.WaterM, FlyM: fly, Wind: in.Drop.Wind, Suspended: b.Suspended, Ice: p.UnderIce(),
		UsualKg: p.Fish.FlyG.Value / 1000, Teeth: p.Fish.Teeth,
		Rules: in.Rules, StepM: rig.Step(in.Drop.Units.Feet()), Tackle: in.Tackle, FlyKg: in.Drop.FlyWeight,
		FlyDensity: in.FlyDensity, Retrieve: in.Drop.Retrieve, WaterC: profile.Some(p.Layers.Curve.At(fly / 2)),
	}
}

// Flagged counts the flagged readings, and those of them that were not used.
func (p *Plan) Flagged() (flagged, unused int) {
	for _, r := range p.Drop.Readings {
		if r.Flag != "" {
			flagged++
		}
		if !r.Used() {
			unused++
		}
	}
	return flagged, unused
}
