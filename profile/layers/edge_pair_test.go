package layers

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Pooling keeps the chances, and their mean depth: 0.002 at most is left out at
// either end.
func TestPoolKeepsChancesAndMean(t *testing.T) {
	c, _ := marked(tanh(6, 0.05))
	for _, s := range []*edge{&c.top, &c.bottom} {
		var sum, moment float64
		for i := range s.hazard {
			if before := 1 - s.survival(i+1); before >= 0.002 && s.survival(i) >= 0.002 {
				sum += s.probability(i)
				moment += s.probability(i) * s.z[i]
			}
		}
		bins := s.bins(nil)
		n := len(bins) - 1
		if n > maxBins+1 {
			t.Errorf("%d bins", n)
		}
		near(t, "all chances", bins[n].sum, sum, 1e-12)
		near(t, "mean depth", bins[n].moment/bins[n].sum, moment/sum, 1e-9)
	}
}

// worth is what a pair of depths is worth on average, by the plain sum over all crews.
func worth(topM, bottomM float64, tops, bottoms []bin) float64 {
	sum := 0.0
	for _, t := range tops {
		for _, b := range bottoms {
			if t.z >= b.z {
				continue
			}
			v := overlapWorth * math.Max(0, math.Min(bottomM, b.z)-math.Max(topM, t.z)) / (math.Max(bottomM, b.z) - math.Min(topM, t.z))
			if math.Abs(topM-t.z) <= nearM+equal && math.Abs(bottomM-b.z) <= nearM+equal {
				v += 1 - overlapWorth
			}
			sum += t.p * b.p * v
		}
	}
	return sum
}

// plainChoice tries every pair of depths of bins, and halfway between them.
func plainChoice(tops, bottoms []bin, thermoclineM float64) (topM, bottomM, best float64) {
	depths := func(bins []bin, low, high float64) (out []float64) {
		for i, b := range bins {
			if i > 0 {
				out = append(out, (bins[i-1].z+b.z)/2)
			}
			out = append(out, b.z)
		}
		out = slices.DeleteFunc(out, func(z float64) bool { return z < low-equal || z > high+equal })
		for i, z := range out {
			out[i] = math.Max(low, math.Min(high, z))
		}
		if len(out) == 0 {
			return []float64{thermoclineM}
		}
		return out
	}
	topM, bottomM = thermoclineM, thermoclineM
	for _, t := range depths(tops, math.Inf(-1), thermoclineM) {
		for _, b := range depths(bottoms, thermoclineM, math.Inf(1)) {
			if t >= b {
				continue
			}
			if w := worth(t, b, tops, bottoms); w > best+equal {
				topM, bottomM, best = t, b, w
			}
		}
	}
	return topM, bottomM, best
}

// asPlain fails where the choice differs from that of the plain search, and gives how
// many bins there were.
func asPlain(tb rapid.TB, c *edgeModel, thermoclineM float64) int {
	tb.Helper()
	top, bottom := c.choose(thermoclineM)
	tops, bottoms := c.top.bins(nil), c.bottom.bins(nil)
	tops, bottoms = tops[:len(tops)-1], bottoms[:len(bottoms)-1]
	wantTop, wantBottom, best := plainChoice(tops, bottoms, thermoclineM)
	if top == wantTop && bottom == wantBottom {
		return len(tops) + len(bottoms)
	}
	if got := worth(top, bottom, tops, bottoms); math.Abs(got-best) > 2e-9 { // pairs within 1e-9 count as equal
		tb.Fatalf("%v to %v m is worth %.12f; %v to %v m is worth %.12f", top, bottom, got, wantTop, wantBottom, best)
	}
	return len(tops) + len(bottoms)
}

func TestChoiceEqualsPlainSearch(t *testing.T) {
	t.Parallel()
	c := new(edgeModel) // used again and again, so that nothing of the last column may matter
	many := 0
	rapid.Check(t, func(t *rapid.T) {
		z, temps := breaks(t, 60, 0.3, 0.05, 1, 3)
		f := newGradients(z, temps)
		plane := f.greatestRise(0)
		c.apply(f, 0, plane)
		if asPlain(t, c, z[plane]+(z[plane+1]-z[plane])*rapid.Float64Range(0, 1).Draw(t, "thermocline")) > 10 {
			many++
		}
	})
	if many == 0 {
		t.Error("no column drawn had more than 10 bins")
	}
	for _, x := range []struct{ half, step float64 }{{1, 0.05}, {3, 0.1}, {6, 0.25}, {9, 0.5}} {
		f := newGradients(tanh(x.half, x.step))
		c.apply(f, 0, f.greatestRise(0))
		if n := asPlain(t, c, 7.3); n < 16 || n > 2*(maxBins+1) {
			t.Errorf("a break of %v m, every %v m: %d bins", x.half, x.step, n)
		}
	}
}

// Leaving out rare places costs less than their chances: 0.002 at both ends of both
// sides.
func TestRarePlacesMatterLittle(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		z, temps := breaks(t, maxBins, 0.3, 0.05, 1, 3) // so few that none are pooled
		c, plane := marked(z, temps)
		all := func(s *edge) (out []bin) {
			for i := range s.hazard {
				out = append(out, bin{z: s.z[i], p: s.probability(i)})
			}
			return out
		}
		tops, bottoms := all(&c.top), all(&c.bottom)
		thermoclineM := (z[plane] + z[plane+1]) / 2
		top, bottom := c.choose(thermoclineM)
		_, _, best := plainChoice(tops, bottoms, thermoclineM)
		if got := worth(top, bottom, tops, bottoms); got < best-4*0.002 {
			t.Fatalf("%v to %v m is worth %v, but %v can be had", top, bottom, got, best)
		}
	})
}

// The same water read more or less closely. A mark is the place above the interval
// that decided, so an answer may move by one interval; the choice is also uneven by up to a bin, here
// at most 0.25 m, since its worth jumps where a mark comes within a metre.
func TestEdgeModelAtAnySpacing(t *testing.T) {
	for _, half := range []float64{1, 2, 3} {
		c, _ := marked(tanh(half, 0.1))
		top, bottom := c.choose(7.3)
		halfTop, halfBottom := c.medians()
		for _, step := range []float64{0.05, 0.25, 0.5, 1, 2} {
			e, _ := marked(tanh(half, step))
			what := fmt.Sprintf("a break of %v m, every %v m: ", half, step)
			a, b := e.choose(7.3)
			near(t, what+"top", a, top, step+0.25)
			near(t, what+"bottom", b, bottom, step+0.25)
			a, b = e.medians()
			near(t, what+"half the tops", a, halfTop, step+0.25)
			near(t, what+"half the bottoms", b, halfBottom, step+0.25)
		}
	}
}

// 3 C/m from 5 to 9 m and even water around it, read every 0.1 m: the bottom comes
// out too deep, as said at edgeModel.
func TestEdgeModelOfSharpZone(t *testing.T) {
	var z, temps []float64
	for i := range 201 {
		z = append(z, float64(i)/10)
		temps = append(temps, 22-3*math.Max(0, math.Min(4, z[i]-5)))
	}
	c, _ := marked(z, temps)
	top, bottom := c.choose(7)
	near(t, "top", top, 5, 0.2)
	near(t, "bottom", bottom, 9.5, 0.1)
}
