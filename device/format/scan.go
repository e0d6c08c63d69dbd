package format

import (
	"bytes"
	"math"
	"strconv"
	"strings"

	"coldseam/device/line"
)

// kind is what stands in the place of a value.
type kind uint8

const (
	number kind = iota
	empty       // nothing between two commas
	fault       // a word or dashes that stand for a fault
	clock       // a date or a time of day
	bad         // a number that is broken
)

// value is one value of a line, in slices of it.
type value struct {
	kind    kind
	name    []byte
	text    []byte
	num     float64
	unit    unitID
	carried bool // the name stood in a field of its own, behind another value
}

// maxValues is how many values of a line are looked at.
const maxValues = maxParts

// scanner splits a line into values.
type scanner struct {
	b     []byte
	hex   bool // four and eighteen hexadecimal digits are values too
	point byte
	vals  []value

	named, nameEnd int    // where the name of the next value starts (-1: none) and ends
	nameUnit       unitID // unit in brackets behind the name
	bracket        int    // where the last bracket opened, -1 when closed
	linked         bool   // the name was followed by : or =
	equals         bool   // it was =
	carry          []byte // name from the field before
	carryUnit      unitID
	carryAfter     bool // that field stood behind a value
	inField        int  // values so far in this field
	words          int  // words of the line that are no unit of a value
	overflow       bool
}

// scan splits b into s.vals.
func (s *scanner) scan(b []byte) {
	s.b, s.vals, s.point = b, s.vals[:0], '.'
	s.named, s.bracket, s.nameUnit, s.linked = -1, -1, noUnit, false
	s.carry, s.carryUnit, s.inField, s.words, s.overflow = nil, noUnit, 0, 0, false
	if decimalComma(b) {
		s.point = ','
	}
	for len(b) > 0 && (b[len(b)-1] == ';' || b[len(b)-1] == ' ') {
		b = b[:len(b)-1]
	}
	s.b = b
	divided := false
	for i := 0; i < len(b); {
		c := b[i]
		switch {
		case c == ',' && s.point != ',' || c == ',' && !(i+1 < len(b) && isDigit(b[i+1])) || c == ';' || c == '\t' || c == '|':
			s.endField()
			divided = true
			i++
		case c == ':' || c == '=':
			s.linked, s.equals = s.named >= 0, c == '='
			i++
		case c == '(' || c == '[':
			s.bracket = i
			i++
		case c == ')' || c == ']':
			s.closeBracket(i)
			i++
		case isDigit(c) || (c == '-' || c == '+') && s.startsNumber(i+1) || s.startsNumber(i):
			i = s.number(i)
		case c == '-' || c == '*':
			n := 1
			for i+n < len(b) && b[i+n] == c {
				n++
			}
			if n > 1 {
				s.add(value{kind: fault, text: b[i : i+n]})
				_, n = s.unitAfter(i + n)
				n -= i
			}
			i += n
		case isLetter(c) || c == '_' || c >= 0x80:
			i = s.word(i)
		default:
			i++
		}
	}
	if divided {
		s.endField()
	}
}

// startsNumber reports a digit, or a decimal point before one, at place i.
func (s *scanner) startsNumber(i int) bool {
	b := s.b
	return i < len(b) && (isDigit(b[i]) || b[i] == s.point && s.point == '.' && i+1 < len(b) && isDigit(b[i+1]))
}

// add puts a value with the name that is pending.
func (s *scanner) add(v value) {
	if len(s.vals) == maxValues {
		s.overflow = true
		return
	}
	unit := noUnit
	switch {
	case s.named >= 0:
		v.name, unit = trimName(s.b[s.named:s.nameEnd]), s.nameUnit
	case s.carry != nil:
		v.name, unit, v.carried = s.carry, s.carryUnit, s.carryAfter
	}
	if v.unit == noUnit {
		v.unit = unit
	}
	s.vals = append(s.vals, v)
	s.inField++
	s.named, s.nameUnit, s.linked, s.carry = -1, noUnit, false, nil
}

// trimName takes a full stop off, as of "Temp."
func trimName(n []byte) []byte { return bytes.TrimRight(n, " .#") }

// endField ends a field: a field of words alone is the unit of the value before or the
// name of the one behind, and a field of nothing is a value that is missing.
func (s *scanner) endField() {
	switch {
	case s.inField > 0:
		s.carry = nil
	case s.linked:
		s.add(value{kind: empty})
	case s.named >= 0:
		name := trimName(s.b[s.named:s.nameEnd])
		if n := len(s.vals); n > 0 && s.carry == nil && s.vals[n-1].unit == noUnit && !s.linked {
			if u, m := unitAt(name); u != noUnit && m == len(name) {
				s.vals[n-1].unit = u
				break
			}
		}
		s.carry, s.carryUnit, s.carryAfter = name, s.nameUnit, len(s.vals) > 0
	default:
		s.add(value{kind: empty})
	}
	s.inField, s.named, s.nameUnit, s.linked, s.bracket = 0, -1, noUnit, false, -1
}

