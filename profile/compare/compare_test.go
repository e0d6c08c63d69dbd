package compare

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
)

// Pages of an invented lake: in July, with the layers 5 ft higher, with oxygen, of a cold
// spring, and of one layer.
const (
	july     = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\nmarks at: water\n0 73\n5 73\n10 72\n13 70\n15 66\n17 62\n20 58\n25 53\n29 51\n"
	higher   = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\nmarks at: water\n0 73\n3 73\n5 72\n8 70\n10 66\n12 62\n15 58\n20 53\n29 51\n"
	slightly = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\nmarks at: water\n0 73\n5 73\n10 71.9\n13 69.8\n15 65.8\n17 61.8\n20 58\n25 53\n29 51\n"
	read     = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\nmarks at: water\n0 73 DO 9\n5 73 DO 9\n10 72 DO 9\n13 70 DO 9\n15 66 DO 9\n17 62 DO 9\n20 58 DO 8\n25 53 DO 7\n29 51 DO 6\n"
	spring   = "date: 2026-05-02\nunits: ft F\nbottom: 31 ft\nmarks at: water\n0 50\n5 50\n10 48\n15 45\n20 44\n29 44\n"
	warmer   = "date: 2026-05-02\nunits: ft F\nbottom: 31 ft\nmarks at: water\n0 54\n5 54\n10 50\n15 46\n20 44\n29 44\n"
	warm     = "date: 2026-07-18\nunits: ft F\nbottom: 10 ft\ndeepest: 10 ft\nmarks at: water\n0 80\n5 80\n10 79\n"
	mixed    = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\nmarks at: water\n0 62\n10 62\n20 62\n29 61.8\n"
	blowing  = "wind: SW 14 mph\nlake length: 1200 m\n"
)

// thin is a page that ends just under the thermocline.
func thin(above, bottom string) string {
	return "date: 2026-07-18\nunits: ft F\nbottom: " + bottom + " ft\nmarks at: water\n0 73\n3 73\n5 73\n" + above + " 73\n" + bottom + " 64\n"
}

func of(t *testing.T, fish string, pages ...string) Answer {
	t.Helper()
	var plans []plan.Plan
	for _, page := range pages {
		plans = append(plans, demo.PlanFor(t, page, fish))
	}
	return Of(plans)
}

func TestOf(t *testing.T) {
	for _, c := range []struct {
		name, fish string
		pages      []string
		best       int
		why, but   []Reason
		cause      Cause
	}{
		{"cool water is shallower", "rainbow", []string{july, higher}, 1, []Reason{Shallower}, nil, WindNotKnown},
		{"the other way round", "rainbow", []string{higher, july}, 0, []Reason{Shallower}, nil, WindNotKnown},
		{"within the readings' doubt", "rainbow", []string{july, slightly}, 1, []Reason{NoDifference}, nil, WithinDoubt},
		{"the same", "rainbow", []string{july, july}, 0, []Reason{NoDifference}, nil, WithinDoubt},
		{"oxygen read, but deeper", "rainbow", []string{higher, read}, 1, []Reason{SurerOxygen}, []Reason{Shallower}, WindNotKnown},
		{"only one has water", "rainbow", []string{warm, july}, 1, []Reason{OnlyWater}, nil, NoThermocline},
		{"neither has", "rainbow", []string{warm, warm}, 0, []Reason{NoWater}, nil, NoThermocline},
		{"one layer that suits", "rainbow", []string{july, mixed}, 1, []Reason{SurerOxygen, Shallower}, nil, NoThermocline},
		{"in spring", "rainbow", []string{spring, warmer}, 1, []Reason{Warmer}, nil, WithinDoubt},
		{"bass where it is warm", "largemouth", []string{spring, july}, 1, []Reason{SuitsBetter}, nil, ""},
		{"the wind can", "rainbow", []string{blowing + july, higher}, 1, []Reason{Shallower}, nil, WindCan},
		{"at the strong end of its range", "rainbow", []string{"wind: SW 14 mph\nlake length: 700 m\n" + july, higher}, 1, []Reason{Shallower}, nil, WindCan},
		{"noted with the other", "rainbow", []string{july, blowing + higher}, 1, []Reason{Shallower}, nil, WindCan},
		{"half with each", "rainbow", []string{"wind: SW 14 mph\n" + july, "lake length: 1200 m\n" + higher}, 1, []Reason{Shallower}, nil, WindCan},
		{"too little wind", "rainbow", []string{"wind: SW 4 mph\nlake length: 300 m\n" + july, higher}, 1, []Reason{Shallower}, nil, WindCannot},
		{"calm", "rainbow", []string{"wind: calm\nlake length: 1200 m\n" + july, higher}, 1, []Reason{Shallower}, nil, NoWindToTiltIt},
		{"two waters", "rainbow", []string{"water: Alder Kettle\n" + blowing + july, "water: Sedge Mere\n" + higher}, 1, []Reason{Shallower}, nil, OtherWater},
		{"hardly any water below", "rainbow", []string{blowing + thin("13", "14"), thin("8", "9")}, 1, nil, nil, TooShallow},
		{"three", "rainbow", []string{july, warm, higher}, 2, []Reason{Shallower}, nil, NoThermocline},
	} {
		a := of(t, c.fish, c.pages...)
		if a.Order[0] != c.best || c.why != nil && !slices.Equal(a.Why, c.why) || !slices.Equal(a.But, c.but) || c.cause != "" && a.Cause != c.cause {
			t.Errorf("%s: %+v", c.name, a)
		}
	}
}

