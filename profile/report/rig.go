package report

import (
	"fmt"
	"math"
	"slices"

	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// rig says what to cut, how long to wait and how to draw.
func (s speaker) rig(r rig.Rig) []string {
	var t string
	switch r.Kind {
	case rig.LongLeader:
		t = fmt.Sprintf("Floating line, long leader. From fly line to fly %s", s.u.Piece(r.LeaderM))
		switch {
		case !r.Reachable:
		case r.Solved:
			t += fmt.Sprintf(" (worked out for your draw; the trade's rule, the depth of water plus a quarter, is %s)", s.u.Piece(r.RuleLeaderM))
		default:
			t += " (the depth of water plus a quarter)"
		}
		t += ": " + s.parts(r) + "."
	case rig.Hung:
		t = fmt.Sprintf("Floating line, fly hung %s below an indicator. From fly line to fly %s: %s.", s.u.Length(r.HangM), s.u.Piece(r.LeaderM), s.parts(r))
		if r.SlidingNeeded {
			t += " That is longer than your rod: the indicator must slide, or it jams in the tip ring."
		}
	case rig.Sinking:
		t = fmt.Sprintf("Sinking line, counted down to %s, with a short leader of %s: %s.", s.u.Length(r.FlyM), s.u.Piece(r.LeaderM), s.parts(r))
	}
	t += s.droppers(r)
	last := s.wait(r) + " " + s.draw(r) + s.assumedFly(r)
	if r.WindLeft && r.Kind != rig.Sinking {
		last += " Wind drift is not included: it lifts the fly."
	}
	if r.Reachable {
		return []string{t, last}
	}
	if r.Kind == rig.Sinking { // why first: the long leader was wanted
		return []string{s.capped(r), t, last}
	}
	return []string{t, s.capped(r), last}
}

// droppers says where further flies go, and what the water's rules took away.
func (s speaker) droppers(r rig.Rig) string {
	t := ""
	if n := len(r.FlyDepths); n > 1 && r.Kind != rig.Sinking {
		var at []string
		for _, z := range r.FlyDepths[1:] {
			at = append(at, s.u.Length(z))
		}
		t = fmt.Sprintf(" Droppers %s apart, then about %s down.", s.u.Piece(rig.DropperM), list(at))
	}
	if slices.Contains(r.Less, rig.FewerFlies) {
		t += " This water allows " + flies(r.FliesTaken) + " and no more."
	}
	if slices.Contains(r.Less, rig.NoShot) {
		t += " This water allows no added weight: the shot is left off."
	}
	return t
}

// flies counts flies in words.
func flies(n int) string {
	if n == 1 {
		return "one fly"
	}
	return fmt.Sprintf("%d flies", n)
}

// reaches says how deep the fly comes on a leader that is too short.
func (s speaker) reaches(r rig.Rig) string {
	is, wanted := s.u.Length(r.ReachM), s.u.Length(r.FlyM)
	if is == wanted {
		return "does not quite reach " + wanted
	}
	return "reaches about " + is + ", not " + wanted
}

// capped says what a leader that may not be as long as is wanted still does, and
// what reaches the depth instead.
func (s speaker) capped(r rig.Rig) string {
	why := "A leader by the rule is longer than the longest you cast"
	if r.Solved {
		why = "At that draw the fly needs a longer leader than you cast"
	}
	if slices.Contains(r.Why, rig.CappedByRule) {
		why = fmt.Sprintf("This water allows no leader over %s", s.u.Piece(s.p.Rules.MaxLeaderM))
	}
	capped := r.LeaderM
	if r.CappedM > 0 {
		capped = r.CappedM
	}
	t := fmt.Sprintf("%s: with %s the fly %s.", why, s.u.Piece(capped), s.reaches(r))
	if r.Solved {
		t += s.wouldDo(r)
	}
	if r.Kind != rig.Sinking {
		return t + " A sinking line with a short leader reaches it."
	}
	t += " So a sinking line"
	if !r.Solved {
		t += fmt.Sprintf("; or a long leader of %s cast over water no deeper than %s", s.u.Piece(capped), s.u.Length(r.ReachM+s.p.ClearanceM))
	}
	return t + "."
}

// wouldDo says which draw or which fly reaches the depth on the longest leader.
func (s speaker) wouldDo(r rig.Rig) string {
	var ways []string
	if r.NeedMps.Known && r.NeedMps.Value >= 0.005 {
		ways = append(ways, fmt.Sprintf("a draw of %s a second or slower", s.speed(r.NeedMps.Value)))
	}
	if r.NeedKg.Known && r.NeedKg.Value < 0.005 {
		ways = append(ways, fmt.Sprintf("a fly of %s g", number(math.Ceil(r.NeedKg.Value*1e5)/100)))
	}
	if len(ways) == 0 {
		return " No slower draw and no fly would do on that leader."
	}
	t := ways[0]
	if len(ways) > 1 {
		t += " or " + ways[1]
	}
	return " On it " + t + " would do."
}

func (s speaker) wait(r rig.Rig) string {
	if r.SinkTime == nil {
		return "How long the fly takes could not be worked out: count until it touches bottom once."
	}
	count := fmt.Sprintf("Count %s s (%s to %s)", seconds(r.SinkTime.Best), seconds(r.SinkTime.Low), seconds(r.SinkTime.High))
	if r.Kind == rig.Sinking {
		if r.ClassAssumed {
			return count + " for a line of class 3, from when it lands; for another divide the depth by its rate, and a tenth more: most sink slower than rated."
		}
		return count + " from when the line lands: a tenth slower than it is rated, as most are."
	}
	t := count + " from the moment the fly lands, the line's tip held, then start."
	if r.Kind == rig.Hung {
		t = count + " from the moment the fly lands beyond the indicator; less when it lands beside it."
	}
	if r.Correction > 0 {
		t += " (Set right by the bottom that you touched.)"
	}
	return t
}

func (s speaker) draw(r rig.Rig) string {
	switch {
	case r.Kind == rig.Hung && r.LiftM > 0.15:
		return fmt.Sprintf("Let it hang still; the drift lifts the fly about %s.", s.u.Length(r.LiftM))
	case r.Kind == rig.Hung:
		return "Let it hang still; a slow pull now and then."
	case r.Kind == rig.Sinking && r.Window.Known:
		return fmt.Sprintf("%s With %s of line out, drawn faster than %s a second the fly rises.", sinkingDraw, s.u.Piece(rig.OutM), s.speed(r.Window.Fastest))
	case r.Kind == rig.Sinking:
		return sinkingDraw
	case !r.Window.Known:
		return "Let it lie still: any draw lifts this fly off the depth."
	}
	return s.drawLong(r)
}

const sinkingDraw = "Two strips to straighten the line, then slowly (common practice)."

// drawLong says how to draw on a long leader that some draw keeps at its depth.
func (s speaker) drawLong(r rig.Rig) string {
	slowest, fastest := r.Window.Slowest, r.Window.Fastest
	held := s.speeds(slowest, fastest) + " a second"
	t := fmt.Sprintf("Draw in %s, pauses counted", held)
	if slowest < stillMps {
		held = "up to " + s.speed(fastest) + " a second"
		t = fmt.Sprintf("Draw in no more than %s a second, pauses counted", s.speed(fastest))
	}
	if r.Solved && r.Reachable {
		if r.RetrieveMps < stillMps {
			return fmt.Sprintf("Let it hang still; this leader does for %s.", held)
		}
		t = fmt.Sprintf("Draw at your %s a second, pauses counted; this leader does for %s", s.speed(r.RetrieveMps), held)
	}
	t += ": faster lifts the fly"
	if slowest >= stillMps && !s.p.Band.Suspended {
		t += ", slower lays it on the bottom"
	}
	t += "."
	if r.Solved && r.RuleWindow.Known {
		t += fmt.Sprintf(" The rule's leader of %s does for %s a second.", s.u.Piece(r.RuleLeaderM), s.speeds(r.RuleWindow.Slowest, r.RuleWindow.Fastest))
	}
	return t
}

// stillMps: nobody draws slower than this.
const stillMps = 0.002

// assumedFly says which fly was taken where none was named.
func (s speaker) assumedFly(r rig.Rig) string {
	if !r.FlyAssumed || r.Kind == rig.Sinking {
		return ""
	}
	return fmt.Sprintf(" (For a fly of %s g, assumed: name yours with --fly-weight.)", number(rig.FlyKg*1000))
}

// speed and speeds print draws as hands make them: inches or centimetres a second.
func (s speaker) speed(mps float64) string {
	v, in := s.draws(mps)
	return v + " " + in
}

func (s speaker) speeds(low, high float64) string {
	a, _ := s.draws(low)
	b, in := s.draws(high)
	if a == b {
		return b + " " + in
	}
	return a + " to " + b + " " + in
}

func (s speaker) draws(mps float64) (value, name string) {
	if s.u.Feet() {
		value = unit.Digits(mps/0.0254, 1)
		if value == "1" {
			return value, "inch"
		}
		return value, "inches"
	}
	return unit.Digits(mps*100, 1), "cm"
}
