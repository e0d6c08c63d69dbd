package water

import (
	"fmt"
	"math"
	"testing"
)

// IAPWS SR6-08(2011), Table 8: the verification values of the release, to the last
// printed digit.
func TestVerificationTable(t *testing.T) {
	rows := []struct{ tempK, rho, rhoTol, mu, muTol float64 }{
		{260, 997.068360, 5e-7, 3058.36075e-6, 5e-12},
		{298.15, 997.047013, 5e-7, 889.996774e-6, 5e-13},
		{375, 957.009710, 5e-7, 276.207245e-6, 5e-13},
	}
	for _, r := range rows {
		near(t, fmt.Sprintf("density at %v K", r.tempK), Density(r.tempK-273.15), r.rho, r.rhoTol)
		near(t, fmt.Sprintf("viscosity at %v K", r.tempK), Viscosity(r.tempK-273.15), r.mu, r.muTol)
	}
}

// The same release as another library computes it, 0 to 30 C in steps of half a
// degree. The tolerances are half of the last digit in the table and the noise of
// double arithmetic.
func TestDensityAndViscosityTable(t *testing.T) {
	tab := readTable(t, "iapws_density.csv")
	if len(tab.rows) != 61 {
		t.Fatalf("%d rows, want 61", len(tab.rows))
	}
	for i := range tab.rows {
		temp := tab.num(t, i, "temp_c")
		rho, mu := tab.num(t, i, "density_kgm3"), tab.num(t, i, "viscosity_pas")
		near(t, fmt.Sprintf("density at %v C", temp), Density(temp), rho, 5.01e-7)
		near(t, fmt.Sprintf("viscosity at %v C", temp), Viscosity(temp), mu, 5.01e-10)
		near(t, fmt.Sprintf("kinematic viscosity at %v C", temp), KinematicViscosity(temp), mu/rho, 5.1e-13)
	}
}

// Independent formulas for the same water. IAPWS-95 belongs to the same family and
// was computed at 1 atm, whose 1325 Pa more account for 0.0007 kg/m3; the others
// rest on older scales of temperature and density.
func TestDensityAgainstOtherFormulas(t *testing.T) {
	rows := []struct {
		source          string
		tempC, rho, tol float64
	}{
		{"IAPWS-95 at 1 atm", 0, 999.84309, 0.001},
		{"IAPWS-95 at 1 atm", 4, 999.97487, 0.001},
		{"IAPWS-95 at 1 atm", 8, 999.85102, 0.001},
		{"IAPWS-95 at 1 atm", 12, 999.50035, 0.001},
		{"IAPWS-95 at 1 atm", 18, 998.59863, 0.001},
		{"IAPWS-95 at 1 atm", 22, 997.77349, 0.001},
		{"IAPWS-95 at 1 atm", 30, 995.64945, 0.001},
		{"Fofonoff & Millard 1983, EOS-80 check value", 5 / 1.00024, 999.96675, 0.004},
		{"Fofonoff & Millard 1983, EOS-80 check value", 25 / 1.00024, 997.04796, 0.004},
		{"Kell 1975", 20, 998.2041, 0.004},
		{"Kell 1975", 25, 997.0449, 0.004},
		{"Kell 1975", 4, 999.9720, 0.004},
		{"Jones & Harris 1992", 20, 998.2033, 0.004},
	}
	for _, r := range rows {
		near(t, fmt.Sprintf("density at %v C (%s)", r.tempC, r.source), Density(r.tempC), r.rho, r.tol)
	}
}

// The temperature of maximum density, found as the zero of the slope.
func TestMaxDensityTemp(t *testing.T) {
	slope := func(tempC float64) float64 { return Density(tempC+0.05) - Density(tempC-0.05) }
	low, high := 0.0, 10.0
	for range 60 {
		mid := (low + high) / 2
		if slope(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	found := (low + high) / 2
	// The constant has four decimals; the slope over 0.1 C shifts the zero by
	// less than 0.0001 C.
	near(t, "MaxDensityTempC", MaxDensityTempC, found, 0.0002)
	rows := []struct {
		source     string
		tempC, tol float64
	}{
		{"EOS-80 (Millero & Poisson 1981)", 3.98168, 0.01},
		{"Kell 1975", 3.98317, 0.01},
		{"CIPM 2001, from memory", 3.983035, 0.01},
	}
	for _, r := range rows {
		near(t, "temperature of maximum density, "+r.source, found, r.tempC, r.tol)
	}
	near(t, "maximum density", Density(found), 999.974209, 1e-6) // IAPWS SR6-08(2011), its maximum
}

func TestDensityShape(t *testing.T) {
	const step = 0.01
	for i := range 4000 {
		temp := float64(i) * step
		d := Density(temp+step) - Density(temp)
		if temp+step < MaxDensityTempC && d <= 0 || temp > MaxDensityTempC && d >= 0 {
			t.Fatalf("density changes by %g from %v to %v C", d, temp, temp+step)
		}
		if v := Viscosity(temp+step) - Viscosity(temp); v >= 0 {
			t.Fatalf("viscosity rises by %g from %v to %v C", v, temp, temp+step)
		}
	}
}

func TestOutsideTheRange(t *testing.T) {
	for _, temp := range []float64{-20.001, 110.001, 273.15, math.Inf(1), math.Inf(-1), math.NaN()} {
		for name, got := range map[string]float64{
			"Density":            Density(temp),
			"Viscosity":          Viscosity(temp),
			"KinematicViscosity": KinematicViscosity(temp),
			"DepthFromPressure":  DepthFromPressure(1, temp),
			"OxygenSaturation":   OxygenSaturation(temp, 101325),
		} {
			if !math.IsNaN(got) {
				t.Errorf("%s at %v C = %v, want NaN", name, temp, got)
			}
		}
	}
	for _, temp := range []float64{-20, 0, 110} {
		if math.IsNaN(Density(temp)) || math.IsNaN(Viscosity(temp)) {
			t.Errorf("%v C is in the range, but gives NaN", temp)
		}
	}
}

func TestDensityAllocatesNothing(t *testing.T) {
	var sum float64
	if n := testing.AllocsPerRun(100, func() { sum += Density(12.5) }); n != 0 {
		t.Errorf("%v allocations a call", n)
	}
}

var sink float64

func BenchmarkDensity(b *testing.B) {
	temp := 0.0
	for b.Loop() {
		sink = Density(temp)
		if temp += 0.01; temp > 30 {
			temp = 0
		}
	}
}
