package water_test

import (
	"fmt"

	"coldseam/profile/water"
)

func ExampleDensity() {
	// IAPWS SR6-08(2011), Table 8: 260 K, 298.15 K and 375 K.
	for _, tempK := range []float64{260, 298.15, 375} {
		fmt.Printf("%.6f kg/m3\n", water.Density(tempK-water.ZeroCelsiusK))
	}
	// Tanaka et al. 2001 (Metrologia 38:301), air-free at 1 atm: 998.2067 kg/m3 at 20 C,
	// here at 0.1 MPa.
	fmt.Printf("%.3f kg/m3\n", water.Density(20))
	// Output:
	// 997.068360 kg/m3
	// 997.047013 kg/m3
	// 957.009710 kg/m3
	// 998.207 kg/m3
}

func ExampleViscosity() {
	// IAPWS SR6-08(2011), Table 8: 298.15 K, 889.996774e-6 Pa s.
	fmt.Printf("%.6f uPa s\n", 1e6*water.Viscosity(25))
	// Output: 889.996774 uPa s
}

func ExampleOxygenSaturation() {
	// Benson & Krause 1984, as in the tables of USGS: 9.092 mg/L at 20 C and one atmosphere.
	fmt.Printf("sea level: %.3f mg/L\n", water.OxygenSaturation(20, water.StandardAtmospherePa))
	fmt.Printf("2000 m:    %.2f mg/L\n", water.OxygenSaturation(20, water.AirPressure(2000)))
	// Output:
	// sea level: 9.092 mg/L
	// 2000 m:    7.09 mg/L
}

func ExampleDepthFromPressure() {
	// NIST SP 811: a foot of water at 39.2 F (4 C) is 2.98898 kPa.
	fmt.Printf("%.4f ft\n", water.DepthFromPressure(2988.98, 4)/0.3048)
	// Output: 1.0000 ft
}

func ExampleAirPressure() {
	// US Standard Atmosphere 1976: 795.01 hPa at 2000 m.
	fmt.Printf("%.2f hPa\n", water.AirPressure(2000)/100)
	// Output: 795.01 hPa
}
