package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldseam/profile/plain"
	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// rig says what to cut, how long it sinks and how to retrieve.
func (s speaker) rig(r rig.Rig) []string {
	t := s.setUp(r) + s.bite(r) + s.spool(r) + s.droppers(r)
	last := strings.TrimSpace(s.sink(r) + " " + s.retrieve(r) + s.assumedFly(r))
	if r.WindLeft && (r.Kind == rig.LongLeader || r.Kind == rig.Hung) {
		last += " Wind drift is not included: it lifts the fly."
	}
	if r.Reachable {
		return []string{t, last}
	}
	if !wanted(r) { // why first: the long leader was wanted
		return []string{s.capped(r), t, last}
	}
	return []string{t, s.capped(r), last}
}

// wanted says that a rig which does not reach the depth is still the one to take.
func wanted(r rig.Rig) bool { return r.CappedM == 0 || r.Kind == rig.LongLeader }

// jigged says that the plan is one for a hole in the ice.
func (s speaker) jigged() bool { return s.p.Rig != nil && s.p.Rig.Kind == rig.Jig }

// setUp says what is tied on.
func (s speaker) setUp(r rig.Rig) string {
	cut := fmt.Sprintf("From fly line to fly %s", s.u.Piece(r.LeaderM))
	switch r.Kind {
	case rig.Hung:
		return s.indicator(r) + " " + cut + ": " + s.parts(r) + "." + s.swivel(r)
	case rig.Sinking:
		return fmt.Sprintf("%s, let down to %s, with a short leader of %s: %s.", sentenceless(s.line(r)), s.u.Length(r.FlyM), s.u.Piece(r.LeaderM), s.parts(r)) + s.ownLine(r)
	case rig.StraightDown:
		return fmt.Sprintf("%s, hung straight down under the boat to %s, with a short leader of %s: %s. To measure it, touch bottom once and reel up %s.",
			sentenceless(s.line(r)), s.u.Length(r.FlyM), s.u.Piece(r.LeaderM), s.parts(r), s.span(s.p.ClearanceM)) + s.ownLine(r)
	case rig.Jig:
		return fmt.Sprintf("This is a plan for jigging through a hole in the ice. Let a small jig straight down to %s under the top of the water in the hole: no leader to cut and nothing to cast.", s.u.Length(r.FlyM))
	}
	t := "Floating line, long leader. " + cut
	switch {
	case !r.Reachable:
	case r.Solved:
		t += fmt.Sprintf(" (worked out for your retrieve; the trade's rule, the depth of water plus a quarter, is %s)", s.u.Piece(r.RuleLeaderM))
	default:
		t += " (the depth of water plus a quarter)"
	}
	return t + ": " + s.parts(r) + "."
}

// indicator says which one, and how deep the fly hangs under it.
func (s speaker) indicator(r rig.Rig) string {
	if r.SlidingNeeded {
		return fmt.Sprintf("Floating line, fly hung %s below a sliding indicator: a fixed one, hung deeper than the rod is long, jams in the tip ring.", s.u.Length(r.HangM))
	}
	return fmt.Sprintf("Floating line, fly hung %s below a fixed indicator.", s.u.Length(r.HangM))
}

// swivel says where it goes, or why there is none.
func (s speaker) swivel(r rig.Rig) string {
	switch {
	case slices.Contains(r.Less, rig.NoSwivel):
		return " This water allows no added weight: no swivel, all in one piece."
	case r.SwivelM > 0 && s.u.Feet():
		return fmt.Sprintf(" A small swivel %s inches above the fly takes it straight down.", unit.Digits(r.SwivelM/0.0254, 0))
	case r.SwivelM > 0:
		return fmt.Sprintf(" A small swivel %s cm above the fly takes it straight down.", unit.Digits(r.SwivelM*100, 0))
	}
	return ""
}

// line names a sinking line: the class to take, or the angler's own.
func (s speaker) line(r rig.Rig) string {
	if !r.ClassAssumed {
		return "your sinking line"
	}
	rate := number(float64(r.Class)) + " inches"
	if !s.u.Feet() {
		rate = unit.Digits(float64(r.Class)*2.54, 0) + " cm"
	}
	return fmt.Sprintf("class %d sinking line (%s a second)", r.Class, rate)
}

// ownLine says that the angler's own line is too slow.
func (s speaker) ownLine(r rig.Rig) string {
	if r.OwnLineS == 0 {
		return ""
	}
	return fmt.Sprintf(" Your own line would take %s to get there.", minutes(r.OwnLineS))
}

func minutes(s float64) string { return unit.Digits(s/60, 1) + " minutes" }

// sentenceless is a text with a capital in front.
func sentenceless(t string) string { return strings.TrimSuffix(sentence(t), ".") }

// bite says that fish with teeth need a bite tippet that the stock lacks.
func (s speaker) bite(r rig.Rig) string {
	if !r.AddBite {
		return ""
	}
	what := "a foot of wire or of 60 lb line"
	if !s.u.Feet() {
		what = "30 cm of wire or of 27 kg line"
	}
	fly := "fly"
	if r.Kind == rig.Jig {
		fly = "jig"
	}
	return " Add a bite tippet in front of the " + fly + ", " + what + ": these fish cut anything thinner."
}

