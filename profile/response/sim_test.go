package response

import (
	"math"
	"math/rand"
	"testing"
)

// sim is a simulated probe: a step into still water, first-order lag, noise,
// and the step of its digits (0 for none).
type sim struct{ waterC, stepC, tauS, dtS, noiseC, stepOfDigitsC float64 }

// plainSim draws large steps, seen with the noise that a Filter assumes.
func plainSim(r *rand.Rand) sim {
	return sim{
		waterC: 4 + 18*r.Float64(), stepC: 30*r.Float64() - 15,
		tauS: spread(r, 5, 120), dtS: spread(r, 0.5, 5), noiseC: 0.05,
	}
}

// wideSim draws all that a probe may do: steps of 0.1 to 15 C, time constants
// of 2 to 60 s, noise of 0.01 to 0.1 C, 0.3 to 10 readings a second, half of
// them in the sixteenths of a degree of common sensors.
func wideSim(r *rand.Rand) sim {
	s := sim{
		waterC: 4 + 18*r.Float64(), stepC: spread(r, 0.1, 15),
		tauS: spread(r, 2, 60), dtS: 1 / spread(r, 0.3, 10), noiseC: spread(r, 0.01, 0.1),
	}
	if r.Intn(2) == 0 {
		s.stepC = -s.stepC
	}
	if r.Intn(2) == 0 {
		s.stepOfDigitsC = 0.0625
	}
	return s
}

// spread draws from lo to hi, each octave as likely as the next.
func spread(r *rand.Rand, lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }

// lagC is how far the reading without noise is from the water.
func (s sim) lagC(atS float64) float64 { return math.Abs(s.stepC) * math.Exp(-atS/s.tauS) }

func (s sim) readingC(r *rand.Rand, atS float64) float64 {
	c := s.waterC + s.stepC*math.Exp(-atS/s.tauS) + s.noiseC*r.NormFloat64()
	if s.stepOfDigitsC > 0 {
		c = s.stepOfDigitsC * math.Round(c/s.stepOfDigitsC)
	}
	return c
}

// run feeds w to untilS and calls see after each sample, until it is false.
func (s sim) run(t *testing.T, w *Filter, r *rand.Rand, untilS float64, see func(atS float64, st Estimate) bool) {
	t.Helper()
	for i := 0; ; i++ {
		at := float64(i) * s.dtS
		if at > untilS+1e-9 {
			return
		}
		st, err := w.Add(at, s.readingC(r, at))
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

func watcher(t *testing.T, o Options) *Filter {
	t.Helper()
	w, err := NewFilter(o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// watcherOf knows the time constant of s or has to fit it.
func watcherOf(t *testing.T, s sim, known bool) *Filter {
	t.Helper()
	o := Options{}
	if known {
		o.TauS = s.tauS
	}
	return watcher(t, o)
}
