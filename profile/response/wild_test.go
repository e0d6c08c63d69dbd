package response

import (
	"math"
	"math/rand"
	"testing"
)

// One wild reading among good ones must not settle the probe, and three samples
// later the estimate must be what it is without the wild one, to its own error.
func TestWildReading(t *testing.T) {
	for _, known := range []bool{true, false} {
		r := rand.New(rand.NewSource(4))
		worst, held := 0.0, 0
		for trial := range 60 {
			s := plainSim(r)
			s.tauS, s.dtS = 20, 1
			wildAt := r.Intn(60)
			if trial < 8 {
				wildAt = trial
			}
			offC := 30.0
			if r.Intn(2) == 0 {
				offC = -30
			}
			good, bad := watcherOf(t, s, known), watcherOf(t, s, known)
			for i := range wildAt + 20 {
				c := s.readingC(r, float64(i))
				a, err := good.Add(float64(i), c)
				if err != nil {
					t.Fatal(err)
				}
				if i == wildAt {
					c += offC
				}
				b, err := bad.Add(float64(i), c)
				if err != nil {
					t.Fatal(err)
				}
				if i == wildAt && b.Settled {
					t.Errorf("known %v: settled by a wild reading at %d", known, wildAt)
				}
				if i == wildAt+1 && wildAt > 0 != b.Wild {
					t.Errorf("known %v: wild at %d: %+v", known, wildAt, b)
				}
				held += one(b.Held)
				if i >= wildAt+3 && a.Fitted {
					e := math.Abs(a.EstimateC-b.EstimateC) / a.ErrC
					worst = max(worst, e)
				}
			}
		}
		t.Logf("tau known %v: at most %.2f ErrC beside the estimate without; %d held", known, worst, held)
		if worst > 3 {
			t.Errorf("tau known %v: %.2f ErrC off", known, worst)
		}
	}
}

// The first reading of a stretch may be the wild one: it goes when the next two
// agree.
func TestWildFirst(t *testing.T) {
	w := watcher(t, Options{TauS: 20})
	var st Estimate
	for i, c := range []float64{45, 12, 11.9, 11.8} {
		var err error
		if st, err = w.Add(100+float64(i), c); err != nil {
			t.Fatal(err)
		}
		if st.Wild != (i == 2) {
			t.Errorf("%d: %+v", i, st)
		}
	}
	// 0.1 C a second with 20 s to go: 2 C below the reading, by the lag equation.
	if math.Abs(st.EstimateC-9.8) > 0.5 {
		t.Errorf("estimate %.2f", st.EstimateC)
	}
}

// A quick probe read seldom jumps from one reading to the next; none of it is
// wild.
func TestQuickProbeIsNotWild(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	for range 150 {
		s := sim{10, spread(r, 1, 15), spread(r, 2, 10), 3, 0.03, 0.0625}
		s.run(t, watcher(t, Options{}), r, 60, func(atS float64, st Estimate) bool {
			if st.Wild || st.Held {
				t.Errorf("%+v at %g: %+v", s, atS, st)
			}
			return true
		})
	}
}

// A probe moved on without Reset is soon no longer called settled, and settles on
// the new water in the end.
func TestMovedWithoutReset(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	for _, stepC := range []float64{0.5, 2, 8} {
		w := watcher(t, Options{TauS: 10})
		c, water := 18.0, 14.0
		late := 0
		var st Estimate
		var err error
		for i := range 300 {
			if i == 100 {
				water -= stepC
			}
			c += (water - c) * -math.Expm1(-1.0/10) // closed form over 1 s
			if st, err = w.Add(float64(i), c+0.02*r.NormFloat64()); err != nil {
				t.Fatal(err)
			}
			if st.Settled && math.Abs(st.EstimateC-water) > 0.15 {
				late = i - 99
			}
		}
		t.Logf("step %g: still called settled for %d s", stepC, late)
		if !st.Settled || late > 6 {
			t.Errorf("step %g: settled for %d s after the move, at last %v", stepC, late, st.Settled)
		}
	}
}
