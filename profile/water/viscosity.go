package water

import "math"

// Viscosity returns the dynamic viscosity in Pa s of liquid water at tempC degrees
// Celsius and 0.1 MPa. The range is -20 to 110 C; anything else gives NaN.
//
// Source: IAPWS SR6-08(2011), eq. 7.
func Viscosity(tempC float64) float64 {
	if !(tempC >= liquidMinC && tempC <= liquidMaxC) {
		return math.NaN()
	}
	// One logarithm serves all four powers of T/300 K.
	l := math.Log((tempC + ZeroCelsiusK) / 300)
	return 1e-6 * (280.68*math.Exp(-1.9*l) + 511.45*math.Exp(-7.7*l) +
		61.131*math.Exp(-19.6*l) + 0.45903*math.Exp(-40*l))
}

// KinematicViscosity returns the viscosity divided by the density, in m2/s, at
// tempC degrees Celsius and 0.1 MPa. The range is that of Viscosity.
func KinematicViscosity(tempC float64) float64 {
	return Viscosity(tempC) / Density(tempC)
}
