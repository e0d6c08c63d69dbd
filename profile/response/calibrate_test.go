package response

import (
	"math"
	"math/rand"
	"testing"
)

// smallSim draws steps that noise can hide at the start of a slow lag.
func smallSim(r *rand.Rand) sim {
	s := wideSim(r)
	s.stepC, s.tauS, s.dtS = 0.2+0.5*r.Float64(), 20+40*r.Float64(), max(s.dtS, 0.5)
	return s
}

// share is in per cent: of estimates within 0.1 C of the water, and of those
// within one and two of their stated errors.
type share struct{ near, in1, in2 int }

// TestCalibration prints how near the estimate is after 0.7 to 3 time constants
// and how often its stated error holds (a normal one in 68 and 95 %), how often
// Settled is said while the reading without its noise, or the estimate, is more
// than 0.15 C from the water (1 % may be), and how often the forecast LeftS made
// after two time constants is right within a factor of 2. Every probe must settle
// at last. The floors are what was reached, so what makes a figure worse fails.
func TestCalibration(t *testing.T) {
	ks := [5]float64{0.7, 1, 1.5, 2, 3}
	for _, c := range []struct {
		name     string
		draw     func(*rand.Rand) sim
		known    bool
		floors   [5]share
		forecast int
	}{
		{"plain, tau known", plainSim, true, [5]share{{78, 69, 95}, {89, 61, 93}, {97, 65, 94}, {100, 62, 94}, {100, 67, 94}}, 100},
		{"plain, tau fitted", plainSim, false, [5]share{{13, 83, 98}, {28, 75, 96}, {51, 72, 97}, {85, 72, 99}, {98, 66, 96}}, 97},
		{"wide, tau known", wideSim, true, [5]share{{89, 75, 95}, {95, 68, 98}, {99, 75, 96}, {100, 65, 95}, {100, 72, 94}}, 99},
		{"wide, tau fitted", wideSim, false, [5]share{{37, 89, 96}, {50, 85, 100}, {72, 87, 97}, {83, 77, 95}, {95, 80, 98}}, 96},
		{"small and slow, tau fitted", smallSim, false, [5]share{{47, 85, 95}, {64, 89, 96}, {83, 83, 99}, {95, 76, 97}, {99, 73, 95}}, 96},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			trials := 120
			if testing.Short() {
				trials = 30
			}
			r := rand.New(rand.NewSource(1))
			var near, in1, in2 [5]int
			early, off, never, asked, good, sumTau := 0, 0, 0, 0, 0, 0.0
			for range trials {
				s := c.draw(r)
				var at [5]Estimate // the last up to each of ks
				done, forecast := -1.0, -1.0
				s.run(t, watcherOf(t, s, c.known), r, 20*s.tauS+400, func(atS float64, st Estimate) bool {
					for i, k := range ks {
						if atS <= k*s.tauS+1e-9 {
							at[i] = st
						}
					}
					if done < 0 && st.Settled {
						done = atS
						early += one(s.lagC(atS) > 0.15)
						off += one(math.Abs(st.EstimateC-s.waterC) > 0.15)
					}
					if done < 0 && forecast < 0 && atS >= 2*s.tauS {
						forecast = atS + st.LeftS
					}
					return done < 0 || atS < 3*s.tauS
				})
				for i, st := range at {
					e := math.Abs(st.EstimateC - s.waterC)
					near[i] += one(e <= 0.1)
					in1[i] += one(e <= st.ErrC)
					in2[i] += one(e <= 2*st.ErrC)
				}
				never += one(done < 0)
				sumTau += done / s.tauS
				if forecast >= 0 {
					asked++
					good += one(forecast > 0.5*done && forecast < 2*done)
				}
			}
			for i, k := range ks {
				got := share{100 * near[i] / trials, 100 * in1[i] / trials, 100 * in2[i] / trials}
				t.Logf("%.1f tau: within 0.1 C %3d %%, inside 1 ErrC %3d %%, inside 2 ErrC %3d %%", k, got.near, got.in1, got.in2)
				f := c.floors[i]
				if !testing.Short() && (got.near < f.near || got.in1 < f.in1 || got.in2 < f.in2) {
					t.Errorf("%.1f tau: %+v, floor %+v", k, got, f)
				}
			}
			t.Logf("settled after %.1f tau; reading off %d, estimate off %d, never %d of %d; LeftS good %d of %d",
				sumTau/float64(trials), early, off, never, trials, good, asked)
			if most := (trials + 99) / 100; early > most || off > most || never > 0 {
				t.Errorf("reading off %d, estimate off %d, at most %d; never %d", early, off, most, never)
			}
			if got := 100 * good / asked; !testing.Short() && got < c.forecast {
				t.Errorf("LeftS good in %d %%, floor %d %%", got, c.forecast)
			}
		})
	}
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
