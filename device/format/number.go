package format

import (
	"bytes"
	"math"
	"strconv"

	"coldseam/profile/unit"
)

// number takes the value that starts at i and returns where it ends.
func (s *scanner) number(i int) int {
	b := s.b
	if n := s.hexNumber(i); n > 0 {
		return i + n
	}
	if n := s.clock(i); n > 0 {
		return i + n
	}
	v, n := s.decimal(i)
	if n == 0 {
		return s.broken(i)
	}
	j := i + n
	if s.isName(i, j) {
		if s.named < 0 {
			s.named = i
		}
		s.nameEnd = j
		return j
	}
	if d := degreeSign(b[j:]); d > 0 && !isText(byteAt(b, j+d)) {
		s.add(value{text: b[i:j], num: v})
		return j + d // degrees of a scale that is not said
	}
	u, end := unit.None, j
	if c := byteAt(b, j); isText(c) || isAny(c, "_.%-") {
		u, n = unitAt(b[j:])
		if end = j + n; u == unit.None || isAny(byteAt(b, end), ".-") {
			return s.broken(i)
		}
	} else {
		u, end = s.unitAfter(j)
	}
	s.add(value{text: b[i:j], num: v, unit: u})
	return end
}

// clock takes a date or a time of day and returns its length; both together are one value.
func (s *scanner) clock(i int) int {
	n, k := clockLen(s.b[i:]), len(s.vals)
	if n > 0 && !(k > 0 && s.vals[k-1].kind == clock && s.inField > 0 && s.named < 0) {
		s.add(value{kind: clock, text: s.b[i : i+n]})
	}
	return n
}

// hexNumber takes four or eighteen hexadecimal digits, where the layout may have them,
// and returns their length.
func (s *scanner) hexNumber(i int) int {
	if !s.hex {
		return 0
	}
	n := hexLen(s.b[i:])
	if n == 0 {
		return 0
	}
	v := value{kind: bad, text: s.b[i : i+n]}
	if num, m := unit.ScanDecimal(v.text, s.point); m == n {
		v.kind, v.num = number, num
	}
	s.add(v)
	return n
}

// decimal reads a number at place i, with an exponent as in 1.2e-05, and its length.
func (s *scanner) decimal(i int) (v float64, n int) {
	v, n = unit.ScanDecimal(s.b[i:], s.point)
	if e := exponentLen(s.b[i+n:]); n > 0 && e > 0 && s.point == '.' {
		f, err := strconv.ParseFloat(string(s.b[i:i+n+e]), 64)
		if err == nil && !math.IsInf(f, 0) {
			return f, n + e
		}
	}
	return v, n
}

// exponentLen is the length of an exponent with its sign.
func exponentLen(b []byte) int {
	if lower(byteAt(b, 0)) != 'e' || !isAny(byteAt(b, 1), "-+") {
		return 0
	}
	if n := digits(b[2:]); n == 1 || n == 2 {
		return 2 + n
	}
	return 0
}

// broken takes what stands without a gap from place i, as a number that is none.
func (s *scanner) broken(i int) int {
	end := i + 1
	for end < len(s.b) && !isAny(s.b[end], " \t,;|=()[]<>\"") {
		end++
	}
	s.add(value{kind: bad, text: s.b[i:end]})
	return end
}

// isName reports that the number from i to j is a name, as of a channel ("1: 18.31"), or
// belongs to the one before it, as in "Temperature of sensor 1 (index 0) is: 18.31": a
// short whole number that nothing links to the name, where something further on links
// another.
func (s *scanner) isName(i, j int) bool {
	if j-i > 3 || bytes.IndexByte(s.b[i:j], s.point) >= 0 {
		return false
	}
	if isAny(byteAt(s.b, j), ":=") {
		return true
	}
	if s.named < 0 || s.linked || digits(s.b[i:]) < j-i {
		return false
	}
	next := bytes.IndexAny(s.b[j:], ",;\t|:=")
	return next >= 0 && isAny(s.b[j+next], ":=")
}

// unitAfter finds a unit behind a value that ends at j, and where what belongs to the
// value ends. "*C" is how boards without a degree sign print it.
func (s *scanner) unitAfter(j int) (unit.Unit, int) {
	b := s.b
	k := j
	for isAny(byteAt(b, k), " ([") {
		k++
	}
	star := isAny(byteAt(b, k), "*'")
	if star {
		k++
	}
	u, m := unitAt(b[k:])
	if u == unit.None || star && quantityOf(u) != Temp || s.isLinked(k+m) {
		return unit.None, j
	}
	return u, k + m
}

// decimalComma reports that the commas of b are decimal: each between two digits, one
// to a number, none beside a point, and another sign to divide the values or name them.
func decimalComma(b []byte) bool {
	found := false
	for i, c := range b {
		if c == '.' {
			return false
		}
		if c != ',' || !isDigit(byteAt(b, i-1)) || !isDigit(byteAt(b, i+1)) {
			continue
		}
		l, r := i-1, i+1+digits(b[i+1:])
		for isDigit(byteAt(b, l)) {
			l--
		}
		before := byteAt(b, l)
		if isAny(before, ",:/") || before == '-' && isDigit(byteAt(b, l-1)) || isAny(byteAt(b, r), ",:/") {
			return false
		}
		found = true
	}
	return found && divides(b)
}

// divides reports a sign that divides values or names them, other than a comma.
func divides(b []byte) bool {
	for i, c := range b {
		if next := byteAt(b, i+1); isAny(c, ";\t|=:") || c == ' ' && (isDigit(next) || next == '-') {
			return true
		}
	}
	return false
}
