// Package plain is the one gate for text that others wrote, on its way to a terminal,
// a page, a picture, JSON or a message: a water's name, a file's, an argument, the line
// of a probe, an error of the system.
//
// Only what has a shape of its own passes (letters, marks, digits, signs and blanks, the
// graphic characters of Unicode). Control characters of both sets (C0, C1), format
// characters such as the marks that turn the direction of text, separators of lines and
// paragraphs, private and unassigned characters, and bytes that are no UTF-8 become the
// replacement character, so that one sees that something stood there.
//
// Line and Quote are for a text within a line. Writer stands behind everything that is
// printed, so that nothing passes where a caller forgot them.
package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Graphic reports whether a character may be shown as it is.
func Graphic(r rune) bool {
	if r < utf8.RuneSelf {
		return r >= ' ' && r != 0x7f
	}
	return unicode.IsGraphic(r)
}

// Line makes s fit for one line: tabs become blanks, everything else that is not
// graphic, line ends among it, the replacement character.
func Line(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case !Graphic(r):
			return utf8.RuneError
		}
		return r
	}, s)
}

// Cut is Line without blanks around it, cut to so many characters.
func Cut(s string, most int) string {
	s = strings.TrimSpace(s)
	n := 0
	for i := range s {
		if n == most {
			return strings.TrimRight(Line(s[:i]), " ") + "..."
		}
		n++
	}
	return Line(s)
}

// Quote is Cut between quotes.
func Quote(s string, most int) string { return `"` + Cut(s, most) + `"` }
