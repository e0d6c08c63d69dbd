package layers

import (
	"slices"
	"testing"

	"coldseam/profile"
	"coldseam/profile/water"
)

// What hangs together with the steepest interval: over at most 2 m of water that falls at
// least 0.5 C per metre, whatever lies above or below it. Birge's steep interval is 1 C
// per metre; the rest is this package's definition.
func TestZone(t *testing.T) {
	for _, c := range []struct {
		name        string
		z, temps    []float64
		first, last int
	}{
		{"2 m between, above", []float64{0, 1, 2, 3, 4}, []float64{24, 22.5, 22, 21.5, 18}, 0, 3},
		{"2.1 m between, above", []float64{0, 1, 2, 3.1, 4.1}, []float64{24, 22.5, 22, 21.4, 18}, 3, 3},
		{"2 m between, below", []float64{0, 1, 2, 3, 4}, []float64{24, 20, 19.5, 19, 17.5}, 0, 3},
		{"2.1 m between, below", []float64{0, 1, 2, 3.1, 4.1}, []float64{24, 20, 19.5, 18.9, 17.4}, 0, 0},
		{"0.5 C per metre between", []float64{0, 1, 2, 3}, []float64{24, 20, 19.5, 18}, 0, 2},
		{"0.45 C per metre between", []float64{0, 1, 2, 3}, []float64{24, 20, 19.55, 18.05}, 0, 0},
		{"0.45 C per metre between, above", []float64{0, 1, 2, 3}, []float64{24, 22.5, 22.05, 18}, 2, 2},
		{"two gaps of 2 m each", []float64{0, 1, 2, 3, 4, 5, 6, 7}, []float64{24, 20, 19.5, 19, 17.5, 17, 16.5, 15}, 0, 6},
	} {
		f := newGradients(c.z, c.temps)
		if first, last := f.zone(0, f.greatestRise(0)); first != c.first || last != c.last {
			t.Errorf("%s: intervals %d to %d, want %d to %d", c.name, first, last, c.first, c.last)
		}
	}
}

// Another break is worth a word from a fall of 0.5 C, whatever its rate.
func TestLesserBreaks(t *testing.T) {
	for _, c := range []struct {
		name  string
		fallC float64
		want  []Break
	}{
		{"0.5 C in 0.4 m", 0.5, []Break{{8.2, 1.25}}},
		{"0.45 C in 0.4 m", 0.45, nil},
	} {
		z := []float64{0, 2, 3, 4, 6, 8, 8.4, 10}
		end := 14.6 - c.fallC
		f := newGradients(z, []float64{24, 24, 15, 14.8, 14.7, 14.6, end, end})
		first, last := f.zone(0, f.greatestRise(0))
		got := f.others(0, first, last)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			near(t, c.name+": depth", got[i].DepthM, c.want[i].DepthM, 1e-9)
			near(t, c.name+": fall", got[i].CPerM, c.want[i].CPerM, 1e-9)
		}
	}
}

// Steep is 1 C per metre, and 1 C in all only where the interval is wider than 1 m.
func TestSteep(t *testing.T) {
	for _, c := range []struct {
		name         string
		widthM, fall float64
		want         bool
	}{
		{"1 C in 1 m", 1, 1, true},
		{"0.99 C in 1 m", 1, 0.99, false},
		{"1 C in 1.05 m", 1.05, 1, true},
		{"0.99 C in 1.05 m", 1.05, 0.99, false},
		{"0.5 C in 0.5 m", 0.5, 0.5, true},
		{"0.45 C in 0.5 m", 0.5, 0.45, false},
		{"1 C in 20 m", 20, 1, true},
	} {
		if got := newGradients([]float64{3, 3 + c.widthM}, []float64{20, 20 - c.fall}).steep(0); got != c.want {
			t.Errorf("%s: steep %v", c.name, got)
		}
	}
}

