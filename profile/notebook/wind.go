package notebook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// windWords are the winds that have a name, m/s: what is taken for each, and the range
// that it stands for. The ranges are classes of the Beaufort scale (WMO No. 8, table 5.1:
// light air 0.3 to 1.5, light breeze to 3.3, gentle to 5.4, moderate to 7.9, fresh to
// 10.7, strong to 13.8, gale 17.2 to 20.7), and what is taken is about their middle.
// Which word of anglers belongs to which class is common practice; so are chop, taken as
// 12 mph, and whitecaps, taken as the 15 mph that send a small boat in.
var windWords = []struct {
	word           string
	mps, low, high float64
}{
	{"calm", 0, 0, 0.5}, {"none", 0, 0, 0.5}, {"no wind", 0, 0, 0.5}, {"nil", 0, 0, 0.5}, {"no breeze", 0, 0, 0.5}, {"windless", 0, 0, 0.5},
	{"flat", 0, 0, 0.5}, {"glass", 0, 0, 0.5}, {"glassy", 0, 0, 0.5}, {"mirror", 0, 0, 0.5}, {"calme", 0, 0, 0.5},
	{"whitecaps", 6.7056, 5.5, 10.7}, {"white caps", 6.7056, 5.5, 10.7}, {"whitecapping", 6.7056, 5.5, 10.7},
	{"gale", 18.95, 17.2, 20.7}, {"strong", 12.3, 10.8, 13.8}, {"very windy", 12.3, 10.8, 13.8},
	{"fresh", 9.35, 8, 10.7}, {"stiff", 9.35, 8, 10.7}, {"windy", 6.7056, 5.5, 7.9},
	{"light chop", 4.4, 3.4, 5.4}, {"slight chop", 4.4, 3.4, 5.4}, {"small chop", 4.4, 3.4, 5.4}, {"heavy chop", 6.7056, 5.5, 7.9}, {"chop", 5.36448, 3.4, 7.9}, {"choppy", 5.36448, 3.4, 7.9},
	{"moderate", 6.7, 5.5, 7.9}, {"steady", 6.7, 5.5, 7.9}, {"breezy", 4.4, 3.4, 5.4}, {"gentle", 4.4, 3.4, 5.4},
	{"light air", 0.9, 0.3, 1.5}, {"ripple", 0.9, 0.3, 1.5}, {"ripples", 0.9, 0.3, 1.5}, {"riffle", 0.9, 0.3, 1.5},
	{"light", 2.45, 1.6, 3.3}, {"slight", 2.45, 1.6, 3.3}, {"faible", 2.45, 1.6, 3.3}, {"breeze", 4.4, 3.4, 5.4},
}

const (
	compass   = `(?:n|s|e|w|ne|nw|se|sw|nne|ene|ese|sse|ssw|wsw|wnw|nnw|(?:north|south)(?:-?(?:east|west))?(?:erly)?|(?:east|west)(?:erly)?)`
	speedUnit = `(?:mph|mi/h|kts?|kn|knots?|km/h|kmh|kph|m/s|mps)`
)

var (
	windFiller = lazy(`^(?:` + compass + `|winds?|vent|breeze|chop|from|out|of|the|to|at|about|around|by|and|up|gusts?|gusting|variable|var|then|later|very|now|a|bit|air|airs|blowing|steady|surface|lake|with|is|was|in|on|off|mostly|getting|increasing|dropping|force|water)$`)
	beaufort   = lazy(`^(?:force|f|bft)\s*(\d{1,2})$`)
	windNumber = lazy(`(\d+(?:[.,]\d+)?)\s*(` + speedUnit + `)?`)
	direction  = lazy(`^` + compass + `$`)
	twoWords   = lazy(`\b(north|south) (east|west)`)
	fromAtEnd  = lazy(`\s+(?:from|out of)(?: the)?$`)
)

// wind is a wind as it was noted: how fast, m/s, and the point of the compass that it
// comes from, "SW", "" where that was not said.
type wind struct {
	speed profile.Optional
	from  string
}

// readWind reads a wind as it is noted: "8 mph", "SW 5-10 mph", "light S", "calm", "SW".
// Of several numbers the highest counts. A number alone is in miles an hour on a page in
// feet, and open on another.
func readWind(v string, bare unit.System) (w wind, err error) {
	v, w.from = windFrom(clean(v))
	if v == "" && w.from != "" {
		return w, nil
	}
	mps, err := windMps(v, bare)
	w.speed = profile.Some(rounded(mps))
	return w, err
}

func windMps(v string, bare unit.System) (mps float64, err error) {
	if mps, err = unit.ParseSpeed(v); err == nil {
		return mps, nil
	}
	if m := beaufort().FindStringSubmatch(v); m != nil {
		n, _ := strconv.ParseFloat(m[1], 64)
		return 0.836 * math.Pow(n, 1.5), nil // the scale's own formula, v = 0.836 B^(3/2)
	}
	left := windNumber().ReplaceAllString(v, " ")
	mps, found, err := windSpeed(v, bare)
	if err != nil {
		return 0, err
	}
	if !found {
		mps, left, found = windWord(left)
	}
	for _, w := range strings.Fields(wordsOnly(left)) {
		found = found && (windFiller().MatchString(w) || windNamed(w))
	}
	if !found {
		return 0, fmt.Errorf("%q is not a wind: write its speed with the unit, e.g. SW 10 mph, or calm, light, breeze, chop or whitecaps", v)
	}
	return mps, nil
}

