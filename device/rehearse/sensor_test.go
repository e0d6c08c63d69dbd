package rehearse

import (
	"math"
	"testing"
)

// First-order lag, closed form: 1 - 1/e, 63.2 %, of a step shows after one time constant.
func TestLagInStillWater(t *testing.T) {
	for _, tauS := range []float64{0.5, 8, 60} {
		for _, steps := range []int{1, 7, 1000} { // however the time is cut
			s := sensor{lake: Kettle(), tauS: tauS, speedMps: 1, depthM: 9, targetM: 9, tempC: 24}
			water := s.lake.TempC(9)
			for range steps {
				s.move(tauS / float64(steps))
			}
			if share := (24 - s.tempC) / (24 - water); math.Abs(share-(1-1/math.E)) > 1e-12 {
				t.Errorf("tau %v s in %d steps: %v of the step", tauS, steps, share)
			}
		}
	}
}

// Lowered at v through an even gradient G, the sensor stays G v tau behind the water
// (closed form, for times long against tau).
func TestLagOnAnEvenSlope(t *testing.T) {
	s := sensor{lake: Lake{bottomM: 100, points: []point{{0, 20}, {100, 10}}}, tauS: 2, speedMps: 0.5, targetM: 100}
	for range 200 {
		s.move(0.5)
	}
	if behind := s.tempC - s.lake.TempC(s.depthM); math.Abs(s.depthM-50) > 1e-9 || math.Abs(behind-0.1*0.5*2) > 1e-9 {
		t.Errorf("at %v m %v C behind", s.depthM, behind)
	}
}

// Through every bend, a stop and a turn, against the lag equation itself in steps of
// 0.1 ms (Heun's method, whose error there is far under 1e-6 C).
func TestLagAgainstSmallSteps(t *testing.T) {
	s := sensor{lake: Kettle(), tauS: 3, speedMps: 0.7, tempC: 24}
	plain := 24.0
	depth := 0.0
	const h = 1e-4
	for _, leg := range []struct{ targetM, forS float64 }{{9.4488, 10}, {9.4488, 6}, {2, 4.3}, {5, 2}} {
		s.targetM = leg.targetM
		for range int(leg.forS / 0.5) {
			s.move(0.5)
		}
		s.move(math.Mod(leg.forS, 0.5))
		for range int(math.Round(leg.forS / h)) {
			to := depth + math.Max(-0.7*h, math.Min(0.7*h, leg.targetM-depth))
			a := (s.lake.TempC(depth) - plain) / 3
			b := (s.lake.TempC(to) - (plain + a*h)) / 3
			plain, depth = plain+(a+b)/2*h, to
		}
		if math.Abs(s.tempC-plain) > 1e-5 || math.Abs(s.depthM-depth) > 1e-6 {
			t.Errorf("to %v m: %.7f C at %.6f m, by small steps %.7f C at %.6f m", leg.targetM, s.tempC, s.depthM, plain, depth)
		}
	}
}
