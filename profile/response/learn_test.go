package response

import (
	"math"
	"math/rand"
	"slices"
	"testing"
)

// A probe of unknown time constant is read at some depths of a lake, after the
// air. What the first depths teach must shorten the wait in the layers where
// one depth is as warm as the next, at no cost in false acceptance, and the
// estimate after one time constant must keep its stated error.
func TestLearnsFromDepthToDepth(t *testing.T) {
	t.Parallel()
	drops := 30
	if testing.Short() {
		drops = 6
	}
	r := rand.New(rand.NewSource(14))
	var learned, alone []float64 // waits in the mixed layer, in time constants
	early, readings, steps, near, in2 := 0, 0, 0, 0, 0
	for range drops {
		tau, dt := spread(r, 5, 60), spread(r, 0.5, 2)
		w := watcher(t, Options{})
		atS, c := 1000.0, 30.0
		wait := func(w *Filter, c, waterC float64) (waitS, endC float64) {
			for i := 0; ; i++ {
				s := float64(i) * dt
				now := waterC + (c-waterC)*math.Exp(-s/tau) // closed form
				st, err := w.Add(atS+s, math.Round((now+0.03*r.NormFloat64())*16)/16)
				if err != nil || s > 20*tau+600 {
					t.Fatalf("tau %g: %+v, %v", tau, st, err)
				}
				if steep := math.Abs(waterC-c) > 1 && c < 25; steep && s >= tau && s < tau+dt {
					steps++
					near += one(math.Abs(st.EstimateC-waterC) <= 0.1)
					in2 += one(math.Abs(st.EstimateC-waterC) <= 2*st.ErrC)
				}
				if st.Settled {
					readings++
					early += one(math.Abs(now-waterC) > 0.15)
					return s, now
				}
			}
		}
		for _, depthM := range []float64{0, 1, 2, 6, 8} {
			water := alderKettle(depthM)
			s, end := wait(w, c, water)
			if depthM == 1 || depthM == 2 {
				learned = append(learned, s/tau)
				s, _ := wait(watcher(t, Options{}), c, water)
				alone = append(alone, s/tau)
			}
			atS, c = atS+s+10, end
			w.Reset()
		}
	}
	slices.Sort(learned)
	slices.Sort(alone)
	a, b := learned[len(learned)/2], alone[len(alone)/2]
	t.Logf("wait in the mixed layer: %.1f tau, with a fresh Filter %.1f; early %d of %d", a, b, early, readings)
	t.Logf("after one tau of steps over 1 C: within 0.1 C %d, inside 2 ErrC %d of %d", near, in2, steps)
	if a > 0.6*b || early > readings/100 || in2 < steps*9/10 || steps < drops {
		t.Errorf("wait %.1f tau, alone %.1f; early %d of %d; inside %d of %d", a, b, early, readings, in2, steps)
	}
}
