package water

import (
	"fmt"
	"math"
	"testing"
)

// The one-atmosphere check values of EOS-80 (Fofonoff & Millard 1983, p. 19; Gill
// 1982, A3.2): the density at 35 less that at 0, so half of two last digits.
func TestSalinityIncrementCheckValues(t *testing.T) {
	rows := []struct{ t68, want, tol float64 }{
		{5, 1027.67547 - 999.96675, 1e-5},
		{25, 1023.34306 - 997.04796, 1e-5},
	}
	for _, r := range rows {
		temp := r.t68 / 1.00024
		near(t, fmt.Sprintf("increment at 35 g/kg, %v C", r.t68), DensitySaline(temp, 35)-Density(temp), r.want, r.tol)
	}
}

// What TEOS-10 gives for the same increment. The two equations rest on different
// measurements and a different count of salt; at sea they differ by a few 0.001
// kg/m3. Up to 5 g/kg, 0.002 is asked for, as much as 0.0025 g/kg of salt.
func TestSalinityIncrementTEOS10(t *testing.T) {
	tab := readTable(t, "salinity_gsw.csv")
	if len(tab.rows) != 24 {
		t.Fatalf("%d rows, want 24", len(tab.rows))
	}
	for i := range tab.rows {
		temp, s := tab.num(t, i, "temp_c"), tab.num(t, i, "salinity_gkg")
		near(t, fmt.Sprintf("increment at %v C, %v g/kg", temp, s),
			DensitySaline(temp, s)-Density(temp), tab.num(t, i, "increment_kgm3"), 0.002)
	}
}

// Chen & Millero 1986, made for lakes: coefficients from memory, so only a third
// opinion behind the two tests above.
func TestSalinityIncrementLakes(t *testing.T) {
	for _, temp := range []float64{0, 5, 10, 20, 30} {
		for _, s := range []float64{0.1, 0.3, 0.6} {
			want := (0.8181 - 3.85e-3*temp + 4.96e-5*temp*temp) * s
			near(t, fmt.Sprintf("increment at %v C, %v g/kg", temp, s),
				DensitySaline(temp, s)-Density(temp), want, 0.0025)
		}
	}
}

func TestDensitySalineRange(t *testing.T) {
	for temp := 0.0; temp <= 40; temp += 0.5 {
		if got := DensitySaline(temp, 0); got != Density(temp) {
			t.Errorf("%v C without salt: %v, want Density %v", temp, got, Density(temp))
		}
		if !(DensitySaline(temp, 0.2) > DensitySaline(temp, 0.1)) {
			t.Errorf("%v C: more salt is not denser", temp)
		}
	}
	for _, c := range [][2]float64{{10, -0.1}, {10, 42.01}, {10, math.NaN()}, {-2.001, 1}, {40.001, 1}} {
		if got := DensitySaline(c[0], c[1]); !math.IsNaN(got) {
			t.Errorf("DensitySaline(%v, %v) = %v, want NaN", c[0], c[1], got)
		}
	}
}

func TestDensitySalineAtTheEdges(t *testing.T) {
	for _, c := range [][2]float64{{-2, 0}, {-2, 42}, {40, 0}, {40, 42}} {
		if got := DensitySaline(c[0], c[1]); !(got > 950 && got < 1100) {
			t.Errorf("DensitySaline(%v, %v) = %v, want a density", c[0], c[1], got)
		}
	}
}

func TestSalinityFromConductance(t *testing.T) {
	// USGS OWQ TM 2011.03, formula from memory: the values follow from it. The
	// last row is independent: standard sea water, 53 mS/cm for 35 (from memory).
	rows := []struct{ conductance, want, tol float64 }{
		{0, 0, 0},
		{100, 0.0557, 5e-5},
		{500, 0.2791, 5e-5},
		{1000, 0.5592, 5e-5},
		{2000, 1.1225, 5e-5},
		{20000, 11.952, 1e-4},
		{53000, 35, 0.3},
	}
	for _, r := range rows {
		near(t, fmt.Sprintf("salinity at %v uS/cm", r.conductance), SalinityFromConductance(r.conductance), r.want, r.tol)
	}
	for _, bad := range []float64{-1, math.NaN()} {
		if got := SalinityFromConductance(bad); !math.IsNaN(got) {
			t.Errorf("SalinityFromConductance(%v) = %v, want NaN", bad, got)
		}
	}
}
