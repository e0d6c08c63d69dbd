package layers

import "math"

// crew stands for the people who go down a column with a thermometer and mark where
// its break begins and ends. Where temperature falls they do not all mark the same
// places, so a crew holds the chances of each place rather than one answer:
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
// TestCrews. Years that had no part come out at an overlap of 0.69 and both ends within 1
// m in 0.835, as random halves of these lakes do: TestCrewsByThickness.
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
// A crew may be used again: it keeps its memory.
type crew struct {
	quick bool // only shares up to 0.8 of the chances will be asked for

	top, bottom side
	ahead       []float64
	choice      choice
}

// side holds the chances of either mark. A chance is the difference of what is left
// over at two places: left over at place i is e^-h[i].
type side struct {
	z []float64 // m, the places, a part of the column's
	h []float64 // one each, rising from 0

	sum float64 // h of the next
}

// The crew's chances, per metre of water.
const (
	beginLogit  = -3.0 // of the break to begin, where the fall is 0.9 C/m and not steep
	onLogit     = 0.9  // of going on, where the 2 m below fall as fast
	fallLogit   = 1.1  // added for each factor e of the fall
	steepLogit  = 2.7  // added in a steep interval
	stillCPerM  = 0.1  // added to the fall, which may be 0
	aheadM      = 2.0  // how much of the water below counts for going on
	spent       = 30.0 // once no more than e^-30 is left over, nothing deeper counts
	atOnce      = 32   // intervals worked out together
	quickSpent  = 2.0  // and atOnce for a quick crew
	quickAtOnce = 6
)

// marks works out the chances for a column. start is the first place under the skin,
// plane the interval of the steepest rise of density: start <= plane < len(f.fall).
func (c *crew) marks(f *falls, start, plane int) {
	atOnce, spent := atOnce, spent
	if c.quick {
		atOnce, spent = quickAtOnce, quickSpent
	}
	s := &c.top
	s.h, s.sum = s.h[:0], 0
	for i := start; i <= plane && s.sum < spent; {
		next := min(i+atOnce, plane+1)
		s.grow(f, i, f.fall[i:next], 1, beginLogit)
		i = next
	}
	s.end(f, start)

	s = &c.bottom
	s.h, s.sum = s.h[:0], 0
	last := len(f.z) - 1
	j := plane + 1
	for i := plane; i < last && s.sum < spent; {
		from := i
		c.ahead = c.ahead[:0]
		for ; i < min(from+atOnce, last); i++ {
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
		s.grow(f, from, c.ahead, -1, onLogit)
	}
	s.end(f, plane)
}

// grow adds intervals from i on. A chance p per metre of a mark leaves (1-p)^dz of
// what is left over: with odds e^x of a mark, h grows by dz*log(1+e^x). Of going on
// the odds are the other way round: sign is -1. One loop for each step is twice as
// fast as one for all, since the processor need not wait for the step before.
func (s *side) grow(f *falls, i int, cPerM []float64, sign, logit float64) {
	n := len(s.h)
	s.h = append(s.h, cPerM...)
	h := s.h[n:]
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
		h[j] = s.sum
		s.sum += f.width(i+j) * v
	}
}

// end gives what is left over to the last place, and the places their depths.
func (s *side) end(f *falls, first int) {
	s.h = append(s.h, s.sum)
	s.z = f.z[first : first+len(s.h)]
}

// left is what is left over before place i; nothing is after the last.
func (s *side) left(i int) float64 {
	if i == len(s.h) {
		return 0
	}
	return math.Exp(-s.h[i])
}

// chance is the chance of place i.
func (s *side) chance(i int) float64 { return s.left(i) - s.left(i+1) }

// depth is where the chances add up to a share, half of a place's own being counted
// above it and half below, and linear between places. (With all of it counted above,
// the half would lie 0.6 m above the crews' marks in the lakes named at crew.)
func (s *side) depth(share float64) float64 {
	limit := -math.Log(1 - share)
	last := len(s.h) - 1
	i := 0
	for i < last && s.h[i+1] < limit {
		i++
	}
	before, after := s.left(i), s.left(i+1)
	here := 1 - (before+after)/2
	switch {
	case here >= share && i == 0:
		return s.z[0]
	case here >= share:
		above := 1 - (s.left(i-1)+before)/2
		return s.z[i-1] + (s.z[i]-s.z[i-1])*(share-above)/(here-above)
	case i == last:
		return s.z[last]
	}
	below := 1 - (after+s.left(i+2))/2
	return s.z[i] + (s.z[i+1]-s.z[i])*(share-here)/(below-here)
}

// stops are the depths by which half the crews have marked the top and the bottom.
func (c *crew) stops() (topM, bottomM float64) {
	return c.top.depth(0.5), c.bottom.depth(0.5)
}

// range80 gives the depths by which 10 % and 90 % of the crews have marked the top,
// and the bottom.
func (c *crew) range80() (top, bottom [2]float64) {
	return [2]float64{c.top.depth(0.1), c.top.depth(0.9)}, [2]float64{c.bottom.depth(0.1), c.bottom.depth(0.9)}
}

// Chances are pooled before a choice where there are many, so that it costs no more in
// a column read every 5 cm, or to 300 m: more than binsAtMost places go into bins of
// equal height, about so many. The places at either end that have less than rare in
// all are left out.
const (
	binsAtMost = 32
	rare       = 0.002
)

// bin is a depth and its chance. sum and moment add up the chances of the bins above
// it, and those times their depths.
type bin struct{ z, p, sum, moment float64 }

// pool gathers the chances into bins, with one more at the end for what they all come
// to.
func (s *side) pool(out []bin) []bin {
	first, last := 0, len(s.h)-1
	for least := -math.Log1p(-rare); first < last && s.h[first+1] < least; {
		first++
	}
	for most := -math.Log(rare); last > first && s.h[last] > most; {
		last--
	}
	height := 0.0
	if last-first >= binsAtMost {
		height = (s.z[last] - s.z[first]) / binsAtMost
	}
	left := s.left(first)
	var all bin
	for i := first; i <= last; {
		from, p, off := s.z[i], 0.0, 0.0
		for next := i; i <= last && (i == next || s.z[i]-from < height-equal); i++ {
			below := s.left(i + 1)
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
