package sampling

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
)

// take follows the advice from nothing until it is enough, and returns the depths
// read and the last advice.
func take(t testing.TB, lake func(float64) float64, in Input) ([]float64, Advice) {
	t.Helper()
	var depths []float64
	for {
		if len(depths) > 0 {
			in.Column = read(t, lake, depths...)
		}
		a := Find(in)
		if a.Enough || len(depths) > 24 {
			return depths, a
		}
		if !whole(a.DepthM, in.MarkM) {
			t.Fatalf("%.4f m is no whole mark of %v m", a.DepthM, in.MarkM)
		}
		for _, z := range depths {
			if math.Abs(a.DepthM-z) < in.MarkM-1e-6 {
				t.Fatalf("read %.4f m, though %.4f m was read (%s)", a.DepthM, z, a.Why)
			}
		}
		depths = append(depths, a.DepthM)
	}
}

// A drop guided to its end closes in on the thermocline.
func TestDropOverALake(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name                     string
		warm, cold, break_, half float64
		bottomM, markM           float64
	}{
		{"small lake, metres", 24, 7, 5, 1, 9, quarterM},
		{"small lake, feet", 24, 7, 5, 1, 9, footM},
		{"thin break", 23, 9, 4.3, 0.3, 11, quarterM},
		{"gentle break", 21, 10, 6, 2, 12, footM},
		{"deep lake", 22, 5, 9, 1.5, 30, footM},
		{"bottom not known", 22, 5, 5, 1, 0, footM},
	} {
		lake := smooth(c.warm, c.cold, c.break_, c.half)
		in := Input{MarkM: c.markM}
		if c.bottomM > 0 {
			in.Bottom = profile.Some(c.bottomM)
		}
		depths, a := take(t, lake, in)
		if len(depths) > 12 { // more is no drop any more
			t.Errorf("%s: %d readings: %.2f", c.name, len(depths), depths)
		}
		z := thermocline(lake, 30)
		if a.Why != CloseEnough && a.Why != NoGain || z < a.FromM-0.3 || z > a.ToM+0.3 { // 8 in 10, and a foot
			t.Errorf("%s: %q between %.2f and %.2f m, want the thermocline at %.2f m; read %.2f", c.name, a.Why, a.FromM, a.ToM, z, depths)
		}
	}
}

// Whatever the lake and the marks: whole marks, never one read, within the water, and
// an end.
func TestDropEnds(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(rt *rapid.T) {
		lake := smooth(rapid.Float64Range(1, 30).Draw(rt, "warm"), rapid.Float64Range(1, 30).Draw(rt, "cold"),
			rapid.Float64Range(0.5, 15).Draw(rt, "break"), rapid.Float64Range(0.05, 4).Draw(rt, "half"))
		in := Input{Bottom: profile.Some(rapid.Float64Range(0.2, 40).Draw(rt, "bottom")), MarkM: rapid.SampledFrom([]float64{footM, quarterM}).Draw(rt, "mark")}
		if rapid.Bool().Draw(rt, "bottom unknown") {
			in.Bottom = profile.Optional{}
		}
		if rapid.Bool().Draw(rt, "a fish") {
			in.LevelsC = []float64{rapid.Float64Range(5, 25).Draw(rt, "limit")}
		}
		depths, a := take(t, lake, in)
		if !a.Enough || len(depths) > 12 {
			rt.Fatalf("%d readings: %.2f, then %+v", len(depths), depths, a)
		}
		for i, z := range depths {
			if z < 0 || in.Bottom.Known && z > in.Bottom.Value+1e-9 && i > 0 {
				rt.Fatalf("read %.2f m in %.2f m of water", z, in.Bottom.Value)
			}
		}
	})
}

// Pages are not read in the advised order: the next depth is new whatever was read.
func TestNeverADepthThatWasRead(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(rt *rapid.T) {
		in := Input{MarkM: rapid.SampledFrom([]float64{footM, quarterM}).Draw(rt, "mark"), LevelsC: []float64{17}}
		depths := rapid.SliceOfN(rapid.Float64Range(0, 12), 1, 10).Draw(rt, "depths")
		in.Column = read(t, smooth(rapid.Float64Range(5, 28).Draw(rt, "warm"), 6, rapid.Float64Range(1, 10).Draw(rt, "break"), 1), depths...)
		if rapid.Bool().Draw(rt, "bottom known") {
			in.Bottom = profile.Some(rapid.Float64Range(12, 20).Draw(rt, "bottom"))
		}
		a := Find(in)
		if a.Enough {
			return
		}
		if !whole(a.DepthM, in.MarkM) {
			rt.Fatalf("%.4f m is no whole mark", a.DepthM)
		}
		for _, p := range in.Column.Points() {
			if math.Abs(p.DepthM-a.DepthM) < in.MarkM-1e-6 {
				rt.Fatalf("read %.4f m, though %.4f m was read (%q)", a.DepthM, p.DepthM, a.Why)
			}
		}
	})
}
