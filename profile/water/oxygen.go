package water

import "math"

// StandardAtmospherePa is one standard atmosphere in pascals, exact by definition.
const StandardAtmospherePa = 101325.0

// The range of OxygenSaturation. Benson & Krause measured from 0 to 40 C; one
// degree below is allowed because a thermometer in ice water may read a little
// low. The pressures cover every lake on Earth, and a value given in hPa or kPa by
// mistake falls outside them.
const (
	oxygenMinC  = -1.0
	oxygenMaxC  = 40.0
	oxygenMinPa = 40000.0
	oxygenMaxPa = 120000.0
)

// OxygenSaturation returns the oxygen in mg/L that fresh water at tempC degrees
// Celsius holds in balance with moist air at a total pressure of pressurePa. The
// pressure is that of the air above the lake, not reduced to sea level as weather
// reports give it. The range is -1 to 40 C and 40 000 to 120 000 Pa; anything else
// gives NaN.
//
// Source: Benson & Krause 1984 (Limnology and Oceanography 29:620), with their
// terms for water vapour and for the second virial coefficient of oxygen (theta),
// as in USGS Office of Water Quality Technical Memorandum 2011.03.
func OxygenSaturation(tempC, pressurePa float64) float64 {
	if !(tempC >= oxygenMinC && tempC <= oxygenMaxC) {
		return math.NaN()
	}
	if !(pressurePa >= oxygenMinPa && pressurePa <= oxygenMaxPa) {
		return math.NaN()
	}
	p := pressurePa / StandardAtmospherePa
	x := 1 / (tempC + ZeroCelsiusK)
	atOneAtm := math.Exp(-139.34411 + x*(1.575701e5+x*(-6.642308e7+
		x*(1.243800e10+x*-8.621949e11))))
	vapour := math.Exp(11.8571 - x*(3840.70+x*216961))
	theta := 0.000975 + tempC*(-1.426e-5+tempC*6.436e-8)
	return atOneAtm * (p - vapour) * (1 - theta*p) / ((1 - vapour) * (1 - theta))
}

// OxygenFromPercent returns the oxygen in mg/L of fresh water at tempC degrees
// Celsius under air of pressurePa whose saturation is pct percent. The range of
// temperature and pressure is that of OxygenSaturation.
func OxygenFromPercent(pct, tempC, pressurePa float64) float64 {
	return pct / 100 * OxygenSaturation(tempC, pressurePa)
}
