package unit

import (
	"fmt"
	"strings"
)

// Temperature is a scale of temperature.
type Temperature int

// The scales of temperature.
const (
	NoTemperature Temperature = iota // not stated
	Celsius
	Fahrenheit
)

// TemperatureNamed finds a scale by its symbol or name, in any case.
func TemperatureNamed(name string) (Temperature, bool) {
	name = strings.ToLower(strings.TrimSpace(name))
	name = strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(name, "°"), "deg"))
	switch strings.TrimPrefix(name, "°") {
	case "c", "celsius", "centigrade":
		return Celsius, true
	case "f", "fahrenheit":
		return Fahrenheit, true
	}
	return NoTemperature, false
}

// String gives the scale's letter, "?" when it is not stated.
func (u Temperature) String() string {
	switch u {
	case Celsius:
		return "C"
	case Fahrenheit:
		return "F"
	}
	return "?"
}

// ToC converts a temperature on this scale to degrees Celsius.
func (u Temperature) ToC(v float64) float64 {
	if u == Fahrenheit {
		return (v - 32) * 5 / 9
	}
	return v
}

// FromC converts degrees Celsius to this scale.
func (u Temperature) FromC(c float64) float64 {
	if u == Fahrenheit {
		return c*9/5 + 32
	}
	return c
}

// DiffToC converts a difference of temperature: 0.5 F is 0.28 C.
func (u Temperature) DiffToC(d float64) float64 {
	if u == Fahrenheit {
		return d * 5 / 9
	}
	return d
}

// DiffFromC converts a difference in degrees Celsius to this scale.
func (u Temperature) DiffFromC(d float64) float64 {
	if u == Fahrenheit {
		return d * 9 / 5
	}
	return d
}

// ParseTemperature reads a temperature with its scale, "66 F" or "18,9 °C", and
// returns degrees Celsius. A bare number is refused.
func ParseTemperature(s string) (c float64, u Temperature, err error) {
	v, u, err := parseTemperature(s)
	return u.ToC(v), u, err
}

// ParseTemperatureDiff reads a difference of temperature with its scale, "0.5 F",
// and returns degrees Celsius (0.28).
func ParseTemperatureDiff(s string) (c float64, u Temperature, err error) {
	v, u, err := parseTemperature(s)
	return u.DiffToC(v), u, err
}

func parseTemperature(s string) (float64, Temperature, error) {
	const want = "write a temperature with its scale, e.g. 66 F or 18.9 C"
	n, rest, ok := signedNumber(s)
	if !ok {
		return 0, NoTemperature, fmt.Errorf("%q is not a temperature: %s", s, want)
	}
	if rest == "" {
		return 0, NoTemperature, fmt.Errorf("%q has no scale: %s", s, want)
	}
	u, ok := TemperatureNamed(rest)
	if !ok {
		return 0, NoTemperature, fmt.Errorf("%q is not a scale of temperature in %q: %s", rest, s, want)
	}
	return n.Value, u, nil
}
