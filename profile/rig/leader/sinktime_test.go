package leader

import (
	"errors"
	"math"
	"testing"
)

// Twice the links and half the steps (which miss a quarter as much) change a wait by
// less than 2 %.
func TestRefined(t *testing.T) {
	worst := 0.0
	check := func(what string, r Leader, depthM float64, tip Tip) {
		t.Helper()
		s, err := r.SinkTime(depthM, tip)
		fine, err2 := r.sinkTime(depthM, tip, 2*usualLinks, usualMiss/4)
		if err != nil || err2 != nil {
			t.Fatalf("%s: %v, %v", what, err, err2)
		}
		within(t, what, s, fine, 0.02)
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
	for name, a := range chainLeaders() {
		check(name, a.leader, 0.8*a.leader.LengthM(), a.tip)
		check(name+", half", a.leader, 0.4*a.leader.LengthM(), a.tip)
	}
	t.Logf("at most %.2f %%", 100*worst)
}

// The waits of usual rigs, to read with -v; common practice has light flies take a
// minute or more to 15 ft and tungsten about half a minute.
func TestUsualWaits(t *testing.T) {
	for _, feet := range []float64{6, 15, 30} {
		for _, grams := range []float64{0.05, 0.25, 1} {
			r, depthM := usual(feet, grams)
			held, slides := mustSink(t, r, depthM, Held), mustSink(t, r, depthM, Slides)
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
	change := func(f func(*Leader)) Leader {
		r, _ := usual(15, 0.25)
		f(&r)
		return r
	}
	for _, c := range []struct {
		name   string
		r      Leader
		depthM float64
		want   error
	}{
		{"too deep for the leader", good, 5.8, ErrShort},
		{"all of the leader takes for ever", good, good.LengthM(), ErrShort},
		{"too deep for the water", change(func(r *Leader) { r.BottomM = 4 }), 4.5, ErrBottom},
		{"cork", change(func(r *Leader) { r.Bodies[0].DensityKgM3 = 300; r.Parts[2].DensityKgM3 = 900 }), 1, ErrNever},
		{"no depth", good, nan, ErrRange},
		{"no parts", Leader{TempC: 15}, 1, ErrRange},
		{"no length", change(func(r *Leader) { r.Parts[0].LengthM = 0 }), 1, ErrRange},
		{"no number", change(func(r *Leader) { r.Parts[0].LengthM = nan }), 1, ErrRange},
		{"endless", change(func(r *Leader) { r.Parts[0].LengthM = math.Inf(1) }), 1, ErrRange},
		{"a rope", change(func(r *Leader) { r.Parts[0].DiameterM = 0.3 }), 1, ErrRange},
		{"ice", change(func(r *Leader) { r.TempC = -1 }), 1, ErrRange},
		{"a fly beyond the end", change(func(r *Leader) { r.Bodies[0].AtM = 9 }), 1, ErrRange},
		{"a fly of no weight", change(func(r *Leader) { r.Bodies[0].KgDry = nan }), 1, ErrRange},
		{"bottom above the water", change(func(r *Leader) { r.BottomM = -1 }), 1, ErrRange},
	} {
		s, err := c.r.SinkTime(c.depthM, Held)
		if !errors.Is(err, c.want) {
			t.Errorf("%s: %g s, error %v, want %v", c.name, s, err, c.want)
		}
		if _, err := c.r.SinkTimeEstimate(c.depthM, Held); err == nil {
			t.Errorf("%s: an estimate", c.name)
		}
	}
	if s, err := good.SinkTime(0, Held); s != 0 || err != nil {
		t.Errorf("to the surface: %g s, %v", s, err)
	}
	if s, err := good.SinkTime(depthM, Held); !(s > 0) || err != nil {
		t.Errorf("a good leader: %g s, %v", s, err)
	}
}
