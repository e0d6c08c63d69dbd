package water

import (
	"fmt"
	"math"
	"testing"
)

// Benson & Krause 1984, fresh water at 1 atm, 0 to 30, 35 and 40 C, computed apart
// from this program and rounded to 0.001 mg/L.
func TestOxygenBensonKrause(t *testing.T) {
	table := []float64{14.621, 14.216, 13.830, 13.461, 13.108, 12.771, 12.448, 12.139,
		11.843, 11.560, 11.288, 11.027, 10.777, 10.537, 10.306, 10.084, 9.870, 9.665,
		9.467, 9.276, 9.092, 8.915, 8.744, 8.578, 8.418, 8.263, 8.114, 7.968, 7.828,
		7.691, 7.559}
	for temp, want := range table {
		near(t, fmt.Sprintf("oxygen at %d C", temp), OxygenSaturation(float64(temp), 101325), want, 0.00055)
	}
	near(t, "oxygen at 35 C", OxygenSaturation(35, 101325), 6.949, 0.00055)
	near(t, "oxygen at 40 C", OxygenSaturation(40, 101325), 6.413, 0.00055)
}

// Values that do not come from this formula.
func TestOxygenPrintedTable(t *testing.T) {
	// APHA table 4500-O:I, from memory; it was made from the equation in umol/kg,
	// which parts from the one in mg/L by 0.001 at 5 C.
	for _, r := range []struct{ tempC, mgL, tol float64 }{
		{0, 14.621, 0.001}, {5, 12.770, 0.002}, {10, 11.288, 0.001}, {15, 10.084, 0.001},
		{20, 9.092, 0.001}, {25, 8.263, 0.001}, {30, 7.559, 0.001},
	} {
		near(t, fmt.Sprintf("APHA, %v C", r.tempC), OxygenSaturation(r.tempC, 101325), r.mgL, r.tol)
	}

	// EN 25814 as printed, one decimal below 16 C and two above. With its one
	// decimal it strays up to 0.061 from Benson & Krause (at 7 C); with two, by
	// half of the last digit and 0.001 for the formulas.
	en := []float64{14.6, 14.2, 13.8, 13.5, 13.1, 12.8, 12.5, 12.2, 11.8, 11.6, 11.3,
		11.0, 10.8, 10.5, 10.3, 10.1, 9.87, 9.66, 9.47, 9.28, 9.09, 8.91, 8.74, 8.58,
		8.42, 8.26, 8.11, 7.97, 7.83, 7.69, 7.56}
	for temp, want := range en {
		tol := 0.061
		if temp >= 16 {
			tol = 0.006
		}
		near(t, fmt.Sprintf("EN 25814, %d C", temp), OxygenSaturation(float64(temp), 101325), want, tol)
	}
}

// Garcia & Gordon 1992, another fit to Benson & Krause's measurements, as gsw
// computes it; the two fits differ by up to 0.0016 mg/L.
func TestOxygenGarciaGordon(t *testing.T) {
	tab := readTable(t, "oxygen_gsw.csv")
	if len(tab.rows) != 31 {
		t.Fatalf("%d rows, want 31", len(tab.rows))
	}
	for i := range tab.rows {
		temp := tab.num(t, i, "temp_c")
		near(t, fmt.Sprintf("oxygen at %v C", temp), OxygenSaturation(temp, 101325), tab.num(t, i, "oxygen_mgl"), 0.002)
	}
}

// Benson & Krause 1984 at lower pressures, computed apart from this program.
func TestOxygenPressure(t *testing.T) {
	const mmHg = 101325.0 / 760
	temps := []float64{0, 5, 10, 15, 20, 25, 30}
	rows := []struct {
		pressurePa float64
		mgL        [7]float64
	}{
		{0.9 * 101325, [7]float64{13.151, 11.484, 10.146, 9.059, 8.162, 7.411, 6.770}},
		{0.8 * 101325, [7]float64{11.681, 10.196, 9.004, 8.034, 7.232, 6.558, 5.982}},
		{0.7 * 101325, [7]float64{10.211, 8.909, 7.862, 7.009, 6.302, 5.706, 5.193}},
		{0.6 * 101325, [7]float64{8.740, 7.621, 6.720, 5.983, 5.371, 4.853, 4.404}},
		{700 * mmHg, [7]float64{13.461, 11.755, 10.387, 9.275, 8.358, 7.590, 6.936}},
		{650 * mmHg, [7]float64{12.494, 10.908, 9.635, 8.600, 7.746, 7.030, 6.418}},
		{600 * mmHg, [7]float64{11.526, 10.061, 8.884, 7.926, 7.134, 6.469, 5.899}},
	}
	for _, r := range rows {
		for i, want := range r.mgL {
			near(t, fmt.Sprintf("oxygen at %v C, %.0f Pa", temps[i], r.pressurePa),
				OxygenSaturation(temps[i], r.pressurePa), want, 0.00055)
		}
	}
}

