package rig

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
)

const inchPerS = 0.0254 // m/s

func towedOver(waterFt, grams, inches float64) Input {
	in := over(waterFt)
	in.Kind = LongLeader
	in.FlyKg = profile.Some(grams / 1000)
	in.Retrieve = profile.Some(inches * inchPerS)
	return in
}

// The trade's rule for a fly of 0.25 g in 15 ft of water holds at about 1.8 to 2.3
// inches a second (common practice): below that the fly lies on the bottom, above it
// is more than 2 ft off it. Worked out, not fitted: within a quarter of an inch.
func TestRuleHolds(t *testing.T) {
	in := over(15)
	in.Kind, in.FlyKg = LongLeader, profile.Some(0.00025)
	r := Find(in)
	if !r.Window.Known || r.Solved {
		t.Fatalf("%+v", r)
	}
	near(t, "slowest, inches a second", r.RuleWindow.Slowest/inchPerS, 1.8, 0.25)
	near(t, "fastest, inches a second", r.RuleWindow.Fastest/inchPerS, 2.3, 0.25)
}

// The leader that is worked out puts the fly where it was wanted, to a whole piece.
func TestSolvedLeader(t *testing.T) {
	in := towedOver(15, 0.25, 2)
	r := Find(in)
	if !r.Solved || !r.Reachable || r.Kind != LongLeader {
		t.Fatalf("%+v", r)
	}
	near(t, "depth of the fly in feet", r.FlyDepths[0]/ft, 14, 0.3)
	if l := r.Leader; !(l.Low < l.Best && l.Best < l.High) {
		t.Errorf("leader %+v, want an interval", l)
	}
	if w := r.Window; !(w.Slowest < 2*inchPerS && 2*inchPerS < w.Fastest) {
		t.Errorf("window %+v, want the stated 2 inches inside", w)
	}
	in.Retrieve = profile.Some(0)
	if r = Find(in); math.Abs(r.LeaderM-14*ft) > in.StepM {
		t.Errorf("hanging still: leader %v ft, want the fly's depth", r.LeaderM/ft)
	}
}

// The leader's doubt, of a fly that is weighed and known, is that of the retrieve: a tenth
// faster or slower than was measured.
func TestDoubtOfTheRetrieve(t *testing.T) {
	at := func(inches float64) Rig {
		in := towedOver(15, 0.25, inches)
		in.FlyDensity, in.StepM = 4000, 0.005
		return Find(in)
	}
	r := at(2)
	near(t, "shortest", r.Leader.Low, at(1.8).LeaderM, 0.01)
	near(t, "longest", r.Leader.High, at(2.2).LeaderM, 0.01)
	if r.Leader.Best-r.Leader.Low < 0.05 || r.Leader.High-r.Leader.Best < 0.05 {
		t.Errorf("%+v: no doubt to speak of", r.Leader)
	}
}

// Faster than any leader holds: why, what would do it, and the sinking line.
func TestTooFast(t *testing.T) {
	in := towedOver(15, 0.1, 4)
	in.Kind = ""
	r := Find(in)
	if r.Kind != Sinking || r.Reachable || !says(r, TooFast) || !r.NeedMps.Known || !r.NeedKg.Known {
		t.Fatalf("%+v", r)
	}
	in.Retrieve, in.Kind = profile.Some(0.98*r.NeedMps.Value), LongLeader
	if slow := Find(in); !slow.Reachable {
		t.Errorf("at the retrieve that would do (%v): %+v", r.NeedMps.Value, slow)
	}
	in = towedOver(15, r.NeedKg.Value*1000*1.02, 4)
	if heavy := Find(in); !heavy.Reachable {
		t.Errorf("with the fly that would do (%v kg): %+v", r.NeedKg.Value, heavy)
	}
}

// An answer or a reason for every fly, water and retrieve: nothing is not a number,
// heavier is never a longer leader, faster never a shorter one.
func TestEveryCase(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := towedOver(rapid.Float64Range(6, 30).Draw(rt, "water"), rapid.Float64Range(0.05, 1).Draw(rt, "grams"), rapid.Float64Range(0, 4).Draw(rt, "retrieve"))
		in.Kind = rapid.SampledFrom([]Kind{"", LongLeader}).Draw(rt, "kind")
		in.Flies = rapid.IntRange(1, 3).Draw(rt, "flies")
		if rapid.Bool().Draw(rt, "retrieve not stated") {
			in.Retrieve = profile.Optional{}
		}
		if rapid.Bool().Draw(rt, "capped") {
			in.Rules.MaxLeaderM = rapid.Float64Range(3, 9).Draw(rt, "cap")
		}
		r := Find(in)
		sum := 0.0
		for _, p := range r.Parts {
			sum += p.LengthM
		}
		for what, v := range map[string]float64{"leader": r.LeaderM, "fly": r.FlyM, "reach": r.ReachM, "window": r.Window.Fastest + r.Window.Slowest,
			"low": r.Leader.Low, "high": r.Leader.High, "sum": sum} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				rt.Fatalf("%s: %v in %+v", what, v, r)
			}
		}
		switch {
		case math.Abs(sum-r.LeaderM) > 1e-3:
			rt.Fatalf("parts of %v m for a leader of %v m", sum, r.LeaderM)
		case r.SinkTime == nil || !(r.SinkTime.Low <= r.SinkTime.Best && r.SinkTime.Best <= r.SinkTime.High && r.SinkTime.Low > 0):
			rt.Fatalf("sink time %+v in %+v", r.SinkTime, r)
		case r.LeaderM > LongestM+slack || in.Rules.MaxLeaderM > 0 && r.LeaderM > in.Rules.MaxLeaderM+slack:
			rt.Fatalf("leader of %v m", r.LeaderM)
		case !r.Reachable && len(r.Why) == 0:
			rt.Fatalf("not reachable without a reason: %+v", r)
		case r.Window.Known && r.Window.Slowest > r.Window.Fastest:
			rt.Fatalf("window %+v", r.Window)
		}
	})
}

