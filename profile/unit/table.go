package unit

import (
	"strings"
	"sync"
)

// Quantity is what a unit measures.
type Quantity uint8

// The quantities.
const (
	NoQuantity Quantity = iota
	OfLength
	OfTemperature
	OfSpeed
	OfMass
	OfPressure
	OfTime
	OfResistance
	OfArea
	OfOther // volts, per cent: known, so that it is not taken for something else
)

// Unit is a unit, or a scale of temperature.
type Unit uint8

// Length is a unit of length, Temperature a scale of temperature.
type (
	Length      = Unit
	Temperature = Unit
)

// The units. The zero Unit is one that is not stated.
const (
	None Unit = iota
	Metre
	Centimetre
	Millimetre
	Foot
	Inch
	Yard
	Fathom
	Celsius
	Fahrenheit
	Kelvin
	InchPerSecond
	CentimetrePerSecond
	MetrePerSecond
	FootPerSecond
	MilePerHour
	KilometrePerHour
	Knot
	Gram
	Milligram
	Kilogram
	Ounce
	Grain
	Pascal
	Hectopascal
	Millibar
	Kilopascal
	Bar
	PSI
	InchOfMercury
	Second
	Millisecond
	Microsecond
	Minute
	Hour
	Ohm
	Kilohm
	SquareMetre
	Hectare
	SquareKilometre
	Acre
	SquareMile
	Other

	NoLength      = None
	NoTemperature = None
)

// definition: a number of the unit, less zero, times mul and divided by div, is in SI.
type definition struct {
	quantity  Quantity
	symbol    string
	mul, div  float64
	names     string // as people write and instruments print it, in lower case
	byPeople  string // names that only people write
	byDevices string // names that only instruments print
	zero      float64
}

// The inch, the foot, the yard, the mile (and so the acre of 43,560 square feet), the ounce and the grain are exact by the
// international yard and pound agreement of 1959, the knot by the nautical mile of 1929
// (1852 m); the pound-force per square inch follows from them and 9.80665 m/s2; the inch
// of mercury is that of NIST SP 811.
var table = [...]definition{
	None: {mul: 1, div: 1, symbol: "?"},

	Metre:      {OfLength, "m", 1, 1, "m meter meters metre metres", "mtr mtrs", "", 0},
	Centimetre: {OfLength, "cm", 1, 100, "cm", "centimetre centimetres centimeter centimeters", "", 0},
	Millimetre: {OfLength, "mm", 1, 1000, "mm", "millimetre millimetres millimeter millimeters", "", 0},
	Foot:       {OfLength, "ft", 0.3048, 1, "ft feet foot", "' fts", "", 0},
	Inch:       {OfLength, "in", 0.0254, 1, "in inch inches", `" ins`, "", 0},
	Yard:       {OfLength, "yd", 0.9144, 1, "", "yd yds yard yards", "", 0},
	Fathom:     {OfLength, "fathom", 1.8288, 1, "", "fathom fathoms fm fth", "", 0},

	Celsius:    {OfTemperature, "C", 1, 1, "c celsius", "centigrade", "degc \u2103", 0},
	Fahrenheit: {OfTemperature, "F", 5, 9, "f fahrenheit", "", "degf \u2109", 32},
	Kelvin:     {OfTemperature, "K", 1, 1, "", "", "k kelvin", 273.15},

	InchPerSecond:       {OfSpeed, "in/s", 0.0254, 1, "", "in/s ips inch/s inches/s in/sec", "", 0},
	CentimetrePerSecond: {OfSpeed, "cm/s", 1, 100, "", "cm/s", "", 0},
	MetrePerSecond:      {OfSpeed, "m/s", 1, 1, "", "m/s mps", "", 0},
	FootPerSecond:       {OfSpeed, "ft/s", 0.3048, 1, "", "ft/s fps", "", 0},
	MilePerHour:         {OfSpeed, "mph", 0.44704, 1, "", "mph mi/h", "", 0},
	KilometrePerHour:    {OfSpeed, "km/h", 1000, 3600, "", "km/h kmh kph", "", 0},
	Knot:                {OfSpeed, "kn", 1852, 3600, "", "kn kt kts knots knot", "", 0},

	Gram:      {OfMass, "g", 1, 1e3, "", "g gram grams", "", 0},
	Milligram: {OfMass, "mg", 1, 1e6, "", "mg", "", 0},
	Kilogram:  {OfMass, "kg", 1, 1, "", "kg", "", 0},
	Ounce:     {OfMass, "oz", 0.45359237, 16, "", "oz ounce ounces", "", 0},
	Grain:     {OfMass, "gr", 0.45359237, 7000, "", "gr grain grains", "", 0},

	Pascal:        {OfPressure, "Pa", 1, 1, "pa", "", "pascal", 0},
	Hectopascal:   {OfPressure, "hPa", 100, 1, "hpa", "", "", 0},
	Millibar:      {OfPressure, "mbar", 100, 1, "mbar mb", "", "millibar", 0},
	Kilopascal:    {OfPressure, "kPa", 1000, 1, "kpa", "", "", 0},
	Bar:           {OfPressure, "bar", 1e5, 1, "bar", "", "", 0},
	PSI:           {OfPressure, "psi", 0.45359237 * 9.80665 / (0.0254 * 0.0254), 1, "", "", "psi", 0},
	InchOfMercury: {OfPressure, "inHg", 3386.389, 1, "", "inhg", "", 0},

	Second:      {OfTime, "s", 1, 1, "s sec secs seconds", "second", "", 0},
	Millisecond: {OfTime, "ms", 1, 1e3, "", "", "ms msec millis", 0},
	Microsecond: {OfTime, "us", 1, 1e6, "", "", "us micros", 0},
	Minute:      {OfTime, "min", 60, 1, "min minutes", "mins minute", "", 0},
	Hour:        {OfTime, "h", 3600, 1, "", "h hour hours", "", 0},

	Ohm:    {OfResistance, "ohm", 1, 1, "", "", "ohm ohms \u03a9 \u2126 \u03c9", 0},
	Kilohm: {OfResistance, "kohm", 1000, 1, "", "", "kohm kohms k\u03a9 k\u2126", 0},

	SquareMetre:     {OfArea, "m2", 1, 1, "", "m2 m\u00b2 sqm", "", 0},
	Hectare:         {OfArea, "ha", 1e4, 1, "", "ha hectare hectares", "", 0},
	SquareKilometre: {OfArea, "km2", 1e6, 1, "", "km2 km\u00b2 sqkm", "", 0},
	Acre:            {OfArea, "acres", 43560 * 0.3048 * 0.3048, 1, "", "acre acres ac", "", 0},
	SquareMile:      {OfArea, "sq mi", 1609.344 * 1609.344, 1, "", "sqmi mi2 squaremile squaremiles", "", 0},

	Other: {OfOther, "?", 1, 1, "", "", "% v mv ma ppm ntu db lux rh", 0},
}