// spool says which tippet to take where there are several.
func (s speaker) spool(r rig.Rig) string {
	p := r.Spool
	if p == nil || p.Name == "" || r.Kind == rig.Jig || !(p.Sinks || p.Sized) {
		return ""
	}
	var why []string
	if p.Sinks {
		why = append(why, "fluorocarbon sinks better than nylon")
	}
	switch {
	case p.Sized && p.Strong:
		why = append(why, "it is strong enough for so heavy a fly")
	case p.Sized:
		why = append(why, "it suits so light a fly")
	}
	return fmt.Sprintf(" For tippet take %s: %s.", plain.Line(p.Name), strings.Join(why, ", and "))
}

// droppers says where further flies go, and what the water's rules took away.
func (s speaker) droppers(r rig.Rig) string {
	t := ""
	if n := len(r.FlyDepths); n > 1 && (r.Kind == rig.LongLeader || r.Kind == rig.Hung) {
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

// limit says why a leader may not be as long as is wanted.
func (s speaker) limit(r rig.Rig) string {
	why := "A leader by the rule is longer than the longest you cast"
	if r.Solved {
		why = "At that retrieve the fly needs a longer leader than you cast"
	}
	if slices.Contains(r.Why, rig.CappedByRule) {
		why = fmt.Sprintf("This water allows no leader over %s", s.u.Piece(s.p.Rules.MaxLeaderM))
	}
	return why
}

// capped says what a leader that may not be as long as is wanted still does, and
// what reaches the depth instead.
func (s speaker) capped(r rig.Rig) string {
	why := s.limit(r)
	capped := r.LeaderM
	if r.CappedM > 0 {
		capped = r.CappedM
	}
	t := fmt.Sprintf("%s: with %s the fly %s.", why, s.u.Piece(capped), s.reaches(r))
	if r.Solved {
		t += s.wouldDo(r)
	}
	if wanted(r) {
		if r.RunnerUp == "" {
			return t
		}
		return t + " " + sentenceless(rigNames[r.RunnerUp]) + " reaches it."
	}
	t += " So take " + rigNames[r.Kind]
	if !r.Solved {
		t += fmt.Sprintf("; or cast a long leader of %s over water no deeper than %s", s.u.Piece(capped), s.u.Length(r.ReachM+s.p.ClearanceM))
	}
	return t + "."
}

// rigNames are the rigs as they are spoken of.
var rigNames = map[rig.Kind]string{
	rig.LongLeader: "a long leader on a floating line", rig.Hung: "an indicator", rig.Sinking: "a sinking line with a short leader",
	rig.StraightDown: "a sinking line hung straight down under the boat", rig.Jig: "a jig through the ice",
}

// wouldDo says which retrieve or which fly reaches the depth on the longest leader.
func (s speaker) wouldDo(r rig.Rig) string {
	var ways []string
	if r.NeedMps.Known && r.NeedMps.Value >= 0.005 {
		ways = append(ways, fmt.Sprintf("a retrieve of %s a second or slower", s.speed(r.NeedMps.Value)))
	}
	if r.NeedKg.Known && r.NeedKg.Value < 0.005 {
		ways = append(ways, fmt.Sprintf("a fly of %s g", number(math.Ceil(r.NeedKg.Value*1e5)/100)))
	}
	if len(ways) == 0 {
		return " No slower retrieve and no heavier fly would do on that leader."
	}
	return " On it " + strings.Join(ways, " or ") + " would do."
}

// sink says how long the fly sinks.
func (s speaker) sink(r rig.Rig) string {
	switch {
	case r.Kind == rig.Jig:
		return ""
	case r.SinkTime == nil && r.Kind == rig.StraightDown:
		return "Let it down by the marks on the line: it takes minutes to sink by itself."
	case r.SinkTime == nil:
		return "How long the fly takes could not be worked out: time it until it touches bottom once."
	}
	t := fmt.Sprintf("Let it sink %s seconds", seconds(r.SinkTime.Best))
	if low, high := seconds(r.SinkTime.Low), seconds(r.SinkTime.High); low != high {
		t += fmt.Sprintf(" (%s to %s)", low, high)
	}
	switch r.Kind {
	case rig.Sinking, rig.StraightDown:
		if r.ClassAssumed {
			return t + ": most lines sink a tenth slower than their class says."
		}
		return t + ": a tenth slower than your line is rated, as most are."
	case rig.Hung:
		t += " if the fly lands beyond the indicator, less if it lands beside it."
	default:
		t += ", holding the line tight."
	}
	if r.Correction > 0 {
		t += " (Set right by the bottom that you touched.)"
	}
	return t
}

// assumedFly says which fly was taken where none was named.
func (s speaker) assumedFly(r rig.Rig) string {
	if !r.FlyAssumed || r.Kind != rig.LongLeader && r.Kind != rig.Hung {
		return ""
	}
	return fmt.Sprintf(" (For a fly of %s g, assumed: say what yours weighs.)", number(unit.RoundTo(r.FlyKg*1000, 3)))
}
