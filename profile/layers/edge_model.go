package layers

import "math"

// edgeModel says where field crews, who go down a column with a thermometer, mark the
// metalimnion's top and bottom. They do not all mark the same places, so it holds the
// chances of each place rather than one answer. They are those of a hazard model:
//
//   - Going down from the first place they take the break to have begun with a chance
//     per metre that rises with the fall, and jumps where the interval is steep. The
//     last place it can begin at is the lower end of the steepest interval.
//   - From there down they go on through steep intervals almost always, and through
//     gentler ones as long as the 2 m of water below still fall.
//
// Both chances per metre are logistic in the logarithm of the fall. The four numbers
// were fitted by maximum likelihood on the marks in 415 lakes of 2007, rounded, and
// checked on those in 428 lakes of 2017 (U.S. EPA, National Lakes Assessments): see
// TestFieldMarks. Years that had no part come out at an overlap of 0.69 and both ends
// within 1 m in 0.835, as random halves of these lakes do: TestFieldMarksByThickness.
//
// Tried without gain, each fitted on one random half of the lakes and shown on the other,
// or on one year and shown on the other: all four numbers fitted anew on both years; the
// fall as a share of the steepest, the fall so far and the fall that is left, the fall of
// the next metre and whether it is steep, the interval's own fall for going on, being the
// steepest interval, the distance from it; other weights of overlap. Likelihood rose by
// some, the overlap by 0.003 and both ends by 0.005 at the most, within what halves differ
// by. What is lost is lost on zones of 1 m, which some crews mark in columns where others
// mark 3 m, and on ponds where the break is called a skin.
//
// Those crews read every metre, and marked the place above the interval that decided.
// In water read more closely nothing is rounded upwards to a metre: a sharp zone from
// 5 to 9 m then comes out at 5.1 to 9.5 m, the bottom half a metre too deep.
//
// A model may be used again: it keeps its memory.
type edgeModel struct {
	quick bool // only shares up to 0.8 of the chances will be asked for

	top, bottom edge
	ahead       []float64
	search      pairSearch
}

// edge holds the chances of either mark. A chance is the difference of what is left
// over at two places: left over at place i is e^-hazard[i].
type edge struct {
	z      []float64 // m, the places, a part of the column's
	hazard []float64 // one each, rising from 0

	total float64 // that of the next
}

// The chances, per metre of water.
const (
	beginLogit  = -3.0 // of the break to begin, where the fall is 0.9 C/m and not steep
	onLogit     = 0.9  // of going on, where the 2 m below fall as fast
	fallLogit   = 1.1  // added for each factor e of the fall
	steepLogit  = 2.7  // added in a steep interval
	stillCPerM  = 0.1  // added to the fall, which may be 0
	aheadM      = 2.0  // how much of the water below counts for going on
	maxHazard   = 30.0 // once no more than e^-30 is left over, nothing deeper counts
	blockSize   = 32   // intervals worked out together
	quickHazard = 2.0  // and blockSize for a quick model
	quickBlock  = 6
)

// apply works out the chances for a column. start is the first place under the skin,
// plane the interval of the steepest rise of density: start <= plane < len(f.fall).
func (c *edgeModel) apply(f *gradients, start, plane int) {
	block, most := blockSize, maxHazard
	if c.quick {
		block, most = quickBlock, quickHazard
	}
	s := &c.top
	s.hazard, s.total = s.hazard[:0], 0
	for i := start; i <= plane && s.total < most; {
		next := min(i+block, plane+1)
		s.add(f, i, f.fall[i:next], 1, beginLogit)
		i = next
	}
	s.finish(f, start)

	s = &c.bottom
	s.hazard, s.total = s.hazard[:0], 0
	last := len(f.z) - 1
	j := plane + 1
	for i := plane; i < last && s.total < most; {
		from := i
		c.ahead = c.ahead[:0]
		for ; i < min(from+block, last); i++ {
			z := f.z[i+1] + aheadM
			for j < last && f.z[j+1] <= z {
				j++
			}
			t := f.t[j]
			if j < last {
				t -= f.fall[j] * (z - f.z[j])
			}
			c.ahead = append(c.ahead, (f.t[i+1]-t)/aheadM)
		}
		s.add(f, from, c.ahead, -1, onLogit)
	}
	s.finish(f, plane)
}

