package tow

import (
	"errors"
	"math"
	"testing"
)

func TestSpeedFor(t *testing.T) {
	r := ruleLeader(fly(18.75*foot, 0.25e-3))
	for _, z := range []float64{0.05, 0.5, 3, 15 * foot, 18.7 * foot} {
		u, err := SpeedFor(r, z)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "depth", mustSolve(t, r, u).Point.DepthM, z, 2e-5)
	}
	if u, err := SpeedFor(r, 18.75*foot); err != nil || u != 0 {
		t.Errorf("at rest: %g, %v", u, err)
	}
	if _, err := SpeedFor(r, 19*foot); !errors.Is(err, ErrTooShallow) {
		t.Errorf("deeper than it is long: %v", err)
	}
	if _, err := SpeedFor(r, 1e-7); !errors.Is(err, ErrTooDeep) {
		t.Errorf("at the surface: %v", err)
	}
}

func TestWindowFor(t *testing.T) {
	r := ruleLeader(fly(18.75*foot, 0.25e-3))
	w, err := WindowFor(r, 13*foot, 20*foot)
	if err != nil || w.SlowestMPerS != 0 || !(w.FastestMPerS > 0.05) {
		t.Errorf("deeper than it is long: %+v, %v", w, err)
	}
	if _, err := WindowFor(r, 19*foot, 21*foot); !errors.Is(err, ErrTooShallow) {
		t.Errorf("never down: %v", err)
	}
	a, _ := WindowFor(r, 10*foot, 12*foot)
	b, _ := WindowFor(r, 12*foot, 10*foot)
	if a != b || !(a.SlowestMPerS < a.FastestMPerS) {
		t.Errorf("%+v, the other way round %+v", a, b)
	}
}

func TestLengthFor(t *testing.T) {
	r := ruleLeader(fly(18.75*foot, 0.25e-3), fly(17*foot, 0.05e-3), fly(12*foot, 0.05e-3))
	for _, leader := range []Leader{LongerTippet(r), Scaled(r)} {
		got, err := LengthFor(leader, 2*inch, 14*foot, 15*foot, 30*foot)
		if err != nil || got.Reach != Reached {
			t.Fatalf("%+v, %v", got, err)
		}
		within(t, "depth", got.Shape.Point.DepthM, 14*foot, 2e-5)
		within(t, "depth again", mustSolve(t, leader(got.LengthM), 2*inch).Point.DepthM, 14*foot, 2e-5)

		got, err = LengthFor(leader, 6*inch, 14*foot, 15*foot, 30*foot)
		if err != nil || got.Reach != NotReached || got.LengthM != 30*foot {
			t.Fatalf("%+v, %v", got, err)
		}
		t.Logf("30 ft at 6 in/s: %.1f ft down; %.2f in/s or %.2f g would do",
			got.Shape.Point.DepthM/foot, got.SpeedMPerS/inch, got.PointKg*1000)
		made := leader(got.LengthM)
		within(t, "at the speed that would do", mustSolve(t, made, got.SpeedMPerS).Point.DepthM, 14*foot, 2e-5)
		made.Bodies[0].KgDry = got.PointKg
		within(t, "with the mass that would do", mustSolve(t, made, 6*inch).Point.DepthM, 14*foot, 2e-5)

		got, err = LengthFor(leader, 0.5*inch, 10*foot, 15*foot, 30*foot)
		if err != nil || got.Reach != OverDeep || got.LengthM != 15*foot || !(got.SpeedMPerS > 0.5*inch) || got.PointKg != 0 {
			t.Fatalf("%+v, %v", got, err)
		}
		got, err = LengthFor(leader, 0, 31*foot, 15*foot, 30*foot)
		if err != nil || got.Reach != NotReached || got.SpeedMPerS != 0 || got.PointKg != 0 {
			t.Fatalf("deeper than any: %+v, %v", got, err)
		}
	}
}

// A leader that the caller makes shallower again beyond some length is still found.
func TestLengthForNotMonotone(t *testing.T) {
	leader := func(length float64) Rig {
		kg := 0.5e-3 * math.Max(0.01, 1-math.Abs(length-6)/4)
		return Rig{
			Parts:  []Part{{LengthM: length, DiameterM: 0.2e-3, DensityKgM3: 1140}},
			Bodies: []Body{fly(length, kg)},
			TempC:  15,
		}
	}
	got, err := LengthFor(leader, 0.05, 4.5, 2, 12)
	if err != nil || got.Reach != Reached {
		t.Fatalf("%+v, %v", got, err)
	}
	within(t, "depth", got.Shape.Point.DepthM, 4.5, 2e-5)
	got, err = LengthFor(leader, 0.05, 9, 2, 12)
	if err != nil || got.Reach != NotReached || got.LengthM > 9 {
		t.Fatalf("%+v, %v", got, err)
	}
}

func TestLeaders(t *testing.T) {
	r := ruleLeader(fly(18.75*foot, 0.25e-3), fly(17*foot, 0.05e-3), fly(12*foot, 0.05e-3))
	for _, row := range []struct {
		leader Leader
		length float64
		at     [3]float64
	}{
		{LongerTippet(r), 22, [3]float64{22, 20.25, 12}},
		{LongerTippet(r), 15, [3]float64{15, 14, 12}}, // no room: the dropper is at the knot
		{Scaled(r), 37.5, [3]float64{37.5, 34, 24}},
	} {
		made := row.leader(row.length * foot)
		within(t, "length", made.LengthM(), row.length*foot, 1e-12)
		for i, at := range row.at {
			within(t, "at", made.Bodies[i].AtM, at*foot, 1e-12)
		}
	}
	within(t, "the rig itself is left alone", r.LengthM(), 18.75*foot, 1e-12)
	within(t, "its fly too", r.Bodies[0].AtM, 18.75*foot, 1e-12)
	if err := LongerTippet(r)(14 * foot).check(); !errors.Is(err, ErrRig) {
		t.Errorf("no tippet left: %v", err)
	}
}

var kept float64

func BenchmarkSolve(b *testing.B) {
	r := listedRigs(b)[0]
	rig := r.rig()
	for b.Loop() {
		s, _ := Solve(rig, r.Speed)
		kept += s.Point.DepthM
	}
}

func BenchmarkSpeedFor(b *testing.B) {
	r := ruleLeader(fly(18.75*foot, 0.25e-3))
	for b.Loop() {
		u, _ := SpeedFor(r, 4)
		kept += u
	}
}

func BenchmarkLengthFor(b *testing.B) {
	leader := LongerTippet(ruleLeader(fly(18.75*foot, 0.25e-3)))
	for b.Loop() {
		l, _ := LengthFor(leader, 2*inch, 14*foot, 15*foot, 30*foot)
		kept += l.LengthM
	}
}

func BenchmarkLengthForNotReached(b *testing.B) {
	leader := LongerTippet(ruleLeader(fly(18.75*foot, 0.25e-3)))
	for b.Loop() {
		l, _ := LengthFor(leader, 6*inch, 14*foot, 15*foot, 30*foot)
		kept += l.PointKg
	}
}
