package notebook

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile/unit"
)

// retrieveWords are the retrieves that have a name, in inches a second averaged over
// pauses: what is taken for each, and the range that it stands for. All are common
// practice: a crawl recovers 2 to 6 inches in 5 to 10 seconds; a slow hand twist gathers
// about 4 inches in 2 to 4 seconds; the rule of a leader of the depth and a quarter holds
// from 1.8 to 2.3; pulls of 3 to 4 inches, one every one or two seconds, are already fast
// for a pupa. The first that a text holds counts.
var retrieveWords = []struct {
	word                string
	inches, least, most float64
}{
	{"crawl", 0.5, 0.2, 1.2}, {"crawling", 0.5, 0.2, 1.2}, {"creep", 0.5, 0.2, 1.2}, {"dead slow", 0.5, 0.2, 1.2}, {"very slow", 0.5, 0.2, 1.2}, {"ultra slow", 0.5, 0.2, 1.2},
	{"slow", 1.5, 1, 2}, {"slowly", 1.5, 1, 2},
	{"medium", 2, 1.8, 2.3}, {"moderate", 2, 1.8, 2.3}, {"steady", 2, 1.8, 2.3},
	{"fast", 3, 1.5, 4}, {"quick", 3, 1.5, 4},
	{"hand twist", 1.5, 1, 2}, {"figure eight", 1.5, 1, 2},
}

// retrieveFiller are words that may stand beside them.
var retrieveFiller = wordSet("a the retrieve retrieving hand twist twists figure eight pull pulls strip strips with and long short pauses of")

// RetrieveMps reads a retrieve: a speed with its unit, or a word for it. m/s.
func RetrieveMps(v string) (float64, error) {
	c := clean(v)
	if !worded(c) {
		return unit.ParseSpeed(c)
	}
	words := " " + wordsOnly(c) + " "
	for _, known := range retrieveWords {
		name := " " + known.word + " "
		if !strings.Contains(words, name) {
			continue
		}
		for _, w := range strings.Fields(strings.Replace(words, name, " ", 1)) {
			if !retrieveFiller[w] && !retrieveNamed(w) {
				return 0, noRetrieve(v)
			}
		}
		return unit.InchPerSecond.SI(known.inches), nil
	}
	return 0, noRetrieve(v)
}

func noRetrieve(v string) error {
	return fmt.Errorf("%q is not a retrieve: write the line recovered in a second, e.g. 2 in/s or 5 cm/s, or crawl, slow, steady or fast", v)
}

func retrieveNamed(w string) bool {
	for _, known := range retrieveWords {
		if known.word == w {
			return true
		}
	}
	return false
}

// inchesOrMetric prints a retrieve in the angler's kind of units.
func inchesOrMetric(mps float64, feet bool) string {
	if feet {
		return exact(math.Round(unit.InchPerSecond.From(mps)*10)/10) + " inches a second"
	}
	return exact(math.Round(unit.CentimetrePerSecond.From(mps)*2)/2) + " cm a second"
}
