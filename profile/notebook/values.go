package notebook

import (
	"errors"
	"slices"
	"strings"

	"coldseam/profile"
)

// Values are what a drop has noted under a header key, as a page has it: one value, of a
// key that may stand on several lines one a line, none where nothing was noted.
func Values(d *profile.Drop, name string) []string {
	switch k := find(name); {
	case k == nil:
		return nil
	case k.get != nil:
		if v := k.get(d); v != "" {
			return []string{v}
		}
		return nil
	}
	if name == "note" {
		return d.Notes
	}
	var out []string
	for _, c := range d.Catches {
		out = append(out, c.Text)
	}
	return out
}

// Several reports whether a header key may stand on several lines of a drop.
func Several(name string) bool {
	k := find(name)
	return k != nil && k.get == nil
}

// KeyNamed finds the header key that goes by a name: "lake" is water. Case, hyphens and
// underlines do not count.
func KeyNamed(name string) (key string, ok bool) {
	name = strings.ToLower(strings.Join(strings.FieldsFunc(name, func(r rune) bool { return strings.ContainsRune(" -_", r) }), " "))
	if a, known := aliases[name]; known {
		name = a
	}
	return name, slices.Contains(Keys(), name)
}

// Text is the text of a file that people made: UTF-8, or the one-byte encoding that old
// programs write the degree sign in.
func Text(data []byte) (string, error) {
	switch {
	case utf16(data):
		return "", errUTF16
	case !isText(data):
		return "", errors.New("is not text")
	}
	return utf8Of(trimMark(data)), nil
}

// ParseDate reads a date, with a time of day or without, as a page has it:
// "2026-07-18 14:20". One that may be two days is refused with both named.
func ParseDate(s string) (string, error) { return parseDate(s) }

// TwoDates reports whether an error is of a date that may be two days.
func TwoDates(err error) bool { return errors.As(err, new(twoDates)) }
