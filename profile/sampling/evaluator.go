package sampling

import (
	"math"
	"slices"
	"sort"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// evaluator weighs every mark by how little would be left to know after a reading there.
// Each member of the ensemble may be the true column; a reading at a mark keeps those
// whose temperature there is near to its own. What is left is the mean difference between
// the targets' depths in two members that a reading there could not tell apart, in
// metres, summed over the targets.
type evaluator struct {
	ensemble *layers.Ensemble
	layered  bool
	gapM     float64 // between the two readings around the break
	targets  []target
	loss     []float64 // members by members: how far apart two of them are, all targets added up

	order  []int // the members by their temperature at the depth last looked at
	temps  []float64
	sorted []float64 // those temperatures in that order
}

// target is one depth that is sought: its interval so far.
type target struct {
	why       Why
	levelC    float64
	low, high float64
	enoughM   float64
	spread    float64 // mean difference of two members
	loss      []float64
}

// Limits of the weighing.
const (
	members = 128 // of the ensemble that is weighed

	capM     = 2.0  // depths further apart than this are no worse
	sameC    = 0.1  // readings no further apart than this are not told apart, nor
	sameErrs = 3.0  // than so many standard errors,
	fewest   = 6    // unless fewer members than this are left:
	stray    = 0.05 // further ones are then given this weight
)

// newEvaluator prepares the targets: the break first, then the temperatures. The column
// has at least two depths.
func newEvaluator(c profile.Column, levelsC []float64) *evaluator {
	l := layers.Find(c, layers.Members(members))
	k := &evaluator{
		ensemble: l.Ensemble, layered: l.Structure == layers.Layered,
		loss: make([]float64, members*members), order: make([]int, members), sorted: make([]float64, members),
	}
	for i := range k.order {
		k.order[i] = i
	}
	b := target{why: Thermocline, enoughM: thermoclineM}
	if l.Thermocline != nil {
		b.low, b.high = l.Thermocline.Low, l.Thermocline.High
		z := l.Curve.Depths
		below := min(max(sort.SearchFloat64s(z, l.Thermocline.Best), 1), len(z)-1)
		k.gapM = z[below] - z[below-1]
	}
	k.addTarget(b, l.Ensemble.Thermoclines(l.SkinM))
	for _, level := range levelsC {
		at := make([]float64, members)
		for m := range at {
			at[m] = l.Ensemble.Crossing(m, level, 0)
		}
		sorted := slices.Sorted(slices.Values(at))
		k.addTarget(target{why: Isotherm, levelC: level, low: sorted[members/10], high: sorted[members-1-members/10], enoughM: isothermM}, at)
	}
	return k
}

// addTarget adds a target and how far apart the members' depths of it are; NaN is a member
// without it.
func (k *evaluator) addTarget(t target, depths []float64) {
	t.loss = make([]float64, len(k.loss))
	for i, x := range depths {
		for j, y := range depths[:i] {
			d := math.Abs(x - y)
			if math.IsNaN(d) { // a break or none
				d = capM
				if math.IsNaN(x) && math.IsNaN(y) {
					d = 0
				}
			}
			d = min(d, capM)
			t.loss[i*members+j], t.loss[j*members+i] = d, d
		}
	}
	sum := 0.0
	for i, d := range t.loss {
		k.loss[i] += d
		sum += d
	}
	t.spread = sum / float64(members*members)
	k.targets = append(k.targets, t)
}

// lossNow is what is left to know without a further reading.
func (k *evaluator) lossNow() float64 {
	sum := 0.0
	for _, t := range k.targets {
		sum += t.spread
	}
	return sum
}

// resolved reports whether every target is known well enough. A thin break can hide
// anywhere between two readings far apart, whatever most lakes do there.
func (k *evaluator) resolved() bool {
	if k.gapM > thinM+1e-6 {
		return false
	}
	for _, t := range k.targets {
		if t.high-t.low > t.enoughM {
			return false
		}
	}
	return true
}

// mainTarget gives the target of which a reading at a depth would settle most.
func (k *evaluator) mainTarget(depthM, errC float64) target {
	best, most := k.targets[0], math.Inf(-1)
	for _, t := range k.targets {
		if settles := t.spread - k.lossAfter(t.loss, depthM, errC); settles > most+1e-9 {
			best, most = t, settles
		}
	}
	return best
}

// lossAfter is what would be left of a loss after a reading at a depth, with the given
// standard error.
func (k *evaluator) lossAfter(loss []float64, depthM, errC float64) float64 {
	k.temps = k.ensemble.At(depthM, k.temps)
	k.sort()
	reach := math.Max(sameC, sameErrs*errC)
	// Two members are as near to each other one way as the other: each pair is weighed
	// once, and added to what is colder than one and to what is warmer than the other.
	var colder, warmer [members]struct{ weight, left float64 }
	var end [members]int // the first of the warmer members that is not near
	for a, i := range k.order {
		row, here, b := loss[i*members:(i+1)*members], k.sorted[a], a+1
		weights, lefts := 0.0, 0.0
		for ; b < members; b++ {
			w := 1 - (k.sorted[b]-here)/reach
			if w <= 0 {
				break
			}
			left := w * row[k.order[b]]
			weights += w
			lefts += left
			colder[b].weight += w
			colder[b].left += left
		}
		warmer[a].weight, warmer[a].left, end[a] = weights, lefts, b
	}
	sum, start := 0.0, 0
	for a, i := range k.order {
		row := loss[i*members : (i+1)*members]
		for end[start] <= a {
			start++ // to the first member that is near
		}
		weight, left := 1+colder[a].weight, colder[a].left
		for b := start - 1; b >= 0 && weight <= fewest; b-- {
			weight += stray
			left += stray * row[k.order[b]]
		}
		weight += warmer[a].weight
		left += warmer[a].left
		for b := end[a]; b < members && weight <= fewest; b++ {
			weight += stray
			left += stray * row[k.order[b]]
		}
		sum += left / weight
	}
	return sum / members
}

// sort puts the members in the order of their temperatures, those of one temperature in
// their own. From one mark to the next the order changes little, so that each is inserted
// near to where it was.
func (k *evaluator) sort() {
	for a := 1; a < len(k.order); a++ {
		i, b := k.order[a], a
		for ; b > 0; b-- {
			above := k.order[b-1]
			if d := k.temps[above] - k.temps[i]; d < 0 || d == 0 && above < i {
				break
			}
			k.order[b] = above
		}
		k.order[b] = i
	}
	for a, i := range k.order {
		k.sorted[a] = k.temps[i]
	}
}

// bestMark gives the mark between two depths after which least is left to know, and how
// much, and the target of which it settles most. ok is false when every mark was read or
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
