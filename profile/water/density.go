package water

import "math"

// MaxDensityTempC is the temperature in degrees Celsius at which fresh water at
// 0.1 MPa is densest according to Density (999.97421 kg/m3). Older density
// formulas put it up to 0.007 C higher, on other temperature scales.
//
// Source: the maximum of IAPWS SR6-08(2011).
const MaxDensityTempC = 3.9788

// ZeroCelsiusK is 0 degrees Celsius in kelvins, exact by definition (ITS-90).
const ZeroCelsiusK = 273.15

// The range for which IAPWS SR6-08(2011) states the volume and viscosity formulas,
// 253.15 K to 383.15 K; water colder than 0 C is supercooled liquid, not ice.
const (
	liquidMinC = -20.0
	liquidMaxC = 110.0
)

// Density returns the density in kg/m3 of pure liquid water at tempC degrees
// Celsius and 0.1 MPa (1 atm adds less than 0.001 kg/m3). The range is -20 to 110 C;
// anything else gives NaN.
//
// Source: IAPWS SR6-08(2011), Revised Supplementary Release on Properties of Liquid
// Water at 0.1 MPa, specific volume equation, with R = 0.46151805 kJ/(kg K).
func Density(tempC float64) float64 {
	if !(tempC >= liquidMinC && tempC <= liquidMaxC) {
		return math.NaN()
	}
	tempK := tempC + ZeroCelsiusK
	alpha := 10 / (593 - tempK)
	beta := 10 / (tempK - 232)

	// The powers of alpha are 4, 5, 7, 8, 9 and those of beta 1 to 6. They are
	// nested because this runs millions of times in a fit and math.Pow is slow.
	alpha2 := alpha * alpha
	warm := alpha2 * alpha2 * (6.74458446e3 + alpha*(-2.22521604e5+
		alpha2*(1.00231247e8+alpha*(-1.63552118e9+alpha*8.32299658e9))))
	cold := beta * (5.78545292e-3 + beta*(-1.53195665e-2+beta*(3.11337859e-2+
		beta*(-4.23546241e-2+beta*(3.38713507e-2+beta*-1.19946761e-2)))))

	// R * 10 K / 0.1 MPa, in m3/kg.
	const volumeUnit = 0.046151805
	return 1 / (volumeUnit * (1.93763157e-2 + warm + cold))
}
