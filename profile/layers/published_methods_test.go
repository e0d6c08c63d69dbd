package layers

import (
	"testing"

	"coldseam/profile/water"
)

// Straight lines through profile A by hand: 21.4 C lies half way from 21.5 C at 2 m to
// 21.3 C at 3 m, and so on. The rises of density per metre are those of IAPWS SR6-08:
// .02225, 0, .04420 from the surface, so .03 is reached .00775/.04420 below 2 m.
func TestMixedLayersA(t *testing.T) {
	got := MixedLayers(depthsA, tempsA)
	for i, want := range []float64{2.5, 3.5, 4 + .1/2.7, 4 + .3/2.7, 2 + .00775/.0442} {
		tol := 1e-9
		if i == 4 {
			tol = 5e-4 // the rises are rounded to .00001 kg/m3
		}
		near(t, got[i].Name, got[i].DepthM, want, tol)
		if !got[i].OK {
			t.Errorf("%s: found nothing", got[i].Name)
		}
	}
}

// The rises of density of profile A per metre by IAPWS SR6-08, 4 to 7 m: .54433,
// .60053, .36093. From them by hand the parabola and the centre.
func TestThermoclinesA(t *testing.T) {
	up, most, down := .54433, .60053, .36093
	parabola := 5.5 + .5*(up-down)/(up-2*most+down)
	centre := (up*up*4.5 + most*most*5.5 + down*down*6.5) / (up*up + most*most + down*down)
	got := Thermoclines(depthsA, tempsA)
	for _, c := range []struct {
		name      string
		want, tol float64
	}{
		{FallMiddle, 5.5, 1e-9},
		{RiseMiddle, 5.5, 1e-9},
		{Parabola, parabola, 5e-5},
		{RiseCentre, centre, 5e-5},
		{Cubic, steepestA(), 2e-3},
	} {
		near(t, c.name, answer(t, got, c.name), c.want, c.tol)
	}
}

// steepestA looks for the fastest rise of density between 5 and 6 m of profile A on
// the cubic through 18.2 and 14.6 C with slopes -3.085714 and -3.15 C/m, which are
// those of Fritsch & Butland 1984 there.
func steepestA() float64 {
	at := func(s float64) float64 {
		const a, b = -3.0857142857, -3.15
		h := s * s * (3 - 2*s)
		return water.Density(18.2*(1-h) + 14.6*h + a*s*(1-s)*(1-s) - b*s*s*(1-s))
	}
	best, place := 0.0, 0.0
	for i := range 9999 {
		s := float64(i+1) / 10000
		if rise := at(s+1e-5) - at(s-1e-5); rise > best {
			best, place = rise, 5+s
		}
	}
	return place
}

// The parabola through three numbers by hand: falls of 2.7, 3.6 and 2.8 C/m at 4.5,
// 5.5 and 6.5 m are highest at 5.5 + .05/1.7 m. The unequal ones lie on
// 10 - (z - 4)^2.
func TestParabola(t *testing.T) {
	for _, c := range []struct {
		z, rise []float64
		want    float64
	}{
		{[]float64{4, 5, 6, 7}, []float64{2.7, 3.6, 2.8}, 5.5 + .05/1.7},
		{[]float64{1, 3, 6, 8}, []float64{10 - 4, 10 - .25, 10 - 9}, 4},
		{[]float64{0, 1, 2, 3}, []float64{3, 2, 1}, .5},     // no neighbour above
		{[]float64{0, 1, 2, 3}, []float64{1, 2, 3}, 2.5},    // none below
		{[]float64{0, 1, 2, 3}, []float64{2, 2, 2}, 1.5},    // flat
		{[]float64{0, 8, 9, 20}, []float64{.01, 1, .99}, 9}, // the top of it lies outside
	} {
		i := fastest(c.rise)
		if c.rise[0] == 2 {
			i = 1
		}
		near(t, "parabola", publishedColumn{z: c.z, rise: c.rise}.parabola(i), c.want, 1e-12)
	}
}

func TestEdgesA(t *testing.T) {
	for _, e := range Edges(depthsA, tempsA)[:3] {
		// 4 to 8 m fall 2.7, 3.6, 2.8 and 1.7 C/m and rise .54 to .17 kg/m3 per metre.
		if !e.OK || e.TopM != 4 || e.BottomM != 8 {
			t.Errorf("%s: %v to %v m, want 4 to 8", e.Name, e.TopM, e.BottomM)
		}
	}
}

func TestNamed(t *testing.T) {
	all := []Answer{{Name: "a", DepthM: 3, OK: true}, {Name: "b"}}
	for _, c := range []struct {
		name string
		want Answer
	}{
		{"a", all[0]},
		{"b", all[1]},
		{"c", Answer{Name: "c"}},
	} {
		if got := Named(all, c.name); got != c.want {
			t.Errorf("%q: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// eight readings, as a column from a boat has
var eightZ, eightT = []float64{0, 2, 4, 5, 6, 8, 10, 12}, []float64{21.6, 21.5, 20.9, 18.2, 14.6, 10.1, 8.7, 8.2}

func BenchmarkThermoclines(b *testing.B) {
	for b.Loop() {
		Thermoclines(eightZ, eightT)
	}
}

func BenchmarkMethods(b *testing.B) {
	c, _ := newPublishedColumn(eightZ, eightT)
	i := fastest(c.rise)
	for _, m := range []struct {
		name string
		run  func()
	}{
		{"intervals", func() { fastest(c.fall); fastest(c.rise) }},
		{"parabola", func() { c.parabola(i) }},
		{"cubic", func() { c.cubic(i) }},
		{"centre", func() { c.centre(i) }},
		{"step", func() { fitStep(c.z, c.rho) }},
	} {
		b.Run(m.name, func(b *testing.B) {
			for b.Loop() {
				m.run()
			}
		})
	}
}

func BenchmarkMixedLayers(b *testing.B) {
	for b.Loop() {
		MixedLayers(eightZ, eightT)
	}
}

func BenchmarkEdges(b *testing.B) {
	for b.Loop() {
		Edges(eightZ, eightT)
	}
}
