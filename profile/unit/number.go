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

// maxDigits bounds a written number: no reading needs more, and it keeps the
// conversion exact.
const maxDigits = 12

// ScanNumber reads one unsigned number from the start of s: digits, an optional
// decimal part after a point (or a comma when comma is true), or a fraction as
// in "12 1/2" or "3/4". It returns what is left of s, and ok false when s does
// not begin with a number. A sign is the caller's business.
func ScanNumber(s string, comma bool) (n Number, rest string, ok bool) {
	whole, rest := digits(s)
	if n, after, ok := decimals(whole, rest, comma); ok {
		return n, after, true
	}
	if whole == "" || len(whole) > maxDigits {
		return Number{}, s, false
	}
	value, _ := strconv.ParseFloat(whole, 64)
	if f, after, ok := fraction(strings.TrimLeft(rest, " ")); ok && strings.HasPrefix(rest, " ") {
		return Number{value + f.Value, f.Step}, after, true
	}
	if f, after, ok := fraction(s); ok {
		return f, after, true
	}
	return Number{value, 1}, rest, true
}

// decimals reads the part after the decimal mark, when there is one.
func decimals(whole, rest string, comma bool) (Number, string, bool) {
	if rest == "" || (rest[0] != '.' && !(comma && rest[0] == ',')) {
		return Number{}, "", false
	}
	part, after := digits(rest[1:])
	if part == "" || len(whole)+len(part) > maxDigits {
		return Number{}, "", false
	}
	value, err := strconv.ParseFloat("0"+whole+"."+part, 64)
	if err != nil {
		return Number{}, "", false
	}
	return Number{value, math.Pow10(-len(part))}, after, true
}

// fraction reads "1/2", "3/4" and their like: a proper fraction with a small
// denominator, as a tape measure or a thermometer is divided. 5/73 is not one.
func fraction(s string) (Number, string, bool) {
	top, rest := digits(s)
	if top == "" || !strings.HasPrefix(rest, "/") {
		return Number{}, "", false
	}
	bottom, rest := digits(rest[1:])
	a, errA := strconv.Atoi(top)
	b, errB := strconv.Atoi(bottom)
	if errA != nil || errB != nil || a < 1 || a >= b {
		return Number{}, "", false
	}
	switch b {
	case 2, 3, 4, 8, 16, 32, 64:
		return Number{float64(a) / float64(b), 1 / float64(b)}, rest, true
	}
	return Number{}, "", false
}

func digits(s string) (head, rest string) {
	i := 0
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	return s[:i], s[i:]
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
