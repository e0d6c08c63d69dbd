package report

import (
	"fmt"
	"math"

	"coldseam/profile/band"
	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// What a reading at the fly, or a cast without a take, asks for depends on the side of
// the fish's range on which the water lies. Under a warm edge warmer is too warm, and the
// way out is down. Where the water is colder than the fish likes, warmer is what it looks
// for, wherever that is.

// comfort is the range that the fish likes, "55 to 66 F".
func (s speaker) comfort() string {
	return s.degrees(s.p.Fish.ComfortLowC.Value, s.p.Fish.ComfortHighC.Value)
}

// warmEdge reports whether the band ends upward at water too warm for the fish.
func (s speaker) warmEdge() bool {
	b := s.p.Band
	return !b.ToSurface && b.Verdict != band.Warmest && s.p.Layers.Curve.At(b.Top.Best) > s.p.Fish.ComfortHighC.Value-0.1
}

// starvedEdge reports whether the band ends upward at water that has too little of the
// oxygen that was measured.
func (s speaker) starvedEdge() bool {
	for _, o := range s.p.Band.Others {
		if s.p.Band.Oxygen && math.Abs(o.BottomM-s.p.Band.Top.Best) < 1e-6 && o.Why != band.Surer && o.Why != band.Thinner {
			return true
		}
	}
	return false
}

// slope is how fast the water cools with depth about a depth, C per metre.
func (s speaker) slope(z float64) float64 {
	k := s.p.Layers.Curve
	return k.At(z-0.5) - k.At(z+0.5)
}

// steepCPerM: below this a step up or down finds no other temperature.
const steepCPerM = 0.5

// rate is how far up or down a degree is, "about 1.5 ft for each 2 F"; "" where the water
// hardly changes.
func (s speaker) rate(slope float64) string {
	if math.Abs(slope) < steepCPerM {
		return ""
	}
	perDegree := 1 / math.Abs(slope) // metres per C
	if s.u.Temp == unit.Fahrenheit {
		return fmt.Sprintf("about %s for each 2 F", s.span(perDegree*5/9*2))
	}
	return fmt.Sprintf("about %s for each 1 C", s.span(perDegree))
}

// flyM is the depth at which the fly fishes first.
func (s speaker) flyM() float64 {
	if s.p.Rig != nil {
		return s.p.Rig.FlyM
	}
	return s.p.Band.Start.Best
}

// expect says what one reading at the fly's depth should show, and what to do when
// it does not.
func (s speaker) expect() string {
	p, z := s.p, s.flyM()
	low, high := Expected(p, z)
	t := fmt.Sprintf("One reading at the fly's depth, %s: expect %s.", s.u.Length(z), s.degrees(low, high))
	slope := s.slope(z)
	rate := s.rate(slope)
	most := s.u.Degrees(p.Fish.ComfortHighC.Value)
	switch {
	case p.UnderIce():
		return t
	case p.Band.Cold:
		t += fmt.Sprintf(" Warmer is good news: they like %s. ", s.comfort())
		switch {
		case rate == "":
			t += "Colder: look for warmer water elsewhere, in sunny, sheltered bays and on the shore that the wind blows to (common practice)."
		case slope > 0:
			t += fmt.Sprintf("Colder: go shallower, %s.", rate)
		default:
			t += fmt.Sprintf("Colder: go deeper, %s.", rate)
		}
	case s.warmEdge() && rate != "":
		t += fmt.Sprintf(" Warmer: go deeper, %s; colder: shallower by as much.", rate)
	case s.warmEdge():
	case s.starvedEdge():
		t += fmt.Sprintf(" Anything from %s suits them, but not above the band: it has too little oxygen there.", s.comfort())
	default:
		t += fmt.Sprintf(" Anything from %s suits them", s.comfort())
		if slope > 0 && rate != "" {
			t += fmt.Sprintf("; colder: go shallower, %s; over %s: deeper by as much", rate, most)
		}
		t += "."
	}
	return t
}

// noTake says how to change the depth when nothing takes, and which way first.
func (s speaker) noTake() string {
	step := "6 to 12 inches"
	if !s.u.Feet() {
		step = "15 to 30 cm"
	}
	t := fmt.Sprintf("No take: change the depth by %s every 5 to 10 minutes (common practice)", step)
	p, b := s.p, s.p.Band
	top, _ := b.Safe(p.Column.Last().DepthM)
	up, down := s.warmer()
	switch {
	case p.UnderIce() && !b.Oxygen:
		t += ", shallower first: late in winter oxygen fails from the bottom up"
	case b.Cold && up:
		t += ", shallower first: the warmer water is there"
	case b.Cold && down:
		t += ", deeper first: the warmer water is there"
	case s.starvedEdge():
		t += fmt.Sprintf(", deeper first: above %s there is too little oxygen", s.u.Length(top))
	case s.warmEdge():
		t += fmt.Sprintf(", deeper first: above %s it is too warm", s.u.Length(top))
	}
	return t + "."
}

// warmer says whether warmer water of the band lies over the fly, or under it.
func (s speaker) warmer() (up, down bool) {
	k, b, z := s.p.Layers.Curve, s.p.Band, s.flyM()
	const feltC = 0.1
	for _, at := range k.Depths {
		if at >= b.Top.Best-1e-9 && at <= b.Bottom.Best+1e-9 && k.At(at) > k.At(z)+feltC {
			up, down = up || at < z, down || at > z
		}
	}
	return up, down
}

// changes says what would move the advice.
func (s speaker) changes() []string {
	b, f := s.p.Band, s.p.Fish
	out := []string{}
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	most, need := s.u.Degrees(f.ComfortHighC.Value), number(f.OxygenMgL.Value)
	start := s.u.Length(b.Start.Best)
	switch {
	case b.Found:
	case b.Verdict == band.NotReached:
		add("a reading of %s or less further down", most)
		return out
	case b.Verdict == band.TooWarm:
		add("water of %s or less, from a spring or after cool weather", most)
		return out
	default:
		suits := most + " or less"
		if f.Kind != fish.Coldwater {
			suits = s.comfort()
		}
		add("oxygen of %s mg/L or more in water of %s", need, suits)
		return out
	}
	if b.Start.Best > 2 || !b.ToSurface { // nearer to the surface there is hardly any "up"
		add("oxygen below %s mg/L at %s would move you %s", need, start, s.upTo())
	}
	switch {
	case b.Cold && !s.p.UnderIce():
		add("water nearer to %s, in a sunny bay or after some warm days, would move you there", s.comfort())
	case s.warmEdge():
		add("water over %s at %s would move you down", most, start)
	}
	if f.Kind != fish.Coldwater && !b.Cold && s.slope(b.Start.Best) > 0.1 {
		add("water under %s at %s would move you up", s.u.Degrees(f.ComfortLowC.Value), start)
	}
	return out
}

// upTo says where too little oxygen at the start would send the angler.
func (s speaker) upTo() string {
	b := s.p.Band
	if s.starvedEdge() {
		return "down: above it there is too little as well"
	}
	const apartM = 0.3
	top := b.Top.High
	if b.ToSurface {
		top = 0
	}
	if d := b.DoubtfulBelow; d != nil && d.Best < b.Start.Best-apartM && d.Best > top {
		return "up to " + s.u.Length(d.Best)
	}
	if top < b.Start.Best-2*apartM && !b.ToSurface {
		return "up to the band's edge, " + s.u.Length(top)
	}
	for _, o := range b.Others {
		if o.Why == band.Surer {
			return "up to " + s.u.Span(o.TopM, o.BottomM) + ", warmer as it is"
		}
	}
	switch {
	case b.ToSurface || b.Cold:
		return "up"
	case s.p.Fish.Kind != fish.Coldwater:
		return "up, into water warmer than they like"
	}
	return "off this place: hardly any water above it is cool enough"
}
