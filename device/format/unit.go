package format

import "unicode/utf8"

// unitID is a place in units; 0 is no unit.
type unitID uint8

const (
	noUnit unitID = iota
	metre
	foot
	centimetre
	millimetre
	inch
	celsius
	fahrenheit
	kelvin
	pascal
	hectopascal
	millibar
	kilopascal
	bar
	psi
	ohm
	kilohm
	millisecond
	second
	microsecond
	minute
	foreign // of something that no part is made of: volts, per cent
)

// unitDef: a number of the unit, times mul and divided by div, is in SI; the scales of
// temperature are shifted besides. What is Pressure for gauge pressures too.
type unitDef struct {
	symbol   string
	what     Quantity
	mul, div float64
}

// The foot is that of 1959; the pound-force per square inch follows from
// 0.45359237 kg, 9.80665 m/s2 and 0.0254 m.
var units = [...]unitDef{
	noUnit:      {"", Skip, 1, 1},
	metre:       {"m", Depth, 1, 1},
	foot:        {"ft", Depth, 0.3048, 1},
	centimetre:  {"cm", Depth, 1, 100},
	millimetre:  {"mm", Depth, 1, 1000},
	inch:        {"in", Depth, 0.0254, 1},
	celsius:     {"C", Temp, 1, 1},
	fahrenheit:  {"F", Temp, 1, 1},
	kelvin:      {"K", Temp, 1, 1},
	pascal:      {"Pa", Pressure, 1, 1},
	hectopascal: {"hPa", Pressure, 100, 1},
	millibar:    {"mbar", Pressure, 100, 1},
	kilopascal:  {"kPa", Pressure, 1000, 1},
	bar:         {"bar", Pressure, 1e5, 1},
	psi:         {"psi", Pressure, 0.45359237 * 9.80665 / (0.0254 * 0.0254), 1},
	ohm:         {"ohm", Ohms, 1, 1},
	kilohm:      {"kohm", Ohms, 1000, 1},
	millisecond: {"ms", Time, 1, 1000},
	second:      {"s", Time, 1, 1},
	microsecond: {"us", Time, 1, 1e6},
	minute:      {"min", Time, 60, 1},
	foreign:     {"?", Skip, 1, 1},
}

// si converts a number of the unit, without judging it.
func (u unitID) si(v float64) float64 {
	switch u {
	case fahrenheit:
		return (v - 32) * 5 / 9
	case kelvin:
		return v - 273.15
	}
	return v * units[u].mul / units[u].div
}

// longestUnit bounds the words that are looked up.
const longestUnit = 12

// unitNamed finds the unit of a word, in any case, with or without a degree sign.
func unitNamed(w []byte) unitID {
	for n := degreeSign(w); n > 0; n = degreeSign(w) {
		w = w[n:]
	}
	var low [longestUnit]byte
	if len(w) == 0 || len(w) > len(low) {
		return noUnit
	}
	if len(w) == 1 && w[0] == 'k' {
		return kilohm // 12.49k; a big K is the kelvin
	}
	for i, c := range w {
		low[i] = lower(c)
	}
	switch string(low[:len(w)]) {
	case "m", "meter", "meters", "metre", "metres":
		return metre
	case "ft", "feet", "foot":
		return foot
	case "cm":
		return centimetre
	case "mm":
		return millimetre
	case "in", "inch", "inches":
		return inch
	case "c", "degc", "celsius", "\xe2\x84\x83": // U+2103
		return celsius
	case "f", "degf", "fahrenheit", "\xe2\x84\x89": // U+2109
		return fahrenheit
	case "k", "kelvin":
		return kelvin
	case "pa", "pascal":
		return pascal
	case "hpa":
		return hectopascal
	case "mbar", "mb", "millibar":
		return millibar
	case "kpa":
		return kilopascal
	case "bar":
		return bar
	case "psi":
		return psi
	case "ohm", "ohms", "\xce\xa9", "\xe2\x84\xa6", "\xcf\x89": // omegas
		return ohm
	case "kohm", "kohms", "k\xce\xa9", "k\xe2\x84\xa6":
		return kilohm
	case "ms", "msec", "millis":
		return millisecond
	case "s", "sec", "secs", "seconds":
		return second
	case "us", "micros":
		return microsecond
	case "min", "minutes":
		return minute
	case "%", "v", "mv", "ma", "ppm", "ntu", "db", "lux", "rh":
		return foreign
	}
	return noUnit
}

// unitAt finds a unit at the start of b ("C", "deg C", a degree sign and C) and how
// many bytes it takes; 0 where the word there is no unit.
func unitAt(b []byte) (unitID, int) {
	n := wordLen(b)
	if n == 0 {
		return noUnit, 0
	}
	if u := unitNamed(b[:n]); u != noUnit {
		return u, n
	}
	if !onlyDegrees(b[:n]) {
		return noUnit, 0
	}
	k := n
	for k < len(b) && b[k] == ' ' {
		k++
	}
	m := wordLen(b[k:])
	if u := unitNamed(b[k : k+m]); m > 0 && units[u].what == Temp {
		return u, k + m
	}
	return noUnit, 0
}

// wordLen is the length of the run of letters, per cent signs and bytes beyond ASCII at
// the start of b, 0 where a digit or underscore goes on.
func wordLen(b []byte) int {
	n := 0
	for n < len(b) && (isLetter(b[n]) || b[n] == '%' || b[n] >= 0x80) {
		n++
	}
	if n < len(b) && (isDigit(b[n]) || b[n] == '_') {
		return 0
	}
	return n
}

func onlyDegrees(w []byte) bool {
	for n := degreeSign(w); n > 0; n = degreeSign(w) {
		w = w[n:]
	}
	return len(w) == 0 || foldEqual(w, "deg") || foldEqual(w, "degree") || foldEqual(w, "degrees")
}

// degreeSign is the length of a degree sign at the start of b, in UTF-8 or Latin-1, or
// of the ordinal sign that stands in for it.
func degreeSign(b []byte) int {
	switch {
	case len(b) > 1 && b[0] == 0xC2 && (b[1] == 0xB0 || b[1] == 0xBA):
		return 2
	case len(b) > 0 && (b[0] == 0xB0 || b[0] == 0xBA):
		return 1
	}
	return 0
}

// garbled reports bytes that are no text: control characters, or bytes beyond ASCII
// that are neither UTF-8 nor a degree sign of Latin-1.
func garbled(b []byte) bool {
	for i := 0; i < len(b); {
		c := b[i]
		if c < 0x80 {
			if c < ' ' && c != '\t' || c == 0x7F {
				return true
			}
			i++
			continue
		}
		_, n := utf8.DecodeRune(b[i:])
		if n == 1 && degreeSign(b[i:]) == 0 {
			return true
		}
		i += n
	}
	return false
}

func lower(c byte) byte {
	if c >= 'A' && c <= 'Z' {
		c += 'a' - 'A'
	}
	return c
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func isLetter(c byte) bool { c = lower(c); return c >= 'a' && c <= 'z' }

// foldEqual compares in any case, without a copy.
func foldEqual(b []byte, s string) bool {
	if len(b) != len(s) {
		return false
	}
	for i, c := range b {
		if lower(c) != lower(s[i]) {
			return false
		}
	}
	return true
}
