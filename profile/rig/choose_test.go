package rig

import (
	"testing"

	"coldseam/profile"
)

// Which rig (common practice): to 12 ft hung, 12 to 25 ft the long leader in wind
// to 10 mph, else and deeper a sinking line; the water's rules first.
func TestChoose(t *testing.T) {
	none := profile.Optional{}
	for _, c := range []struct {
		name      string
		flyFt     float64
		wind      profile.Optional
		suspended bool
		noHang    bool
		asked     Kind
		want      Kind
		runnerUp  Kind
		why       Reason
	}{
		{"shallow", 9, none, false, false, "", Hung, LongLeader, ShallowEnough},
		{"shallow in wind", 9, wind(14), false, false, "", Hung, LongLeader, ShallowEnough},
		{"12 ft is still hung", 12, none, false, false, "", Hung, LongLeader, ShallowEnough},
		{"past 12 ft", 12.5, wind(3), false, false, "", LongLeader, Sinking, LightWind},
		{"wind of 10 mph is light", 18, wind(10), false, false, "", LongLeader, Sinking, LightWind},
		{"over 10 mph", 18, wind(10.5), false, false, "", Sinking, LongLeader, Windy},
		{"dead calm is known", 18, wind(0), false, false, "", LongLeader, Sinking, LightWind},
		{"wind unknown", 18, none, false, false, "", LongLeader, Sinking, WindUnknown},
		{"a leader of 30 ft is still cast", 23, wind(3), false, false, "", LongLeader, Sinking, LightWind},
		{"25 ft wants more than is cast", 25, wind(3), false, false, "", Sinking, LongLeader, TooLong},
		{"over 25 ft", 25.5, wind(3), false, false, "", Sinking, Hung, TooDeep},
		{"over 25 ft, no indicators", 25.5, wind(3), false, true, "", Sinking, LongLeader, TooDeep},
		{"no indicators here", 9, none, false, true, "", LongLeader, Sinking, NoIndicators},
		{"no indicators, deep", 18, none, false, true, "", LongLeader, Sinking, WindUnknown},
		{"suspended", 18, wind(14), true, false, "", Hung, Sinking, OpenWater},
		{"suspended, no indicators", 18, wind(14), true, true, "", Sinking, LongLeader, Windy},
		{"suspended, no indicators, shallow", 10, none, true, true, "", LongLeader, Sinking, NoIndicators},
		{"suspended too deep to cast", 30, none, true, false, "", Sinking, Hung, TooDeep},
		{"asked for: hung", 18, none, false, false, Hung, Hung, LongLeader, YourChoice},
		{"asked for: long leader", 9, none, false, false, LongLeader, LongLeader, Sinking, YourChoice},
		{"asked for: sinking", 9, none, false, false, Sinking, Sinking, LongLeader, YourChoice},
		{"asked for what is not allowed", 9, none, false, true, Hung, LongLeader, Sinking, NoIndicators},
		{"asked for what is not allowed, windy", 18, wind(14), false, true, Hung, Sinking, LongLeader, NoIndicators},
	} {
		in := over(c.flyFt + 1)
		in.FlyM = c.flyFt * ft
		in.Wind, in.Suspended, in.Rules.NoIndicator, in.Kind = c.wind, c.suspended, c.noHang, c.asked
		r := Find(in)
		if r.Kind != c.want || r.RunnerUp != c.runnerUp || !says(r, c.why) {
			t.Errorf("%s: %q then %q because %v, want %q then %q because %q", c.name, r.Kind, r.RunnerUp, r.Why, c.want, c.runnerUp, c.why)
		}
		if c.noHang && (r.Kind == Hung || r.RunnerUp == Hung) {
			t.Errorf("%s: an indicator is offered where it is forbidden", c.name)
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
