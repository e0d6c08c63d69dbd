package layers

import "math"

// An infill is the set of places between readings at which a curve is worked out,
// from the widest gaps to the narrowest: each split halves a gap. A gap wider than
// about a metre hides more than a cubic through its ends can know: measured water
// is more even above a break, and falls faster in it, than such a cubic.
type infill struct {
	z       []float64 // depths of the readings and of the places between, rising
	reading []int     // index in z of each reading
	splits  []split   // in the order in which they are worked out
}

// split is one place, halfway between two places known before it. above and below
// are the known places next to these, -1 where there is none.
type split struct {
	above, left, mid, right, below int
	square                         bool    // the odds that the cubic gives are squared
	lean                           float64 // added to their logarithm
	spread                         float64 // standard deviation of that logarithm
}

// The share of a gap's fall that lies in its upper half, as odds, was measured in the
// dense columns of ten lakes (Carpenter et al., Cascade Project at NTL-LTER, EDI
// knb-lter-ntl.352; Carey et al., EDI edi.198), thinned to 3 to 8 readings: between
// other gaps the log of the odds is about 1.9 times that of the cubic, with a
// standard deviation of 0.5 to 1 that grows with the gap; in the first gap the mixed
// layer lowers it by 0.2 to 2.4, in the last the deep water's evenness raises it by
// 0 to 2.6. The figures below were then chosen for the best intervals in three of the
// lakes (Paul, Peter and Beaverdam), where they are flat; the tables of package next
// are of all.
const (
	innerSpread  = 0.7 // of a gap of 2 m; the cubic's odds are squared
	spreadPower  = 0.3 // how that grows with the gap
	firstLean    = -1.6
	firstSpread  = 1.3
	lastLean     = 0.9
	lastSpread   = 0.8
	fineM        = 0.65 // gaps are halved until they are no wider,
	roundsAtMost = 6    // or this often
)

// newInfill plans the places between readings at the given depths, at least two.
func newInfill(depths []float64, widestM float64) *infill {
	n := len(depths)
	f := &infill{reading: make([]int, n)}
	halvings := make([]int, n-1)
	size := 1 // places
	for i := range halvings {
		for w := depths[i+1] - depths[i]; w > widestM+equal && halvings[i] < roundsAtMost; w /= 2 {
			halvings[i]++
		}
		size += 1 << halvings[i]
	}
	if size == n { // no gap is that wide
		f.z = depths
		for i := range f.reading {
			f.reading[i] = i
		}
		return f
	}
	f.z = make([]float64, 0, size)
	for i, h := range halvings {
		f.reading[i] = len(f.z)
		parts := 1 << h
		for j := range parts {
			f.z = append(f.z, depths[i]+(depths[i+1]-depths[i])*float64(j)/float64(parts))
		}
	}
	f.reading[n-1] = len(f.z)
	f.z = append(f.z, depths[n-1])
	f.splits = make([]split, 0, size-n)
	known := append(make([]int, 0, size), f.reading...)
	for len(known) < size {
		next := make([]int, 0, size)
		for i, left := range known {
			next = append(next, left)
			if i+1 == len(known) || known[i+1] == left+1 {
				continue
			}
			above, below := -1, -1
			if i > 0 {
				above = known[i-1]
			}
			if i+2 < len(known) {
				below = known[i+2]
			}
			s := f.split(above, left, known[i+1], below)
			f.splits = append(f.splits, s)
			next = append(next, s.mid)
		}
		known = next
	}
	return f
}

func (f *infill) split(above, left, right, below int) split {
	s := split{above: above, left: left, mid: (left + right) / 2, right: right, below: below}
	w := f.z[right] - f.z[left]
	switch {
	case above < 0:
		s.lean, s.spread = firstLean, firstSpread
	case below < 0:
		s.lean, s.spread = lastLean, lastSpread
	default:
		s.square, s.spread = true, innerSpread*math.Pow(w/2, spreadPower)
	}
	return s
}

// fill works out t between the readings, where it is given. normal gives standard
// normal deviates; nil makes the curve in the middle of all.
func (f *infill) fill(t []float64, normal func() float64) {
	for _, s := range f.splits {
		fall := t[s.left] - t[s.right]
		if fall == 0 {
			t[s.mid] = t[s.left]
			continue
		}
		w := f.z[s.right] - f.z[s.left]
		mean := -fall / w
		upper, lower := mean, mean
		switch {
		case s.above >= 0 && s.below >= 0:
			upper = f.slope(t, s.above, s.left, s.right)
			lower = f.slope(t, s.left, s.right, s.below)
		case s.below >= 0:
			upper = f.endSlope(t, s.left, s.right, s.below)
			lower = f.slope(t, s.left, s.right, s.below)
		case s.above >= 0:
			upper = f.slope(t, s.above, s.left, s.right)
			lower = f.endSlope(t, s.right, s.left, s.above)
		}
		share := 0.5 - w/8*(upper-lower)/fall // of the fall that the cubic has in the upper half
		share = min(max(share, leastShare), 1-leastShare)
		odds := share / (1 - share)
		log := 0.0
		if fall > 0 { // under ice there is neither a mixed layer nor a break
			log = s.lean
			if s.square {
				odds *= odds
			}
		}
		if normal != nil {
			log += s.spread * normal()
		}
		odds *= math.Exp(log)
		t[s.mid] = t[s.left] - fall*odds/(1+odds)
	}
}

// leastShare keeps the odds of a cubic finite.
const leastShare = 0.03

// slope is the derivative of the monotone cubic (Fritsch and Butland 1984) at b,
// between the neighbours a and c.
func (f *infill) slope(t []float64, a, b, c int) float64 {
	h0, h1 := f.z[b]-f.z[a], f.z[c]-f.z[b]
	s0, s1 := (t[b]-t[a])/h0, (t[c]-t[b])/h1
	if s0*s1 <= 0 {
		return 0
	}
	return 3 * (h0 + h1) * s0 * s1 / ((2*h1+h0)*s1 + (h1+2*h0)*s0)
}

// endSlope is that cubic's derivative at its end a, next to b and c.
func (f *infill) endSlope(t []float64, a, b, c int) float64 {
	h0, h1 := f.z[b]-f.z[a], f.z[c]-f.z[b]
	s0, s1 := (t[b]-t[a])/h0, (t[c]-t[b])/h1
	d := ((2*h0+h1)*s0 - h0*s1) / (h0 + h1)
	switch {
	case d*s0 <= 0:
		return 0
	case s0*s1 <= 0 && math.Abs(d) > 3*math.Abs(s0):
		return 3 * s0
	}
	return d
}
