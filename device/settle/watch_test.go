package settle

import (
	"errors"
	"math"
	"math/rand"
	"testing"
)

// sim is a simulated probe: a step into still water, first-order lag, noise.
type sim struct{ waterC, stepC, tauS, dtS, noiseC float64 }

func randomSim(r *rand.Rand) sim {
	s := sim{
		waterC: 4 + 18*r.Float64(), stepC: 30*r.Float64() - 15,
		tauS: 5 * math.Pow(24, r.Float64()), dtS: 0.5 * math.Pow(10, r.Float64()), noiseC: 0.05,
	}
	return s
}

// run feeds w to untilS and calls see after each sample.
func (s sim) run(t *testing.T, w *Watcher, r *rand.Rand, untilS float64, see func(atS float64, st State) bool) {
	t.Helper()
	for i := 0; ; i++ {
		at := float64(i) * s.dtS
		if at > untilS+1e-9 {
			return
		}
		y := s.waterC + s.stepC*math.Exp(-at/s.tauS) + s.noiseC*r.NormFloat64()
		st, err := w.Add(at, y)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range []float64{st.EstimateC, st.ErrC, st.LeftS, st.TauS} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v at %g: %+v", s, at, st)
			}
		}
		if !see(at, st) {
			return
		}
	}
}

func watcher(t *testing.T, o Options) *Watcher {
	t.Helper()
	w, err := NewWatcher(o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestExactLag(t *testing.T) {
	// Without noise the fit must return the water, tau known or not.
	for _, c := range []struct{ known, tolC, tolTau float64 }{{20, 1e-6, 0}, {0, 0.01, 0.5}} {
		w := watcher(t, Options{TauS: c.known, NoiseC: 1e-3})
		var last State
		sim{10, 10, 20, 1, 0}.run(t, w, rand.New(rand.NewSource(1)), 40, func(_ float64, st State) bool { last = st; return true })
		if math.Abs(last.EstimateC-10) > c.tolC || math.Abs(last.TauS-20) > c.tolTau {
			t.Errorf("known %g: %+v", c.known, last)
		}
	}
}

func TestEarlyEstimate(t *testing.T) {
	// Within 0.1 C after three time constants in at least 95 % of cases, and
	// the stated error must cover: |error| < 2 ErrC in at least 90 %.
	const trials = 1500
	for _, known := range []bool{true, false} {
		r := rand.New(rand.NewSource(7))
		good, covered := 0, 0
		for range trials {
			s := randomSim(r)
			o := Options{}
			if known {
				o.TauS = s.tauS
			}
			var last State
			s.run(t, watcher(t, o), r, 3*s.tauS, func(_ float64, st State) bool { last = st; return true })
			e := math.Abs(last.EstimateC - s.waterC)
			if e <= 0.1 {
				good++
			}
			if e <= 2*last.ErrC {
				covered++
			}
		}
		share, cover := float64(good)/trials, float64(covered)/trials
		t.Logf("tau known %v: within 0.1 C %.1f %%, inside 2 ErrC %.1f %%", known, 100*share, 100*cover)
		if share < 0.95 || cover < 0.90 {
			t.Errorf("tau known %v: share %.3f, cover %.3f", known, share, cover)
		}
	}
}

func TestSettled(t *testing.T) {
	// At the moment of settling the true lag must be within the precision
	// (0.05 C) in at least 95 %, and settling must come within 20 time
	// constants or 400 s beyond them.
	const trials = 600
	for _, known := range []bool{true, false} {
		r := rand.New(rand.NewSource(11))
		early, never, sumK, left := 0, 0, 0.0, 0
		for range trials {
			s := randomSim(r)
			o := Options{}
			if known {
				o.TauS = s.tauS
			}
			done, asked := -1.0, -1.0
			s.run(t, watcher(t, o), r, 20*s.tauS+400, func(at float64, st State) bool {
				if asked < 0 && at >= 2*s.tauS {
					asked = at + st.LeftS
				}
				if st.Settled {
					done = at
				}
				return !st.Settled
			})
			if done < 0 {
				never++
				continue
			}
			if math.Abs(s.stepC)*math.Exp(-done/s.tauS) > 0.05 {
				early++
			}
			if asked > 0.5*done && asked < 2*done {
				left++
			}
			sumK += done / s.tauS
		}
		t.Logf("tau known %v: early %d, never %d of %d, mean %.1f tau; LeftS within a factor of 2: %d", known, early, never, trials, sumK/trials, left)
		if early > trials/20 || never > 0 {
			t.Errorf("tau known %v: early %d never %d", known, early, never)
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
		if _, err := NewWatcher(o); !errors.Is(err, ErrArg) {
			t.Errorf("%+v: %v", o, err)
		}
	}
}
