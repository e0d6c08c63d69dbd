package layers

import "math/rand/v2"

// perturbation is how a member of the ensemble is read where definitions leave room: the
// interval of a break is to hold what a close column says, and that depends on how close
// its readings are and where the first of them lies; crews do not all mark the same places; the warm water is not quite even. How much room was chosen on the dense
// columns of two lakes and a reservoir (Paul, Peter and Beaverdam), so that 80 %
// intervals hold about 80 % of their answers.
type perturbation struct {
	step        float64 // m, between close readings
	phase       float64 // of a step, where the first of them lies
	place       float64 // of the break in the steepest step
	top, bottom float64 // share of the crews that have marked
	shift       float64 // how far off depths are, in standard errors
	uneven      float64 // of the warm water, in standard deviations
}

func newPerturbation(rng *rand.Rand) perturbation {
	return perturbation{
		step: 0.3 + 0.5*rng.Float64(), phase: rng.Float64(), place: 0.25 + 0.5*rng.Float64(),
		top: 0.2 + 0.6*rng.Float64(), bottom: 0.2 + 0.6*rng.Float64(),
		shift: rng.NormFloat64(), uneven: rng.NormFloat64(),
	}
}

// thermocline gives the break that close readings find, at or below fromM. rho is what
// cumulativeRise gives.
func (h perturbation) thermocline(f *gradients, rho []float64, fromM float64) (depthM float64, ok bool) {
	z, n := f.z, len(f.z)
	from, end := max(z[0], fromM), z[n-1]
	i := 0
	at := func(x float64) float64 {
		for i+2 < n && z[i+1] <= x {
			i++
		}
		return rho[i] + f.rise[i]*(x-z[i])
	}
	most, best := equal, 0.0
	above, before := from, at(from)
	for x := from + h.phase*h.step; above < end-equal; x += h.step {
		if x-above < h.step/2 && x < end {
			continue // the first reading is at the top itself
		}
		if x > end-h.step/2 {
			x = end // the last is at the bottom
		}
		v := at(x)
		if r := v - before; r > most*(1+equal)*(x-above) {
			most, best, ok = r/(x-above), above+h.place*(x-above), true
		}
		above, before = x, v
	}
	return best, ok
}
