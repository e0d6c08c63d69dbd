package layers

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestInfillPlaces(t *testing.T) {
	f := newInfill([]float64{0, 1, 4, 4.5, 6}, wideM)
	want := []float64{0, 1, 1.75, 2.5, 3.25, 4, 4.5, 5.25, 6}
	if !slices.EqualFunc(f.z, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-12 }) {
		t.Errorf("places %v, want %v", f.z, want)
	}
	if !slices.Equal(f.reading, []int{0, 1, 5, 6, 8}) {
		t.Errorf("readings at %v", f.reading)
	}
	// widest first; the neighbours are those known before
	type five [5]int
	var got []five
	for _, s := range f.splits {
		got = append(got, five{s.above, s.left, s.mid, s.right, s.below})
	}
	if want := []five{{0, 1, 3, 5, 6}, {5, 6, 7, 8, -1}, {0, 1, 2, 3, 5}, {1, 3, 4, 5, 6}}; !slices.Equal(got, want) {
		t.Errorf("splits %v, want %v", got, want)
	}
	if one := newInfill([]float64{0, 1, 2}, wideM); len(one.z) != 3 || len(one.splits) != 0 {
		t.Errorf("metre steps are split: %v", one.z)
	}
	if deep := newInfill([]float64{0, 2000}, wideM); len(deep.z) != 1<<maxRounds+1 {
		t.Errorf("a gap of 2000 m has %d places", len(deep.z))
	}
}

// One split by hand: 20, 18, 8 and 6 C at 0, 1, 3 and 4 m. The slopes of the monotone
// cubic at 1 and 3 m are 9/(5/-2+4/-5) = -2.727273 both, so it has half of the fall in the
// upper half, and the log of those odds is 0. The gap is 2 m high, so its height counts for
// nothing, and holds 10 of 14 C: -0.32+0.75*10/14 = 0.215714, odds of 1.240748, or
// 0.553720 of the fall. With 16 C at 1 m the slopes are 9/(5/-4+4/-4) = -4 and
// 9/(4/-4+5/-2) = -2.571429; the cubic's upper half has 0.5-2/8*(-4+2.571429)/8 = 0.544643
// of the fall, the log of the odds is 0.179048, and -0.32+1.85*0.179048+0.75*8/14 =
// 0.439811, or 0.608214 of the fall.
func TestInfillByHand(t *testing.T) {
	f := newInfill([]float64{0, 1, 3, 4}, wideM)
	temps := []float64{20, 18, 0, 8, 6}
	f.fill(temps, nil)
	near(t, "even", temps[2], 18-10*0.5537204, 1e-5)
	temps = []float64{20, 16, 0, 8, 6}
	f.fill(temps, nil)
	near(t, "uneven", temps[2], 16-8*0.6082139, 1e-5)
}

// Under ice, colder above, the middle curve is the cubic itself, here with half of the
// change in each half, whatever the ways of summer.
func TestInfillUnderIce(t *testing.T) {
	f := newInfill([]float64{0, 1, 3, 4}, wideM)
	temps := []float64{0.5, 1, 0, 3, 3.5}
	f.fill(temps, nil)
	near(t, "under ice", temps[2], 2, 1e-9)
}

// The tails of a gap between others are those of Student's t with 4 degrees of freedom:
// a twentieth of it lies beyond 2.776 (tables of the distribution), of the normal
// distribution, which first gaps have, beyond 1.960.
func TestInfillTails(t *testing.T) {
	for _, c := range []struct {
		way    *gapModel
		beyond float64
	}{{&innerGap, 2.776}, {&lastGap, 2.776}, {&firstGap, 1.960}} {
		rng, n := rand.New(rand.NewPCG(1, 2)), 0.0
		const draws = 40000
		for range draws {
			if math.Abs(c.way.deviate(rng)) > c.beyond {
				n++
			}
		}
		near(t, "share beyond", n/draws, 0.05, 0.004) // over three standard errors
	}
}

// A place lies between its two, whatever is drawn, and even water stays even.
func TestInfillStaysBetween(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(rt, "readings")
		var z, temps []float64
		at, temp := 0.0, 25.0
		for range n {
			z, temps = append(z, at), append(temps, temp)
			at += rapid.Float64Range(0.1, 12).Draw(rt, "gap")
			temp -= rapid.SampledFrom([]float64{0, 0.1, 3, 8}).Draw(rt, "fall")
		}
		f := newInfill(z, fineM)
		full := make([]float64, len(f.z))
		for i, j := range f.reading {
			full[j] = temps[i]
		}
		f.fill(full, rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 0)))
		for i := 0; i+1 < len(full); i++ {
			if full[i+1] > full[i] || math.IsNaN(full[i]) {
				rt.Fatalf("%v C over %v C in %v", full[i], full[i+1], full)
			}
		}
	})
}
