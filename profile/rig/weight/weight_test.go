package weight

import (
	"math"
	"testing"
)

// Masses of solid spheres, pi/6 d^3 rho worked out elsewhere to four digits of a gram.
func TestSphere(t *testing.T) {
	for _, c := range []struct {
		mm    float64
		metal string
		g     float64
	}{
		{2.0, "tungsten", .0733}, {2.4, "tungsten", .1267}, {2.8, "tungsten", .2011},
		{3.3, "tungsten", .3293}, {3.8, "tungsten", .5028}, {4.6, "tungsten", .8919},
		{2.0, "brass", .0356}, {2.4, "brass", .0615}, {2.8, "brass", .0977},
		{3.3, "brass", .1599}, {3.8, "brass", .2442}, {4.6, "brass", .4332},
	} {
		density, ok := MetalDensity(c.metal)
		w := Weight{Kg: sphereM3(c.mm/1000) * density, Density: density}
		if !ok || math.Abs(w.Kg*1000-c.g) > 0.00005 {
			t.Errorf("%g mm %s: %.5f g, want %.4f", c.mm, c.metal, w.Kg*1000, c.g)
		}
		bead, err := Bead(c.mm/1000, c.metal)
		if err != nil || math.Abs(bead.Kg/w.Kg-0.9) > 1e-12 || bead.Density != density {
			t.Errorf("%g mm %s bead: %+v, %v, want nine tenths of the sphere", c.mm, c.metal, bead, err)
		}
	}
	// A lead sphere of 0.4 g is 4.07 mm across; one of 4.57 mm, a shotgun's BB, is
	// 0.567 g and no angler's BB.
	lead, _ := MetalDensity("lead")
	if d := math.Cbrt(0.0004 / lead / sphereM3(1)); math.Abs(d-0.00407) > 0.000005 {
		t.Errorf("a lead sphere of 0.4 g: %.6f m", d)
	}
	if g := sphereM3(0.00457) * lead * 1000; math.Abs(g-0.567) > 0.0005 {
		t.Errorf("a lead sphere of 4.57 mm: %.5f g", g)
	}
}

func TestBeadErrors(t *testing.T) {
	for _, c := range []struct {
		m     float64
		metal string
	}{{0.0033, "gold"}, {0.0033, ""}, {0, "brass"}, {-0.0033, "brass"}, {0.0111, "brass"}, {math.NaN(), "brass"}, {math.Inf(1), "brass"}} {
		if w, err := Bead(c.m, c.metal); err == nil || w != (Weight{}) {
			t.Errorf("%g m %q: %+v, %v", c.m, c.metal, w, err)
		}
	}
}

// The hook of size 12 and its dressing are 0.05 g (common practice), one four sizes
// larger or smaller twice or half of it; the whole's density is mass over volume.
func TestOnHook(t *testing.T) {
	bead, err := Bead(0.0033, "tungsten")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name        string
		bead        Weight
		size        int
		g, density  float64 // by hand: 16.935 mm3 of bead, 5.096 of wire, 8.333 of dressing
		tolG, tolD  float64
		text        string
		wantRefused bool
	}{
		{"bead, 12", bead, 12, 0.34636, 11407, 0.00001, 1, "3.3 mm tungsten bead, hook 12", false},
		{"bead, 8", bead, 8, 0.39636, 9051, 0.00001, 1, "3.3 mm tungsten bead, hook 8", false}, // 43.793 mm3
		{"bare, 12", Weight{}, 12, 0.05, 3723, 1e-9, 1, "hook 12", false},
		{"bare, 8", Weight{}, 8, 0.1, 3723, 1e-9, 1, "hook 8", false},
		{"bare, 16", Weight{}, 16, 0.025, 3723, 1e-9, 1, "hook 16", false},
		{"too small", bead, 25, 0, 0, 0, 0, "", true},
		{"too large", bead, 1, 0, 0, 0, 0, "", true},
		{"nonsense", bead, -12, 0, 0, 0, 0, "", true},
	} {
		w, err := OnHook(c.bead, c.size)
		if (err != nil) != c.wantRefused {
			t.Errorf("%s: %v", c.name, err)
		}
		if math.Abs(w.Kg*1000-c.g) > c.tolG || math.Abs(w.Density-c.density) > c.tolD || w.Text != c.text {
			t.Errorf("%s: %+v, want %g g, %g kg/m3, %q", c.name, w, c.g, c.density, c.text)
		}
	}
}

// The UK trade's scale (common practice).
func TestShot(t *testing.T) {
	for _, c := range []struct {
		name string
		g    float64 // 0: refused
	}{
		{"SSG", 1.6}, {"AAA", .8}, {"BB", .4}, {"bb", .4}, {"No.1", .3}, {"no 1", .3}, {"3", .2}, {"#4", .17}, {"No. 5", .13},
		{"6", .1}, {"8", .06}, {"10", .04}, {" 12 ", .02}, {"2", 0}, {"", 0}, {"no", 0}, {"BBB", 0}, {"-4", 0}, {"4.0", 0},
	} {
		w, err := Shot(c.name)
		if (err == nil) != (c.g > 0) || math.Abs(w.Kg*1000-c.g) > 1e-12 {
			t.Errorf("%q: %+v, %v, want %g g", c.name, w, err, c.g)
		}
		if c.g > 0 && w.Density != 7290 { // tin, from memory
			t.Errorf("%q: density %g", c.name, w.Density)
		}
	}
}
