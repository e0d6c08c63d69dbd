package plan_test

import (
	"math"
	"testing"

	"coldseam/profile/basin"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
)

const acreM2 = 4046.8564224

func inBasin(t *testing.T, page string, rows ...basin.Row) *plan.Basin {
	t.Helper()
	b, err := basin.New(rows)
	if err != nil {
		t.Fatal(err)
	}
	in := demo.Input(t, page, "rainbow")
	in.Basin = &b
	p, err := plan.Make(in)
	if err != nil {
		t.Fatal(err)
	}
	return p.Basin
}

// Shares are those of the band's edges, inner ones at the low end; what is cast over is a
// part of the bottom of its own.
func TestBasin(t *testing.T) {
	page := demo.Page(t, "alder-kettle-july")
	rows := []basin.Row{{DepthM: 0, AreaM2: 24 * acreM2}, {DepthM: 3.048, AreaM2: 17 * acreM2}, {DepthM: 6.096, AreaM2: 9 * acreM2}, {DepthM: 9.3, AreaM2: 0}}
	p := demo.Plan(t, page)
	b, _ := basin.New(rows)
	got := inBasin(t, page, rows...)
	top, bottom := p.Band.Safe(p.Column.Last().DepthM)
	if got.TooShallow || got.AtLeast || got.Band == nil || got.FloorM != 9.3 {
		t.Fatalf("%+v", got)
	}
	if e := *got.Band; e.Low != b.BottomShare(top, bottom) || !(0 < e.Low && e.Low <= e.Best && e.Best <= e.High && e.High < 0.6) {
		t.Errorf("band %+v, want %v at the low end", e, b.BottomShare(top, bottom))
	}
	if *got.Cast != b.BottomShare(p.Band.CastShallowM, p.Band.CastDeepM) {
		t.Errorf("cast %v", *got.Cast)
	}
	if e := got.Stability; !(e.Low <= e.Best && e.Best <= e.High && e.Low < e.High && e.Low > 0.8*e.Best && e.High < 1.2*e.Best) {
		t.Errorf("stability %+v", e)
	}
	if p.Basin != nil {
		t.Error("an answer without a table")
	}
}

// Two even layers, read often, in a basin of straight walls: g (rho2 - rho1) h1 h2/2 (see
// package basin) is 201.5 J/m2 for 20 C over 8 C, 5 m each.
func TestBasinOfTwoLayers(t *testing.T) {
	page := "units: m C\nthermometer precision: 0.1 C\nmarks at: water\n0 20\n1 20\n2 20\n3 20\n4 20\n4.9 20\n5.1 8\n6 8\n7 8\n8 8\n9 8\n10 8\n"
	got := inBasin(t, page, basin.Row{DepthM: 0, AreaM2: 5}, basin.Row{DepthM: 10, AreaM2: 5})
	if e := got.Stability; math.Abs(e.Best-201.508) > 1 || e.Low > 201.508 || e.High < 201.508 {
		t.Errorf("%+v, want about 201.5", e)
	}
	if got = inBasin(t, page, basin.Row{DepthM: 0, AreaM2: 5}, basin.Row{DepthM: 20, AreaM2: 0}); !got.AtLeast || got.TooShallow {
		t.Errorf("a lake twice as deep as was read: %+v", got)
	}
	if got = inBasin(t, page, basin.Row{DepthM: 0, AreaM2: 5}, basin.Row{DepthM: 9, AreaM2: 0}); !got.TooShallow || got.Band != nil {
		t.Errorf("a table that ends above the readings: %+v", got)
	}
}

// One reading, and water under ice, have a stability too.
func TestBasinEverywhere(t *testing.T) {
	for _, page := range append([]string{"0 ft 60 F\n"}, demo.Page(t, "alder-kettle-january"), demo.Page(t, "alder-kettle-october")) {
		got := inBasin(t, page, basin.Row{DepthM: 0, AreaM2: 5}, basin.Row{DepthM: 12, AreaM2: 0})
		if e := got.Stability; math.IsNaN(e.Low+e.Best+e.High) || e.Best < -1e-9 || e.Best > 10 {
			t.Errorf("%.20q: %+v", page, e)
		}
	}
}
