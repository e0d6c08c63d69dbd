package sampling

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// evaluator weighs every mark by how little would be left to know after a reading there.
// Each of the columns that the readings allow may be the true one; a reading at a
// mark keeps those whose temperature there is near to its own. What is left is the
// mean difference between the answers of two columns that a reading there could not
// tell apart, in metres, summed over the answers.
type evaluator struct {
	ensemble *layers.Ensemble
	n        int
	layered  bool
	gapM     float64 // between the two readings around the break
	targets  []target
	loss     []float64 // n by n: how far apart two columns' answers are, all added up
	order    []int
	temps    []float64
}

// answer is one depth that is sought: its interval so far.
type target struct {
	why       Why
	levelC    float64
	low, high float64
	enoughM   float64
	spread    float64 // mean difference of two columns
	loss      []float64
}

// Limits of the weighing.
const (
	members = 128 // columns weighed

	capM     = 2.0  // answers further apart than this are no worse
	sameC    = 0.1  // readings no further apart than this are not told apart, nor
	sameErrs = 3.0  // than so many standard errors,
	fewest   = 6    // unless fewer columns than this are left:
	stray    = 0.05 // further ones are then given this weight
)

// newLook prepares the answers sought: the break first, then the temperatures.
func newEvaluator(c profile.Column, levelsC []float64) *evaluator {
	l, p, n := layers.Find(c), layers.NewEnsemble(c, members), members
	k := &evaluator{ensemble: p, n: n, layered: l.Structure == layers.Layered, order: make([]int, n), loss: make([]float64, n*n)}
	b := target{why: Thermocline, enoughM: thermoclineM}
	if l.Thermocline != nil {
		b.low, b.high = l.Thermocline.Low, l.Thermocline.High
		z := l.Curve.Depths
		below := min(max(sort.SearchFloat64s(z, l.Thermocline.Best), 1), len(z)-1)
		k.gapM = z[below] - z[below-1]
	}
	k.addTarget(b, p.Thermoclines(l.SkinM))
	for _, level := range levelsC {
		at := make([]float64, n)
		for m := range at {
			at[m] = p.Crossing(m, level, 0)
		}
		sorted := slices.Sorted(slices.Values(at))
		k.addTarget(target{why: Isotherm, levelC: level, low: sorted[n/10], high: sorted[n-1-n/10], enoughM: isothermM}, at)
	}
	return k
}

// add adds the differences of one answer.
func (k *evaluator) addTarget(a target, depths []float64) {
	sum := 0.0
	a.loss = make([]float64, len(k.loss))
	for i, x := range depths {
		for j, y := range depths {
			d := math.Abs(x - y)
			switch {
			case math.IsNaN(x) && math.IsNaN(y):
				d = 0
			case math.IsNaN(d):
				d = capM // a break or none
			}
			d = math.Min(d, capM)
			a.loss[i*k.n+j] = d
			k.loss[i*k.n+j] += d
			sum += d
		}
	}
	a.spread = sum / float64(k.n*k.n)
	k.targets = append(k.targets, a)
}

// now is what is left to know without a further reading.
func (k *evaluator) lossNow() float64 {
	sum := 0.0
	for _, a := range k.targets {
		sum += a.spread
	}
	return sum
}

// settled reports whether every answer is known well enough. A thin break can hide
// anywhere between two readings far apart, whatever most lakes do there.
func (k *evaluator) resolved() bool {
	if k.gapM > thinM+1e-6 {
		return false
	}
	for _, a := range k.targets {
		if a.high-a.low > a.enoughM {
			return false
		}
	}
	return true
}

// most gives the answer that a reading at a depth settles most of.
func (k *evaluator) mainTarget(depthM, errC float64) target {
	best, most := k.targets[0], math.Inf(-1)
	for _, a := range k.targets {
		if settles := a.spread - k.lossAfter(a.loss, depthM, errC); settles > most+1e-9 {
			best, most = a, settles
		}
	}
	return best
}

// after is what would be left of a loss after a reading at a depth, with the given
// standard error.
func (k *evaluator) lossAfter(loss []float64, depthM, errC float64) float64 {
	k.temps = k.ensemble.At(depthM, k.temps)
	for i := range k.order {
		k.order[i] = i
	}
	slices.SortFunc(k.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(k.temps[a], k.temps[b]), cmp.Compare(a, b))
	})
	reach := math.Max(sameC, sameErrs*errC)
	sum := 0.0
	for a, i := range k.order {
		weight, left := 1.0, 0.0
		for _, step := range [2]int{-1, 1} {
			for b := a + step; b >= 0 && b < k.n; b += step {
				w := 1 - math.Abs(k.temps[k.order[b]]-k.temps[i])/reach
				if w <= 0 {
					if weight > fewest {
						break
					}
					w = stray
				}
				weight += w
				left += w * loss[i*k.n+k.order[b]]
			}
		}
		sum += left / weight
	}
	return sum / float64(k.n)
}

// best gives the mark between two depths after which least is left to know, and how
// much, and of which answer it settles most. ok is false when every mark was read or
// skipped.
func (k *evaluator) bestMark(in Input, fromM, toM float64) (depthM, left float64, of target, ok bool) {
	points, markM := in.Column.Points(), in.MarkM
	left = math.Inf(1)
	bestC := 0.0
	for i := math.Ceil(fromM/markM - 1e-6); i*markM <= toM+1e-9; i++ {
		z := i * markM
		below := slices.IndexFunc(points, func(p profile.Point) bool { return p.DepthM > z-markM+1e-6 })
		if below < 0 || points[below].DepthM < z+markM-1e-6 {
			continue // read, or below the deepest reading
		}
		if in.skips(z) {
			continue
		}
		if l := k.lossAfter(k.loss, z, points[below].ErrC); l < left-1e-9 {
			depthM, left, bestC, ok = z, l, points[below].ErrC, true
		}
	}
	if ok {
		of = k.mainTarget(depthM, bestC)
	}
	return depthM, left, of, ok
}
