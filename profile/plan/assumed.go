package plan

import "coldseam/profile"

// Assumption is something that was assumed or not measured.
type Assumption string

// The assumptions.
const (
	MarksAssumed     Assumption = "marks"       // counted at the water
	BottomNotGiven   Assumption = "bottom"      // the bottom under the boat
	OxygenNotGiven   Assumption = "oxygen"      //
	OxygenPartly     Assumption = "oxygen part" // read at some depths, not where it matters
	AngleNotGiven    Assumption = "line angle"  // the line is taken as hanging straight
	PrecisionAssumed Assumption = "precision"   // of the thermometer
	IcePointUnknown  Assumption = "ice point"   // the thermometer was not checked
	BelowAssumed     Assumption = "below"       // the deepest reading is taken to hold for 2 ft more
	WindUnknown      Assumption = "wind"        //
	RulesUnknown     Assumption = "rules"       // none noted for this water
)

func (p *Plan) assumed() []Assumption {
	var out []Assumption
	add := func(when bool, a Assumption) {
		if when {
			out = append(out, a)
		}
	}
	d := p.Drop
	oxygen := false
	for _, r := range d.Readings {
		oxygen = oxygen || r.Oxygen.Known
	}
	add(p.Band.Found && !p.Band.Oxygen && !oxygen, OxygenNotGiven)
	add(p.Band.Found && !p.Band.Oxygen && oxygen, OxygenPartly)
	add(!d.Bottom.Known, BottomNotGiven)
	add(d.Marks == profile.MarksNotStated, MarksAssumed)
	add(!d.LineAngle.Known, AngleNotGiven)
	add(!d.IcePoint.Known, IcePointUnknown)
	add(!d.Precision.Known, PrecisionAssumed)
	add(p.Band.Found && p.Band.ToDeepest, BelowAssumed)
	add(p.Rig != nil && !d.Wind.Known && !p.UnderIce(), WindUnknown)
	add(p.Rules.Water == "", RulesUnknown)
	return out
}
