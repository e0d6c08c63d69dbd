package plan

import (
	"math"
	"slices"
	"testing"

	"coldseam/profile"
	"coldseam/profile/rig"
)

// 65 F itself is a note of care, not only what is warmer; a tenth of a degree under it is
// not (common practice: from 65 F).
func TestCareBeginsAt65(t *testing.T) {
	for topF, want := range map[float64]bool{64.8: false, 65: true} {
		p := planOf(t, feet(0, topF, 5, topF, 10, topF, 15, topF-8, 20, topF-12), "rainbow")
		if got := slices.Contains(p.Cautions, Warm65); got != want {
			t.Errorf("%v F: %v, want the note %v", topF, p.Cautions, want)
		}
	}
}

// Pressure counts by the depth that is fished, 25 ft, not by the lake's: a deep bottom
// under shallow fish is no caution, nor are fish at 24 ft.
func TestPressureByTheFly(t *testing.T) {
	shallow := feet(0, 72, 5, 72, 10, 66, 15, 58, 20, 54, 30, 50, 40, 48)
	shallow.Bottom, shallow.Deepest = profile.Some(45*ft), profile.Some(90*ft)
	if p := planOf(t, shallow, "rainbow"); p.Band.Start.Best > 24*ft || slices.Contains(p.Cautions, Pressure) {
		t.Errorf("start at %.1f ft: %v", p.Band.Start.Best/ft, p.Cautions)
	}
	for _, top := range []float64{20, 22, 24, 26, 28} { // where the warm water ends, ft
		p := planOf(t, feet(0, 74, 10, 74, top-2, 74, top, 67, top+2, 60, top+8, 50), "rainbow")
		if got, want := slices.Contains(p.Cautions, Pressure), p.Band.Start.Best/ft > 25; got != want {
			t.Errorf("start at %.1f ft: pressure %v", p.Band.Start.Best/ft, got)
		}
	}
}

// Rules that were noted come before all else, thunder too.
func TestNotedRulesFirst(t *testing.T) {
	in := input(t, feet(0, 74, 5, 74, 10, 73, 15, 66, 20, 56), "rainbow")
	in.Drop.Sky = "thunder"
	in.Rules = rig.Rules{Water: "Alder Kettle", MaxLeaderM: 18 * ft}
	p, err := Make(in)
	if err != nil || p.Cautions[0] != Rules || slices.Index(p.Cautions, Warm70) != 1 {
		t.Errorf("%v, %v", p.Cautions, err)
	}
}

// What the angler has settled reaches the rig: the last bottom touched, what the fly is
// made of, and how fast it is drawn.
func TestSettledReachesTheRig(t *testing.T) {
	base := input(t, feet(0, 74, 5, 74, 10, 73, 15, 72, 18, 64, 20, 56, 25, 52), "rainbow")
	base.Drop.FlyWeight, base.Drop.Wind = profile.Some(0.00025), profile.Some(2)
	make := func(set func(*Input)) *rig.Rig {
		in := base
		set(&in)
		p, err := Make(in)
		if err != nil || p.Rig == nil || p.Rig.Kind != rig.LongLeader {
			t.Fatalf("%+v, %v", p.Rig, err)
		}
		return p.Rig
	}
	plain := make(func(*Input) {})
	first := rig.BottomContact{Kind: rig.LongLeader, DepthM: 12 * ft, S: 20}
	last := rig.BottomContact{Kind: rig.LongLeader, DepthM: 12 * ft, S: 100}
	one := make(func(in *Input) { in.BottomContacts = []rig.BottomContact{last} })
	both := make(func(in *Input) { in.BottomContacts = []rig.BottomContact{first, last} })
	if one.SinkTime.Best <= plain.SinkTime.Best || math.Abs(both.SinkTime.Best-one.SinkTime.Best) > 1e-9 {
		t.Errorf("waits of %.0f s, %.0f s with a slow bottom touched, %.0f s with a quick one before it", plain.SinkTime.Best, one.SinkTime.Best, both.SinkTime.Best)
	}
	tungsten := make(func(in *Input) { in.FlyDensity = 12000 })
	if tungsten.SinkTime.Best >= plain.SinkTime.Best || tungsten.Window.Fastest <= plain.Window.Fastest {
		t.Errorf("a fly three times as dense: %.0f s and %.3f m/s, else %.0f s and %.3f m/s", tungsten.SinkTime.Best, tungsten.Window.Fastest, plain.SinkTime.Best, plain.Window.Fastest)
	}
	drawn := make(func(in *Input) { in.Drop.Retrieve = profile.Some(0.03) })
	if !drawn.Solved || drawn.RetrieveMps != 0.03 || plain.Solved {
		t.Errorf("drawn at 0.03 m/s: solved %v for %v", drawn.Solved, drawn.RetrieveMps)
	}
}

// A suspended fly hangs where the fish are, at the start, and not deeper.
func TestSuspendedRig(t *testing.T) {
	d := feet(0, 74, 10, 73, 15, 66, 20, 56, 25, 50, 40, 46)
	d.Bottom = profile.Some(60 * ft)
	p := planOf(t, d, "kokanee")
	if !p.Band.Suspended || p.Rig.FlyM > p.Band.Start.Best+1e-9 || p.Rig.FlyM < p.Band.Start.Best-ft {
		t.Errorf("fly at %.2f m, start at %.2f m", p.Rig.FlyM, p.Band.Start.Best)
	}
}