// Colder above is inverse only where the top is colder than the densest water, 3.98 C
// (IAPWS SR6-08; Tanaka et al. 2001 have 3.983): above that, colder water above warmer
// would be lighter's reverse, and is a thermometer's error. The least rise is 0.5 C, or
// twice the error of a better thermometer, never more than 0.5 C times two.
func TestInverseNearFourDegrees(t *testing.T) {
	near(t, "densest water", water.MaxDensityTempC, 3.98, 0.01)
	for _, c := range []struct {
		name  string
		temps []float64
		errC  float64
		want  bool
	}{
		{"3.9 C over 4.5 C", []float64{3.9, 4.1, 4.3, 4.5}, 0.1, true},
		{"4.1 C over 4.7 C", []float64{4.1, 4.3, 4.5, 4.7}, 0.1, false},
		{"3.5 C over 3.9 C", []float64{3.5, 3.6, 3.7, 3.9}, 0.1, false},
		{"3.4 C over 3.9 C", []float64{3.4, 3.6, 3.7, 3.9}, 0.1, true},
		{"3.4 C over 3.9 C by a coarse thermometer", []float64{3.4, 3.6, 3.7, 3.9}, 0.3, false},
		{"1.9 C over 3 C by a coarse thermometer", []float64{1.9, 2.2, 2.6, 3}, 0.3, true},
		{"1.9 C over 2.9 C by a very coarse one", []float64{1.9, 2.2, 2.6, 2.9}, 2, true},
		{"1.9 C over 2.8 C by a very coarse one", []float64{1.9, 2.2, 2.6, 2.8}, 2, false},
		{"3.9 C over 3 C", []float64{3.9, 3.6, 3.3, 3}, 0.1, false},
	} {
		if got := newGradients([]float64{0, 2, 4, 6}, c.temps).inverse(c.errC); got != c.want {
			t.Errorf("%s: inverse %v", c.name, got)
		}
	}
}

// A drop that was read at the surface and not again above 4 ft may hide a skin; one that
// begins at a foot is under the thinnest.
func TestWideTop(t *testing.T) {
	for _, c := range []struct {
		first, second float64 // ft
		want          bool
	}{
		{0, 4, true}, {0, 3.9, false}, {0.9, 5, true}, {1, 5, false}, {0, 12, true},
	} {
		l := Find(feet(t, []float64{c.first, c.second, 15, 20, 25}, []float64{74, 73.5, 66, 57, 52}))
		if l.WideTop != c.want {
			t.Errorf("read at %v and %v ft: %v", c.first, c.second, l.WideTop)
		}
	}
}

// A skin's limits where it is only a perhaps: a greater fall than 2 C with nothing steep
// below is taken for the break, and said to be maybe a skin up to 4 C.
func TestMaybeSkin(t *testing.T) {
	for _, c := range []struct {
		name  string
		temps []float64
		edge  int
		maybe bool
	}{
		{"2 C", []float64{22, 20, 20, 20, 20}, 1, false},
		{"2.1 C", []float64{22.1, 20, 20, 20, 20}, 0, true},
		{"4 C", []float64{24, 20, 20, 20, 20}, 0, true},
		{"4.1 C", []float64{24.1, 20, 20, 20, 20}, 0, false},
		{"4 C over a break", []float64{24, 20, 20, 18, 18}, 1, false},
		{"no fall in the top 2 m", []float64{20, 20, 20, 17.9, 17.8}, 0, false},
	} {
		edge, maybe := newGradients([]float64{0, 1, 2, 3, 4}, c.temps).skin()
		if edge != c.edge || maybe != c.maybe {
			t.Errorf("%s: edge %d, maybe %v, want %d and %v", c.name, edge, maybe, c.edge, c.maybe)
		}
	}
	if !slices.Equal(stable([]float64{3, 3.5, 3.9}), []float64{3, 3.5, 3.9}) {
		t.Error("water warmer below, under 4 C, is stable, and was pooled")
	}
}

// With two readings there is too little to say, with three there is an answer.
func TestTooFew(t *testing.T) {
	for n, want := range map[int]Structure{1: TooFew, 2: TooFew, 3: Layered} {
		var points []profile.Point
		for i := range n {
			points = append(points, profile.Point{DepthM: 3 * float64(i), TempC: 20 - 5*float64(i)})
		}
		c, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		if l := Find(c); l.Structure != want {
			t.Errorf("%d readings: %v, want %v", n, l.Structure, want)
		}
	}
}
