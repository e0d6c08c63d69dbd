package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// Sure says how much the plan's depths and its oxygen can be trusted, and why.
func Sure(p plan.Plan) string {
	s := speak(p)
	why := slices.Concat(s.doubts(p.Depths), s.doubts(p.Oxygen))
	return fmt.Sprintf("Confidence: depth %s, oxygen %s. %s", p.Depths.Level, p.Oxygen.Level, sentence(strings.Join(why, "; ")))
}

func (s speaker) doubts(c plan.Confidence) []string {
	out := []string{}
	for _, d := range c.Why {
		out = append(out, s.doubt(d))
	}
	return out
}

func (s speaker) doubt(d plan.Doubt) string {
	l, b := s.p.Layers, s.p.Band
	width := func(e profile.Estimate) string { return s.u.Length(e.High - e.Low) }
	switch d {
	case plan.TooFewReadings:
		if s.p.Column.Len() == 1 {
			return "only one depth was read"
		}
		return fmt.Sprintf("only %d depths were read", s.p.Column.Len())
	case plan.WideBreak:
		return fmt.Sprintf("the thermocline may lie anywhere in %s of water; more readings there would narrow it", width(*l.Thermocline))
	case plan.MaybeSkin:
		return fmt.Sprintf("the thermocline may be no more than a warm skin: read below %s", s.u.Length(s.p.Column.Last().DepthM))
	case plan.MethodsApart:
		return fmt.Sprintf("a smooth step fitted to the readings puts the thermocline at %s", s.u.Length(s.p.StepM))
	case plan.WideEdge:
		return fmt.Sprintf("the band's upper edge is known only to within %s", width(b.Top))
	case plan.LeftOut:
		_, n := s.p.Flagged()
		return fmt.Sprintf("%s left out: read there again", count(n, "odd reading"))
	case plan.Disagreeing:
		n, _ := s.p.Flagged()
		return fmt.Sprintf("%s flagged, but used", count(n, "reading"))
	case plan.OxygenUnknown:
		return s.oxygenDoubt()
	case plan.OxygenFresh:
		return "oxygen was not measured, but the water has lately mixed from top to bottom"
	case plan.OxygenKnown:
		return "oxygen was measured"
	case plan.BreakCutOff:
		return "the layer of fast change goes on below the deepest reading"
	case plan.NoNearSurface:
		k := l.Curve
		return fmt.Sprintf("no reading between %s and %s: read %s", s.u.Mark(k.Depths[0]), s.u.Length(k.Depths[1]), s.u.Length(plan.SkinReadM))
	case plan.DeepWaterUnread:
		return fmt.Sprintf("nothing was read below %s", s.u.Length(s.p.Column.Last().DepthM))
	case plan.CloseReadings:
		return fmt.Sprintf("%d depths were read, close together where it matters", s.p.Column.Len())
	}
	return string(d)
}

