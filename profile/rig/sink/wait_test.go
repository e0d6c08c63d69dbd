package sink

import (
	"errors"
	"math"
	"testing"
)

// Twice the links and half the steps (which miss a quarter as much) change a wait by
// less than 2 %.
func TestRefined(t *testing.T) {
	worst := 0.0
	check := func(what string, r Rig, depthM float64, tip Tip) {
		t.Helper()
		s, err := Wait(r, depthM, tip)
		fine, err2 := wait(r, depthM, tip, -1, 2*usualLinks, usualMiss/4)
		if err != nil || err2 != nil {
			t.Fatalf("%s: %v, %v", what, err, err2)
		}
		near(t, what, s, fine, 0.02)
		worst = math.Max(worst, math.Abs(s/fine-1))
	}
	for _, feet := range []float64{6, 15, 30} {
		for _, grams := range []float64{0.01, 0.05, 0.25, 1, 5} {
			for _, tip := range []Tip{Held, Slides} {
				r, depthM := usual(feet, grams)
				check("as deep as it is for", r, depthM, tip)
				check("half as deep", r, depthM/2, tip)
			}
		}
	}
	for name, a := range chainRigs() {
		check(name, a.rig, 0.8*a.rig.length(), a.tip)
		check(name+", half", a.rig, 0.4*a.rig.length(), a.tip)
	}
	t.Logf("at most %.2f %%", 100*worst)
}

// The waits of usual rigs, to read with -v; common practice has light flies take a
// minute or more to 15 ft and tungsten about half a minute.
func TestUsualWaits(t *testing.T) {
	for _, feet := range []float64{6, 15, 30} {
		for _, grams := range []float64{0.05, 0.25, 1} {
			r, depthM := usual(feet, grams)
			held, err := Wait(r, depthM, Held)
			if err != nil {
				t.Fatal(err)
			}
			slides, err := Wait(r, depthM, Slides)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%2g ft, %.2f g: held %5.1f s, slides %5.1f s", feet, grams, held, slides)
			if !(slides < held) {
				t.Errorf("%g ft, %g g: the tip's sliding does not help: %g s, held %g s", feet, grams, slides, held)
			}
		}
	}
}

func TestErrors(t *testing.T) {
	good, depthM := usual(15, 0.25)
	nan := math.NaN()
	change := func(f func(*Rig)) Rig {
		r, _ := usual(15, 0.25)
		f(&r)
		return r
	}
	for _, c := range []struct {
		name   string
		r      Rig
		depthM float64
		want   error // nil: any
	}{
		{"too deep for the leader", good, 5.8, ErrShort},
		{"all of the leader takes for ever", good, good.length(), ErrShort},
		{"too deep for the water", change(func(r *Rig) { r.BottomM = 4 }), 4.5, ErrBottom},
		{"cork", change(func(r *Rig) { r.Bodies[0].Density = 300; r.Parts[2].Density = 900 }), 1, ErrNever},
		{"no depth", good, nan, nil},
		{"no parts", Rig{TempC: 15}, 1, nil},
		{"no length", change(func(r *Rig) { r.Parts[0].LengthM = 0 }), 1, nil},
		{"no number", change(func(r *Rig) { r.Parts[0].LengthM = nan }), 1, nil},
		{"endless", change(func(r *Rig) { r.Parts[0].LengthM = math.Inf(1) }), 1, nil},
		{"a rope", change(func(r *Rig) { r.Parts[0].DiameterM = 0.3 }), 1, nil},
		{"ice", change(func(r *Rig) { r.TempC = -1 }), 1, nil},
		{"a fly beyond the end", change(func(r *Rig) { r.Bodies[0].AtM = 9 }), 1, nil},
		{"a fly of no weight", change(func(r *Rig) { r.Bodies[0].KgDry = nan }), 1, nil},
		{"bottom above the water", change(func(r *Rig) { r.BottomM = -1 }), 1, nil},
	} {
		s, err := Wait(c.r, c.depthM, Held)
		if err == nil || c.want != nil && !errors.Is(err, c.want) {
			t.Errorf("%s: %g s, error %v, want %v", c.name, s, err, c.want)
		}
		if _, err := WaitEstimate(c.r, c.depthM, Held); err == nil {
			t.Errorf("%s: an estimate", c.name)
		}
	}
	if _, err := BodyWait(good, 1, 1, Held); err == nil {
		t.Error("a wait of a body that is not there")
	}
	if _, err := Path(good, Held, nan); err == nil {
		t.Error("a path to no time")
	}
	if s, err := Wait(good, 0, Held); s != 0 || err != nil {
		t.Errorf("to the surface: %g s, %v", s, err)
	}
	if s, err := Wait(good, depthM, Held); !(s > 0) || err != nil {
		t.Errorf("a good rig: %g s, %v", s, err)
	}
}

