package band

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/fish"
)

// columns draws columns of every kind: layered, mixed, warmer below, winter, of one
// reading, with oxygen at all, some or no depths.
func columns(t *rapid.T) profile.Column {
	n := rapid.IntRange(1, 10).Draw(t, "readings")
	share := rapid.SampledFrom([]float64{0, 0.3, 1}).Draw(t, "oxygen")
	z := rapid.SampledFrom([]float64{0, 0.3, 0.9, 2}).Draw(t, "first")
	temp := rapid.Float64Range(-0.5, 32).Draw(t, "surface")
	var points []profile.Point
	for range n {
		p := profile.Point{DepthM: z, TempC: temp, ErrC: 0.25, ErrM: rapid.SampledFrom([]float64{0, 0.1524}).Draw(t, "depth error")}
		if rapid.Float64Range(0, 1).Draw(t, "has") < share {
			p.Oxygen = profile.Some(rapid.Float64Range(0, 13).Draw(t, "mg/L"))
		}
		points = append(points, p)
		z += rapid.Float64Range(0.06, 4).Draw(t, "step")
		temp = math.Max(-0.5, temp-rapid.Float64Range(-1, 8).Draw(t, "fall"))
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// inputs draws a column and what else a band is found from.
func inputs(t *rapid.T) Input {
	in := input(columns(t), rapid.SampledFrom(fish.All()).Draw(t, "fish"))
	in.ClearanceM = rapid.SampledFrom([]float64{0.15, ft, 2 * ft}).Draw(t, "clearance")
	deep := in.Column.Last().DepthM
	if rapid.Bool().Draw(t, "bottom known") {
		in.Bottom = profile.Some(deep + rapid.Float64Range(-0.3, 5).Draw(t, "bottom"))
	}
	if rapid.Bool().Draw(t, "deepest known") {
		in.Deepest = profile.Some(math.Max(deep, in.Bottom.Or(0)) + rapid.Float64Range(0, 20).Draw(t, "deepest"))
	}
	return in
}

func TestBandHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := inputs(t)
		b := Find(in)
		const slack = 1e-6
		ordered := func(what string, vs ...float64) {
			for i, v := range vs {
				if math.IsNaN(v) || math.IsInf(v, 0) || i > 0 && v < vs[i-1]-slack {
					t.Fatalf("%s out of order: %v (%+v)", what, vs, b)
				}
			}
		}
		if b.Found != (b.Verdict == Good || b.Verdict == Warmest) {
			t.Fatalf("verdict %q, found %v", b.Verdict, b.Found)
		}
		if !b.Found {
			return
		}
		limit := in.Column.Last().DepthM + 2*ft
		for _, o := range []profile.Optional{in.Bottom, in.Deepest} {
			if o.Known {
				limit = math.Min(limit, math.Max(o.Value, in.Column.Last().DepthM))
			}
		}
		ordered("top", 0, b.Top.Low, b.Top.Best, b.Top.High, limit)
		ordered("bottom", 0, b.Bottom.Low, b.Bottom.Best, b.Bottom.High, limit)
		ordered("band", b.Top.Best, b.Start.Best, b.Bottom.Best)
		ordered("start", 0, b.Start.Low, b.Start.Best, b.Start.High, limit)
		ordered("water to cast over", 0, b.CastShallowM, b.WaterM, b.CastDeepM)
		if in.Deepest.Known {
			ordered("cast within the lake", b.CastDeepM, in.Deepest.Value)
		}
		for _, o := range b.Others {
			ordered("another run", 0, o.TopM, o.BottomM, limit)
		}
		if !b.Oxygen && b.DoubtfulBelow == nil && in.Layers.Thermocline != nil {
			t.Fatal("oxygen not measured under a break, and nothing is called unknown")
		}
	})
}

// Every depth well inside the band suits the fish, and no depth between the
// outermost edges is too warm for it.
func TestBandIsWhatSuits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := inputs(t)
		b := Find(in)
		if !b.Found || b.Verdict != Good {
			return
		}
		z := b.Top.Best + (b.Bottom.Best-b.Top.Best)*rapid.Float64Range(0.001, 0.999).Draw(t, "share")
		temp := in.Layers.Curve.At(z)
		if temp > in.Fish.ComfortHighC.Value+1e-3 {
			t.Fatalf("%.2f C at %.2f m in the band of %s", temp, z, in.Fish.Name)
		}
		if in.Fish.Kind != fish.Coldwater && temp < in.Fish.ComfortLowC.Value-1e-3 {
			t.Fatalf("%.2f C at %.2f m in the band of %s", temp, z, in.Fish.Name)
		}
	})
}

// Without oxygen the band can only be as thick or thicker.
func TestOxygenOnlyRemoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := inputs(t)
		b := Find(in)
		points := in.Column.Points()
		for i := range points {
			points[i].Oxygen = profile.Optional{}
		}
		bare := in
		bare.Column, _ = profile.NewColumn(points)
		c := Find(bare)
		if b.Verdict == Good && (!c.Found || c.Bottom.Best-c.Top.Best < b.Bottom.Best-b.Top.Best-1e-6) {
			t.Fatalf("%.2f to %.2f m with oxygen, %.2f to %.2f m without", b.Top.Best, b.Bottom.Best, c.Top.Best, c.Bottom.Best)
		}
		if c.Verdict == NoOxygen || c.Oxygen {
			t.Fatalf("no oxygen was measured: %q, measured %v", c.Verdict, c.Oxygen)
		}
	})
}

func TestSameInputSameBand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := inputs(t)
		if a, b := Find(in), Find(in); !reflect.DeepEqual(a, b) {
			t.Fatalf("%+v, then %+v", a, b)
		}
	})
}