func count(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// Confirm lists what to check at the anchor before fishing, and when to read again.
func Confirm(p plan.Plan) []string {
	s := speak(p)
	var out []string
	if !p.Band.Found {
		return []string{s.again()}
	}
	b := p.Band
	switch {
	case s.jigged():
		out = append(out, fmt.Sprintf("How deep the lake is under the hole: %s.", s.u.Marked(b.WaterM)))
	case p.Rig != nil && !b.Suspended:
		out = append(out, fmt.Sprintf("How deep the lake is under the fly, not under the boat: %s.", s.u.Marked(b.WaterM)))
	}
	out = append(out, s.expect(p.AtFly()))
	under := s.u.Marked(p.Drop.Bottom.Value)
	switch where := p.UnderBoat(); {
	case s.jigged() && where == plan.BottomTooDeep:
		out = append(out, fmt.Sprintf("Where you read it is %s deep: cut the hole over shallower water.", under))
	case s.jigged() && where == plan.BottomTooShallow:
		out = append(out, fmt.Sprintf("Where you read it is only %s deep: cut the hole over deeper water.", under))
	case where == plan.BottomTooDeep:
		out = append(out, fmt.Sprintf("Under the boat it is %s: go shallower, or hang the fly %s down over the deep water.", under, s.u.Length(p.FlyM())))
	case where == plan.BottomTooShallow:
		out = append(out, fmt.Sprintf("Under the boat it is only %s: go deeper.", under))
	}
	out = append(out, s.noTake(p.FirstWay()))
	if p.UnderIce() {
		return out
	}
	return append(out, "Read again after 2 to 3 hours, or when the wind turns: it tilts the layers, and they rock back.")
}

// span prints a small distance, in half feet or tenths of a metre.
func (s speaker) span(m float64) string {
	if s.u.Feet() && m < 0.15 {
		return "0.5 ft"
	}
	return s.u.Piece(math.Max(m, 0.1))
}

func (s speaker) degrees(low, high float64) string {
	a, b := s.u.Degrees(low), s.u.Degrees(high)
	if a == b {
		return a
	}
	return a[:strings.IndexByte(a, ' ')] + " to " + b
}

const noFish = "No fish was named, so rainbow trout is assumed; to name yours, write e.g. \"for: perch\"."

// Assumed lists what was assumed or not measured.
func Assumed(p plan.Plan) []string {
	s := speak(p)
	var out []string
	for _, a := range p.Assumed {
		out = append(out, sentence(s.assumption(a)))
	}
	if p.Drop.For == "" {
		out = append(out, noFish)
	}
	return out
}

func (s speaker) assumption(a plan.Assumption) string {
	p := s.p
	switch a {
	case plan.OxygenNotGiven, plan.OxygenPartly:
		return s.oxygenAssumed(a)
	case plan.BottomNotGiven:
		return "the bottom under the boat was not given"
	case plan.MarksAssumed:
		half := "half a foot"
		if !s.u.Feet() {
			half = "15 cm"
		}
		return "the marks are taken as read at the water's surface, to within " + half
	case plan.AngleNotGiven:
		return "the line is taken as hanging straight down"
	case plan.PrecisionAssumed:
		d := s.u.Temp.DiffFromC(p.Drop.PrecisionC())
		return fmt.Sprintf("the thermometer is taken as right to within %s %s", unit.Digits(d, 2), s.u.Temp)
	case plan.IcePointUnknown:
		return "the thermometer's reading in ice water was not given"
	case plan.BelowAssumed:
		return fmt.Sprintf("the deepest reading (%s) is taken to hold for %s more; the band may go deeper", s.u.Length(p.Column.Last().DepthM), s.u.Length(band.AssumedM))
	case plan.WindUnknown:
		return "wind not noted: in whitecaps come in"
	case plan.RulesUnknown:
		return "no rules are noted for this water: check flies, added weight, leader length and closures yourself"
	}
	return string(a)
}

// AsRead lists the readings as they were understood, and how each odd line was
// read.
func AsRead(p plan.Plan, notes []notebook.Note) []string {
	s := speak(p)
	out := []string{s.readings()}
	for _, r := range p.Drop.Readings {
		if r.Flag != "" {
			out = append(out, Flagged(r))
		}
	}
	out = append(out, s.corrected()...)
	for _, n := range notes {
		if n.Line == 0 {
			out = append(out, sentence(plain.Line(n.Text)))
		} else {
			out = append(out, fmt.Sprintf("Line %d: %s.", n.Line, plain.Line(n.Text)))
		}
	}
	return out
}

// corrected says what was taken off or added to the readings, each by an example.
func (s speaker) corrected() (out []string) {
	deepest := -1
	for i, r := range s.p.Drop.Readings {
		if deepest < 0 || r.DepthM > s.p.Drop.Readings[deepest].DepthM {
			deepest = i
		}
	}
	if deepest < 0 {
		return nil
	}
	first, deep := s.p.Drop.Readings[0], s.p.Drop.Readings[deepest]
	typed, used := unit.Exact(first.Temp), unit.Digits(first.TempUnit.FromC(first.TempC), 1)
	if ice := s.p.Drop.IcePoint; ice.Known && typed != used {
		out = append(out, fmt.Sprintf("Temperatures are corrected by the ice check: %s %s typed, %s used.", typed, first.TempUnit, used))
	}
	typed, used = unit.Exact(deep.Depth), unit.Digits(deep.DepthUnit.From(deep.DepthM), 1)
	if typed != used && math.Abs(deep.DepthUnit.Metres(deep.Depth)-deep.DepthM) > 0.03 {
		out = append(out, fmt.Sprintf("Depths are corrected for the marks, the bulb and the line's angle, as noted: %s %s typed, %s used.", typed, deep.DepthUnit, used))
	}
	return out
}

// readings echoes what was read in one run of text: "0 ft 74 F, 5 ft 73.5 F, ...".
func (s speaker) readings() string {
	var words []string
	for _, r := range s.p.Drop.Readings {
		w := unit.Exact(r.Depth) + " " + r.DepthUnit.String() + " " + unit.Exact(r.Temp) + " " + r.TempUnit.String()
		if r.Oxygen.Known {
			w += " (oxygen " + unit.Digits(r.Oxygen.Value, 1) + " mg/L)"
		}
		if r.Flag != "" {
			w += " [" + string(r.Flag) + "]"
		}
		words = append(words, w)
	}
	return strings.Join(words, ", ") + "."
}

// Flagged says what is odd about a reading, what it may have been, and whether it is
// used.
func Flagged(r profile.Reading) string {
	t := fmt.Sprintf("%s %s at %s %s", unit.Exact(r.Temp), r.TempUnit, unit.Exact(r.Depth), r.DepthUnit)
	if r.Line > 0 {
		t = fmt.Sprintf("Line %d: %s", r.Line, t)
	}
	switch r.Flag {
	case profile.SlippedDigit:
		t += " looks like a slipped digit"
	case profile.WrongUnit:
		t += " looks like the other scale"
	case profile.ColumnsSwapped:
		t += " looks like depth and temperature swapped"
	case profile.OutOfRange:
		t += " is out of range for a lake"
	case profile.Spike:
		t += " is a spike: the readings above and below it agree without it"
	case profile.BelowBottom:
		t += " is deeper than the bottom"
	case profile.RepeatDisagrees:
		t += " disagrees with another reading at that depth"
	case profile.WarmerBelow:
		t += " is warmer than the water above it: read both again"
	}
	if r.Guess != "" {
		t += " (" + r.Guess + "?)"
	}
	if r.Used() {
		return t + "; used, and the ranges are wider for it."
	}
	return t + "; not used."
}
