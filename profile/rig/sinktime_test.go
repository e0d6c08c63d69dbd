package rig

import (
	"math"
	"testing"
)

func TestSlower(t *testing.T) {
	for _, row := range []struct{ touched, model, want float64 }{
		{52, 40, 1.3}, {40, 50, 0.8}, {200, 40, 2}, {5, 40, 0.5}, {0, 40, 1}, {40, 0, 1},
		{math.NaN(), 40, 1}, {40, math.NaN(), 1}, {math.Inf(1), 40, 1}, {40, math.Inf(1), 1}, {-3, 5, 1},
	} {
		if got := slower(row.touched, row.model); math.Abs(got-row.want) > 1e-12 {
			t.Errorf("touched at %g s, modelled %g s: %g, want %g", row.touched, row.model, got, row.want)
		}
	}
}

// A bottom is touched by a leader that reaches it and sinks by itself; how much it says is
// bounded.
func TestTouches(t *testing.T) {
	in := over(15)
	in.Kind = LongLeader
	r := Find(in)
	for _, c := range []struct {
		depthM float64
		want   bool
	}{{in.WaterM, true}, {r.LeaderM, true}, {r.LeaderM + 0.01, false}} {
		if r.Touches(c.depthM) != c.want {
			t.Errorf("long leader of %.2f m over %.2f m: %v", r.LeaderM, c.depthM, !c.want)
		}
	}
	in.BottomContacts = []BottomContact{{LongLeader, in.WaterM, 5}}
	if !Find(in).CorrectedToLimit() || r.CorrectedToLimit() {
		t.Error("a bottom after 5 s is believed, or none is not")
	}
	in.BottomContacts[0].S = r.SinkTime.Best * 1.1
	if got := Find(in); got.CorrectedToLimit() || got.SinkTime.Best == r.SinkTime.Best {
		t.Errorf("a bottom a tenth later: %v, before %v", got.SinkTime, r.SinkTime)
	}
	in.Kind = Hung
	if r := Find(in); r.Touches(in.WaterM) || !r.Touches(r.HangM) {
		t.Error("the fly hangs above the bottom")
	}
	in.Kind = Sinking
	if r := Find(in); r.Touches(1) {
		t.Error("a sinking line")
	}
}
