package plan

import (
	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/layers"
	"coldseam/profile/oxygen"
)

// Confidence is how sure one part of the plan is, and why.
type Confidence struct {
	Level Level
	Why   []Doubt
}

// Level is how sure: good, fair or poor of the depths; measured, likely or unknown of the
// oxygen.
type Level string

// The levels, and what they promise: TestGrades and TestOxygenGrades count it on measured
// lakes, each counted once.
const (
	Good Level = "good" // the thermocline and the band's upper edge are within 1 m in 19 of 20 drops
	Fair Level = "fair" // in 4 of 5
	Poor Level = "poor" // no promise: off by more in a third

	Measured Level = "measured" // over the band, and in 19 of 20 drops there is enough where the fly starts
	Likely   Level = "likely"   // not measured, but where the fly starts there is enough in 9 of 10
	Unknown  Level = "unknown"  // no promise: too little in half
)

// Doubt is one reason for the level.
type Doubt string

// The doubts.
const (
	TooFewReadings  Doubt = "too few readings"
	WideBreak       Doubt = "wide break"          // the break lies somewhere in several metres
	WideEdge        Doubt = "wide edge"           // so does the band's shallow edge
	LeftOut         Doubt = "readings left out"   // flagged and not used
	Disagreeing     Doubt = "readings disagree"   // flagged and used
	OxygenUnknown   Doubt = "oxygen not measured" //
	OxygenFresh     Doubt = "oxygen fresh"        // not measured, but the lake has turned over lately
	OxygenKnown     Doubt = "oxygen measured"     // nothing speaks against it
	BreakCutOff     Doubt = "break cut off"       // it runs past the deepest reading
	NoNearSurface   Doubt = "top not read"        // a wide first interval may hide a skin
	CloseReadings   Doubt = "readings close"      // nothing speaks against it
	DeepWaterUnread Doubt = "deep water unread"   // the band runs past the deepest reading
	MaybeSkin       Doubt = "maybe a skin"        // the break may be a warm skin: no deeper water was read
	MethodsApart    Doubt = "methods apart"       // a fitted step puts the break elsewhere, at Plan.StepM
)

// Widths of the 80 % intervals that divide the levels, metres. By the rule of TestGrades: a
// drop of that width has its thermocline or the band's upper edge off by more than 1 m in
// one of twenty cases, and in one of five.
const (
	goodShare, fairShare = 0.05, 0.20
	narrowM, wideM       = 1.4, 2.7
)

// add puts a doubt to the others; a poor one settles the level, a fair one lowers a good.
func (c *Confidence) add(to Level, d Doubt) {
	c.Why = append(c.Why, d)
	if to == Poor || c.Level == Good {
		c.Level = to
	}
}

// sureOfDepth weighs what is doubtful of the thermocline and the band's edges: anything
// that could move the fly by several feet makes it poor, by a foot or two fair.
func (p *Plan) sureOfDepth() Confidence {
	c := Confidence{Level: Good}
	switch n := p.Column.Len(); {
	case n < 3:
		c.add(Poor, TooFewReadings)
	case n < 5:
		c.add(Fair, TooFewReadings)
	}
	p.sureOfBreak(&c)
	if flagged, unused := p.Flagged(); unused > 0 {
		c.add(Fair, LeftOut)
	} else if flagged > 0 {
		c.add(Fair, Disagreeing)
	}
	if p.Layers.WideTop && p.Layers.Structure != layers.TooFew {
		c.Why = append(c.Why, NoNearSurface)
	}
	if p.Band.Found && p.Band.ToDeepest {
		c.Why = append(c.Why, DeepWaterUnread)
	}
	if c.Level == Good {
		c.Why = append(c.Why, CloseReadings)
	}
	return c
}

// sureOfBreak weighs the thermocline and the band's upper edge.
func (p *Plan) sureOfBreak(c *Confidence) {
	if l := p.Layers; l.Thermocline != nil {
		width(*l.Thermocline, WideBreak, c.add)
	}
	if p.maybeSkin() {
		c.add(Fair, MaybeSkin)
	}
	if z, ok := p.Layers.StepApart(); ok {
		p.StepM = z
		c.add(Fair, MethodsApart)
	}
	if p.Band.Found && !p.Band.ToSurface {
		width(p.Band.Top, WideEdge, c.add)
	}
	if p.Layers.BottomReached && p.Band.Verdict != band.NotReached {
		c.add(Fair, BreakCutOff)
	}
}

// sureOfOxygen weighs what is known of the oxygen where the fly starts.
func (p *Plan) sureOfOxygen() Confidence {
	switch b := p.Band; {
	case b.Oxygen: // there, or known to be short
		return Confidence{Measured, []Doubt{OxygenKnown}}
	case b.Found && oxygen.TurnedOver(p.Layers):
		return Confidence{Likely, []Doubt{OxygenFresh}}
	case b.Found && b.Start.Best <= p.enoughDownTo()+1e-9:
		return Confidence{Likely, []Doubt{OxygenUnknown}}
	}
	return Confidence{Unknown, []Doubt{OxygenUnknown}}
}

// enoughDownTo is how far down, m, there is oxygen enough in most lakes, though nobody
// measured it: the safe end of what package oxygen says, else the mixed layer, which is
// in touch with the air.
func (p *Plan) enoughDownTo() float64 {
	switch l := p.Layers; {
	case p.Band.DoubtfulBelow != nil:
		return p.Band.DoubtfulBelow.Best
	case l.MixedLayer != nil:
		return l.MixedLayer.Best
	}
	return 0
}

func width(e profile.Estimate, d Doubt, add func(Level, Doubt)) {
	switch w := e.High - e.Low; {
	case w > wideM:
		add(Poor, d)
	case w > narrowM:
		add(Fair, d)
	}
}

// SkinReadM is where to read for a warm skin that a wide first interval may hide, m.
const SkinReadM = 0.6096

// maybeSkin reports whether the break may be a warm skin, since a break of its own may
// lie in deeper water that was not read.
func (p *Plan) maybeSkin() bool {
	last := p.Column.Last().DepthM
	deeper := !p.Drop.Bottom.Known || p.Drop.Bottom.Value > last+band.AssumedM
	return p.Layers.Structure == layers.Layered && p.Layers.MaybeSkin && deeper
}
