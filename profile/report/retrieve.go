package report

import (
	"fmt"
	"math"

	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// retrieve says how to move the fly.
func (s speaker) retrieve(r rig.Rig) string {
	switch {
	case r.Kind == rig.Jig:
		return fmt.Sprintf("Lift it %s and let it fall back, then hold it still; most fish take it then (common practice). No bites: move to a new hole.", s.lift())
	case r.Kind == rig.Hung && r.LiftM > 0.15:
		return fmt.Sprintf("Let it hang still; the drift lifts the fly about %s.", s.u.Length(r.LiftM))
	case r.Kind == rig.Hung:
		return "Let it hang still; a slow pull now and then."
	case r.Kind == rig.StraightDown:
		return "Lift it slowly with hand twists, let it down again, and hold it still in between (common practice)."
	case r.Kind == rig.Sinking && r.Window.Known:
		return fmt.Sprintf("%s With %s of line out, the fly rises if you retrieve faster than %s a second%s.", sinkingRetrieve, s.u.Piece(rig.OutM), s.speed(r.Window.Fastest), s.twists(r.Window.Fastest, r.Window.Fastest))
	case r.Kind == rig.Sinking:
		return sinkingRetrieve
	case !r.Window.Known:
		return "Let it lie still: any retrieve lifts this fly off the depth."
	}
	return s.retrieveLong(r)
}

// lift is how far a jig is lifted.
func (s speaker) lift() string {
	if s.u.Feet() {
		return "6 to 12 inches"
	}
	return "15 to 30 cm"
}

const sinkingRetrieve = "Two strips to straighten the line, then retrieve slowly (common practice)."

// retrieveLong says how to retrieve on a long leader that some retrieve keeps at its depth.
func (s speaker) retrieveLong(r rig.Rig) string {
	slowest, fastest := r.Window.Slowest, r.Window.Fastest
	held := s.speeds(slowest, fastest) + " a second"
	t := "Retrieve at " + held
	if slowest < stillMps {
		held = "up to " + s.speed(fastest) + " a second"
		t = "Retrieve at " + held
	}
	twists := s.twists(slowest, fastest)
	if r.Solved && r.Reachable {
		if r.RetrieveMps < stillMps {
			return fmt.Sprintf("Let it hang still; this leader does for %s.", held)
		}
		t = fmt.Sprintf("Retrieve at your %s a second", s.speed(r.RetrieveMps))
		twists = s.twists(r.RetrieveMps, r.RetrieveMps)
	}
	t += ", averaged over pauses" + twists
	if r.Solved && r.Reachable {
		t += "; this leader does for " + held
	}
	t += ": any faster lifts the fly"
	if slowest >= stillMps && !s.p.Band.Suspended {
		t += ", and any slower drags bottom"
	}
	t += "."
	if r.Solved && r.RuleWindow.Known {
		t += fmt.Sprintf(" The rule's leader of %s does for %s a second.", s.u.Piece(r.RuleLeaderM), s.speeds(r.RuleWindow.Slowest, r.RuleWindow.Fastest))
	}
	return t
}

// twistM is what a slow hand twist takes in, about 4 inches, and quickestS how long one
// takes at least: one every 1 to 2 seconds is already fast (common practice).
const (
	twistM    = 4 * 0.0254
	quickestS = 1
	slowestS  = 20
)

// twists says a retrieve as slow hand twists, in brackets; nothing where hands are not
// that fast, or so slow that nobody keeps it up.
func (s speaker) twists(slowest, fastest float64) string {
	t := s.everyTwist(slowest, fastest)
	if t == "" {
		return ""
	}
	length := "4 inches"
	if !s.u.Feet() {
		length = "10 cm"
	}
	return fmt.Sprintf(" (one slow hand twist of about %s %s)", length, t)
}

// everyTwist is how often: "every 2 seconds".
func (s speaker) everyTwist(slowest, fastest float64) string {
	least := twistM / math.Max(fastest, 1e-6)
	if least < quickestS || least > slowestS {
		return ""
	}
	a, b := halfSeconds(least), ""
	if slowest > stillMps {
		b = halfSeconds(twistM / slowest)
	}
	switch {
	case b == "":
		return "every " + a + " seconds or slower"
	case a == "1" && b == "1":
		return "every second"
	case a == b:
		return "every " + a + " seconds"
	}
	return "every " + a + " to " + b + " seconds"
}

// halfSeconds prints a short time, to half a second, and from 5 s on to a second.
func halfSeconds(s float64) string {
	if s >= 5 {
		return unit.Digits(s, 0)
	}
	return number(math.Round(2*s) / 2)
}

// stillMps: nobody retrieves slower than this.
const stillMps = 0.002

// speed and speeds print retrieves as hands make them: inches or centimetres a second.
func (s speaker) speed(mps float64) string {
	v, in := s.hands(mps)
	return v + " " + in
}

func (s speaker) speeds(low, high float64) string {
	a, _ := s.hands(low)
	b, in := s.hands(high)
	if a == b {
		return b + " " + in
	}
	return a + " to " + b + " " + in
}

func (s speaker) hands(mps float64) (value, name string) {
	if s.u.Feet() {
		value = unit.Digits(mps/0.0254, 1)
		if value == "1" {
			return value, "inch"
		}
		return value, "inches"
	}
	return unit.Digits(mps*100, 1), "cm"
}