// closeBracket takes what stood in brackets: a unit behind a name, else a mark of no
// account, such as [INFO].
func (s *scanner) closeBracket(i int) {
	open := s.bracket
	s.bracket = -1
	if s.named < 0 || open < 0 {
		return
	}
	if s.named > open {
		s.named = -1
		return
	}
	inner := bytes.TrimSpace(s.b[open+1 : i])
	if u, n := unitAt(inner); u != noUnit && n == len(inner) {
		s.nameUnit = u
	}
}

// number takes the value that starts at i and returns where it ends.
func (s *scanner) number(i int) int {
	b := s.b
	if s.hex {
		if n := hexLen(b[i:]); n > 0 {
			v, m := line.ScanNumber(b[i:], s.point)
			if m != n {
				s.add(value{kind: bad, text: b[i : i+n]})
			} else {
				s.add(value{text: b[i : i+n], num: v})
			}
			return i + n
		}
	}
	if n := clockLen(b[i:]); n > 0 {
		if k := len(s.vals); k > 0 && s.vals[k-1].kind == clock && s.inField > 0 && s.named < 0 {
			return i + n // a date and its time of day are one value
		}
		s.add(value{kind: clock, text: b[i : i+n]})
		return i + n
	}
	v, n := line.ScanNumber(b[i:], s.point)
	if n == 0 {
		n = s.tokenLen(i)
		s.add(value{kind: bad, text: b[i : i+n]})
		return i + n
	}
	if e := exponentLen(b[i+n:]); e > 0 && s.point == '.' {
		f, err := strconv.ParseFloat(string(b[i:i+n+e]), 64)
		if err == nil && !math.IsInf(f, 0) {
			v, n = f, n+e
		}
	}
	j := i + n
	if j < len(b) && (b[j] == ':' || b[j] == '=') && n <= 3 && bytes.IndexByte(b[i:j], s.point) < 0 {
		if s.named < 0 { // a number that names, as of a channel
			s.named = i
		}
		s.nameEnd = j
		return j
	}
	if s.isOfName(i, j) {
		s.nameEnd = j
		return j
	}
	if d := degreeSign(b[j:]); d > 0 && (j+d == len(b) || !isLetter(b[j+d]) && b[j+d] < 0x80) {
		s.add(value{text: b[i:j], num: v})
		return j + d // degrees of a scale that is not said
	}
	if j < len(b) && (isLetter(b[j]) || b[j] == '_' || b[j] == '.' || b[j] == '%' || b[j] == '-' || b[j] >= 0x80) {
		u, m := unitAt(b[j:])
		if u == noUnit || j+m < len(b) && (b[j+m] == '.' || b[j+m] == '-') {
			n = s.tokenLen(i)
			s.add(value{kind: bad, text: b[i : i+n]})
			return i + n
		}
		s.add(value{text: b[i:j], num: v, unit: u})
		return j + m
	}
	u, end := s.unitAfter(j)
	s.add(value{text: b[i:j], num: v, unit: u})
	return end
}

// unitAfter finds a unit behind a value that ends at j, and where what belongs to the
// value ends. "*C" is how boards without a degree sign print it.
func (s *scanner) unitAfter(j int) (unitID, int) {
	b := s.b
	k := j
	for k < len(b) && (b[k] == ' ' || b[k] == '(' || b[k] == '[') {
		k++
	}
	star := k < len(b) && (b[k] == '*' || b[k] == '\'')
	if star {
		k++
	}
	u, m := unitAt(b[k:])
	if u == noUnit || star && units[u].what != Temp || s.isLinked(k+m) {
		return noUnit, j
	}
	return u, k + m
}

// isOfName reports that the number from i to j belongs to the name before it, as in
// "Temperature of sensor 1 (index 0) is: 18.31": a short whole number that nothing
// links to the name, where something further on links another.
func (s *scanner) isOfName(i, j int) bool {
	if s.named < 0 || s.linked || j-i > 3 {
		return false
	}
	for k := i; k < len(s.b) && s.b[k] != ',' && s.b[k] != ';' && s.b[k] != '\t' && s.b[k] != '|'; k++ {
		switch c := s.b[k]; {
		case k < j && !isDigit(c):
			return false
		case c == ':' || c == '=':
			return true
		}
	}
	return false
}

// isLinked reports a : or = at place i, behind blanks.
func (s *scanner) isLinked(i int) bool {
	for i < len(s.b) && s.b[i] == ' ' {
		i++
	}
	return i < len(s.b) && (s.b[i] == ':' || s.b[i] == '=')
}

// tokenLen is the length of what stands without a gap from place i.
func (s *scanner) tokenLen(i int) int {
	n := 1
	for i+n < len(s.b) && strings.IndexByte(" \t,;|=()[]<>\"", s.b[i+n]) < 0 {
		n++
	}
	return n
}
