package band

import (
	"testing"

	"coldseam/profile"
)

// Water to cast over (common practice): from the inner top plus the fly's clearance
// to the inner bottom, or to 20 ft where that is less.
func TestCast(t *testing.T) {
	good := func(n int) []float64 {
		o := make([]float64, n)
		for i := range o {
			o[i] = 9
		}
		return o
	}
	shallowZ := []float64{0, 1, 2, 3, 4, 5, 6}
	shallowT := []float64{24, 24, 21, 17, 13, 11, 10}
	squeezed := []float64{9, 9, 9, 9, 8, 2, 1}
	for _, c := range []struct {
		name    string
		z, temp []float64
		oxygen  []float64
		clear   float64
		deep20  bool // 20 ft is the limit
	}{
		{"to 20 ft", summerZ, summerT, nil, ft, true},
		{"2 ft of clearance", summerZ, summerT, nil, 2 * ft, true},
		{"to the inner bottom", shallowZ, shallowT, squeezed, ft, false},
		{"oxygen all the way", shallowZ, shallowT, good(7), ft, false},
	} {
		in := input(column(t, c.z, c.temp, c.oxygen), trout())
		in.ClearanceM = c.clear
		b := Find(in)
		if !b.Found || b.OverDeep || b.Suspended || b.Thin {
			t.Fatalf("%s: found %v, over deep %v, suspended %v, thin %v", c.name, b.Found, b.OverDeep, b.Suspended, b.Thin)
		}
		near(t, c.name+", least", b.CastShallowM, b.Top.High+c.clear, 1e-9)
		deep := b.Bottom.Low
		if c.deep20 {
			deep = 20 * ft
		}
		near(t, c.name+", most", b.CastDeepM, deep, 1e-9)
		if b.Top.High <= b.Top.Best || b.CastDeepM > b.Bottom.Best {
			t.Errorf("%s: the edges used are not the inner ones", c.name)
		}
	}
}

// A band whose top plus clearance is over 20 ft stays where it is.
func TestOverDeep(t *testing.T) {
	z := []float64{0, 3, 6, 7, 8, 9, 12}
	b := Find(input(column(t, z, []float64{25, 25, 24.5, 21, 16, 12, 9}, nil), trout()))
	if !b.OverDeep || b.CastShallowM <= 20*ft || b.CastDeepM <= 20*ft {
		t.Fatalf("over deep %v, cast %.2f to %.2f m", b.OverDeep, b.CastShallowM, b.CastDeepM)
	}
	near(t, "to the band's own bottom", b.CastDeepM, b.Bottom.Low, 1e-9)
	if b.Start.Best < b.Top.Best {
		t.Errorf("start at %.2f m, pulled up over the band's top at %.2f m", b.Start.Best, b.Top.Best)
	}
}

// Cool to the top: there is no edge to keep to, and the shelf (from 4 ft, common
// practice) is cast over.
func TestCastFromTheSurface(t *testing.T) {
	b := Find(input(column(t, []float64{0, 4, 8}, []float64{15, 14, 12}, nil), trout()))
	near(t, "least", b.CastShallowM, 4*ft, 1e-9)
	near(t, "most", b.CastDeepM, 20*ft, 1e-9)
	pond := input(column(t, []float64{0, 0.5}, []float64{15, 15}, nil), trout())
	pond.Bottom, pond.Deepest = profile.Some(0.8), profile.Some(0.8)
	b = Find(pond)
	if b.CastDeepM > 0.8+1e-9 || b.CastShallowM > b.CastDeepM {
		t.Errorf("a pond of 0.8 m: cast over %.2f to %.2f m", b.CastShallowM, b.CastDeepM)
	}
}

// A fish of open water is fished for at the start, over water of any depth from
// there on.
func TestSuspended(t *testing.T) {
	in := input(column(t, summerZ, summerT, nil), ask(t, "kokanee"))
	in.Bottom = profile.Some(18)
	b := Find(in)
	if !b.Found || !b.Suspended {
		t.Fatalf("found %v, suspended %v", b.Found, b.Suspended)
	}
	near(t, "least water", b.CastShallowM, b.Start.Best+ft, 1e-9)
	near(t, "most water", b.CastDeepM, 18, 1e-9)
	if Find(input(column(t, summerZ, summerT, nil), ask(t, "rainbow"))).Suspended {
		t.Error("rainbow trout suspended")
	}
}

// A band thinner than the doubt about its edges is given by its middle edges, and
// the fly stays in it. Squeezed to inches between warmth and want of oxygen it is none.
func TestThin(t *testing.T) {
	at := func(oxygenAt6 float64) Band {
		return Find(input(column(t, []float64{0, 2, 4, 5, 6, 9}, []float64{24, 24, 23.5, 20.5, 15, 8}, []float64{8, 8, 8, 6, oxygenAt6, 0.2}), trout()))
	}
	b := at(4.5)
	if !b.Found || !b.Thin || b.Bottom.Best-b.Top.Best > 0.6 {
		t.Fatalf("half a metre: found %v, thin %v, %.2f to %.2f m", b.Found, b.Thin, b.Top.Best, b.Bottom.Best)
	}
	for what, z := range map[string]float64{"start": b.Start.Best, "fly": b.WaterM - ft} {
		if z < b.Top.Best || z > b.Bottom.Best {
			t.Errorf("%s %.2f m, outside %.2f to %.2f m", what, z, b.Top.Best, b.Bottom.Best)
		}
	}
	// 20 C lies near 5.1 m, and 5 mg/L a quarter of the way from 6 to 2 mg/L
	b = at(2)
	if b.Found || b.Verdict != NoOxygen {
		t.Errorf("a few inches: %q, %.2f to %.2f m", b.Verdict, b.Top.Best, b.Bottom.Best)
	}
	near(t, "where its oxygen ends", b.OxygenToM.Value, 5.25, 1e-9)
}

// Nowhere is deeper than the lake's deepest water.
func TestCastWithinTheLake(t *testing.T) {
	in := input(column(t, []float64{0, 2, 3, 4, 5}, []float64{24, 23, 21, 18, 15}, nil), trout())
	in.Deepest = profile.Some(5.1)
	b := Find(in)
	if b.CastDeepM > 5.1+1e-9 || b.CastShallowM > 5.1+1e-9 || b.WaterM > 5.1+1e-9 {
		t.Errorf("cast over %.2f to %.2f m, first %.2f m, in a lake of 5.1 m", b.CastShallowM, b.CastDeepM, b.WaterM)
	}
}
