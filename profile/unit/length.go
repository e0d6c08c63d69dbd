package unit

import (
	"fmt"
	"strings"
)

// Length is a unit of length.
type Length int

// The units of length an angler writes.
const (
	NoLength Length = iota // not stated
	Metre
	Centimetre
	Millimetre
	Foot
	Inch
	Yard
	Fathom
)

// lengths: exact by the international yard and pound agreement of 1959.
var lengths = []struct {
	unit   Length
	symbol string
	metres float64
	names  []string
}{
	{Metre, "m", 1, []string{"m", "meter", "meters", "metre", "metres", "mtr", "mtrs"}},
	{Centimetre, "cm", 0.01, []string{"cm", "centimetre", "centimetres", "centimeter", "centimeters"}},
	{Millimetre, "mm", 0.001, []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}},
	{Foot, "ft", 0.3048, []string{"ft", "feet", "foot", "'", "fts"}},
	{Inch, "in", 0.0254, []string{"in", "inch", "inches", `"`, "ins"}},
	{Yard, "yd", 0.9144, []string{"yd", "yds", "yard", "yards"}},
	{Fathom, "fathom", 1.8288, []string{"fathom", "fathoms", "fm", "fth"}},
}

// LengthNamed finds a unit by its symbol or name, in any case.
func LengthNamed(name string) (Length, bool) {
	name = strings.ToLower(strings.TrimSuffix(strings.TrimSpace(name), "."))
	for _, l := range lengths {
		for _, n := range l.names {
			if n == name {
				return l.unit, true
			}
		}
	}
	return NoLength, false
}

// String gives the unit's symbol, "?" when the unit is not stated.
func (u Length) String() string {
	for _, l := range lengths {
		if l.unit == u {
			return l.symbol
		}
	}
	return "?"
}

// Metres gives the length of v of this unit in metres.
func (u Length) Metres(v float64) float64 {
	for _, l := range lengths {
		if l.unit == u {
			return v * l.metres
		}
	}
	return v
}

// From gives a length of metres in this unit.
func (u Length) From(metres float64) float64 { return metres / u.Metres(1) }

// ParseLength reads a length with its unit: "15 ft", "4,5m", `12'6"`,
// "12 1/2 ft", "6 in". It returns metres and the first unit used. A bare number
// is refused.
func ParseLength(s string) (metres float64, u Length, err error) {
	const want = "write a length with its unit, e.g. 15 ft or 4.5 m"
	n, rest, ok := signedNumber(s)
	if !ok {
		return 0, NoLength, fmt.Errorf("%q is not a length: %s", s, want)
	}
	if rest == "" {
		return 0, NoLength, fmt.Errorf("%q has no unit: %s", s, want)
	}
	name, rest := cutUnit(rest)
	u, ok = LengthNamed(name)
	if name == "" { // "0 74"
		return 0, NoLength, fmt.Errorf("%q is not a length: %s", s, want)
	}
	if !ok {
		return 0, NoLength, fmt.Errorf("%q is not a unit of length in %q: %s", name, s, want)
	}
	metres = u.Metres(n.Value)
	if rest == "" {
		return metres, u, nil
	}
	inches, rest, ok := signedNumber(rest)
	if unit, known := LengthNamed(rest); u != Foot || !ok || !known || unit != Inch || inches.Value >= 12 || inches.Value < 0 {
		return 0, NoLength, fmt.Errorf("%q is not a length: %s", s, want)
	}
	if metres < 0 {
		return metres - Inch.Metres(inches.Value), u, nil
	}
	return metres + Inch.Metres(inches.Value), u, nil
}

// cutUnit parts the unit's name from what follows it ("ft 6 in" to "ft", "6 in").
func cutUnit(s string) (name, rest string) {
	i := strings.IndexFunc(s, func(r rune) bool { return r >= '0' && r <= '9' || r == ' ' })
	if i < 0 {
		return s, ""
	}
	return s[:i], strings.TrimSpace(s[i:])
}
