package format

import (
	"strings"

	"coldseam/profile/unit"
)

// word takes the word that starts at i: a value that is missing, a name with its number
// in one ("T1834"), or a part of a name.
func (s *scanner) word(i int) int {
	e := s.wordEnd(i)
	if !s.isLinked(e) {
		if isFault(s.b[i:e]) {
			s.add(value{kind: fault, text: s.b[i:e]})
			_, end := s.unitAfter(e)
			return end
		}
		if n := s.hexNumber(i); n > 0 {
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

func (s *scanner) wordEnd(i int) int {
	for c := byteAt(s.b, i); isText(c) || isDigit(c) || isAny(c, "_./#"); c = byteAt(s.b, i) {
		i++
	}
	return i
}

// longestGlued is the longest name that a number follows without a gap.
const longestGlued = 12

// glued is the length of a name that its number follows without a gap: a letter, or a
// word that says depth or temperature. One digit is a part of the name: T1.
func (s *scanner) glued(i int) int {
	b := s.b
	d := i
	for isLetter(byteAt(b, d)) {
		d++
	}
	_, n := unit.ScanDecimal(b[d:], s.point)
	end := d + n
	if n < 2 || d-i > longestGlued || !isDigit(b[d]) && !(b[d] == '-' && isDigit(byteAt(b, d+1))) || s.isLinked(end) {
		return 0
	}
	if c := byteAt(b, end); isText(c) || c == '_' || c == '.' {
		if u, _ := unitAt(b[end:]); u == unit.None {
			return 0
		}
	}
	if d-i > 1 && meaningOf(b[i:d]).sure < 2 {
		return 0
	}
	return d - i
}

// faults are the words that stand where a number should.
const faults = " nan inf ovf err error fail failed fault null none na n/a nc open short invalid disconnected undefined "

// isFault reports a word that stands where a number should.
func isFault(w []byte) bool {
	var low [14]byte
	if len(w) == 0 || len(w)+2 > len(low) {
		return false
	}
	low[0], low[len(w)+1] = ' ', ' '
	for i, c := range w {
		low[i+1] = lower(c)
	}
	return strings.Contains(faults, string(low[:len(w)+2]))
}
