package layers

import "math"

// What a pair of depths is worth to a crew: a share for how much of the two zones is
// in both (their intersection over their union), the rest if both ends lie within a
// metre of the crew's.
const (
	overlapWorth = 0.4
	nearM        = 1.0
)

// candidate is a depth that may be chosen. As a top it counts the bins at or above it,
// as a bottom those above it; first to last-1 are the bins within a metre of it.
type candidate struct {
	z             float64
	tops, bottoms int
	first, last   int
}

// pairSearch is the memory of one choice.
type pairSearch struct {
	tops, bottoms       []bin       // and one more at the end of each, with the sums
	above, below        []candidate // the depths that may be chosen
	outer, inner, agree []float64
	up, down            []float64
}

// choose gives the top and bottom, around the thermocline, that are worth most on
// average to all crews; the first of such pairs. The depths are those of the bins and
// halfway between them; where there are none, the thermocline itself.
//
// A crew's zone T to B overlaps the zone t to b in one of four ways, and in each the
// sum over all T and B falls apart into sums worked out before:
//
//	T <= t, B >= b: (b-t) * sum of 1/(B-T)
//	T <= t, B <  b: sum of 1/(b-T) * sum of (B-t)
//	T >  t, B >= b: sum of (b-T) * sum of 1/(B-t)
//	T >  t, B <  b: sum of (B-T) / (b-t)
//
// so that the choice is that of the plain search through all pairs of both.
func (c *edgeModel) choose(thermoclineM float64) (topM, bottomM float64) {
	x := &c.search
	x.tops, x.bottoms = c.top.bins(x.tops[:0]), c.bottom.bins(x.bottoms[:0])
	n, m := len(x.tops)-1, len(x.bottoms)-1
	tops, bottoms := x.tops[:n], x.bottoms[:m]
	x.above = candidates(x.above[:0], tops, tops, bottoms, math.Inf(-1), thermoclineM, true)
	x.below = candidates(x.below[:0], bottoms, tops, bottoms, thermoclineM, math.Inf(1), false)
	x.tables(tops, bottoms)

	topM, bottomM = thermoclineM, thermoclineM
	best := 0.0
	row := m + 1
	up := zeros(&x.up, len(x.below)) // sum of 1/(b-T) over T <= t, for every b
	down := zeros(&x.down, row)      // sum of 1/(B-t) over B >= b, for every b
	i := 0
	for _, t := range x.above {
		for ; i < t.tops; i++ {
			for at, b := range x.below {
				if b.z > tops[i].z {
					up[at] += tops[i].p / (b.z - tops[i].z)
				}
			}
		}
		for j := m - 1; j >= 0 && bottoms[j].z > t.z; j-- {
			down[j] = down[j+1] + bottoms[j].p/(bottoms[j].z-t.z)
		}
		above, high := x.tops[t.tops], x.bottoms[t.bottoms]
		for at, b := range x.below {
			if b.z <= t.z {
				continue
			}
			here, low := x.tops[b.tops], x.bottoms[b.bottoms]
			tall := (low.moment - high.moment) - t.z*(low.sum-high.sum)
			deep := b.z*(here.sum-above.sum) - (here.moment - above.moment)
			j := t.tops*row + b.bottoms
			worth := overlapWorth * ((b.z-t.z)*x.outer[j] + up[at]*tall + deep*down[b.bottoms] + x.inner[j]/(b.z-t.z))
			last, first := x.agree[t.last*row:], x.agree[t.first*row:]
			worth += (1 - overlapWorth) * (last[b.last] - last[b.first] - first[b.last] + first[b.first])
			if worth > best+equal {
				best, topM, bottomM = worth, t.z, b.z
			}
		}
	}
	return topM, bottomM
}

// tables adds up over pairs of a top i and a bottom j under it: in row i, column j,
// outer over the tops before i and bottoms from j on, inner over the tops from i on
// and bottoms before j, agree over the tops and bottoms before both.
func (x *pairSearch) tables(tops, bottoms []bin) {
	n, m := len(tops), len(bottoms)
	row := m + 1
	outer, inner, agree := zeros(&x.outer, (n+1)*row), zeros(&x.inner, (n+1)*row), zeros(&x.agree, (n+1)*row)
	for i, t := range tops {
		var sum, pairs float64
		for j := m - 1; j >= 0; j-- {
			if b := bottoms[j]; b.z > t.z {
				sum += t.p * b.p / (b.z - t.z)
			}
			outer[(i+1)*row+j] = outer[i*row+j] + sum
		}
		for j, b := range bottoms {
			if b.z > t.z {
				pairs += t.p * b.p
			}
			agree[(i+1)*row+j+1] = agree[i*row+j+1] + pairs
		}
	}
	for i := n - 1; i >= 0; i-- {
		sum, t := 0.0, tops[i]
		for j, b := range bottoms {
			sum += t.p * b.p * max(0, b.z-t.z)
			inner[i*row+j+1] = inner[(i+1)*row+j+1] + sum
		}
	}
}

// zeros are n zeros, in the memory at v.
func zeros(v *[]float64, n int) []float64 {
	if cap(*v) < n {
		*v = make([]float64, n)
	}
	*v = (*v)[:n]
	clear(*v)
	return *v
}

// candidates lists the depths of bins, and halfway between them, that lie from low to
// high. Tops and bottoms at that depth are counted when level is true.
func candidates(out []candidate, of, tops, bottoms []bin, low, high float64, level bool) []candidate {
	var c candidate
	add := func(z float64) {
		if z < low-equal || z > high+equal {
			return
		}
		c.z = max(low, min(high, z))
		c.tops, c.bottoms = count(tops, c.tops, c.z, level), count(bottoms, c.bottoms, c.z, level)
		c.first, c.last = count(of, c.first, c.z-nearM-equal, false), count(of, c.last, c.z+nearM+equal, true)
		out = append(out, c)
	}
	for i, b := range of {
		if i > 0 {
			add((of[i-1].z + b.z) / 2)
		}
		add(b.z)
	}
	if len(out) == 0 {
		add(max(low, min(high, of[0].z)))
	}
	return out
}

// count goes on from the first n bins over those above z, and those at z when level is
// true.
func count(bins []bin, n int, z float64, level bool) int {
	for n < len(bins) && (bins[n].z < z || level && bins[n].z == z) {
		n++
	}
	return n
}
