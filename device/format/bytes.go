package format

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// trimLine takes blanks, the line end and a byte order mark off.
func trimLine(b []byte) []byte {
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	for len(b) > 0 && isBlank(b[0]) {
		b = b[1:]
	}
	for len(b) > 0 && isBlank(b[len(b)-1]) {
		b = b[:len(b)-1]
	}
	return b
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

// isComment reports a line that begins as a comment does.
func isComment(b []byte) bool { return b[0] == '#' || bytes.HasPrefix(b, []byte("//")) }

// isRule reports a line of one sign, as it is printed between blocks.
func isRule(b []byte) bool {
	if len(b) < 2 || !isAny(b[0], "-=*_+~") {
		return false
	}
	for _, c := range b {
		if c != b[0] {
			return false
		}
	}
	return true
}

// unframe takes the angle brackets of a frame off; it is false for half a frame.
func unframe(b []byte) ([]byte, bool) {
	opens, closes := len(b) > 0 && b[0] == '<', len(b) > 0 && b[len(b)-1] == '>'
	if opens != closes || opens && len(b) == 1 {
		return b, false
	}
	if opens {
		b = trimLine(b[1 : len(b)-1])
	}
	return b, true
}

// headerCells splits a line into the names of its columns.
func headerCells(b []byte) [][]byte {
	b, _ = unframe(b)
	sep := ""
	for _, s := range []string{"\t", ";", ",", "|"} {
		if bytes.Contains(b, []byte(s)) {
			sep = s
			break
		}
	}
	var cells [][]byte
	if sep == "" {
		cells = bytes.Fields(b)
	} else {
		cells = bytes.Split(b, []byte(sep))
	}
	for i := range cells {
		cells[i] = bytes.Trim(cells[i], " \t\"'")
	}
	for len(cells) > 0 && len(cells[len(cells)-1]) == 0 {
		cells = cells[:len(cells)-1]
	}
	return cells
}

// byteAt is the byte at a place of b, 0 where there is none.
func byteAt(b []byte, i int) byte {
	if i < 0 || i >= len(b) {
		return 0
	}
	return b[i]
}

// digits is how many digits b begins with.
func digits(b []byte) int {
	n := 0
	for n < len(b) && isDigit(b[n]) {
		n++
	}
	return n
}

// garbled reports bytes that are no text: control characters, or bytes beyond ASCII
// that are neither UTF-8 nor a degree sign of Latin-1.
func garbled(b []byte) bool {
	for i := 0; i < len(b); {
		c := b[i]
		if c < 0x80 {
			if c < ' ' && c != '\t' || c == 0x7F {
				return true
			}
			i++
			continue
		}
		_, n := utf8.DecodeRune(b[i:])
		if n == 1 && degreeSign(b[i:]) == 0 {
			return true
		}
		i += n
	}
	return false
}

func lower(c byte) byte {
	if c >= 'A' && c <= 'Z' {
		c += 'a' - 'A'
	}
	return c
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func isLetter(c byte) bool { c = lower(c); return c >= 'a' && c <= 'z' }

// foldEqual compares in any case, without a copy.
func foldEqual(b []byte, s string) bool {
	if len(b) != len(s) {
		return false
	}
	for i, c := range b {
		if lower(c) != lower(s[i]) {
			return false
		}
	}
	return true
}

// isText reports a letter, or a part of a character beyond ASCII.
func isText(c byte) bool { return isLetter(c) || c >= 0x80 }

func isLower(c byte) bool { return c >= 'a' && c <= 'z' }

func isUpper(c byte) bool { return c >= 'A' && c <= 'Z' }

// isAny reports one of some characters.
func isAny(c byte, of string) bool { return c != 0 && strings.IndexByte(of, c) >= 0 }
