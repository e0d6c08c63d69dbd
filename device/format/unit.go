package format

import (
	"coldseam/profile/unit"
)

// measures is what a value in a unit of some kind measures. A pressure may be over the
// air's.
var measures = [...]Quantity{
	unit.OfLength: Depth, unit.OfTemperature: Temp, unit.OfPressure: Pressure, unit.OfResistance: Ohms, unit.OfTime: Time,
	unit.OfOther: Skip,
}

// quantityOf is what a value in the unit measures, Skip for nothing of use.
func quantityOf(u unit.Unit) Quantity { return measures[u.Quantity()] }

// isIn reports whether the unit is one of the quantity's.
func (q Quantity) isIn(u unit.Unit) bool {
	of := quantityOf(u)
	return of == q || of == Pressure && q == Gauge
}

// unitNamed finds the unit of a word, in any case, with or without a degree sign.
func unitNamed(w []byte) unit.Unit { return unit.Printed(afterDegrees(w)) }

// unitAt finds a unit at the start of b ("C", "deg C", a degree sign and C) and how
// many bytes it takes; 0 where the word there is no unit.
func unitAt(b []byte) (unit.Unit, int) {
	n := wordLen(b)
	if n == 0 {
		return unit.None, 0
	}
	if u := unitNamed(b[:n]); u != unit.None {
		return u, n
	}
	if !onlyDegrees(b[:n]) {
		return unit.None, 0
	}
	k := n
	for k < len(b) && b[k] == ' ' {
		k++
	}
	m := wordLen(b[k:])
	if u := unitNamed(b[k : k+m]); m > 0 && quantityOf(u) == Temp {
		return u, k + m
	}
	return unit.None, 0
}

// isUnit reports that b is a unit and nothing else.
func isUnit(b []byte) bool {
	u, n := unitAt(b)
	return u != unit.None && n == len(b)
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
