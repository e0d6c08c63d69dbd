package notebook

import "strings"

// A # with a blank or nothing on both sides begins a comment: "Pond #3" and "Pond # 3"
// are names, "Pond # by the road" is one with a comment. Where a value itself holds a
// sign that would begin one, it is written with a backslash before it.

// withoutComment gives a header's value as it was written, without its comment.
func withoutComment(s string) string {
	var b strings.Builder
	slashes := 0
	for i := 0; i < len(s); i++ {
		switch {
		case s[i] == '\\':
			slashes++
			continue
		case s[i] == '#':
			b.WriteString(strings.Repeat(`\`, slashes/2))
			if slashes == 0 && commentAt(s, i) {
				return b.String()
			}
		default:
			b.WriteString(strings.Repeat(`\`, slashes))
		}
		slashes = 0
		b.WriteByte(s[i])
	}
	return b.String() + strings.Repeat(`\`, slashes)
}

// commentSafe writes a value so that withoutComment gives it back.
func commentSafe(v string) string {
	var b strings.Builder
	slashes := 0
	for i := 0; i < len(v); i++ {
		if v[i] == '#' && (slashes > 0 || commentAt(v, i)) {
			b.WriteString(strings.Repeat(`\`, slashes+1))
		}
		slashes++
		if v[i] != '\\' {
			slashes = 0
		}
		b.WriteByte(v[i])
	}
	return b.String()
}

// commentAt reports whether a # at i would begin a comment: a blank or an end of the
// text on both sides, and no number behind it.
func commentAt(s string, i int) bool {
	before, after := strings.TrimRight(s[:i], " \t"), strings.TrimLeft(s[i+1:], " \t")
	blankBefore, blankAfter := before == "" || len(before) < i, after == "" || len(after) < len(s)-i-1
	return blankBefore && blankAfter && (after == "" || !isDigit(after[0]))
}