// names are the units by their names in lower case.
var (
	byPeople  = sync.OnceValue(func() map[string]Unit { return named(func(d definition) string { return d.byPeople }) })
	byDevices = sync.OnceValue(func() map[string]Unit { return named(func(d definition) string { return d.byDevices }) })
)

func named(besides func(definition) string) map[string]Unit {
	units := map[string]Unit{}
	for u, d := range table {
		for _, name := range strings.Fields(d.names + " " + besides(d)) {
			units[name] = Unit(u)
		}
	}
	return units
}

// Named finds the unit of a quantity by a symbol or a name as people write it, in any
// case.
func Named(name string, of Quantity) (u Unit, ok bool) {
	u = byPeople()[strings.ToLower(name)]
	return u, u != None && u.Quantity() == of
}

// longestPrinted bounds the words that instruments print for a unit, in bytes.
const longestPrinted = 12

// Printed finds a unit by a word that an instrument prints, in any case and without a
// degree sign; None where it is none. It makes no garbage.
func Printed(word []byte) Unit {
	var low [longestPrinted]byte
	if len(word) > len(low) {
		return None
	}
	if len(word) == 1 && word[0] == 'k' {
		return Kilohm // 12.49k; a big K is the kelvin
	}
	for i, c := range word {
		if low[i] = c; c >= 'A' && c <= 'Z' {
			low[i] += 'a' - 'A'
		}
	}
	return byDevices()[string(low[:len(word)])]
}

func (u Unit) definition() *definition {
	if int(u) >= len(table) {
		u = None
	}
	return &table[u]
}

// Quantity is what the unit measures.
func (u Unit) Quantity() Quantity { return u.definition().quantity }

// String gives the unit's symbol, "?" where it is not stated.
func (u Unit) String() string { return u.definition().symbol }

// SI converts a number of this unit to SI, a temperature to degrees Celsius. One that is
// not stated is taken as in SI.
func (u Unit) SI(v float64) float64 {
	d := u.definition()
	return (v - d.zero) * d.mul / d.div
}

// From converts an SI value, a temperature in degrees Celsius, to this unit.
func (u Unit) From(si float64) float64 {
	d := u.definition()
	return si*d.div/d.mul + d.zero
}

// Metres is SI for a length, ToC and FromC are SI and From for a temperature.
func (u Unit) Metres(v float64) float64 { return u.SI(v) }

// ToC is SI for a temperature.
func (u Unit) ToC(v float64) float64 { return u.SI(v) }

// FromC is From for a temperature.
func (u Unit) FromC(c float64) float64 { return u.From(c) }

// DiffToC converts a difference of temperature: 0.5 F is 0.28 C.
func (u Unit) DiffToC(d float64) float64 { return d * u.definition().mul / u.definition().div }

// DiffFromC converts a difference in degrees Celsius to this scale.
func (u Unit) DiffFromC(d float64) float64 { return d * u.definition().div / u.definition().mul }

// LengthNamed finds a unit of length by its symbol or name, in any case.
func LengthNamed(name string) (Length, bool) {
	return Named(strings.TrimSuffix(strings.TrimSpace(name), "."), OfLength)
}

// TemperatureNamed finds a scale by its symbol or name, in any case, with a degree sign or
// without.
func TemperatureNamed(name string) (Temperature, bool) {
	name = strings.ToLower(strings.TrimSpace(name))
	name = strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(name, "°"), "deg"))
	return Named(strings.TrimPrefix(name, "°"), OfTemperature)
}
