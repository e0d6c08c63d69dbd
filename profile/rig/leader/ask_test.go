package leader

import (
	"errors"
	"math"
	"slices"
	"testing"
)

func TestTowSpeed(t *testing.T) {
	r := ruleLeader(fly(18.75*ft, 0.25e-3))
	for _, z := range []float64{0.05, 0.5, 3, 15 * ft, 18.7 * ft} {
		u, err := r.TowSpeed(z)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "depth", mustTow(t, r, u).Point.DepthM, z, 2e-5)
	}
	if u, err := r.TowSpeed(18.75 * ft); err != nil || u != 0 {
		t.Errorf("at rest: %g, %v", u, err)
	}
	if _, err := r.TowSpeed(19 * ft); !errors.Is(err, ErrTooShallow) {
		t.Errorf("deeper than it is long: %v", err)
	}
	if _, err := r.TowSpeed(1e-7); !errors.Is(err, ErrTooDeep) {
		t.Errorf("at the surface: %v", err)
	}
}

func TestTowWindow(t *testing.T) {
	r := ruleLeader(fly(18.75*ft, 0.25e-3))
	w, err := r.TowWindow(13*ft, 20*ft)
	if err != nil || w.SlowestMps != 0 || !(w.FastestMps > 0.05) {
		t.Errorf("deeper than it is long: %+v, %v", w, err)
	}
	if _, err := r.TowWindow(19*ft, 21*ft); !errors.Is(err, ErrTooShallow) {
		t.Errorf("never down: %v", err)
	}
	a, _ := r.TowWindow(10*ft, 12*ft)
	b, _ := r.TowWindow(12*ft, 10*ft)
	if a != b || !(a.SlowestMps < a.FastestMps) {
		t.Errorf("%+v, the other way round %+v", a, b)
	}
}

// longerTippet cuts leaders with a longer or shorter last part; what is tied into that
// part, the point fly too, keeps its distance from the point.
func longerTippet(l Leader) func(lengthM float64) Leader {
	old := l.LengthM()
	return func(lengthM float64) Leader {
		made := Leader{Parts: slices.Clone(l.Parts), Bodies: slices.Clone(l.Bodies), TempC: l.TempC}
		last := &made.Parts[len(made.Parts)-1]
		knot := old - last.LengthM
		last.LengthM = lengthM - knot
		for i := range made.Bodies {
			if b := &made.Bodies[i]; b.AtM > knot*(1+slack) {
				b.AtM = math.Max(knot, b.AtM+lengthM-old)
			}
		}
		return made
	}
}

// stretched cuts leaders by stretching every part alike, bodies keeping their share.
func stretched(l Leader) func(lengthM float64) Leader {
	return func(lengthM float64) Leader {
		made := Leader{Parts: slices.Clone(l.Parts), Bodies: slices.Clone(l.Bodies), TempC: l.TempC}
		for i := range made.Parts {
			made.Parts[i].LengthM *= lengthM / l.LengthM()
		}
		for i := range made.Bodies {
			made.Bodies[i].AtM *= lengthM / l.LengthM()
		}
		return made
	}
}

func TestTowLength(t *testing.T) {
	l := ruleLeader(fly(18.75*ft, 0.25e-3), fly(17*ft, 0.05e-3), fly(12*ft, 0.05e-3))
	for _, cut := range []func(float64) Leader{longerTippet(l), stretched(l)} {
		got, err := TowLength(cut, 2*inch, 14*ft, 15*ft, 30*ft)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "depth", mustTow(t, cut(got), 2*inch).Point.DepthM, 14*ft, 2e-5)
		if kg, err := cut(got).FlyFor(14*ft, 2*inch); kg != 0 || err != nil {
			t.Errorf("deep enough, and a fly of %g kg, %v", kg, err)
		}

		got, err = TowLength(cut, 6*inch, 14*ft, 15*ft, 30*ft)
		if !errors.Is(err, ErrTooShallow) || got != 30*ft {
			t.Fatalf("%g m, %v", got, err)
		}
		made := cut(got)
		mps, err := made.TowSpeed(14 * ft)
		if err != nil {
			t.Fatal(err)
		}
		kg, err := made.FlyFor(14*ft, 6*inch)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("30 ft at 6 in/s: %.1f ft down; %.2f in/s or %.2f g would do", mustTow(t, made, 6*inch).Point.DepthM/ft, mps/inch, kg*1000)
		within(t, "at the speed that would do", mustTow(t, made, mps).Point.DepthM, 14*ft, 2e-5)
		made.Bodies[0].KgDry = kg
		within(t, "with the mass that would do", mustTow(t, made, 6*inch).Point.DepthM, 14*ft, 2e-5)

		got, err = TowLength(cut, 0.5*inch, 10*ft, 15*ft, 30*ft)
		if !errors.Is(err, ErrTooDeep) || got != 15*ft {
			t.Fatalf("%g m, %v", got, err)
		}
		if mps, err := cut(got).TowSpeed(10 * ft); err != nil || !(mps > 0.5*inch) {
			t.Errorf("too deep at half an inch, and %g m/s would do, %v", mps, err)
		}
		if kg, err := cut(got).FlyFor(10*ft, 0.5*inch); kg != 0 || err != nil {
			t.Errorf("too deep, and a fly of %g kg, %v", kg, err)
		}
		got, err = TowLength(cut, 0, 31*ft, 15*ft, 30*ft)
		if !errors.Is(err, ErrTooShallow) {
			t.Fatalf("deeper than any: %g m, %v", got, err)
		}
		if kg, err := cut(got).FlyFor(31*ft, 0); kg != 0 || err != nil {
			t.Errorf("deeper than any, and a fly of %g kg, %v", kg, err)
		}
		if _, err := cut(got).TowSpeed(31 * ft); !errors.Is(err, ErrTooShallow) {
			t.Errorf("deeper than any, and a speed would do: %v", err)
		}
	}
	within(t, "the leader itself is left alone", l.LengthM(), 18.75*ft, 1e-12)
	within(t, "its fly too", l.Bodies[0].AtM, 18.75*ft, 1e-12)
	within(t, "and its mass", l.Bodies[0].KgDry, 0.25e-3, 0)
}

// A leader that the caller makes shallower again beyond some length is still found.
func TestTowLengthNotMonotone(t *testing.T) {
	cut := func(length float64) Leader {
		kg := 0.5e-3 * math.Max(0.01, 1-math.Abs(length-6)/4)
		return Leader{
			Parts:  []Part{{LengthM: length, DiameterM: 0.2e-3, DensityKgM3: 1140}},
			Bodies: []Body{fly(length, kg)},
			TempC:  15,
		}
	}
	got, err := TowLength(cut, 0.05, 4.5, 2, 12)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "depth", mustTow(t, cut(got), 0.05).Point.DepthM, 4.5, 2e-5)
	if got, err = TowLength(cut, 0.05, 9, 2, 12); !errors.Is(err, ErrTooShallow) || got > 9 {
		t.Fatalf("%g m, %v", got, err)
	}
}
