package notebook

import (
	"bytes"
	"errors"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Limits of a page: more than any notebook holds, and small enough that nothing
// read by mistake takes long.
const (
	MaxPage = 1 << 20 // bytes
	MaxLine = 1000    // bytes
)

// decode makes text of a page's bytes: UTF-8, or the one-byte encoding that old
// editors write the degree sign in. It refuses what is no text.
func decode(data []byte) (string, error) {
	switch {
	case len(data) > MaxPage:
		return "", errors.New("is larger than 1 MiB: a page of readings is a text of a few lines")
	case utf16(data):
		return "", errUTF16
	case !isText(data):
		return "", errors.New("is not text: give a page of readings such as \"5 ft 71.2 F\", one a line")
	}
	return utf8Of(trimMark(data)), nil
}

var errUTF16 = errors.New("is UTF-16 text: save it as UTF-8 or plain text")

func utf16(data []byte) bool {
	return bytes.HasPrefix(data, []byte{0xff, 0xfe}) || bytes.HasPrefix(data, []byte{0xfe, 0xff})
}

// trimMark takes the mark off that some programs begin a file with.
func trimMark(data []byte) []byte { return bytes.TrimPrefix(data, []byte("\ufeff")) }

// utf8Of is text as it is where it is UTF-8, else read from the one-byte encoding.
func utf8Of(data []byte) string {
	if utf8.Valid(data) {
		return string(data)
	}
	runes := make([]rune, len(data))
	for i, b := range data {
		runes[i] = rune(b)
		if sign, ok := oneByte[b]; ok {
			runes[i] = sign
		}
	}
	return string(runes)
}

// oneByte holds the signs of the usual one-byte encoding whose code is not that of
// the same character in Unicode: its quotes, dashes and dots.
var oneByte = map[byte]rune{0x84: '\u201e', 0x85: '\u2026', 0x91: '\u2018', 0x92: '\u2019', 0x93: '\u201c', 0x94: '\u201d', 0x96: '\u2013', 0x97: '\u2014'}

// isText takes a page for text when it holds no zero byte and hardly any control
// characters.
func isText(data []byte) bool {
	control := 0
	for _, b := range data {
		switch {
		case b == 0:
			return false
		case b < 0x20 && b != '\n' && b != '\r' && b != '\t':
			control++
		}
	}
	return control*20 <= len(data)
}

// split gives the page's lines without their line ends (LF, CRLF or CR).
func split(text string) []string {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	text = strings.ReplaceAll(text, "\r", "\n")
	return strings.Split(text, "\n")
}

// The many ways a keyboard writes one sign.
var signs = strings.NewReplacer(
	"\u00a0", " ", "\u2007", " ", "\u2009", " ", "\u202f", " ", "\u3000", " ", "\u200b", "", "\ufeff", "", "\u2060", "",
	"\u2019", "'", "\u2018", "'", "\u2032", "'", "\u00b4", "'", "`", "'",
	"\u201c", `"`, "\u201d", `"`, "\u201e", `"`, "\u2033", `"`, "\u3003", `"`, "''", `"`,
	"\u00ba", "°", "\u02da", "°", "\u2103", "°c", "\u2109", "°f",
	"\u2013", "-", "\u2014", "-", "\u2212", "-", "\u2010", "-", "\u2011", "-",
	"->", "→", "=>", "→", "\u21d2", "→", "\u2026", "...", "±", "+-", "+/-", "+-",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

var narrow = func(r rune) rune {
	if r >= 0xff01 && r <= 0xff5e { // full-width forms of the ASCII characters
		return r - 0xfee0
	}
	return r
}

// clean writes a line with one spelling for each sign, in lower case, without its
// comment. Control characters other than the tab stay: they make the line
// unreadable, and it is refused with them shown.
func clean(line string) string { return strings.ToLower(oneSpelling(line)) }

// oneSpelling is clean without changing the case.
func oneSpelling(line string) string {
	line = signs.Replace(strings.Map(narrow, line))
	if i := strings.IndexByte(line, '#'); i >= 0 {
		line = line[:i]
	}
	return strings.TrimFunc(line, unicode.IsSpace)
}

// A zero typed as the letter o, or a one as l, inside a number; "o2" is oxygen.
var (
	numberLike  = lazy(`[a-z0-9.]+`)
	letterDigit = lazy(`^([0-9ol.]*[0-9][0-9ol.]*|[il][0-9]+)$`)
	asDigits    = strings.NewReplacer("o", "0", "l", "1", "i", "1")
)

// mendDigits writes such letters as digits, and says whether it did.
func mendDigits(line string) (string, bool) {
	out := numberLike().ReplaceAllStringFunc(line, func(s string) string {
		if s == "o2" || !letterDigit().MatchString(s) {
			return s
		}
		return asDigits.Replace(s)
	})
	return out, out != line
}

var units20 = strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen")
var tens = strings.Fields("twenty thirty forty fifty sixty seventy eighty ninety")

// numberWord gives the value of a number word under a hundred.
func numberWord(w string) (int, bool) {
	for i, u := range units20 {
		if u == w {
			return i, true
		}
	}
	for i, t := range tens {
		if t == w {
			return (i + 2) * 10, true
		}
	}
	return 0, false
}
