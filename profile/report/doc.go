// Package report turns a plan into words in the angler's units, and into the JSON that
// scripts rely on. Words that could be misread are not used: a depth is always said
// to be of the fish, of the fly or of the water under the fly, and edges between
// readings are given as intervals.
package report

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Width is how wide text is, in columns, where there is no terminal that says otherwise.
const Width = 80

// Wrap breaks text at blanks so that no line is wider than width columns; lines after the
// first are indented.
func Wrap(text, indent string, width int) string {
	return strings.ReplaceAll(wrap(text, width, utf8.RuneCountInString(indent)), "\n", "\n"+indent)
}

// WrapTo breaks text at blanks so that no line is wider than width columns.
func WrapTo(text string, width int) string { return wrap(text, width, 0) }

// wrap breaks text into lines of width, those after the first shorter by indent.
func wrap(text string, width, indent int) string {
	var b strings.Builder
	column := 0
	for _, w := range strings.Fields(text) {
		n := utf8.RuneCountInString(w)
		switch {
		case column == 0:
		case column+1+n > width:
			b.WriteByte('\n')
			column = indent
		default:
			b.WriteByte(' ')
			column++
		}
		b.WriteString(w)
		column += n
	}
	return b.String()
}

// sentence makes one of parts: a capital in front, a full stop behind.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	s = capital(s)
	if !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}

// capital is a text with a capital in front.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// list joins words: "a", "a and b", "a, b and c".
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
