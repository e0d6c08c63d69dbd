package notebook

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// spelled writes a line in the form in which the rest of the package reads it: a key with
// its colon, and one length for a range of them.
func (r *reader) spelled(line int, l string) string {
	if key, value, ok := r.keyAhead(l); ok {
		return key + ": " + value
	}
	if m := deepHere().FindStringSubmatch(oneSpelling(l)); m != nil {
		return "bottom: " + m[1]
	}
	if m := lengthRange().FindStringIndex(oneSpelling(l)); m != nil && m[0] == 0 && m[1] == len(oneSpelling(l)) {
		return r.oneLength(line, l)
	}
	return l
}

// deepHere is a line that says how deep the water is: "8 ft deep".
var deepHere = lazy(`(?i)^(\d+(?:\.\d+)?\s?(?:ft|feet|'|m|meters?|metres?))\s+(?:deep|of water)(?: here)?[.!]?$`)

// keyAhead finds a key at the head of a line, without its colon, before a value that the
// key takes: "units ft F", "deepest 40 ft". Lengths and winds that stand in any line of
// words are left to their own readers, and a name to its own.
func (r *reader) keyAhead(l string) (name, value string, ok bool) {
	words := strings.Fields(oneSpelling(l))
	for n := min(3, len(words)-1); n > 0; n-- {
		name = strings.ToLower(strings.Join(words[:n], " "))
		if strings.HasSuffix(name, ":") {
			return "", "", false
		}
		value = strings.Join(words[n:], " ")
		if a, ok := aliases[name]; ok {
			name = a
		} else if name == "unit" {
			name = "units"
		}
		if find(name) != nil && r.meantAs(name, strings.ToLower(strings.Join(words[:n], " ")), value) {
			return name, value, true
		}
	}
	return "", "", false
}

// sayable are keys whose words also begin a sentence: only short values are theirs.
var sayable = wordSet("spot site station location species weather conditions colour color target targeting")

// meantAs reports whether the words behind a key, written as word, are its value.
func (r *reader) meantAs(name, word, value string) bool {
	count := len(strings.Fields(value))
	switch name {
	case "bottom", "secchi", "wind", "note", "weight", "anchor", "caught":
		return false
	case "for":
		_, known := fish.Known(r.o.Fish, value)
		return sayable[word] && known
	case "water":
		return word == "water" && capitals(value, strings.Fields(strings.ToLower(value)))
	case "spot", "sky", "colour":
		return sayable[word] && count <= 3 && !strings.ContainsAny(value, ",;:()") &&
			(count == 1 || !strings.ContainsAny(value, "0123456789"))
	case "thermometer":
		if !strings.Contains(value, "ice") {
			return false
		}
	}
	var d profile.Drop
	err := find(name).take(&d, value, unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit})
	return err == nil || errors.As(err, new(twoDates))
}

// lengthRange is a bottom or a Secchi depth given as a range, with no number behind it.
var lengthRange = lazy(`(?i)\b(bottom|btm|bttm|bot|fond|over|anchored in|secchi(?: dis[ck])?|visibility|clarity)((?:\s|[:=~]|\b(?:at|is|was|about|of|on|in)\b)*)(\d+(?:\.\d+)?)\s?(?:-|to)\s?(\d+(?:\.\d+)?)\s?(ft|feet|'|m|meters?|metres?)\s*(?:$|[,;.)]*\s*(?:[a-z]|$))`)

// oneLength puts the middle in the place of such a range, and says so.
func (r *reader) oneLength(line int, l string) string {
	m := lengthRange().FindStringSubmatchIndex(oneSpelling(l))
	if m == nil {
		return l
	}
	l = oneSpelling(l)
	var low, high float64
	fmt.Sscan(l[m[6]:m[7]], &low)
	fmt.Sscan(l[m[8]:m[9]], &high)
	if low >= high || high > 1.6*low { // "bottom 52-28 ft" is a temperature and its depth
		return l
	}
	middle := exact(math.Round((low+high)*5) / 10)
	r.note(line, "%s: the middle of %s to %s taken", shown(l), l[m[6]:m[7]], l[m[8]:m[11]])
	return l[:m[6]] + middle + " " + l[m[10]:]
}
