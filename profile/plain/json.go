package plain

import (
	"unicode/utf16"
	"unicode/utf8"
)

// JSON makes encoded JSON plain: what is not graphic within its texts is written as its
// number (\u202e), so that a script still reads the text as it was. Bytes that are no
// UTF-8 become the replacement character. A line end, which may part objects, stays.
func JSON(encoded []byte) []byte {
	out := make([]byte, 0, len(encoded))
	for len(encoded) > 0 {
		r, n := utf8.DecodeRune(encoded)
		encoded = encoded[n:]
		if r == '\n' {
			out = append(out, '\n')
			continue
		}
		out = AppendJSON(out, r)
	}
	return out
}

// AppendJSON appends one character of a JSON text, as its number where it is not
// graphic.
func AppendJSON(b []byte, r rune) []byte {
	switch {
	case Graphic(r):
		return utf8.AppendRune(b, r)
	case r > 0xffff:
		high, low := utf16.EncodeRune(r)
		return appendNumber(appendNumber(b, high), low)
	}
	return appendNumber(b, r)
}

func appendNumber(b []byte, r rune) []byte {
	const hex = "0123456789abcdef"
	return append(b, '\\', 'u', hex[r>>12&15], hex[r>>8&15], hex[r>>4&15], hex[r&15])
}
