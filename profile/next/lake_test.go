package next

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
)

// most is how many readings a drop may take; a break many metres thick in a deep
// lake may take a few more.
const (
	most      = 12
	mostThick = 16
)

// take follows the advice from a first reading until it is enough, and returns the
// depths read and the last advice.
func take(t testing.TB, lake func(float64) float64, firstM float64, bottom profile.Optional, markM float64) ([]float64, Advice) {
	t.Helper()
	depths := []float64{firstM}
	for {
		a := Find(read(t, lake, depths...), bottom, markM)
		if a.Enough || len(depths) > 2*mostThick {
			return depths, a
		}
		if !whole(a.DepthM, markM) {
			t.Fatalf("%.4f m is no whole mark of %v m", a.DepthM, markM)
		}
		for _, z := range depths {
			if math.Abs(a.DepthM-z) < markM-1e-6 {
				t.Fatalf("read %.4f m, though %.4f m was read", a.DepthM, z)
			}
		}
		depths = append(depths, a.DepthM)
	}
}

// A drop guided to its end takes no more than twelve readings and closes in on the
// thermocline.
func TestDropOverALake(t *testing.T) {
	for _, c := range []struct {
		name                     string
		warm, cold, break_, half float64
		firstM, bottomM, markM   float64
	}{
		{"small lake, metres", 24, 7, 5, 1, 0, 9, quarterM},
		{"small lake, feet", 24, 7, 5, 1, 0, 9, footM},
		{"thin break", 23, 9, 4.3, 0.3, 0, 11, quarterM},
		{"gentle break", 21, 10, 6, 2, 0, 12, footM},
		{"deep lake", 22, 5, 9, 1.5, 0, 30, footM},
		{"begun in the middle", 24, 7, 5, 1, 6, 9, quarterM},
	} {
		lake := smooth(c.warm, c.cold, c.break_, c.half)
		depths, a := take(t, lake, c.firstM, profile.Some(c.bottomM), c.markM)
		if len(depths) > most {
			t.Errorf("%s: %d readings, want %d at most: %.2f", c.name, len(depths), most, depths)
		}
		z := thermocline(lake, c.bottomM)
		if a.Why != CloseEnough || z < a.FromM || z > a.ToM {
			t.Errorf("%s: %q between %.2f and %.2f m, want the thermocline at %.2f m inside; read %.2f", c.name, a.Why, a.FromM, a.ToM, z, depths)
		}
	}
}

// Whatever the lake, the marks and the first reading: whole marks, never one read,
// and an end.
func TestDropEnds(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		half, limit := rapid.Float64Range(0.05, 4).Draw(rt, "half"), most
		if half > 1.5 {
			limit = mostThick
		}
		warm := rapid.Float64Range(1, 30).Draw(rt, "warm")
		lake := smooth(warm, rapid.Float64Range(1, 30).Draw(rt, "cold"), rapid.Float64Range(0.5, 15).Draw(rt, "break"), half)
		bottom := profile.Some(rapid.Float64Range(0.2, 40).Draw(rt, "bottom"))
		if rapid.Bool().Draw(rt, "bottom unknown") {
			bottom = profile.Optional{}
		}
		first := rapid.Float64Range(0, bottom.Or(10)).Draw(rt, "first")
		depths, a := take(t, lake, first, bottom, rapid.SampledFrom([]float64{footM, quarterM}).Draw(rt, "mark"))
		if !a.Enough || len(depths) > limit {
			rt.Fatalf("%d readings: %.2f, then %+v", len(depths), depths, a)
		}
		for _, z := range depths {
			if z < 0 || bottom.Known && z > bottom.Value+1e-9 {
				rt.Fatalf("read %.2f m in %.2f m of water", z, bottom.Value)
			}
		}
	})
}

// Pages are not read in the advised order: the next depth is new whatever was read.
func TestNeverADepthThatWasRead(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mark := rapid.SampledFrom([]float64{footM, quarterM}).Draw(rt, "mark")
		depths := rapid.SliceOfN(rapid.Float64Range(0, 12), 1, 10).Draw(rt, "depths")
		lake := smooth(rapid.Float64Range(5, 28).Draw(rt, "warm"), 6, rapid.Float64Range(1, 10).Draw(rt, "break"), 1)
		bottom := profile.Optional{}
		if rapid.Bool().Draw(rt, "bottom known") {
			bottom = profile.Some(rapid.Float64Range(12, 20).Draw(rt, "bottom"))
		}
		c := read(t, lake, depths...)
		a := Find(c, bottom, mark)
		if a.Enough {
			return
		}
		if !whole(a.DepthM, mark) {
			rt.Fatalf("%.4f m is no whole mark", a.DepthM)
		}
		for _, p := range c.Points() {
			if math.Abs(p.DepthM-a.DepthM) < mark-1e-6 {
				rt.Fatalf("read %.4f m, though %.4f m was read (%q)", a.DepthM, p.DepthM, a.Why)
			}
		}
	})
}
