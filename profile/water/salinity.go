package water

import "math"

// The range of the EOS-80 salinity terms.
const (
	salineMinC   = -2.0
	salineMaxC   = 40.0
	salineMaxGKg = 42.0
)

// DensitySaline returns the density in kg/m3 at atmospheric pressure of water at
// tempC degrees Celsius with salinityGKg grams of dissolved salts per kilogram. It
// is Density plus the salinity terms of EOS-80. The range is -2 to 40 C and 0 to
// 42 g/kg, meant for 0 to 5; anything else gives NaN.
//
// Only the salinity terms come from EOS-80. Its own pure-water part is tied to an
// older temperature scale and an older standard water and differs from Density by
// up to 0.003 kg/m3 between 0 and 30 C; with the sum, salinity 0 gives exactly
// Density, so that a column with salt and one without can be compared. The terms
// are for sea salt. Lake salts, rich in calcium and hydrogen carbonate, are
// somewhat denser; that error is the same all the way down a well-mixed lake and
// hardly touches the differences that layering is made of.
//
// Source: Millero & Poisson 1981; Fofonoff & Millard 1983 (Unesco Technical Papers
// in Marine Science 44), one-atmosphere equation of state.
func DensitySaline(tempC, salinityGKg float64) float64 {
	if !(tempC >= salineMinC && tempC <= salineMaxC) {
		return math.NaN()
	}
	if !(salinityGKg >= 0 && salinityGKg <= salineMaxGKg) {
		return math.NaN()
	}
	return Density(tempC) + salinityIncrement(tempC, salinityGKg)
}

// salinityIncrement returns what salinityGKg adds to the density, in kg/m3.
func salinityIncrement(tempC, salinityGKg float64) float64 {
	t := 1.00024 * tempC // EOS-80 is written for IPTS-68; factor of Saunders 1990, from memory
	a := 8.24493e-1 + t*(-4.0899e-3+t*(7.6438e-5+t*(-8.2467e-7+t*5.3875e-9)))
	b := -5.72466e-3 + t*(1.0227e-4+t*-1.6546e-6)
	const c = 4.8314e-4
	return salinityGKg * (a + b*math.Sqrt(salinityGKg) + c*salinityGKg)
}

// SalinityFromConductance returns the salinity in g/kg of water whose specific
// conductance, referred to 25 C, is uSPerCmAt25 microsiemens per centimetre. A
// negative value or NaN gives NaN.
//
// Which ions a lake holds matters more than the digits here: the same conductance
// can mean a fifth more or less salt, and the practical salinity scale, made for
// diluted sea water, gives 12 to 17 % less than this formula below 1000 uS/cm.
//
// Source: USGS Office of Water Quality Technical Memorandum 2011.03 (from memory).
func SalinityFromConductance(uSPerCmAt25 float64) float64 {
	if !(uSPerCmAt25 >= 0) {
		return math.NaN()
	}
	return uSPerCmAt25 * (5.572e-4 + 2.02e-9*uSPerCmAt25)
}
