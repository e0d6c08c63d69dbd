package response

import (
	"errors"
	"math"
	"math/rand"
	"testing"
)

func TestExactLag(t *testing.T) {
	// Without noise the fit must return the water, tau known or not.
	for _, c := range []struct{ known, tolC, tolTau float64 }{{20, 1e-6, 0}, {0, 0.01, 0.5}} {
		w := watcher(t, Options{TauS: c.known, NoiseC: 1e-3})
		var last Estimate
		sim{10, 10, 20, 1, 0, 0}.run(t, w, rand.New(rand.NewSource(1)), 40, func(_ float64, st Estimate) bool { last = st; return true })
		if math.Abs(last.EstimateC-10) > c.tolC || math.Abs(last.TauS-20) > c.tolTau {
			t.Errorf("known %g: %+v", c.known, last)
		}
	}
}

func TestStretches(t *testing.T) {
	w := watcher(t, Options{TauS: 10, MaxGapS: 30})
	for _, c := range []struct {
		at, temp float64
		fresh    bool
		err      error
	}{
		{100, 20, true, nil}, {101, 19, false, nil}, {101, 19, false, ErrSameTime},
		{102, math.NaN(), false, ErrSample}, {math.Inf(1), 10, false, ErrSample}, {102, 400, false, ErrSample},
		{131, 18, false, nil}, // exactly MaxGapS is still the same stretch
		{90, 12, true, nil}, {91, 12, false, nil},
		{92, 45, false, nil}, {92, 12, false, ErrSameTime}, {89, 12, true, nil}, // a wild one pending
		{89 + 3*3600, 12, true, nil}, {90 + 3*3600, 12, false, nil}, {89, 12, true, nil}, // hours on, hours back
		{1e300, 12, true, nil}, {-1e308, 12, true, nil}, {1.7e308, 12, true, nil},
	} {
		st, err := w.Add(c.at, c.temp)
		if !errors.Is(err, c.err) || st.NewStretch != c.fresh {
			t.Errorf("at %g: %+v, %v", c.at, st, err)
		}
	}
}

func TestOptions(t *testing.T) {
	for _, o := range []Options{{PrecisionC: -1}, {NoiseC: math.NaN()}, {TauS: -5}, {TauS: math.NaN()}, {MinTauS: 10, MaxTauS: 5}, {MaxGapS: math.Inf(1)}} {
		if _, err := NewFilter(o); !errors.Is(err, ErrArg) {
			t.Errorf("%+v: %v", o, err)
		}
	}
}

// BenchmarkAdd is one sample of a minute at 10 a second.
func BenchmarkAdd(b *testing.B) {
	for _, tauS := range []float64{20, 0} {
		b.Run(map[bool]string{true: "fitted", false: "known"}[tauS == 0], func(b *testing.B) {
			w, err := NewFilter(Options{TauS: tauS})
			if err != nil {
				b.Fatal(err)
			}
			r := rand.New(rand.NewSource(1))
			s := sim{10, 10, 20, 0.1, 0.05, 0}
			b.ReportAllocs()
			for i := range b.N {
				if i%600 == 0 {
					w.Reset()
				}
				at := float64(i%600) * s.dtS
				if _, err := w.Add(at, s.readingC(r, at)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
