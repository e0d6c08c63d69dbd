package water

import "math"

// StandardGravity is the standard acceleration of free fall in m/s2, exact by
// definition (3rd CGPM, 1901). Real gravity at sea level runs from 9.780 at the
// equator to 9.832 at the poles, which is 8 cm either way in 30 m of water.
const StandardGravity = 9.80665

// DepthFromPressure returns the depth in metres at which fresh water that is at tempC
// degrees Celsius throughout has the pressure gaugePa in Pa above that of the air. Water
// is taken as incompressible, which at 50 m is wrong by 0.012 %. The temperature range is
// that of Density. Formulas made for the sea give a depth about 2.7 % too small in a lake.
//
// Source: hydrostatic balance, p = rho g z.
func DepthFromPressure(gaugePa, tempC float64) float64 {
	return gaugePa / (Density(tempC) * StandardGravity)
}

// The heights, in metres of geopotential, of the layer where the standard
// atmosphere cools by 6.5 K a kilometre, and where its tables begin.
const (
	airMinM = -5000.0
	airMaxM = 11000.0
)

// AirPressure returns the pressure in Pa of the standard atmosphere at altitudeM
// metres above sea level as a map gives them (geometric altitude). The weather
// moves the real pressure some 2 or 3 % either way. The range is -4 996 to 11 019 m;
// anything else gives NaN.
//
// Source: US Standard Atmosphere 1976, lowest layer.
func AirPressure(altitudeM float64) float64 {
	const (
		earthRadiusM = 6356766.0
		seaLevelK    = 288.15
		lapseKPerM   = 0.0065
		molarMass    = 28.9644 // kg/kmol
		gasConstant  = 8314.32 // J/(kmol K), the value of the 1976 standard
		exponent     = StandardGravity * molarMass / (gasConstant * lapseKPerM)
	)
	geopotentialM := earthRadiusM * altitudeM / (earthRadiusM + altitudeM)
	if !(geopotentialM >= airMinM && geopotentialM <= airMaxM) {
		return math.NaN()
	}
	return StandardAtmospherePa *
		math.Pow(1-lapseKPerM*geopotentialM/seaLevelK, exponent)
}
