package unit

import (
	"fmt"
	"strings"
)

// scale is a unit's size in SI and the names it goes by.
type scale struct {
	si    float64
	names []string
}

// Speeds: the mile and the foot of 1959, the nautical mile of 1929 (1852 m).
var speeds = []scale{
	{0.0254, []string{"in/s", "ips", "inch/s", "inches/s", "in/sec"}},
	{0.01, []string{"cm/s"}},
	{1, []string{"m/s", "mps"}},
	{0.3048, []string{"ft/s", "fps"}},
	{0.44704, []string{"mph", "mi/h"}},
	{1000.0 / 3600, []string{"km/h", "kmh", "kph"}},
	{1852.0 / 3600, []string{"kn", "kt", "kts", "knots", "knot"}},
}

// Masses: the avoirdupois pound is 0.45359237 kg, 7000 grains, 16 ounces.
var masses = []scale{
	{1e-3, []string{"g", "gram", "grams"}},
	{1e-6, []string{"mg"}},
	{1, []string{"kg"}},
	{0.45359237 / 16, []string{"oz", "ounce", "ounces"}},
	{0.45359237 / 7000, []string{"gr", "grain", "grains"}},
}

var times = []scale{
	{1, []string{"s", "sec", "secs", "second", "seconds"}},
	{60, []string{"min", "mins", "minute", "minutes"}},
	{3600, []string{"h", "hour", "hours"}},
}

// Pressures: the standard atmosphere's inch of mercury is 3386.389 Pa (NIST SP 811).
var pressures = []scale{
	{100, []string{"hpa", "mbar", "mb"}},
	{1000, []string{"kpa"}},
	{1, []string{"pa"}},
	{1e5, []string{"bar"}},
	{3386.389, []string{"inhg"}},
}

// ParsePressure reads a pressure with its unit ("1008 hPa", "29.8 inHg") and returns
// pascals.
func ParsePressure(s string) (float64, error) {
	return parseScaled(s, "pressure", "e.g. 1008 hPa or 29.8 inHg", pressures)
}

// ParseSpeed reads a speed with its unit ("2 in/s", "10 mph", "0.05 m/s") and
// returns metres per second.
func ParseSpeed(s string) (float64, error) {
	return parseScaled(s, "speed", "e.g. 2 in/s or 10 mph", speeds)
}

// ParseMass reads a mass with its unit ("0.25 g", "1/32 oz", "4 gr") and returns
// kilograms.
func ParseMass(s string) (float64, error) {
	return parseScaled(s, "mass", "e.g. 0.25 g or 1/32 oz", masses)
}

// ParseDuration reads a time with its unit ("90 s", "2 min") and returns seconds.
func ParseDuration(s string) (float64, error) {
	return parseScaled(s, "time", "e.g. 90 s or 2 min", times)
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

func parseScaled(s, what, example string, scales []scale) (float64, error) {
	n, rest, ok := signedNumber(s)
	if !ok {
		return 0, fmt.Errorf("%q is not a %s: write it with its unit, %s", s, what, example)
	}
	if rest == "" {
		return 0, fmt.Errorf("%q has no unit: write a %s with its unit, %s", s, what, example)
	}
	name := strings.ToLower(strings.ReplaceAll(rest, " ", ""))
	for _, u := range scales {
		for _, known := range u.names {
			if known == name {
				return n.Value * u.si, nil
			}
		}
	}
	return 0, fmt.Errorf("%q is not a unit of %s in %q: %s", rest, what, s, example)
}