// The corners of the range.
func TestCorners(t *testing.T) {
	for _, waterFt := range []float64{6, 15, 30} {
		for _, grams := range []float64{0.05, 1} {
			last := 0.0
			for _, inches := range []float64{0, 1, 2, 4} {
				r := Find(towedOver(waterFt, grams, inches))
				if !r.Reachable && !r.NeedMps.Known {
					t.Errorf("%g ft, %g g, %g in/s: no retrieve that would do: %+v", waterFt, grams, inches, r)
				}
				if r.LeaderM < last-slack {
					t.Errorf("%g ft, %g g: %v m at %g in/s, %v m slower", waterFt, grams, r.LeaderM, inches, last)
				}
				last = r.LeaderM
			}
		}
	}
}

// Light flies take a minute or more to 15 ft, tungsten about half a minute (common
// practice).
func TestSinkTimes(t *testing.T) {
	for _, c := range []struct {
		name      string
		grams     float64
		density   float64
		low, high float64
	}{
		{"light", 0.08, 3000, 60, 150},
		{"tungsten", 0.5, 8000, 20, 45},
	} {
		in := over(15)
		in.Kind, in.FlyKg, in.FlyDensity = LongLeader, profile.Some(c.grams/1000), c.density
		if r := Find(in); r.SinkTime == nil || r.SinkTime.Best < c.low || r.SinkTime.Best > c.high {
			t.Errorf("%s: %+v s, want %g to %g", c.name, r.SinkTime, c.low, c.high)
		}
	}
}

// A bottom touched at 1.3 times the sink time worked out makes all of that rig 1.3
// times as long; of another rig it says nothing.
func TestBottomContact(t *testing.T) {
	in := over(15)
	in.Kind, in.FlyKg = LongLeader, profile.Some(0.00025)
	in.FlyM = 12 * ft
	plain := Find(in)
	in.BottomContacts = []BottomContact{{Kind: LongLeader, DepthM: 12 * ft, S: 1.3 * plain.SinkTime.Best}}
	near(t, "sink time", Find(in).SinkTime.Best, 1.3*plain.SinkTime.Best, 0.01*plain.SinkTime.Best)
	in.BottomContacts[0].Kind = Hung
	near(t, "sink time by another rig", Find(in).SinkTime.Best, plain.SinkTime.Best, 1e-9)
}

// Droppers hang above the point, as many as the water's rules allow; no weight where
// none may be added.
func TestDroppersAndRules(t *testing.T) {
	in := over(15)
	in.Kind, in.Flies, in.ShotKg = LongLeader, 3, 0.0004
	r := Find(in)
	if len(r.FlyDepths) != 3 || !(r.FlyDepths[0] > r.FlyDepths[1] && r.FlyDepths[1] > r.FlyDepths[2]) {
		t.Errorf("flies at %v", r.FlyDepths)
	}
	in.Rules = Rules{Water: "Alder Kettle", MaxFlies: 2, NoAddedWeight: true}
	less := Find(in)
	if len(less.FlyDepths) != 2 || less.FliesTaken != 2 || len(less.Less) != 2 {
		t.Errorf("flies at %v, taken away %v", less.FlyDepths, less.Less)
	}
	if less.Window.Fastest >= r.Window.Fastest {
		t.Errorf("a shot less and %v m/s, with it %v", less.Window.Fastest, r.Window.Fastest)
	}
}

// A boat adrift lifts a hung fly, and takes its drift off the retrieve of a long leader.
func TestDrift(t *testing.T) {
	in := over(10)
	in.Kind, in.FlyKg, in.DriftMps = Hung, profile.Some(0.00025), 0.05
	if r := Find(in); r.LiftM < 0.1 || r.FlyDepths[0] > in.FlyM-0.1 {
		t.Errorf("lift %v m, fly at %v", r.LiftM, r.FlyDepths)
	}
	still, adrift := towedOver(15, 0.25, 2), towedOver(15, 0.25, 2)
	still.Retrieve, adrift.Retrieve, adrift.DriftMps = profile.Optional{}, profile.Optional{}, 0.02
	a, b := Find(still).Window, Find(adrift).Window
	near(t, "the fastest retrieve, by the drift less", a.Fastest-b.Fastest, 0.02, 1e-6)
}

// A line of twice the rate takes half the time, and may be retrieved faster.
func TestSinkingLine(t *testing.T) {
	in := over(20)
	in.Kind, in.SinkMps = Sinking, 2*inchPerS
	slow := Find(in)
	in.SinkMps = 4 * inchPerS
	fast := Find(in)
	near(t, "sink time", fast.SinkTime.Best, slow.SinkTime.Best/2, 1e-9)
	near(t, "seconds to 19 ft at 0.9 of 4 in/s", fast.SinkTime.Best, 19*12/3.6, 0.01)
	if !slow.Window.Known || slow.Window.Fastest >= fast.Window.Fastest || slow.ClassAssumed {
		t.Errorf("windows %+v and %+v", slow.Window, fast.Window)
	}
	in.SinkMps = 0
	if r := Find(in); !r.ClassAssumed || math.Abs(r.SinkTime.Best-19*12/2.7) > 0.01 {
		t.Errorf("%+v", r.SinkTime)
	}
}

func BenchmarkFind(b *testing.B) {
	for _, c := range []struct {
		name string
		in   Input
	}{{"rule", over(15)}, {"solved", towedOver(15, 0.25, 2)}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				Find(c.in)
			}
		})
	}
}
