package notebook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"coldseam/profile/unit"
)

// windWords are the winds that have a name: the middle of their class of the Beaufort
// scale (WMO No. 8, table 5.1), in m/s. Whitecaps are those that send a small boat in,
// 15 mph (common practice).
var windWords = []struct {
	word string
	mps  float64
}{
	{"calm", 0}, {"none", 0}, {"no wind", 0}, {"nil", 0}, {"no breeze", 0}, {"windless", 0}, {"flat", 0}, {"glass", 0}, {"glassy", 0}, {"mirror", 0}, {"calme", 0},
	{"whitecaps", 6.7056}, {"white caps", 6.7056}, {"gale", 18.95}, {"strong", 12.3}, {"very windy", 12.3}, {"fresh", 9.35}, {"stiff", 9.35}, {"windy", 6.7056},
	{"moderate", 6.7}, {"steady", 6.7}, {"breezy", 4.4}, {"gentle", 4.4}, {"light air", 0.9}, {"light", 2.45}, {"slight", 2.45}, {"faible", 2.45}, {"breeze", 4.4},
}

const (
	compass   = `(?:n|s|e|w|ne|nw|se|sw|nne|ene|ese|sse|ssw|wsw|wnw|nnw|north|south|east|west|north-?east|north-?west|south-?east|south-?west|northerly|southerly|easterly|westerly)`
	speedUnit = `(?:mph|mi/h|kts?|kn|knots?|km/h|kmh|kph|m/s|mps)`
)

var (
	windFiller = lazy(`^(?:` + compass + `|winds?|vent|breeze|from|out|of|the|to|at|about|around|by|and|up|gusts?|gusting|variable|var|then|later|very|now|a|bit|air|airs|blowing|steady|surface|lake|with|is|was|in|on|off|mostly|getting|increasing|dropping|force|water)$`)
	beaufort   = lazy(`^(?:force|f|bft)\s*(\d{1,2})$`)
	windNumber = lazy(`(\d+(?:[.,]\d+)?)\s*(` + speedUnit + `)?`)
)

// readWind reads a wind as it is noted: "8 mph", "SW 5-10 mph", "light", "calm". Of
// several numbers the highest counts. A number alone is in miles an hour on a page in
// feet, and open on another.
func readWind(v string, bare unit.System) (mps float64, err error) {
	v = clean(v)
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
		return 0, fmt.Errorf("%q is not a wind: write it with its unit, e.g. 10 mph, or calm or light", v)
	}
	return mps, nil
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
		err = fmt.Errorf("%q is no wind that anybody fishes in", v)
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

// wordsOnly leaves the words of a text with single blanks between.
func wordsOnly(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" \t,;.:()~-/+=\"'", r) }), " ")
}
