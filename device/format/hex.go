package format

import (
	"bytes"

	"coldseam/device/line"
)

// hexLen is the length at the start of b of a DS18B20's word (four hexadecimal digits)
// or scratchpad (eighteen, or nine pairs with blanks between), or 0.
func hexLen(b []byte) int {
	switch n := hexDigits(b); n {
	case 4, 18:
		if c := byteAt(b, n); isLetter(c) || isAny(c, "._:=") {
			return 0
		}
		return n
	case 2:
		for range 8 {
			if byteAt(b, n) != ' ' || hexDigits(b[n+1:]) < 2 {
				return 0
			}
			n += 3
		}
		if c := byteAt(b, n); isHex(c) || c == '.' {
			return 0
		}
		return n
	}
	return 0
}

// hexDigits is how many hexadecimal digits b begins with.
func hexDigits(b []byte) int {
	n := 0
	for n < len(b) && isHex(b[n]) {
		n++
	}
	return n
}

func isHex(c byte) bool { c = lower(c); return isDigit(c) || c >= 'a' && c <= 'f' }

func hasHexLetter(t string) bool {
	for i := range len(t) {
		if isHex(t[i]) && !isDigit(t[i]) {
			return true
		}
	}
	return false
}

func wordTempC(text []byte) (float64, error) {
	if len(text) > 2 && text[0] == '0' && lower(text[1]) == 'x' {
		text = text[2:]
	}
	if len(bytes.TrimSpace(text)) > 4 {
		return line.ScratchpadTempC(text)
	}
	return line.WordTempC(text)
}

// isWords reports texts that are all words or scratchpads of a DS18B20 in water: four
// digits that begin with 0 or FF. Four other digits are a number.
func isWords(texts []string) bool {
	good := 0
	for _, t := range texts {
		if len(t) == 4 && t[0] != '0' && lower(t[0]) != 'f' {
			return false
		}
		_, err := wordTempC([]byte(t))
		switch line.CodeOf(err) {
		case line.Fine:
			good++
		case line.Sentinel:
		default:
			return false
		}
	}
	return good >= 1
}
