package line

import (
	"coldseam/profile"
	"coldseam/profile/unit"
)

// field reads a whole field as a number; an empty field has none.
func field(b []byte) (profile.Optional, error) {
	b = trim(b)
	if len(b) == 0 {
		return profile.Optional{}, nil
	}
	v, n := unit.ScanDecimal(b, '.')
	if n != len(b) {
		return profile.Optional{}, refuse(BadNumber, Shown(b)+" is not a number")
	}
	return profile.Some(v), nil
}

func trim(b []byte) []byte {
	for len(b) > 0 && (b[0] <= ' ') {
		b = b[1:]
	}
	for len(b) > 0 && (b[len(b)-1] <= ' ') {
		b = b[:len(b)-1]
	}
	return b
}

func upper(c byte) byte {
	if c >= 'a' && c <= 'z' {
		c -= 'a' - 'A'
	}
	return c
}

// contains finds a word in upper case, without a copy.
func contains(b []byte, word string) bool {
	for i := 0; i+len(word) <= len(b); i++ {
		j := 0
		for j < len(word) && upper(b[i+j]) == word[j] {
			j++
		}
		if j == len(word) {
			return true
		}
	}
	return false
}

func containsAny(b []byte, words []string) bool {
	for _, w := range words {
		if contains(b, w) {
			return true
		}
	}
	return false
}

func hexDigit(c byte) (byte, bool) {
	switch c = upper(c); {
	case c >= '0' && c <= '9':
		return c - '0', true
	case c >= 'A' && c <= 'F':
		return c - 'A' + 10, true
	}
	return 0, false
}