// The same on mountains, with the pressure of the US Standard Atmosphere 1976.
func TestOxygenAltitude(t *testing.T) {
	temps := []float64{0, 4, 5, 10, 15, 20, 25}
	rows := []struct {
		altitudeM float64
		mgL       [7]float64
	}{
		{500, [7]float64{13.77, 12.34, 12.03, 10.63, 9.49, 8.55, 7.77}},
		{1000, [7]float64{12.96, 11.62, 11.32, 10.00, 8.93, 8.04, 7.30}},
		{1500, [7]float64{12.19, 10.92, 10.64, 9.40, 8.39, 7.55, 6.85}},
		{2000, [7]float64{11.46, 10.26, 10.00, 8.83, 7.88, 7.09, 6.43}},
		{3000, [7]float64{10.09, 9.04, 8.81, 7.77, 6.93, 6.23, 5.64}},
	}
	for _, r := range rows {
		for i, want := range r.mgL {
			near(t, fmt.Sprintf("oxygen at %v C, %v m", temps[i], r.altitudeM),
				OxygenSaturation(temps[i], AirPressure(r.altitudeM)), want, 0.0055)
		}
	}
}

// The saturation is a parabola in the pressure, zero where the air is all vapour and
// at 1/theta. Three pressures give both back, so a slip in the small terms shows
// that the tables above would hide.
func TestOxygenSmallTerms(t *testing.T) {
	rows := []struct {
		source           string
		tempC            float64
		vapourAtm, vaTol float64
	}{
		{"USGS OWQ TM 2011.03, formula computed apart", 0, 0.006027, 5.1e-7},
		{"USGS OWQ TM 2011.03, formula computed apart", 10, 0.012116, 5.1e-7},
		{"USGS OWQ TM 2011.03, formula computed apart", 20, 0.023074, 5.1e-7},
		{"USGS OWQ TM 2011.03, formula computed apart", 30, 0.041876, 5.1e-7},
		// IAPWS-IF97 saturation, 3169.8 Pa, from memory: the two formulas are
		// independent and part by 0.07 %.
		{"IAPWS-IF97", 25, 3169.8 / 101325, 0.001 * 0.0313},
	}
	for _, r := range rows {
		const p, h = 0.8, 0.35 // atm
		at := func(atm float64) float64 { return OxygenSaturation(r.tempC, atm*101325) }
		square := (at(p+h) - 2*at(p) + at(p-h)) / (2 * h * h)
		slope := (at(p+h)-at(p-h))/(2*h) - 2*square*p
		level := at(p) - slope*p - square*p*p
		root := math.Sqrt(slope*slope - 4*square*level)
		vapour := 2 * level / (-slope - root)
		theta := 2 * square / (-slope - root)
		near(t, fmt.Sprintf("vapour pressure at %v C (%s)", r.tempC, r.source), vapour, r.vapourAtm, r.vaTol)
		// The same memorandum's form in kelvins; its rounded coefficients part from
		// the form in Celsius by 1e-7.
		tempK := r.tempC + 273.15
		near(t, fmt.Sprintf("theta at %v C", r.tempC), theta, 9.672e-3-4.942e-5*tempK+6.436e-8*tempK*tempK, 2e-7)
	}
}

func TestOxygenFromPercent(t *testing.T) {
	for temp := 0.0; temp <= 40; temp += 2.5 {
		for p := 40000.0; p <= 120000; p += 8000 {
			full := OxygenSaturation(temp, p)
			near(t, "oxygen of full saturation", OxygenFromPercent(100, temp, p), full, 1e-12)
			for _, pct := range []float64{0, 3.7, 62, 100, 145} {
				near(t, fmt.Sprintf("percent at %v C, %v Pa", temp, p), 100*OxygenFromPercent(pct, temp, p)/full, pct, 1e-10)
			}
		}
	}
}

func TestOxygenFallsWithWarmthAndHeight(t *testing.T) {
	for temp := -1.0; temp < 40; temp += 0.5 {
		if !(OxygenSaturation(temp+0.5, 90000) < OxygenSaturation(temp, 90000)) {
			t.Errorf("warmer than %v C holds no less oxygen", temp)
		}
		if !(OxygenSaturation(temp, 89000) < OxygenSaturation(temp, 90000)) {
			t.Errorf("at %v C less pressure holds no less oxygen", temp)
		}
	}
}

func TestOxygenOutsideTheRange(t *testing.T) {
	// 1013.25 and 101.325 are one atmosphere in hPa and kPa.
	for _, c := range [][2]float64{{-1.01, 1e5}, {40.01, 1e5}, {20, 1013.25}, {20, 101.325},
		{20, 0}, {20, -1}, {20, 120001}, {20, math.NaN()}, {math.NaN(), 1e5}} {
		for _, got := range []float64{OxygenSaturation(c[0], c[1]), OxygenFromPercent(80, c[0], c[1])} {
			if !math.IsNaN(got) {
				t.Errorf("%v C, %v Pa gives %v, want NaN", c[0], c[1], got)
			}
		}
	}
}