// add adds intervals from i on. A chance p per metre of a mark leaves (1-p)^dz of
// what is left over: with odds e^x of a mark, the hazard grows by dz*log(1+e^x). Of going on
// the odds are the other way round: sign is -1. One loop for each step is twice as
// fast as one for all, since the processor need not wait for the step before.
func (s *edge) add(f *gradients, i int, cPerM []float64, sign, logit float64) {
	n := len(s.hazard)
	s.hazard = append(s.hazard, cPerM...)
	h := s.hazard[n:]
	for j, v := range h {
		h[j] = math.Log(stillCPerM + max(0, v))
	}
	for j, v := range h {
		x := logit + fallLogit*v
		if f.steep(i + j) {
			x += steepLogit
		}
		h[j] = math.Exp(sign * x)
	}
	for j, v := range h {
		h[j] = math.Log(1 + v)
	}
	for j, v := range h {
		h[j] = s.total
		s.total += f.width(i+j) * v
	}
}

// finish gives what is left over to the last place, and the places their depths.
func (s *edge) finish(f *gradients, first int) {
	s.hazard = append(s.hazard, s.total)
	s.z = f.z[first : first+len(s.hazard)]
}

// survival is what is left over before place i; nothing is after the last.
func (s *edge) survival(i int) float64 {
	if i == len(s.hazard) {
		return 0
	}
	return math.Exp(-s.hazard[i])
}

// quantile is where the chances add up to a share, half of a place's own being counted
// above it and half below, and linear between places. (With all of it counted above,
// the half would lie 0.6 m above the crews' marks in the lakes named at edgeModel.)
func (s *edge) quantile(share float64) float64 {
	limit := -math.Log(1 - share)
	last := len(s.hazard) - 1
	i := 0
	for i < last && s.hazard[i+1] < limit {
		i++
	}
	before, after := s.survival(i), s.survival(i+1)
	here := 1 - (before+after)/2
	switch {
	case here >= share && i == 0:
		return s.z[0]
	case here >= share:
		above := 1 - (s.survival(i-1)+before)/2
		return s.z[i-1] + (s.z[i]-s.z[i-1])*(share-above)/(here-above)
	case i == last:
		return s.z[last]
	}
	below := 1 - (after+s.survival(i+2))/2
	return s.z[i] + (s.z[i+1]-s.z[i])*(share-here)/(below-here)
}

// Chances are pooled before a choice where there are many, so that it costs no more in
// a column read every 5 cm, or to 300 m: more than maxBins places go into bins of
// equal height, about so many. The places at either end that have less than rare in
// all are left out.
const (
	maxBins = 32
	rare    = 0.002
)

// bin is a depth and its chance. sum and moment add up the chances of the bins above
// it, and those times their depths.
type bin struct{ z, p, sum, moment float64 }

// bins gathers the chances into bins, with one more at the end for what they all come
// to.
func (s *edge) bins(out []bin) []bin {
	first, last := 0, len(s.hazard)-1
	for least := -math.Log1p(-rare); first < last && s.hazard[first+1] < least; {
		first++
	}
	for most := -math.Log(rare); last > first && s.hazard[last] > most; {
		last--
	}
	height := 0.0
	if last-first >= maxBins {
		height = (s.z[last] - s.z[first]) / maxBins
	}
	left := s.survival(first)
	var all bin
	for i := first; i <= last; {
		from, p, off := s.z[i], 0.0, 0.0
		for next := i; i <= last && (i == next || s.z[i]-from < height-equal); i++ {
			below := s.survival(i + 1)
			p += left - below
			off += (left - below) * (s.z[i] - from)
			left = below
		}
		b := bin{from, p, all.sum, all.moment}
		if p > 0 {
			b.z += off / p
		}
		out = append(out, b)
		all.sum += p
		all.moment += p * b.z
	}
	return append(out, all)
}
