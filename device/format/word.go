package format

import (
	"strings"

	"coldseam/device/line"
)

// word takes the word that starts at i: a value that is missing, a name with its number
// in one ("T1834"), or a part of a name.
func (s *scanner) word(i int) int {
	b := s.b
	e := i
	for e < len(b) && (isLetter(b[e]) || isDigit(b[e]) || b[e] == '_' || b[e] == '.' || b[e] == '/' || b[e] == '#' || b[e] >= 0x80) {
		e++
	}
	w := b[i:e]
	linked := s.isLinked(e)
	if isFault(w) && !linked {
		s.add(value{kind: fault, text: w})
		_, end := s.unitAfter(e)
		return end
	}
	if s.hex && !linked {
		if n := hexLen(b[i:]); n > 0 {
			s.add(value{kind: bad, text: b[i : i+n]})
			return i + n
		}
	}
	if d := s.glued(i); d > 0 {
		s.named, s.nameEnd = i, i+d
		return s.number(i + d)
	}
	if s.bracket >= 0 && s.named >= 0 && s.named < s.bracket {
		return e // in brackets behind a name: closeBracket looks at it
	}
	if s.linked && s.equals {
		s.add(value{kind: empty}) // D= T=18.3
	}
	if s.named < 0 || s.linked {
		s.named, s.linked = i, false
	}
	s.nameEnd = e
	s.words++
	return e
}

// glued is the length of a name that its number follows without a gap: a letter, or a
// word that says depth or temperature. One digit is a part of the name: T1.
func (s *scanner) glued(i int) int {
	b := s.b
	d := i
	for d < len(b) && isLetter(b[d]) {
		d++
	}
	if d == len(b) || d-i > 12 || !isDigit(b[d]) && !(b[d] == '-' && d+1 < len(b) && isDigit(b[d+1])) {
		return 0
	}
	_, n := line.ScanNumber(b[d:], s.point)
	end := d + n
	if n < 2 || s.isLinked(end) {
		return 0
	}
	if end < len(b) && (isLetter(b[end]) || b[end] == '_' || b[end] == '.' || b[end] >= 0x80) {
		if u, _ := unitAt(b[end:]); u == noUnit {
			return 0
		}
	}
	if d-i > 1 && meaningOf(b[i:d]).sure < 2 {
		return 0
	}
	return d - i
}

// tail is the name that no value followed, with its unit, and whether : or = did.
func (s *scanner) tail() (name []byte, u unitID, linked bool) {
	if s.named >= 0 {
		return trimName(s.b[s.named:s.nameEnd]), s.nameUnit, s.linked
	}
	return s.carry, s.carryUnit, false
}

// isFault reports a word that stands where a number should.
func isFault(w []byte) bool {
	var low [12]byte
	if len(w) > len(low) {
		return false
	}
	for i, c := range w {
		low[i] = lower(c)
	}
	switch string(low[:len(w)]) {
	case "nan", "inf", "ovf", "err", "error", "fail", "failed", "fault", "null", "none", "na", "n/a",
		"nc", "open", "short", "invalid", "disconnected", "undefined":
		return true
	}
	return false
}

// exponentLen is the length of an exponent with its sign, as in 1.2e-05.
func exponentLen(b []byte) int {
	if len(b) < 3 || lower(b[0]) != 'e' || b[1] != '-' && b[1] != '+' {
		return 0
	}
	n := 2
	for n < len(b) && isDigit(b[n]) {
		n++
	}
	if n == 2 || n > 4 {
		return 0
	}
	return n
}

// decimalComma reports that the commas of b are decimal: each between two digits, one
// to a number, none beside a point, and another sign to divide the values or name them.
func decimalComma(b []byte) bool {
	found := false
	for i, c := range b {
		if c == '.' {
			return false
		}
		if c != ',' || i == 0 || i+1 == len(b) || !isDigit(b[i-1]) || !isDigit(b[i+1]) {
			continue
		}
		l, r := i-1, i+1
		for l >= 0 && isDigit(b[l]) {
			l--
		}
		for r < len(b) && isDigit(b[r]) {
			r++
		}
		if l >= 0 && (b[l] == ',' || b[l] == ':' || b[l] == '/') || l > 0 && b[l] == '-' && isDigit(b[l-1]) ||
			r < len(b) && (b[r] == ',' || b[r] == ':' || b[r] == '/') {
			return false
		}
		found = true
	}
	return found && divides(b)
}

// divides reports a sign that divides values or names them, other than a comma.
func divides(b []byte) bool {
	for i, c := range b {
		if strings.IndexByte(";\t|=:", c) >= 0 || c == ' ' && i+1 < len(b) && (isDigit(b[i+1]) || b[i+1] == '-') {
			return true
		}
	}
	return false
}
