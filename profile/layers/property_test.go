package layers

import (
	"encoding/json"
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
)

// estimates are a column's estimates from the surface down, nil ones left out.
func estimates(l Layers) []profile.Estimate {
	var out []profile.Estimate
	for _, e := range []*profile.Estimate{l.MixedLayer, l.MetalimnionTop, l.Thermocline, l.MetalimnionBottom} {
		if e != nil {
			out = append(out, *e)
		}
	}
	return out
}

// lakes draws columns of any kind: any temperatures, and falling ones, which are
// more often layered.
func lakes() *rapid.Generator[profile.Column] {
	falling := rapid.Custom(func(t *rapid.T) profile.Column {
		z, temp := rapid.Float64Range(0, 2).Draw(t, "first depth"), rapid.Float64Range(10, 30).Draw(t, "first temp")
		var points []profile.Point
		for range rapid.IntRange(3, 20).Draw(t, "readings") {
			points = append(points, profile.Point{DepthM: z, TempC: temp, ErrC: rapid.SampledFrom([]float64{0.1, 0.25, 1}).Draw(t, "error")})
			dz := rapid.Float64Range(0.06, 3).Draw(t, "step")
			z += dz
			temp = math.Max(3, temp-dz*rapid.SampledFrom([]float64{0, 0.1, 0.5, 0.9, 1, 1.2, 4}).Draw(t, "fall"))
		}
		c, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		return c
	})
	return rapid.OneOf(falling, falling, columns(12, -1, 35), columns(12, 0, 6))
}

func TestEstimatesInOrder(t *testing.T) {
	t.Parallel()
	seen := map[Structure]int{}
	rapid.Check(t, func(t *rapid.T) {
		c := lakes().Draw(t, "column")
		l := Find(c)
		seen[l.Structure]++
		above := c.First().DepthM
		for _, e := range estimates(l) {
			if !(e.Low <= e.Best && e.Best <= e.High) {
				t.Fatalf("an estimate out of order: %+v", e)
			}
			if !(e.Low >= c.First().DepthM-1e-9 && e.High <= c.Last().DepthM+1e-9) {
				t.Fatalf("%+v reaches out of the readings, %v to %v m", e, c.First().DepthM, c.Last().DepthM)
			}
			if !(e.Best >= above-1e-9) {
				t.Fatalf("layers out of order: %+v", estimates(l))
			}
			above = e.Best
		}
		if l.Structure == Layered && !(l.SteepestCPerM > 0 && !math.IsInf(l.SteepestCPerM, 0)) {
			t.Fatalf("a break that falls %v C/m", l.SteepestCPerM)
		}
		if l.Structure == Layered && l.SkinM > l.MetalimnionTop.Best+1e-9 {
			t.Fatalf("a skin to %v m, below the metalimnion's top at %v m", l.SkinM, l.MetalimnionTop.Best)
		}
		if math.IsNaN(l.MixedTempC) {
			t.Fatal("the mixed layer's temperature is not a number")
		}
	})
	if seen[Layered] == 0 || seen[Mixed] == 0 {
		t.Errorf("drawn: %v", seen)
	}
}

// A column hung deeper has its layers as much deeper, when it has no skin: only a
// skin has to do with the surface.
func TestShiftedColumn(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := lakes().Draw(t, "column")
		d := rapid.Float64Range(0, 30).Draw(t, "deeper")
		points := c.Points()
		for i := range points {
			points[i].DepthM += 5 // so that neither has a skin, nor a limit at the surface
			// round numbers make ties, which the rounding of a shift decides either way
			points[i].TempC += 1e-3 * math.Sin(float64(i*i+1))
			points[i].DepthM += 1e-3 * math.Sin(float64(3*i*i+2))
		}
		at, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		for i := range points {
			points[i].DepthM += d
		}
		deeper, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		a, b := Find(at), Find(deeper)
		if a.SkinM != 0 || b.SkinM != 0 {
			t.Fatalf("a skin at %v m and %v m, with nothing read above 5 m", a.SkinM, b.SkinM)
		}
		if a.Structure != b.Structure {
			t.Fatalf("%s, and %s when %v m deeper", a.Structure, b.Structure, d)
		}
		ea, eb := estimates(a), estimates(b)
		for i := range ea {
			if p, q := (profile.Estimate{Best: ea[i].Best + d, Low: ea[i].Low + d, High: ea[i].High + d}), eb[i]; math.Abs(p.Best-q.Best) > 1e-6 || math.Abs(p.Low-q.Low) > 1e-6 || math.Abs(p.High-q.High) > 1e-6 {
				t.Fatalf("%+v, but %+v when %v m deeper", ea[i], q, d)
			}
		}
	})
}

func TestSameBytesTwice(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := lakes().Draw(t, "column")
		a, errA := json.Marshal(Find(c))
		b, errB := json.Marshal(Find(c))
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if string(a) != string(b) {
			t.Fatalf("%s\nand %s", a, b)
		}
	})
}

// A column that is warmer at its end than at its top, though it falls on the way, once gave
// a member of the ensemble that was no number.
func TestRisesInAll(t *testing.T) {
	var points []profile.Point
	for i, temp := range []float64{1, 1, 0.004, 0, 1.5, 35, 0.001, 0.04, -1, 1, 0} {
		z := []float64{1, 3, 4, 5, 5.57, 6.57, 7.32, 10.34, 12.53, 15.03, 19.03}
		points = append(points, profile.Point{DepthM: z[i], TempC: temp, ErrC: 0.25})
	}
	for n := range 60 {
		points[n%len(points)].TempC += 0.01
		c, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		for _, member := range Find(c).Ensemble.Temps {
			for _, temp := range member {
				if math.IsNaN(temp) || math.IsInf(temp, 0) {
					t.Fatalf("a member holds %v C", temp)
				}
			}
		}
	}
}

// The zero column has no reading at all.
func TestNoReadings(t *testing.T) {
	l := Find(profile.Column{})
	if l.Structure != TooFew || len(estimates(l)) != 0 {
		t.Errorf("%v", l)
	}
	k := l.Curve
	if !math.IsNaN(k.Top()) || !math.IsNaN(k.Bottom()) || !math.IsNaN(k.At(1)) {
		t.Errorf("an empty curve reads %v C from %v to %v m", k.At(1), k.Top(), k.Bottom())
	}
	if _, ok := k.Crossing(10, 0, 5); ok {
		t.Error("an empty curve reaches 10 C")
	}
	if e := k.CrossingInterval(3, 10); e != profile.Exactly(3) {
		t.Errorf("an empty curve's doubt is %+v", e)
	}
}
