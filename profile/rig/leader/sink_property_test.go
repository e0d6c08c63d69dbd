package leader

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// sinkers draws leaders of 1 to 20 m with a point fly of 0.01 to 5 g.
func sinkers(t *rapid.T) Leader {
	r := Leader{TempC: rapid.Float64Range(0, 30).Draw(t, "temp")}
	left := rapid.Float64Range(1, 20).Draw(t, "length")
	for n := rapid.IntRange(1, 4).Draw(t, "parts"); n > 0; n-- {
		l := left
		if n > 1 {
			l = left * rapid.Float64Range(0.05, 0.95).Draw(t, "share")
		}
		left -= l
		r.Parts = append(r.Parts, Part{
			LengthM: l, DiameterM: rapid.Float64Range(0.08e-3, 0.6e-3).Draw(t, "diameter"),
			DensityKgM3: rapid.SampledFrom([]float64{0, NylonKgM3, FluoroKgM3, 970, 1380}).Draw(t, "material"),
		})
	}
	l := r.LengthM()
	for n := rapid.IntRange(0, 3).Draw(t, "droppers"); n > 0; n-- {
		r.Bodies = append(r.Bodies, Body{
			AtM: l * rapid.Float64Range(0, 1).Draw(t, "at"), KgDry: rapid.Float64Range(0, 1e-3).Draw(t, "dropper"),
			DensityKgM3: rapid.SampledFrom([]float64{0, 900, 3000, 7290, 11340}).Draw(t, "density"), Dressing: rapid.SampledFrom([]float64{0, 1, 3}).Draw(t, "dressing"),
		})
	}
	r.Bodies = append(r.Bodies, Body{AtM: l, KgDry: grams(t) / 1000})
	if rapid.Bool().Draw(t, "bottom") {
		r.BottomM = rapid.Float64Range(0.5, 20).Draw(t, "bottom")
	}
	return r
}

func grams(t *rapid.T) float64 {
	return math.Exp(rapid.Float64Range(math.Log(0.01), math.Log(5)).Draw(t, "ln grams"))
}

func tips(t *rapid.T) Tip { return rapid.SampledFrom([]Tip{Held, Slides}).Draw(t, "tip") }

// Every rig in range has an answer: a wait, or a stated reason.
func TestAnyRigEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, tip := sinkers(t), tips(t)
		depthM := r.LengthM() * rapid.Float64Range(0, 1).Draw(t, "share")
		s, err := r.SinkTime(depthM, tip)
		if err != nil && !errors.Is(err, ErrBottom) && !errors.Is(err, ErrNever) && !errors.Is(err, ErrShort) {
			t.Fatal(err)
		}
		if err == nil && !(s >= 0 && s <= mostS) {
			t.Fatalf("%g s", s)
		}
	})
}

// Nothing rises above the surface, sinks through the bottom or tears off the leader,
// and no step fails to be solved.
func TestPathStaysInTheWater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, tip := sinkers(t), tips(t)
		if err := r.check(); err != nil {
			t.Fatal(err)
		}
		f := rest(newChain(r, tip, usualLinks), usualMiss)
		l, steps := r.LengthM(), 0
		for ; f.step(300); steps++ {
			for i, p := range f.now.at {
				// In motion a node may go further in than at rest, and by what a step
				// may miss; State leaves that out.
				in := 5*pressM + 4*usualMiss*l
				if !(p.z > -in && p.z < f.c.bottomM+in) {
					t.Fatalf("node %d of %d is %g m deep at %g s", i, len(f.now.at), p.z, f.now.time)
				}
				if i > 0 && !(math.Abs(p.sub(f.now.at[i-1]).length()-f.c.link[i-1]) < 1e-9) {
					t.Fatalf("link %d is not of its length", i)
				}
			}
			// The line in motion carries the tip a little past the fly.
			if x := f.now.at[0].x; tip == Held && x != 0 || !(x > -0.1*l && x < 1.1*l) {
				t.Fatalf("the tip is %g m away", x)
			}
		}
		if f.now.time < 299.999 {
			t.Fatalf("stuck at %g s with a step of %g s", f.now.time, f.stepS)
		}
		if steps > 2000 {
			t.Fatalf("%d steps", steps)
		}
	})
}

// Deeper is never sooner.
func TestDeeperIsNeverSooner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, tip := sinkers(t), tips(t)
		r.BottomM = 0
		last := 0.0
		shares := []float64{0.05, 0.2, 0.5, 0.8, 0.95, rapid.Float64Range(0, 1).Draw(t, "share")}
		slices.Sort(shares)
		for _, share := range shares {
			s, err := r.SinkTime(share*r.LengthM(), tip)
			if err != nil {
				s = mostS
			}
			if s < last {
				t.Fatalf("%g s to %g of the leader, %g s to less", s, share, last)
			}
			last = s
		}
	})
}

// A heavier point fly of the same make is never slower, to the 1 % that the cutting
// leaves, with nothing else on the leader.
func TestHeavierIsNeverSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, tip := sinkers(t), tips(t)
		r.BottomM = 0
		light, heavy := r, r
		light.Bodies = []Body{{AtM: r.LengthM(), KgDry: grams(t) / 1000}}
		heavy.Bodies = []Body{{AtM: r.LengthM(), KgDry: light.Bodies[0].KgDry * rapid.Float64Range(1, 10).Draw(t, "times")}}
		depthM := r.LengthM() * rapid.Float64Range(0.1, 0.95).Draw(t, "share")
		slow, err := light.SinkTime(depthM, tip)
		if err != nil {
			t.Skip(err)
		}
		fast, err := heavy.SinkTime(depthM, tip)
		if err != nil || fast > 1.01*slow+0.01 {
			t.Fatalf("%g g %g s, %g g %g s, %v", 1000*light.Bodies[0].KgDry, slow, 1000*heavy.Bodies[0].KgDry, fast, err)
		}
	})
}
