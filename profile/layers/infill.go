package layers

import (
	"math"
	"math/rand/v2"
)

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
	model                          *gapModel // of such a gap
	logWidth                       float64   // log of its height in units of 2 m
}

// A gapModel is how measured water fills a gap: a regression of the log of the odds that a
// bit of its fall lies in the upper half. Its mean is intercept + cubic * (that log of a
// cubic) + share * (the gap's part of the whole fall) + width * ln(height/2 m) + adjacent *
// ln(the fall of the water next to it, C/m); the log of its spread is made in the same
// manner. The first gap holds the mixed layer: the steeper the water under it, the evener
// its upper half. The last holds the even deep water: the steeper the water above it, the
// more of its fall is soon over. Where steps are usual, the spread has the long tails of
// Student's t with 4 degrees of freedom: most gaps are near the mean, and some hold nearly
// all of their fall in one half.
type gapModel struct {
	intercept, cubic, share, width   float64
	adjacent                         float64
	spread, spreadShare, spreadWidth float64
	heavyTails                       bool
}

// The models of the first gap, of those between, and of the last were fitted by maximum
// likelihood to gaps of 2 m and more in the lakes of 2007, each lake counted once (U.S.
// EPA, National Lakes Assessment 2007), and to no other lake. What they are worth was seen
// in the lakes of 2017 and in those of Cascade and Virginia, each counted once, as the mean
// log of the likelihood of a gap: with the water beside it in mind 0.06 and 0.16 more in
// first gaps, 0.03 and 0.02 in last ones, and none between; with the long tails 0.08 and
// 0.15 more between, 0.04 and 0.03 in last gaps, and less in first ones.
var (
	firstGap = gapModel{intercept: -0.47, cubic: 0.10, share: -0.84, width: -1.15, adjacent: -0.64, spread: 0.43, spreadShare: -0.18, spreadWidth: 0.10}
	innerGap = gapModel{intercept: -0.32, cubic: 1.85, share: 0.75, width: -0.02, spread: -0.36, spreadShare: -0.09, spreadWidth: -0.04, heavyTails: true}
	lastGap  = gapModel{intercept: 0.17, cubic: 0.33, share: 0.03, width: 0.67, adjacent: 0.37, spread: -0.79, spreadShare: 0.58, spreadWidth: 0.28, heavyTails: true}
)

// The fall of the water beside a gap counts between these, C/m.
const minAdjacent, maxAdjacent = 0.02, 20

// deviate draws how far from the mean a gap lies, in spreads.
func (w *gapModel) deviate(rng *rand.Rand) float64 {
	n := rng.NormFloat64()
	if w.heavyTails { // the sum of two exponential deviates is half a chi-squared with 4 degrees of freedom
		n /= math.Sqrt((rng.ExpFloat64() + rng.ExpFloat64()) / 2)
	}
	return n
}

// iceSpread is the standard deviation in water that is colder above: assumed.
const iceSpread = 0.8

const (
	fineM     = 0.65 // gaps are halved until they are no wider,
	maxRounds = 6    // or this often
)

// newInfill plans the places between readings at the given depths, at least two.
func newInfill(depths []float64, widestM float64) *infill {
	n := len(depths)
	f := &infill{reading: make([]int, n)}
	halvings := make([]int, n-1)
	size := 1 // places
	for i := range halvings {
		for w := depths[i+1] - depths[i]; w > widestM+equal && halvings[i] < maxRounds; w /= 2 {
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
	s.logWidth = math.Log((f.z[right] - f.z[left]) / 2)
	switch {
	case above < 0:
		s.model = &firstGap
	case below < 0:
		s.model = &lastGap
	default:
		s.model = &innerGap
	}
	return s
}

// fill works out t between the readings, where it is given. Without rng it makes the curve
// in the middle of all.
func (f *infill) fill(t []float64, rng *rand.Rand) {
	whole := t[0] - t[len(t)-1]
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
		share = min(max(share, minShare), 1-minShare)
		log := math.Log(share / (1 - share))
		if fall > 0 { // under ice there is neither a mixed layer nor a break
			part := 1.0 // where the column rises in all, a fall in it is more than the whole
			if whole > fall {
				part = fall / whole
			}
			log = s.model.intercept + s.model.cubic*log + s.model.share*part + s.model.width*s.logWidth + s.model.adjacent*f.adjacent(t, s)
			if rng != nil {
				log += s.model.deviate(rng) * math.Exp(s.model.spread+s.model.spreadShare*part+s.model.spreadWidth*s.logWidth)
			}
		} else if rng != nil {
			log += iceSpread * rng.NormFloat64()
		}
		odds := math.Exp(min(log, 700)) // a heavy tail must not overflow: beyond it is all of the fall
		t[s.mid] = t[s.left] - fall*odds/(1+odds)
	}
}

// adjacent is the log of the fall, C/m, of the known water next to a first or a last gap; of
// the gap's own where there is none.
func (f *infill) adjacent(t []float64, s split) float64 {
	from, to := s.left, s.right
	switch {
	case s.above < 0 && s.below >= 0:
		from, to = s.right, s.below
	case s.above >= 0 && s.below < 0:
		from, to = s.above, s.left
	}
	return math.Log(min(max((t[from]-t[to])/(f.z[to]-f.z[from]), minAdjacent), maxAdjacent))
}

// minShare keeps the odds of a cubic finite.
const minShare = 0.03

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