// Where the wind can be the cause, the spot with the shallower thermocline is named, and
// how far they are apart.
func TestApart(t *testing.T) {
	a := of(t, "rainbow", blowing+july, higher)
	if a.High != 1 || a.Low != 0 || math.Abs(a.Apart.Best-5*0.3048) > 0.3 || a.Apart.Low > a.Apart.Best || a.Apart.High < a.Apart.Best || a.Tilt.WindMps == 0 {
		t.Errorf("%+v", a)
	}
	if math.Abs(a.TopM-5*0.3048) > 0.3 {
		t.Errorf("cool water begins %v m shallower", a.TopM)
	}
	if a := of(t, "rainbow", july, higher); !a.NeedsWind || !a.NeedsLength {
		t.Errorf("%+v", a)
	}
	if a := of(t, "rainbow", "wind: 5 mph\n"+july, higher); a.NeedsWind || !a.NeedsLength || a.Cause != WindNotKnown {
		t.Errorf("%+v", a)
	}
}

// Different fish, waters and days are told.
func TestDifferent(t *testing.T) {
	a := Of([]plan.Plan{demo.PlanFor(t, july, "rainbow"), demo.PlanFor(t, july, "smallmouth")})
	if a.OneFish {
		t.Error("two fish are one")
	}
	for _, c := range []struct {
		first, second string
		water         bool
		days          int
	}{
		{"water: Alder Kettle\n", "water: alder kettle \n", true, 0}, {"water: Alder Kettle\n", "", true, 0}, {"water: Alder Kettle\n", "water: Sedge Mere\n", false, 0},
		{"date: 2026-07-28 06:00\n", "date: 2026-08-01\n", true, 4}, {"date: 2026-07-28 06:00\n", "date: 2026-07-28 20:00\n", true, 0},
	} {
		page := july[len("date: 2026-07-18\n"):]
		if a := of(t, "rainbow", c.first+page, c.second+page); a.OneWater != c.water || a.DaysApart != c.days || !a.OneFish {
			t.Errorf("%q %q: %+v", c.first, c.second, a)
		}
	}
}

// In whatever order drops are given the best is the same, and a shift of all readings
// beyond doubt is always seen, the shallower one first.
func TestOrderDoesNotMatter(t *testing.T) {
	pages := []string{july, higher, read, warm, mixed}
	var plans []plan.Plan
	for _, p := range pages {
		plans = append(plans, demo.PlanFor(t, p, "rainbow"))
	}
	rapid.Check(t, func(t *rapid.T) {
		order := rapid.Permutation([]int{0, 1, 2, 3, 4}).Draw(t, "order")
		var mine []plan.Plan
		for _, i := range order {
			mine = append(mine, plans[i])
		}
		a := Of(mine)
		var got []int
		for _, i := range a.Order {
			got = append(got, order[i])
		}
		if want := []int{4, 2, 1, 0, 3}; !slices.Equal(got, want) {
			t.Fatalf("%v, want %v", got, want)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		by := rapid.Float64Range(1, 3).Draw(t, "m deeper")
		p, q := plans[0], plans[0]
		q.Band.Top = profile.Estimate{Best: p.Band.Top.Best + by, Low: p.Band.Top.Low + by, High: p.Band.Top.High + by}
		if a := Of([]plan.Plan{q, p}); a.Order[0] != 1 || !slices.Contains(a.Why, Shallower) || math.Abs(a.TopM-by) > 1e-9 {
			t.Fatalf("%+v", a)
		}
	})
}

// A difference of two feet is one where the edges are known to a foot, and none where they
// are known to several.
func TestDoubtCounts(t *testing.T) {
	p := demo.PlanFor(t, july, "rainbow")
	const by = 0.6
	for half, want := range map[float64]Reason{0.3: Shallower, 0.6: NoDifference} {
		q := p
		p.Band.Top = profile.Estimate{Best: 5, Low: 5 - half, High: 5 + half}
		q.Band.Top = profile.Estimate{Best: 5 + by, Low: 5 + by - half, High: 5 + by + half}
		if a := Of([]plan.Plan{p, q}); !slices.Equal(a.Why, []Reason{want}) || a.Order[0] != 0 {
			t.Errorf("to within %v m: %+v", half, a)
		}
	}
}
