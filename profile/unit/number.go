package unit

import (
	"math"
	"strconv"
	"strings"
)

// Number is a number as written, with the size of its last written digit:
// 71.2 has Step 0.1, 71 has Step 1, 65 1/2 has Step 0.5.
type Number struct {
	Value float64
	Step  float64
}

// maxDigits bounds a number that a person writes: no reading needs more, and it keeps
// the conversion exact. maxWhole bounds the digits before the point of an instrument's:
// none counts this far.
const (
	maxDigits = 12
	maxWhole  = 15
)

// extent is how many digits stand at the start of s, and how many behind one of two
// decimal marks after them; part is -1 where there is no mark.
func extent[T string | []byte](s T, mark, other byte) (whole, part int) {
	whole = leading(s)
	if whole == len(s) || s[whole] != mark && s[whole] != other {
		return whole, -1
	}
	return whole, leading(s[whole+1:])
}

// leading is how many digits stand at the start of s.
func leading[T string | []byte](s T) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// valueOf is the value of digits with a decimal mark among them or none, after whole of
// them.
func valueOf[T string | []byte](s T, whole int) (float64, error) {
	if whole < len(s) && s[whole] != '.' {
		return strconv.ParseFloat(string(s[:whole])+"."+string(s[whole+1:]), 64)
	}
	return strconv.ParseFloat(string(s), 64)
}

// ScanNumber reads one unsigned number, as a person writes it, from the start of s:
// digits, an optional decimal part after a point (or a comma when comma is true), or a
// fraction as in "12 1/2" or "3/4". It returns what is left of s, and ok false when s
// does not begin with a number. A sign is the caller's business.
func ScanNumber(s string, comma bool) (n Number, rest string, ok bool) {
	mark := byte('.')
	if comma {
		mark = ','
	}
	whole, part := extent(s, '.', mark)
	if end := whole + 1 + part; part > 0 && whole+part <= maxDigits {
		value, err := valueOf(s[:end], whole)
		return Number{value, math.Pow10(-part)}, s[end:], err == nil
	}
	if whole == 0 || whole > maxDigits {
		return Number{}, s, false
	}
	if f, after, ok := fraction(s); ok {
		return f, after, true
	}
	value, err := valueOf(s[:whole], whole)
	rest = s[whole:]
	if f, after, ok := fraction(strings.TrimLeft(rest, " ")); ok && strings.HasPrefix(rest, " ") {
		return Number{value + f.Value, f.Step}, after, true
	}
	return Number{value, 1}, rest, err == nil
}

// ScanDecimal reads a number from the start of b as an instrument prints it: an optional
// sign and digits, with mark as the decimal mark before, among or behind them or without
// it. It returns how many bytes it took, 0 where b does not begin with a number or has
// more digits before the mark than any instrument counts.
func ScanDecimal(b []byte, mark byte) (v float64, n int) {
	sign := 0
	if len(b) > 0 && (b[0] == '-' || b[0] == '+') {
		sign = 1
	}
	digits := b[sign:]
	whole, part := extent(digits, mark, mark)
	if whole+max(part, 0) == 0 || len(strings.TrimLeft(string(digits[:whole]), "0")) > maxWhole {
		return 0, 0
	}
	v, err := valueOf(digits[:whole+1+part], whole)
	if err != nil {
		return 0, 0
	}
	if sign > 0 && b[0] == '-' {
		v = -v
	}
	return v, sign + whole + 1 + part
}

// ParseDecimal reads the whole of s as the number of a file's cell: an optional sign,
// digits with an optional point, and an optional exponent. ok is false for one that is
// out of a float's range.
func ParseDecimal(s []byte) (v float64, ok bool) {
	for _, c := range s {
		switch {
		case c >= '0' && c <= '9', c == '.', c == '-', c == '+', c == 'e', c == 'E':
		default: // NaN, Inf, hexadecimal
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(string(s), 64)
	return v, err == nil
}

// fraction reads "1/2", "3/4" and their like: a proper fraction with a small
// denominator, as a tape measure or a thermometer is divided. 5/73 is not one.
func fraction(s string) (Number, string, bool) {
	top := leading(s)
	if top == 0 || !strings.HasPrefix(s[top:], "/") {
		return Number{}, "", false
	}
	rest := s[top+1:]
	bottom := leading(rest)
	a, errA := strconv.Atoi(s[:top])
	b, errB := strconv.Atoi(rest[:bottom])
	if errA != nil || errB != nil || a < 1 || a >= b {
		return Number{}, "", false
	}
	switch b {
	case 2, 3, 4, 8, 16, 32, 64:
		return Number{float64(a) / float64(b), 1 / float64(b)}, rest[bottom:], true
	}
	return Number{}, "", false
}

// signedNumber reads a number with an optional sign, a decimal comma allowed,
// and returns what follows it without surrounding blanks.
func signedNumber(s string) (Number, string, bool) {
	s = strings.TrimSpace(s)
	sign := 1.0
	switch {
	case strings.HasPrefix(s, "-"):
		sign, s = -1, s[1:]
	case strings.HasPrefix(s, "+"):
		s = s[1:]
	}
	n, rest, ok := ScanNumber(s, true)
	n.Value *= sign
	return n, strings.TrimSpace(rest), ok
}
