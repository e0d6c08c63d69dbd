package plan

import (
	"math"
	"sort"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/layers"
	"coldseam/profile/layers/method"
)

// Level is how sure the plan is.
type Level string

// The levels.
const (
	Good Level = "good"
	Fair Level = "fair"
	Poor Level = "poor"
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
	BreakCutOff     Doubt = "break cut off"       // it runs past the deepest reading
	NoNearSurface   Doubt = "top not read"        // a wide first interval may hide a skin
	CloseReadings   Doubt = "readings close"      // nothing speaks against it
	DeepWaterUnread Doubt = "deep water unread"   // the band runs past the deepest reading
	MaybeSkin       Doubt = "maybe a skin"        // the break may be a warm skin: no deeper water was read
	MethodsApart    Doubt = "methods apart"       // a fitted step puts the break elsewhere, at Plan.StepM
)

// Widths that divide the levels, metres.
const (
	narrowM = 1.7 // readings 5 ft apart leave a break about this wide
	wideM   = 3.2
)

// confidence weighs what is doubtful: anything that could move the fly by several
// feet makes it poor, by a foot or two fair.
func (p *Plan) confidence() (Level, []Doubt) {
	var doubts []Doubt
	level := Good
	add := func(to Level, d Doubt) {
		doubts = append(doubts, d)
		if to == Poor || level == Good {
			level = to
		}
	}
	l := p.Layers
	switch n := p.Column.Len(); {
	case n < 3:
		add(Poor, TooFewReadings)
	case n < 5:
		add(Fair, TooFewReadings)
	}
	if l.Thermocline != nil {
		width(*l.Thermocline, WideBreak, add)
	}
	if p.maybeSkin() {
		add(Fair, MaybeSkin)
	}
	if z, ok := stepApart(l); ok {
		p.StepM = z
		add(Fair, MethodsApart)
	}
	if p.Band.Found && !p.Band.ToSurface {
		width(p.Band.Top, WideEdge, add)
	}
	if l.BottomReached && p.Band.Verdict != band.NotReached {
		add(Fair, BreakCutOff)
	}
	if flagged, unused := p.Flagged(); unused > 0 {
		add(Fair, LeftOut)
	} else if flagged > 0 {
		add(Fair, Disagreeing)
	}
	if l.WideTop && l.Structure != layers.TooFew {
		doubts = append(doubts, NoNearSurface)
	}
	if p.Band.Found && !p.Band.Oxygen {
		add(Fair, OxygenUnknown)
	}
	if p.Band.Found && p.Band.ToDeepest {
		doubts = append(doubts, DeepWaterUnread)
	}
	if level == Good {
		doubts = append(doubts, CloseReadings)
	}
	return level, doubts
}

func width(e profile.Estimate, d Doubt, add func(Level, Doubt)) {
	switch w := e.High - e.Low; {
	case w > wideM:
		add(Poor, d)
	case w > narrowM:
		add(Fair, d)
	}
}

// stepApart gives where the centre of a smooth step fitted to the readings under the
// skin lies, m. ok is whether that speaks against the thermocline: the column is
// layered, was read at enough depths, and the step is further off than methods that
// agree are. The break is then more often off by over 1 m, and outside its interval:
// see TestMethodsApart in package layers.
func stepApart(l layers.Layers) (depthM float64, ok bool) {
	if l.Thermocline == nil || len(l.Curve.Depths) < method.ApartN {
		return 0, false
	}
	z, t := l.Curve.Depths, l.Curve.Temps
	start := sort.SearchFloat64s(z, l.SkinM) // 0 without a skin
	step := method.Named(method.Thermoclines(z[start:], t[start:]), method.StepCentre)
	return step.DepthM, step.OK && math.Abs(step.DepthM-l.Thermocline.Best) > method.ApartM
}

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

// maybeSkin reports whether the break may be a warm skin, since a break of its own may
// lie in deeper water that was not read.
func (p *Plan) maybeSkin() bool {
	last := p.Column.Last().DepthM
	deeper := !p.Drop.Bottom.Known || p.Drop.Bottom.Value > last+band.AssumedM
	return p.Layers.Structure == layers.Layered && p.Layers.MaybeSkin && deeper
}