// windFrom takes the one direction out of a wind, and gives it as letters: "SW". Of two
// nobody knows which holds, and neither is taken.
func windFrom(v string) (rest, from string) {
	var others []string
	for _, w := range strings.Fields(twoWords().ReplaceAllString(v, "$1$2")) {
		name := strings.Trim(w, ",;.()")
		switch {
		case !direction().MatchString(name):
			others = append(others, w)
		case from != "" && from != compassLetters(name):
			return v, ""
		default:
			from = compassLetters(name)
		}
	}
	if from == "" {
		return v, ""
	}
	rest = fromAtEnd().ReplaceAllString(" "+strings.Join(others, " "), "")
	return strings.Trim(rest, " ,;"), from
}

// compassLetters writes a point of the compass in letters: "southwesterly" is SW.
func compassLetters(name string) string {
	name = strings.ReplaceAll(strings.TrimSuffix(name, "erly"), "-", "")
	return strings.ToUpper(strings.NewReplacer("north", "n", "south", "s", "east", "e", "west", "w").Replace(name))
}

// windSpeed is the highest of the speeds in a text, m/s; found is false where there is none.
func windSpeed(v string, bare unit.System) (mps float64, found bool, err error) {
	most, named := 0.0, ""
	for _, m := range windNumber().FindAllStringSubmatch(v, -1) {
		x, _ := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		most, found = max(most, x), true
		if m[2] != "" {
			named = m[2]
		}
	}
	switch {
	case !found:
		return 0, false, nil
	case named == "" && bare.Depth != unit.NoLength && bare.Feet():
		named = "mph"
	case named == "":
		return 0, false, openWind{v}
	}
	if mps, err = unit.ParseSpeed(fmt.Sprintf("%v %s", most, named)); err == nil && mps > 30 {
		err = fmt.Errorf("%q is more wind than anybody fishes in", v)
	}
	return mps, true, err
}

// windWord is the wind that a word of a text names, and what is left of the text.
func windWord(text string) (mps float64, left string, found bool) {
	padded := " " + wordsOnly(text) + " "
	for _, w := range windWords {
		if name := " " + w.word + " "; strings.Contains(padded, name) {
			return w.mps, strings.ReplaceAll(padded, name, " "), true
		}
	}
	return 0, text, false
}

// openWind is the error of a wind without a unit on a page that is not in feet.
type openWind struct{ text string }

func (e openWind) Error() string {
	return fmt.Sprintf("%q has no unit: write a speed with its unit, e.g. 10 mph, 10 km/h or 4 m/s", e.text)
}

func windNamed(w string) bool {
	for _, known := range windWords {
		if known.word == w {
			return true
		}
	}
	return false
}

// setWind and getWind are the header key.
func setWind(d *profile.Drop, v string, bare unit.System) error {
	w, err := readWind(v, bare)
	if err == nil && w.speed.Or(0) > 80 {
		err = fmt.Errorf("%q is not a likely value", v)
	}
	d.Wind, d.WindFrom = w.speed, w.from
	return err
}

func getWind(d *profile.Drop) string {
	units := []unit.Unit{unit.MetrePerSecond, unit.Knot, unit.KilometrePerHour, unit.MilePerHour, unit.MetrePerSecond}
	if d.Units.Depth == unit.Foot {
		units = []unit.Unit{unit.MilePerHour, unit.Knot, unit.MetrePerSecond}
	}
	speed := written(d.Wind, units...)
	if speed != "" && d.WindFrom != "" {
		return speed + " from " + d.WindFrom
	}
	return speed + d.WindFrom
}

// WindMps reads the speed of a wind that stands by itself, as a flag does.
func WindMps(v string) (float64, error) {
	w, err := readWind(v, unit.System{})
	if err == nil && !w.speed.Known {
		err = fmt.Errorf("%q says where the wind comes from, not how strong it is: write e.g. SW 10 mph or light SW", v)
	}
	return w.speed.Or(0), err
}

// wordsOnly leaves the words of a text with single blanks between.
func wordsOnly(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" \t,;.:()~-/+=\"'", r) }), " ")
}

// worded reports whether a value is words alone, whose number is ours.
func worded(v string) bool { return !strings.ContainsAny(clean(v), "0123456789") }

// sayWorded notes what was taken for a wind or a retrieve that was given in words.
func (b *builder) sayWorded(h Header) {
	var text string
	switch {
	case !slices.Contains([]string{"wind", "retrieve"}, h.Key) || !worded(h.Value):
		return
	case h.Key == "retrieve":
		text = "about " + inchesOrMetric(b.d.Retrieve.Value, b.d.Units.Feet())
	case b.d.Wind.Or(0) > 0 && b.d.Units.Feet():
		text = fmt.Sprintf("about %.0f mph", unit.MilePerHour.From(b.d.Wind.Value))
	case b.d.Wind.Or(0) > 0:
		text = fmt.Sprintf("about %.0f m/s", b.d.Wind.Value)
	default:
		return
	}
	b.r.note(h.Line, "%s %s taken as %s", h.Key, shown(h.Value), text)
}
