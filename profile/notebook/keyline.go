package notebook

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coldseam/profile/unit"
)

// keyLine matches a key, its colon and a value.
var keyLine = lazy(`^([a-z][a-z -]*[a-z])\s*:\s*(.*)$`)

var aliases = map[string]string{
	"lake": "water", "site": "spot", "location": "spot", "station": "spot", "species": "for", "fish": "for",
	"weather": "sky", "conditions": "sky", "color": "colour", "secchi disk": "secchi", "secchi disc": "secchi", "visibility": "secchi",
	"target": "for", "targeting": "for", "water depth": "bottom", "depth under boat": "bottom", "depth of water": "bottom",
	"lac": "water", "vent": "wind", "notes": "note", "comment": "note", "comments": "note", "remark": "note", "remarks": "note",
	"max depth": "deepest", "elevation": "altitude", "lat": "latitude", "lon": "longitude", "long": "longitude", "secchi depth": "secchi", "clarity": "secchi",
	"catch": "caught", "catches": "caught", "landed": "caught", "dissolved oxygen": "oxygen", "precision": "thermometer precision", "angle": "line angle",
}

// headerOf reads a key line. "bottom: 24ft 52" is a reading, not a key.
func headerOf(m []string, raw string, line int) (Header, bool) {
	name := strings.ReplaceAll(m[1], "-", " ")
	if a, ok := aliases[name]; ok {
		name = a
	}
	if find(name) == nil {
		return Header{}, false
	}
	value := m[2]
	if _, after, ok := strings.Cut(raw, ":"); ok { // as written, not as cleaned
		value = withoutComment(after)
	}
	value = strings.TrimSpace(value)
	if name == "bottom" && value != "" {
		if ts := tokens(clean(value), true); len(ts) > 1 && hasNumber(ts[1:]) {
			return Header{}, false
		}
	}
	return Header{Key: name, Value: value, Line: line}, true
}

// key takes a header line. A date that may be two days is asked about; words under a
// key of a length ("bottom: weeds") are a note.
func (r *reader) key(h Header) ([]item, error) {
	raw := r.raw[h.Line-1]
	switch {
	case h.Key == "date" && h.Value != "":
		_, err := parseDate(h.Value)
		if errors.As(err, new(twoDates)) {
			if h.Value, err = r.whichDay(h.Line, raw, err); err != nil {
				return nil, err
			}
		}
	case h.Key == "caught" && noCatch().MatchString(h.Value):
		r.note(h.Line, "%s kept as a note", shown(raw))
		h.Key, h.Value = "note", strings.TrimSpace(raw)
	case h.Key == "wind" && h.Value != "" && !strings.ContainsAny(h.Value, "0123456789"):
		if _, err := readWind(h.Value, unit.System{}); err != nil {
			r.note(h.Line, "%s kept as a note: it names no wind", shown(raw))
			h.Key, h.Value = "note", strings.TrimSpace(raw)
		}
	case (h.Key == "bottom" || h.Key == "secchi") && h.Value != "" && !strings.ContainsAny(clean(h.Value), "0123456789-"):
		if _, ok := lengthWord(clean(h.Value)); !ok {
			r.note(h.Line, "%s kept as a note: it names no depth", shown(raw))
			h.Key, h.Value = "note", strings.TrimSpace(raw)
		}
	}
	return []item{{line: h.Line, kind: header, header: h}}, nil
}

// misspelt names the key that an unknown one may have meant.
func misspelt(name string) error {
	if len(name) < 4 || len(name) > 25 || words[name] != 0 {
		return nil
	}
	known := Keys()
	for a := range aliases {
		known = append(known, a)
	}
	slices.Sort(known)
	if like, ok := nearest(name, known, len(name)/4); ok && !plainWord[name] {
		return fmt.Errorf("%q is not a header key; did you mean \"%s:\"? If it is something else, put the line after \"note:\"", name, like)
	}
	return nil
}

// plainWord are words that are near a key and no slip of it.
var plainWord = wordSet("weather whether later made bait boat float fly flies lure bite height")

// isKey reports whether a clean line is a header line.
func isKey(c, raw string) bool {
	m := keyLine().FindStringSubmatch(c)
	if m == nil {
		return false
	}
	_, ok := headerOf(m, raw, 0)
	return ok
}
