package water

import (
	"fmt"
	"math"
	"testing"
)

// The densities and N2 of TEOS-10 (gsw), for the brackish published check cast and
// a fresh-water profile. Both densities of a pair are for the pressure between
// them. gsw uses the gravity of the latitude and this package standard gravity;
// the distance follows from it, so the ratio of the two is taken out (0.12 % at 59
// degrees). What remains is that gsw takes the slope of density at the middle
// temperature of the pair and this package the difference: the midpoint rule, wrong
// by the square of the step over 24 times the bend of the slope, some 0.08 % for
// 3.6 C. Hence 0.1 % where the step is over half a degree and 0.01 % elsewhere.
// The densities are rounded to 1e-8 kg/m3, which is 1e-10 s^-2 at most.
func TestBuoyancyAgainstTEOS10(t *testing.T) {
	tab := readTable(t, "n2_gsw.csv")
	if len(tab.rows) != 18 {
		t.Fatalf("%d rows, want 18", len(tab.rows))
	}
	for i := range tab.rows {
		num := func(column string) float64 { return tab.num(t, i, column) }
		got := BuoyancyFrequencySquared(num("rho_upper_kgm3"), num("rho_lower_kgm3"), num("dz_m"))
		got *= num("gravity_ms2") / StandardGravity
		rel := 0.0001
		if math.Abs(num("temp_upper_c")-num("temp_lower_c")) > 0.5 {
			rel = 0.001
		}
		want := num("n2_s2")
		near(t, fmt.Sprintf("N2 of row %d (%s)", i+1, tab.rows[i][0]), got, want, rel*want+1e-10)
	}
}

// The way the program uses it: densities of Density from measured temperatures,
// with no pressure. Three things part it from gsw, and the tolerance of each row is
// their sum: water that rises cools (4e-7 s^-2 at 22 C, less below); the midpoint
// rule above (0.1 %); and pressure, which lowers the temperature of maximum density
// by 0.0021 C a metre (from memory) and so steepens the density slope by that share
// of the distance of the water from that temperature.
func TestBuoyancyFromTemperatures(t *testing.T) {
	tab := readTable(t, "n2_gsw.csv")
	rows := 0
	for i := range tab.rows {
		if tab.rows[i][tab.column["case"]] != "profile_a" {
			continue
		}
		upper, lower := tab.num(t, i, "temp_upper_c"), tab.num(t, i, "temp_lower_c")
		depth := float64(rows) + 0.5
		rows++
		want := tab.num(t, i, "n2_s2")
		got := BuoyancyFrequencySquared(Density(upper), Density(lower), 1)
		squeeze := 0.0021 * depth / ((upper+lower)/2 - MaxDensityTempC)
		near(t, fmt.Sprintf("N2 at %v m", depth), got, want, 4e-7+(0.001+squeeze)*want)
	}
	if rows != 12 {
		t.Fatalf("%d rows of profile_a, want 12", rows)
	}
}

// The same profile, N2 computed apart from this program from IAPWS SR6-08(2011)
// densities to seven digits.
func TestBuoyancyDirect(t *testing.T) {
	temps := []float64{21.6, 21.5, 21.5, 21.3, 20.9, 18.2, 14.6, 11.8, 10.1, 9.2, 8.7, 8.4, 8.2}
	want := []float64{2.186778e-4, 0, 4.343272e-4, 8.564843e-4, 5.347194e-3, 5.895891e-3,
		3.541805e-3, 1.674796e-3, 7.343447e-4, 3.611380e-4, 2.003769e-4, 1.267278e-4}
	for i, w := range want {
		got := BuoyancyFrequencySquared(Density(temps[i]), Density(temps[i+1]), 1)
		near(t, fmt.Sprintf("N2 of interval %d", i), got, w, 1e-6*w)
	}
}

func TestBuoyancyEdges(t *testing.T) {
	if got := BuoyancyFrequencySquared(1000, 999, 1); !(got < 0) {
		t.Errorf("dense water on top gives %v, want a negative answer", got)
	}
	near(t, "twice the distance", BuoyancyFrequencySquared(998, 999, 2), BuoyancyFrequencySquared(998, 999, 1)/2, 1e-18)
	for _, c := range [][3]float64{{998, 999, 0}, {998, 999, -1}, {0, 999, 1}, {998, -1, 1},
		{math.NaN(), 999, 1}, {998, math.NaN(), 1}, {998, 999, math.NaN()}} {
		if got := BuoyancyFrequencySquared(c[0], c[1], c[2]); !math.IsNaN(got) {
			t.Errorf("BuoyancyFrequencySquared(%v) = %v, want NaN", c, got)
		}
	}
}