// A dropper is there when the path says so, the point fly's own wait is that of the
// end, and the path ends on time.
func TestBodiesAndPath(t *testing.T) {
	r, _ := usual(15, 0.25)
	l := r.length()
	r.Bodies = append([]Body{{AtM: l - 1.5, KgDry: 5e-5}}, r.Bodies...)
	path, err := Path(r, Held, 90)
	if err != nil {
		t.Fatal(err)
	}
	if end := path[len(path)-1].TimeS; math.Abs(end-90) > 1e-6 || path[0].FlyM != 0 {
		t.Errorf("from %g m deep to %g s", path[0].FlyM, end)
	}
	near(t, "the fly begins at the leader's end", path[0].AwayM, l, 1e-12)
	reached := func(depthM float64, of func(State) float64) float64 {
		for i := 1; i < len(path); i++ {
			a, b := of(path[i-1]), of(path[i])
			if b >= depthM {
				return path[i-1].TimeS + (path[i].TimeS-path[i-1].TimeS)*(depthM-a)/(b-a)
			}
		}
		return math.NaN()
	}
	for _, depthM := range []float64{0.5, 1.5, 2.5} {
		s, err := BodyWait(r, 0, depthM, Held)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "dropper", reached(depthM, func(s State) float64 { return s.BodyM[0] }), s, 0.02)
		point, err := BodyWait(r, 1, depthM, Held)
		if err != nil {
			t.Fatal(err)
		}
		end, err := Wait(r, depthM, Held)
		if err != nil || end != point {
			t.Errorf("point fly %g s, end %g s, %v", point, end, err)
		}
		near(t, "point fly", reached(depthM, func(s State) float64 { return s.FlyM }), point, 0.02)
		if !(point < s) {
			t.Errorf("the dropper is no later at %g m than the heavier point fly", depthM)
		}
	}
	if _, err := BodyWait(r, 0, l-1, Held); !errors.Is(err, ErrShort) {
		t.Errorf("a dropper below its place on the leader: %v", err)
	}
}

// What touches the bottom lies there: the fly stays, and the leader comes down to it.
func TestBottom(t *testing.T) {
	r, _ := usual(15, 0.5)
	r.BottomM = 3
	touch, err := Wait(r, 3, Held)
	if err != nil {
		t.Fatal(err)
	}
	path, err := Path(r, Held, 600)
	if err != nil {
		t.Fatal(err)
	}
	lies := math.NaN()
	for _, s := range path {
		if s.FlyM > 3 || s.FlyM < 0 {
			t.Errorf("%g m deep at %g s", s.FlyM, s.TimeS)
		}
		if s.TimeS > touch+1 {
			if s.FlyM < 2.999 {
				t.Errorf("off the bottom again, %g m deep at %g s, touched at %g s", s.FlyM, s.TimeS, touch)
			}
			if math.IsNaN(lies) {
				lies = s.AwayM
			}
			if math.Abs(s.AwayM-lies) > 0.05 {
				t.Errorf("drawn along the bottom from %g to %g m", lies, s.AwayM)
			}
		}
	}
	deeper := r
	deeper.BottomM = 0
	free, err := Wait(deeper, 3, Held)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "the bottom does not hold back what is above it", touch, free, 0.01)
}
