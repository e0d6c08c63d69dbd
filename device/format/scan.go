package format

import (
	"bytes"

	"coldseam/device/line"
	"coldseam/profile/unit"
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
	unit    unit.Unit
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

	named, nameEnd int       // where the name of the next value starts (-1: none) and ends
	nameUnit       unit.Unit // unit in brackets behind the name
	bracket        int       // where the last bracket opened, -1 when closed
	linked         bool      // the name was followed by : or =
	equals         bool      // it was =
	carry          []byte    // name from the field before
	carryUnit      unit.Unit
	carryAfter     bool // that field stood behind a value
	inField        int  // values so far in this field
	words          int  // words of the line that are no unit of a value
	overflow       bool
}

// split takes a line's frame off and splits it into s.vals, as JSON or as plain text.
func (s *scanner) split(b []byte) error {
	b, ok := unframe(b)
	if !ok {
		return refuse(line.BadForm, "the frame is torn: "+line.Shown(b))
	}
	if len(b) > 0 && b[0] == '{' {
		if err := s.scanJSON(b); err != nil {
			return err
		}
	} else {
		s.scan(b)
	}
	if s.overflow {
		return refuse(line.BadForm, "too many values on a line")
	}
	return nil
}

// reset forgets the last line.
func (s *scanner) reset(b []byte) {
	*s = scanner{b: b, hex: s.hex, vals: s.vals[:0], point: '.', named: -1, bracket: -1}
}

// scan splits b into s.vals.
func (s *scanner) scan(b []byte) {
	point := byte('.')
	if decimalComma(b) {
		point = ','
	}
	b = bytes.TrimRight(b, "; ")
	s.reset(b)
	s.point = point
	divided := false
	for i := 0; i < len(b); {
		switch c := b[i]; {
		case s.divides(i):
			s.endField()
			divided = true
			i++
		case isAny(c, ":="):
			s.linked, s.equals = s.named >= 0, c == '='
			i++
		case isAny(c, "(["):
			s.bracket = i
			i++
		case isAny(c, ")]"):
			s.closeBracket(i)
			i++
		case s.startsNumber(i):
			i = s.number(i)
		case isAny(c, "-*"):
			i = s.dashes(i)
		case isText(c) || c == '_':
			i = s.word(i)
		default:
			i++
		}
	}
	if divided {
		s.endField()
	}
}

// divides reports a sign at place i that ends a field.
func (s *scanner) divides(i int) bool {
	c := s.b[i]
	return isAny(c, ";\t|") || c == ',' && !(s.point == ',' && isDigit(byteAt(s.b, i+1)))
}

// startsNumber reports a digit, or a decimal point before one, at place i or behind a
// sign there.
func (s *scanner) startsNumber(i int) bool {
	if isAny(s.b[i], "-+") {
		i++
	}
	c := byteAt(s.b, i)
	return isDigit(c) || c == '.' && s.point == '.' && isDigit(byteAt(s.b, i+1))
}

// dashes takes a run of one sign; two and more stand for a fault.
func (s *scanner) dashes(i int) int {
	end := i + 1
	for byteAt(s.b, end) == s.b[i] {
		end++
	}
	if end == i+1 {
		return end
	}
	s.add(value{kind: fault, text: s.b[i:end]})
	_, end = s.unitAfter(end)
	return end
}

// add puts a value with the name that is pending.
func (s *scanner) add(v value) {
	u := unit.None
	switch {
	case s.named >= 0:
		v.name, u = trimName(s.b[s.named:s.nameEnd]), s.nameUnit
	case s.carry != nil:
		v.name, u, v.carried = s.carry, s.carryUnit, s.carryAfter
	}
	if v.unit == unit.None {
		v.unit = u
	}
	if s.put(v); s.overflow {
		return
	}
	s.inField++
	s.named, s.nameUnit, s.linked, s.carry = -1, unit.None, false, nil
}

// put puts a value as it is.
func (s *scanner) put(v value) {
	if len(s.vals) == maxValues {
		s.overflow = true
		return
	}
	s.vals = append(s.vals, v)
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
		if n := len(s.vals); n > 0 && s.carry == nil && s.vals[n-1].unit == unit.None && isUnit(name) {
			s.vals[n-1].unit, _ = unitAt(name)
			break
		}
		s.carry, s.carryUnit, s.carryAfter = name, s.nameUnit, len(s.vals) > 0
	default:
		s.add(value{kind: empty})
	}
	s.inField, s.named, s.nameUnit, s.linked, s.bracket = 0, -1, unit.None, false, -1
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
	if inner := bytes.TrimSpace(s.b[open+1 : i]); isUnit(inner) {
		s.nameUnit, _ = unitAt(inner)
	}
}

// isLinked reports a : or = at place i, behind blanks.
func (s *scanner) isLinked(i int) bool {
	for byteAt(s.b, i) == ' ' {
		i++
	}
	return isAny(byteAt(s.b, i), ":=")
}

// tail is the name that no value followed, with its unit, and whether : or = did.
func (s *scanner) tail() (name []byte, u unit.Unit, linked bool) {
	if s.named >= 0 {
		return trimName(s.b[s.named:s.nameEnd]), s.nameUnit, s.linked
	}
	return s.carry, s.carryUnit, false
}
