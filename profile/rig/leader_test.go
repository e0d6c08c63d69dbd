package rig

import "testing"

// The trade's table, "depth of water plus a quarter" (common practice).
func TestRuleLeader(t *testing.T) {
	for _, c := range []struct{ waterFt, leaderFt float64 }{
		{8, 10}, {10, 12.5}, {12, 15}, {15, 18.75}, {18, 22.5}, {20, 25}, {25, 31.25}, {30, 37.5},
	} {
		near(t, "leader in feet", RuleLeader(c.waterFt*ft)/ft, c.leaderFt, 1e-9)
	}
}

// The leader to cut is the rule's, rounded up to the pieces' step: 15 ft of water
// wants 19 to 20 ft (common practice).
func TestLeaderToCut(t *testing.T) {
	for _, c := range []struct {
		name                string
		waterM, stepM, want float64
	}{
		{"15 ft of water, half feet", 15 * ft, StepFtM, 19 * ft},
		{"16 ft: the rule is a whole step", 16 * ft, StepFtM, 20 * ft},
		{"18 ft", 18 * ft, StepFtM, 22.5 * ft},
		{"20 ft", 20 * ft, StepFtM, 25 * ft},
		{"4 m, tenths", 4, StepM, 5},
		{"4.5 m: 5.625 goes up", 4.5, StepM, 5.7},
		{"no step given", 4.5, 0, 5.7},
	} {
		in := over(0)
		in.WaterM, in.FlyM, in.StepM, in.Kind = c.waterM, c.waterM-ft, c.stepM, LongLeader
		r := Find(in)
		if !r.Reachable {
			t.Errorf("%s: not reachable", c.name)
		}
		near(t, c.name, r.LeaderM, c.want, 1e-9)
		near(t, c.name+", the rule's", r.RuleLeaderM, 1.25*c.waterM, 1e-9)
	}
}

// A water that allows 18 ft: by the rule that serves 14.4 ft of water, and the fly
// rides higher by its clearance above the bottom.
func TestCappedLeader(t *testing.T) {
	in := over(15)
	in.Rules = Rules{Water: "Alder Kettle", MaxLeaderM: 18 * ft}
	r := Find(in)
	if r.Kind != LongLeader || r.Reachable || !says(r, CappedByRule) || says(r, TooLong) {
		t.Errorf("kind %q, reachable %v, why %v: want a long leader that the rule caps", r.Kind, r.Reachable, r.Why)
	}
	if r.RunnerUp != Hung {
		t.Errorf("runner-up %q, want the sliding indicator that would reach", r.RunnerUp)
	}
	near(t, "leader in feet", r.LeaderM/ft, 18, 1e-9)
	near(t, "depth reached in feet", r.ReachM/ft, 14.4-1, 1e-9)
	near(t, "rule's leader in feet", r.RuleLeaderM/ft, 18.75, 1e-9)
}

// Over deeper water the same cap leaves the fly too far above the bottom: the
// answer is a sinking line, and what the allowed leader would do is still known.
func TestCappedTooFar(t *testing.T) {
	in := over(20)
	in.Rules = Rules{Water: "Alder Kettle", MaxLeaderM: 18 * ft}
	r := Find(in)
	if r.Kind != Sinking || r.RunnerUp != StraightDown || r.Reachable || !says(r, CappedByRule) {
		t.Errorf("kind %q, runner-up %q, reachable %v, why %v", r.Kind, r.RunnerUp, r.Reachable, r.Why)
	}
	near(t, "leader in feet", r.LeaderM/ft, 9, 1e-9)
	near(t, "allowed in feet", r.CappedM/ft, 18, 1e-9)
	near(t, "depth reached in feet", r.ReachM/ft, 14.4-1, 1e-9)
}

func TestLimits(t *testing.T) {
	for _, c := range []struct {
		name         string
		kind         Kind
		waterFt      float64
		capM, longM  float64
		reachable    bool
		leaderM      float64
		why, notSaid Reason
	}{
		{"casts no more than 15 ft", LongLeader, 15, 0, 15 * ft, false, 15 * ft, TooLong, CappedByRule},
		{"the cap is the stricter", LongLeader, 15, 12 * ft, 15 * ft, false, 12 * ft, CappedByRule, TooLong},
		{"the casting is the stricter", LongLeader, 15, 16 * ft, 15 * ft, false, 15 * ft, TooLong, CappedByRule},
		{"30 ft is cast, 25 ft of water wants 31.25", LongLeader, 25, 0, LongestM, false, 30 * ft, TooLong, CappedByRule},
		{"the cap is just the rule", LongLeader, 16, 20 * ft, LongestM, true, 20 * ft, YourChoice, CappedByRule},
		// 18.75 ft is 5.715 m: rounded up to a half foot it would be 5.791 m, over the cap
		{"rounding up may not pass the cap", LongLeader, 15, 5.75, LongestM, true, 18.5 * ft, YourChoice, CappedByRule},
		{"a cap in metres, pieces in half feet", LongLeader, 20, 5.5, LongestM, false, 18 * ft, CappedByRule, TooLong},
		{"hung, the spare above the indicator goes", Hung, 10, 10 * ft, LongestM, true, 10 * ft, CappedByRule, TooLong},
		{"hung deeper than the cap", Hung, 13, 10 * ft, LongestM, false, 10 * ft, CappedByRule, TooLong},
		{"hung, the casting is the stricter", Hung, 13, 40 * ft, 10 * ft, false, 10 * ft, TooLong, CappedByRule},
		{"sinking, under a short cap", Sinking, 20, 6 * ft, LongestM, true, 6 * ft, YourChoice, TooLong},
		{"sinking, 9 ft", Sinking, 20, 0, LongestM, true, 9 * ft, YourChoice, TooLong},
	} {
		in := over(c.waterFt)
		in.Kind, in.Rules.MaxLeaderM, in.LongestM = c.kind, c.capM, c.longM
		r := Find(in)
		if r.Reachable != c.reachable {
			t.Errorf("%s: reachable %v", c.name, r.Reachable)
		}
		near(t, c.name+", leader", r.LeaderM, c.leaderM, 1e-9)
		if !says(r, c.why) || says(r, c.notSaid) {
			t.Errorf("%s: why %v, want %q and not %q", c.name, r.Why, c.why, c.notSaid)
		}
		if !r.Reachable && r.Kind == LongLeader {
			near(t, c.name+", depth reached", r.ReachM, r.LeaderM/1.25-ft, 1e-9)
		}
	}
}

// A leader of nothing but rule reaches no depth, and never a negative one.
func TestCapBelowTheClearance(t *testing.T) {
	in := over(15)
	in.FlyM, in.Kind, in.Rules.MaxLeaderM = 10*ft, LongLeader, 5*ft
	if r := Find(in); r.ReachM != 0 || r.Reachable {
		t.Errorf("reach %v, reachable %v: want 0 and false", r.ReachM, r.Reachable)
	}
}
