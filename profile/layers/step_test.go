package layers

import (
	"fmt"
	"math"
	"testing"
)

// Values of a known step are given back, as far as the readings say.
func TestFitStepFindsItsStep(t *testing.T) {
	for _, c := range []struct {
		upper, lower, centre, width float64
		n                           int
		tol                         float64 // of centre and width, m
	}{
		{22, 6, 5.3, .8, 13, 1e-3},
		{22, 6, 5.3, .8, 7, 1e-3},
		{24, 4.2, 8.1, 1.5, 6, 1e-3},
		{18, 12, 3.4, 2.5, 9, 1e-2},
		{998, 999.9, 6.2, .9, 10, 1e-3}, // density
		{22, 6, 1.2, .6, 13, 1e-3},
	} {
		var z, v []float64
		for i := range c.n {
			z = append(z, 12*float64(i)/float64(c.n-1))
			v = append(v, c.lower+(c.upper-c.lower)/(1+math.Exp((z[i]-c.centre)/c.width)))
		}
		s, ok := fitStep(z, v)
		what := fmt.Sprintf("%v", c)
		if !ok {
			t.Errorf("%s: no step", what)
		}
		near(t, what+" centre", s.centreM, c.centre, c.tol)
		near(t, what+" width", s.widthM, c.width, c.tol)
		near(t, what+" rms", s.rms, 0, 2e-3)
	}
}

// The least squares of a grid finer than the fit's own are no better than the fit.
func TestFitStepIsLeastSquares(t *testing.T) {
	t.Parallel()
	s, ok := fitStep(depthsA, tempsA)
	if !ok {
		t.Fatal("no step")
	}
	f := fit{depthsA, tempsA, make([]float64, len(depthsA))}
	for i := range 600 {
		for j := range 100 {
			centre, width := .02*float64(i), .25*math.Pow(24, float64(j)/99)
			if o := f.step(centre, width); o.rms < s.rms-1e-6 {
				t.Fatalf("centre %.2f width %.2f: rms %.6f, less than the fit's %.6f at %.3f, %.3f", centre, width, o.rms, s.rms, s.centreM, s.widthM)
			}
		}
	}
	t.Logf("%+v", s)
}

func TestFitStepNothingThere(t *testing.T) {
	if s, ok := fitStep([]float64{0, 1, 2}, []float64{5, 5, 5}); ok {
		t.Errorf("a step %+v in 5, 5, 5", s)
	}
}
