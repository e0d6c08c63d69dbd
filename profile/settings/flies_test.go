package settings

import (
	"math"
	"testing"

	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

const box = `fly_weight = "Gold-head"

[[fly]]
name = "gold-head"
weight = "3.3 mm tungsten #12"

[[fly]]
name = "black midge"
weight = "0.2 g"

[[fly]]
name = "leech"
weight = "1/32 oz"
density = 8500
`

// Fly names a fly of the box or says its weight; FlyWeight gives the notebook a mass
// that it takes.
func TestFly(t *testing.T) {
	s, err := Parse("s", []byte(box))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		text       string
		g, density float64 // the bead's by hand: nine tenths of pi/6 d^3 rho, and 0.05 g of hook and dressing
		mass       string  // "" where it is the text itself
	}{
		{"black midge", 0.2, 4000, "0.2 g"},
		{" Black MIDGE ", 0.2, 4000, "0.2 g"},
		{"leech", 0.885923, 8500, "0.885923 g"},
		{"gold-head", 0.346361, 11407, "0.346361 g"},
		{"2.4 mm brass #12", 0.105372, 5283.6, "0.105372 g"},
		{"BB shot", 0.4, 7290, "0.4 g"},
		{"0.25 g", 0.25, 4000, ""},
		{"4 grains", 0.259196, 4000, ""},
		{"1/32 oz", 0.885923, 4000, ""},
	} {
		w, err := s.Fly(c.text)
		if err != nil || math.Abs(w.Kg*1000-c.g) > 1e-6 || math.Abs(w.Density-c.density) > 0.1 {
			t.Errorf("%q: %+v, %v, want %g g of %g kg/m3", c.text, w, err, c.g, c.density)
		}
		want := c.mass
		if want == "" {
			want = c.text
		}
		mass := s.FlyWeight(c.text)
		if mass != want {
			t.Errorf("%q: mass %q, want %q", c.text, mass, want)
		}
		if err := notebook.Check("fly weight", mass); err != nil {
			t.Errorf("%q: the notebook refuses %q: %v", c.text, mass, err)
		}
		if kg, err := unit.ParseMass(mass); err != nil || math.Abs(kg-w.Kg) > 1e-9 {
			t.Errorf("%q: %q is %g kg, want %g, %v", c.text, mass, kg, w.Kg, err)
		}
	}
	for _, text := range []string{"", "no such fly", "0.25"} {
		if w, err := s.Fly(text); err == nil {
			t.Errorf("%q: %+v", text, w)
		}
		if got := s.FlyWeight(text); got != text {
			t.Errorf("%q: mass %q", text, got)
		}
	}
	if s.Usual.Text != "gold-head" || len(s.Headers) != 1 || s.Headers[0].Value != "0.346361 g" {
		t.Errorf("the usual fly: %+v, %+v", s.Usual, s.Headers)
	}
}

// The bounds themselves are allowed.
func TestBounds(t *testing.T) {
	for _, text := range []string{
		"flies = 1", "flies = 3", `sink_rate = "0.25 in/s"`, `sink_rate = "8 in/s"`,
		"[[touched]]\nrig = \"hung\"\ndepth = \"1 m\"\nafter = \"3 s\"", "[[touched]]\nrig = \"hung\"\ndepth = \"30 m\"\nafter = \"10 min\"",
		"[[fly]]\nweight = \"50 g\"", "[[fly]]\nweight = \"0.1 g\"\ndensity = 20000",
	} {
		if _, err := Parse("s", []byte(text)); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
}
