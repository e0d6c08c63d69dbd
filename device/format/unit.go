package format

import (
	"strings"
	"sync"
)

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
// temperature are shifted besides. The quantity is Pressure for gauge pressures too.
type unitDef struct {
	symbol   string
	quantity Quantity
	mul, div float64
	names    string // as lines write it, in lower case
}

// The foot is that of 1959; the pound-force per square inch follows from
// 0.45359237 kg, 9.80665 m/s2 and 0.0254 m.
var units = [...]unitDef{
	noUnit:      {"", Skip, 1, 1, ""},
	metre:       {"m", Depth, 1, 1, "m meter meters metre metres"},
	foot:        {"ft", Depth, 0.3048, 1, "ft feet foot"},
	centimetre:  {"cm", Depth, 1, 100, "cm"},
	millimetre:  {"mm", Depth, 1, 1000, "mm"},
	inch:        {"in", Depth, 0.0254, 1, "in inch inches"},
	celsius:     {"C", Temp, 1, 1, "c degc celsius \u2103"},
	fahrenheit:  {"F", Temp, 1, 1, "f degf fahrenheit \u2109"},
	kelvin:      {"K", Temp, 1, 1, "k kelvin"},
	pascal:      {"Pa", Pressure, 1, 1, "pa pascal"},
	hectopascal: {"hPa", Pressure, 100, 1, "hpa"},
	millibar:    {"mbar", Pressure, 100, 1, "mbar mb millibar"},
	kilopascal:  {"kPa", Pressure, 1000, 1, "kpa"},
	bar:         {"bar", Pressure, 1e5, 1, "bar"},
	psi:         {"psi", Pressure, 0.45359237 * 9.80665 / (0.0254 * 0.0254), 1, "psi"},
	ohm:         {"ohm", Ohms, 1, 1, "ohm ohms \u03a9 \u2126 \u03c9"},
	kilohm:      {"kohm", Ohms, 1000, 1, "kohm kohms k\u03a9 k\u2126"},
	millisecond: {"ms", Time, 1, 1000, "ms msec millis"},
	second:      {"s", Time, 1, 1, "s sec secs seconds"},
	microsecond: {"us", Time, 1, 1e6, "us micros"},
	minute:      {"min", Time, 60, 1, "min minutes"},
	foreign:     {"?", Skip, 1, 1, "% v mv ma ppm ntu db lux rh"},
}

// unitNames are the units by their names in lower case.
var unitNames = sync.OnceValue(func() map[string]unitID {
	names := map[string]unitID{}
	for u, def := range units {
		for _, name := range strings.Fields(def.names) {
			names[name] = unitID(u)
		}
	}
	return names
})

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
	w = afterDegrees(w)
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
	return unitNames()[string(low[:len(w)])]
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
	if u := unitNamed(b[k : k+m]); m > 0 && units[u].quantity == Temp {
		return u, k + m
	}
	return noUnit, 0
}

// isUnit reports that b is a unit and nothing else.
func isUnit(b []byte) bool {
	u, n := unitAt(b)
	return u != noUnit && n == len(b)
}

// wordLen is the length of the run of letters, per cent signs and bytes beyond ASCII at
// the start of b, 0 where a digit or underscore goes on.
func wordLen(b []byte) int {
	n := 0
	for n < len(b) && (isText(b[n]) || b[n] == '%') {
		n++
	}
	if c := byteAt(b, n); isDigit(c) || c == '_' {
		return 0
	}
	return n
}

func onlyDegrees(w []byte) bool {
	w = afterDegrees(w)
	return len(w) == 0 || foldEqual(w, "deg") || foldEqual(w, "degree") || foldEqual(w, "degrees")
}

// afterDegrees takes degree signs off.
func afterDegrees(w []byte) []byte {
	for n := degreeSign(w); n > 0; n = degreeSign(w) {
		w = w[n:]
	}
	return w
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
