package rig

import (
	"testing"

	"coldseam/profile"
)

// Which rig (common practice): to 12 ft under an indicator; to 25 ft the long leader with
// a sliding indicator beside it, which comes first over 10 mph and for fish in open water;
// deeper a sinking line, or one straight down under the boat. The water's rules are first,
// and no runner-up is one that cannot be fished there.
func TestChoose(t *testing.T) {
	none := profile.Optional{}
	for _, c := range []struct {
		name      string
		flyFt     float64
		wind      profile.Optional
		suspended bool
		noHang    bool
		asked     Kind
		prefer    Kind
		want      Kind
		runnerUp  Kind
		why       Reason
	}{
		{"shallow", 9, none, false, false, "", "", Hung, LongLeader, ShallowEnough},
		{"shallow in wind", 9, wind(14), false, false, "", "", Hung, Sinking, ShallowEnough},
		{"too shallow for a sinking line", 3, wind(14), false, false, "", "", Hung, LongLeader, ShallowEnough},
		{"12 ft is still hung", 12, none, false, false, "", "", Hung, LongLeader, ShallowEnough},
		{"past 12 ft", 12.5, wind(3), false, false, "", "", LongLeader, Hung, LightWind},
		{"wind of 10 mph is light", 18, wind(10), false, false, "", "", LongLeader, Hung, LightWind},
		{"over 10 mph", 18, wind(10.5), false, false, "", "", Hung, Sinking, Windy},
		{"over 10 mph, no indicators", 18, wind(10.5), false, true, "", "", Sinking, StraightDown, Windy},
		{"dead calm is known", 18, wind(0), false, false, "", "", LongLeader, Hung, LightWind},
		{"wind unknown", 18, none, false, false, "", "", LongLeader, Hung, WindUnknown},
		{"a leader of 30 ft is still cast", 23, wind(3), false, false, "", "", LongLeader, Hung, LightWind},
		{"25 ft wants more than is cast", 25, wind(3), false, false, "", "", Hung, Sinking, TooLong},
		{"25 ft, no indicators", 25, wind(3), false, true, "", "", Sinking, StraightDown, TooLong},
		{"over 25 ft", 25.5, wind(3), false, false, "", "", Sinking, StraightDown, TooDeep},
		{"over 25 ft, no indicators", 25.5, wind(3), false, true, "", "", Sinking, StraightDown, TooDeep},
		{"deeper than any line sinks in two minutes", 70, wind(3), false, false, "", "", StraightDown, "", OutOfReach},
		{"no indicators here", 9, none, false, true, "", "", LongLeader, Sinking, NoIndicators},
		{"no indicators, deep", 18, none, false, true, "", "", LongLeader, Sinking, WindUnknown},
		{"suspended", 18, wind(14), true, false, "", "", Hung, Sinking, OpenWater},
		{"suspended in a calm", 18, wind(2), true, false, "", "", Hung, Sinking, OpenWater},
		{"suspended, no indicators", 18, wind(14), true, true, "", "", Sinking, StraightDown, NoIndicators},
		{"suspended, no indicators, shallow", 10, none, true, true, "", "", LongLeader, Sinking, NoIndicators},
		{"suspended too deep to cast", 30, none, true, false, "", "", Sinking, StraightDown, TooDeep},
		{"asked for: hung", 18, none, false, false, Hung, "", Hung, LongLeader, YourChoice},
		{"asked for: long leader", 9, none, false, false, LongLeader, "", LongLeader, Hung, YourChoice},
		{"asked for: sinking", 9, none, false, false, Sinking, "", Sinking, Hung, YourChoice},
		{"asked for: straight down", 18, none, false, false, StraightDown, "", StraightDown, LongLeader, YourChoice},
		{"asked for what is not allowed", 9, none, false, true, Hung, "", LongLeader, Sinking, NoIndicators},
		{"asked for what is not allowed, windy", 18, wind(14), false, true, Hung, "", Sinking, StraightDown, NoIndicators},
		{"preferred: hung", 18, wind(3), false, false, "", Hung, Hung, LongLeader, Preferred},
		{"preferred: hung, too deep", 26, wind(3), false, false, "", Hung, Sinking, StraightDown, TooDeep},
		{"preferred: hung, no indicators", 18, wind(3), false, true, "", Hung, LongLeader, Sinking, LightWind},
		{"preferred: long leader, though windy", 18, wind(14), false, false, "", LongLeader, LongLeader, Hung, Preferred},
		{"preferred: long leader, longer than is cast", 25, wind(14), false, false, "", LongLeader, Hung, Sinking, Windy},
		{"preferred: sinking", 18, wind(3), false, false, "", Sinking, Sinking, LongLeader, Preferred},
		{"preferred: sinking, too shallow", 3, wind(3), false, false, "", Sinking, Hung, LongLeader, ShallowEnough},
		{"asked for wins over preferred", 18, none, false, false, LongLeader, Hung, LongLeader, Hung, YourChoice},
	} {
		in := over(c.flyFt + 1)
		in.FlyM = c.flyFt * ft
		in.Wind, in.Suspended, in.Rules.NoIndicator, in.Kind, in.Prefer = c.wind, c.suspended, c.noHang, c.asked, c.prefer
		r := Find(in)
		if r.Kind != c.want || r.RunnerUp != c.runnerUp || !says(r, c.why) {
			t.Errorf("%s: %q then %q because %v, want %q then %q because %q", c.name, r.Kind, r.RunnerUp, r.Why, c.want, c.runnerUp, c.why)
		}
		if c.noHang && (r.Kind == Hung || r.RunnerUp == Hung) {
			t.Errorf("%s: an indicator is offered where it is forbidden", c.name)
		}
	}
}

// Nothing is offered next that cannot be fished: a leader longer than is cast or allowed,
// an indicator below 25 ft or on a shorter leader than it hangs.
func TestRunnerUpCanBeFished(t *testing.T) {
	for _, c := range []struct {
		name           string
		flyFt, longest float64
		want           Kind
	}{
		{"a leader for 9 ft", 9, 12, Sinking}, // the rule asks 12.5 ft
		{"a leader for 18 ft", 18, 24, Hung},  // kept, no more than 2 ft too high; 18 ft hang on 24
		{"sinking alone", 19, 18, StraightDown},
	} {
		in := over(c.flyFt + 1)
		in.LongestM = c.longest * ft
		if r := Find(in); r.RunnerUp != c.want {
			t.Errorf("%s: %q, then %q, want %q", c.name, r.Kind, r.RunnerUp, c.want)
		}
	}
}

// A fly hung deeper than the rod less 1 ft jams a fixed indicator in the tip ring
// (common practice).
func TestSlidingIndicator(t *testing.T) {
	for _, c := range []struct {
		flyFt, rodFt float64
		want         bool
	}{
		{8.5, 10, false}, {9, 10, false}, {9.25, 10, true}, {12, 10, true}, {8.5, 9, true}, {8, 9, false}, {12, 13.5, false},
	} {
		in := over(c.flyFt + 1)
		in.Kind, in.RodM = Hung, c.rodFt*ft
		r := Find(in)
		if r.SlidingNeeded != c.want {
			t.Errorf("hung %v ft from a rod of %v ft: sliding %v, want %v", c.flyFt, c.rodFt, r.SlidingNeeded, c.want)
		}
		near(t, "hang in feet", r.HangM/ft, c.flyFt, 1e-9)
	}
}
