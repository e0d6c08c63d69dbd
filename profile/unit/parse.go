package unit

import (
	"fmt"
	"strings"
)

// phrases are what an error says of a quantity.
type phrases struct{ name, again, unit, example string }

var quantities = map[Quantity]phrases{
	OfLength:      {"length", "a length", "unit", "15 ft or 4.5 m"},
	OfTemperature: {"temperature", "a temperature", "scale", "66 F or 18.9 C"},
	OfSpeed:       {"speed", "it", "unit", "2 in/s or 10 mph"},
	OfMass:        {"mass", "it", "unit", "0.25 g or 1/32 oz"},
	OfPressure:    {"pressure", "it", "unit", "1008 hPa or 29.8 inHg"},
	OfArea:        {"area", "an area", "unit", "24 acres or 9.7 ha"},
	OfTime:        {"time", "it", "unit", "90 s or 2 min"},
}

func (q Quantity) noQuantity(s string) error {
	p := quantities[q]
	return fmt.Errorf("%q is not a %s: write %s with its %s, e.g. %s", s, p.name, p.again, p.unit, p.example)
}

func (q Quantity) noUnit(s string) error {
	p := quantities[q]
	return fmt.Errorf("%q has no %s: write a %s with its %s, e.g. %s", s, p.unit, p.name, p.unit, p.example)
}

func (q Quantity) otherUnit(name, s string) error {
	p := quantities[q]
	return fmt.Errorf("%q is not a %s of %s in %q: write a %s with its %s, e.g. %s", name, p.unit, p.name, s, p.name, p.unit, p.example)
}

// amount reads the number of a quantity; rest, which is not empty, is its unit.
func (q Quantity) amount(s string) (v float64, rest string, err error) {
	n, rest, ok := signedNumber(s)
	switch {
	case !ok:
		return 0, "", q.noQuantity(s)
	case rest == "":
		return 0, "", q.noUnit(s)
	}
	return n.Value, rest, nil
}

// ParseLength reads a length with its unit: "15 ft", "4,5m", `12'6"`,
// "12 1/2 ft", "6 in". It returns metres and the first unit used. A bare number
// is refused.
func ParseLength(s string) (metres float64, u Length, err error) {
	v, rest, err := OfLength.amount(s)
	if err != nil {
		return 0, NoLength, err
	}
	name, rest := cutUnit(rest)
	if name == "" { // "0 74"
		return 0, NoLength, OfLength.noQuantity(s)
	}
	u, ok := LengthNamed(name)
	if !ok {
		return 0, NoLength, OfLength.otherUnit(name, s)
	}
	metres = u.SI(v)
	if rest == "" {
		return metres, u, nil
	}
	inches, rest, ok := signedNumber(rest)
	if second, _ := LengthNamed(rest); u != Foot || !ok || second != Inch || inches.Value >= 12 || inches.Value < 0 {
		return 0, NoLength, OfLength.noQuantity(s)
	}
	if metres < 0 {
		return metres - Inch.SI(inches.Value), u, nil
	}
	return metres + Inch.SI(inches.Value), u, nil
}

// cutUnit parts the unit's name from what follows it ("ft 6 in" to "ft", "6 in").
func cutUnit(s string) (name, rest string) {
	i := strings.IndexFunc(s, func(r rune) bool { return r >= '0' && r <= '9' || r == ' ' })
	if i < 0 {
		return s, ""
	}
	return s[:i], strings.TrimSpace(s[i:])
}

// ParseTemperature reads a temperature with its scale, "66 F" or "18,9 °C", and
// returns degrees Celsius. A bare number is refused.
func ParseTemperature(s string) (c float64, u Temperature, err error) {
	v, u, err := onScale(s)
	return u.SI(v), u, err
}

// ParseTemperatureDiff reads a difference of temperature with its scale, "0.5 F",
// and returns degrees Celsius (0.28).
func ParseTemperatureDiff(s string) (c float64, u Temperature, err error) {
	v, u, err := onScale(s)
	return u.DiffToC(v), u, err
}

func onScale(s string) (float64, Temperature, error) {
	v, rest, err := OfTemperature.amount(s)
	if err != nil {
		return 0, NoTemperature, err
	}
	u, ok := TemperatureNamed(rest)
	if !ok {
		return 0, NoTemperature, OfTemperature.otherUnit(rest, s)
	}
	return v, u, nil
}

// ParseSpeed reads a speed with its unit ("2 in/s", "10 mph", "0.05 m/s") and
// returns metres per second.
func ParseSpeed(s string) (float64, error) { return OfSpeed.parse(s) }

// ParseMass reads a mass with its unit ("0.25 g", "1/32 oz", "4 gr") and returns
// kilograms.
func ParseMass(s string) (float64, error) { return OfMass.parse(s) }

// ParsePressure reads a pressure with its unit ("1008 hPa", "29.8 inHg") and returns
// pascals.
func ParsePressure(s string) (float64, error) { return OfPressure.parse(s) }

// ParseArea reads an area with its unit ("24 acres", "9.7 ha", "5000 m2") and returns
// square metres.
func ParseArea(s string) (float64, error) { return OfArea.parse(s) }

// ParseDuration reads a time with its unit ("90 s", "2 min") and returns seconds.
func ParseDuration(s string) (float64, error) { return OfTime.parse(s) }

func (q Quantity) parse(s string) (si float64, err error) {
	v, rest, err := q.amount(s)
	if err != nil {
		return 0, err
	}
	u, ok := Named(strings.ReplaceAll(rest, " ", ""), q)
	if !ok {
		return 0, q.otherUnit(rest, s)
	}
	return u.SI(v), nil
}

// ParseAngle reads an angle in degrees, "20", "20 deg" or "20°".
func ParseAngle(s string) (float64, error) {
	n, rest, ok := signedNumber(s)
	switch strings.ToLower(rest) {
	case "", "deg", "degs", "degree", "degrees", "°":
		if ok {
			return n.Value, nil
		}
	}
	return 0, fmt.Errorf("%q is not an angle: write degrees, e.g. 20", s)
}
