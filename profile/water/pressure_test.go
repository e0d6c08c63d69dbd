package water

import (
	"fmt"
	"math"
	"testing"
)

// Hydrostatic pressure of incompressible fresh water, IAPWS SR6-08(2011) densities
// and standard gravity, computed apart from this program to 0.1 Pa.
func TestDepthFromPressure(t *testing.T) {
	rows := []struct{ depthM, at4, at10, at20 float64 }{
		{1, 9806.4, 9803.7, 9789.1},
		{10, 98064.0, 98037.3, 97890.6},
		{20, 196127.9, 196074.5, 195781.2},
		{30, 294191.9, 294111.8, 293671.9},
		{50, 490319.9, 490186.3, 489453.1},
	}
	for _, r := range rows {
		for temp, want := range map[float64]float64{4: r.at4, 10: r.at10, 20: r.at20} {
			near(t, fmt.Sprintf("depth of %v Pa at %v C", want, temp), DepthFromPressure(want, temp), r.depthM, 0.051/9700)
		}
	}
	// NIST SP 811, foot of water at 39.2 F, 2.98898e3 Pa (from memory). It rests on an
	// older density, 999.972 kg/m3; 0.004 kg/m3 between scales is 0.012 Pa, and half
	// of the last digit is 0.005.
	near(t, "depth of 2988.98 Pa at 4 C", DepthFromPressure(2988.98, 4), 0.3048, 0.017/9806.4)
}

// Leaving out compressibility (4.9481e-10 1/Pa at 4 C, IAPWS SR6-08(2011)) is to
// cost no more than the doc comment says.
func TestCompressibilityIsSmall(t *testing.T) {
	const kappa = 4.9481e-10
	flat := 490319.9 // Pa of incompressible water at 50 m and 4 C, as above
	exact := -math.Log(1-kappa*flat) / kappa
	near(t, "share left out at 50 m", DepthFromPressure(exact, 4)/50-1, 1.2e-4, 0.05e-4)
}

func TestDepthFromPressureIsHydrostatic(t *testing.T) {
	for temp := 0.0; temp <= 30; temp += 1.5 {
		for depth := 0.0; depth <= 60; depth += 0.75 {
			near(t, fmt.Sprintf("depth at %v C", temp), DepthFromPressure(Density(temp)*9.80665*depth, temp), depth, 1e-12*(1+depth))
		}
	}
}

// US Standard Atmosphere 1976. The five-figure entries are those of the published
// table by geometric altitude (from memory), the others are its formula computed
// apart from this program.
func TestAirPressure(t *testing.T) {
	rows := []struct{ altitudeM, pa, tol float64 }{
		{0, 101325, 0},
		{1000, 8.9876e4, 0.5}, // published
		{2000, 7.9501e4, 0.5}, // published
		{3000, 7.0121e4, 0.5}, // published
		{5000, 5.4048e4, 0.5}, // published
		{250, 98357.7, 0.051},
		{500, 95461.3, 0.051},
		{1500, 84559.7, 0.051},
		{2500, 74691.8, 0.051},
		{4000, 61660.4, 0.051},
		{5000 * 0.3048, 84311.1, 0.051},
		{8000 * 0.3048, 75271.2, 0.051},
		{10000 * 0.3048, 69694.6, 0.051},
		// 11 km of geopotential is 11019 m; published 226.32 hPa (from memory).
		{11019, 22632, 2},
	}
	for _, r := range rows {
		near(t, fmt.Sprintf("air pressure at %v m", r.altitudeM), AirPressure(r.altitudeM), r.pa, r.tol)
	}
	for _, bad := range []float64{-4997, 11020, -6356766, math.Inf(1), math.Inf(-1), math.NaN()} {
		if got := AirPressure(bad); !math.IsNaN(got) {
			t.Errorf("AirPressure(%v) = %v, want NaN", bad, got)
		}
	}
}

// The closed form against what it stands for: hydrostatic balance of an ideal gas
// that cools by 6.5 K per kilometre of geopotential, under gravity that wanes with
// the square of the distance, summed metre by metre (midpoint rule).
func TestAirPressureIsHydrostatic(t *testing.T) {
	const radius = 6356766.0
	logP := math.Log(101325)
	for m := range 5000 {
		z := float64(m) + 0.5
		share := radius / (radius + z)
		gravity := 9.80665 * share * share
		tempK := 288.15 - 0.0065*z*share
		logP -= gravity * 28.9644 / (8314.32 * tempK)
		if (m+1)%1000 == 0 {
			want := math.Exp(logP)
			near(t, fmt.Sprintf("air pressure at %d m", m+1), AirPressure(float64(m+1)), want, 1e-7*want)
		}
	}
}
