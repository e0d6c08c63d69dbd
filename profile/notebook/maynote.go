package notebook

import (
	"coldseam/profile/fish"
	"coldseam/profile/unit"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"
)

var (
	// a piece with digits in it that is written as numbers and their units are
	soundPiece = lazy(`^\d{1,2}h\d{2}[.,;]?$|^[-+~(\["'#$@]*\d+(?:[.,:/x-]\d+)*(?:/\d+)?[.,;:)\]!?]*(?:['"°%+]|ft|feet|in|inch|inches|m|cm|mm|yd|yds|f|c|°f|°c|mph|kts?|kn|km/h|kph|m/s|am|pm|a|p|h|hr|hrs|min|mins|s|sec|lb|lbs|oz|g|kg|gr|x|wt|st|nd|rd|th|mg/l|ppm|k|yo|fow|d|w|n|e|hp|v|mb|hpa|er)?[.,;:)\]!?]*$`)
	letters    = lazy(`[\pL']+`)
)

// saysNo begins a line that tells what was not found.
var saysNo = lazy(`^(?:no|not|never|nothing)\b`)

// readingWords are those that are looked for in a misspelt line.
var readingWords = []string{"surface", "bottom", "degrees", "temperature", "depth", "metres", "meters", "secchi", "fathoms", "oxygen", "celsius", "fahrenheit"}

// mayBeNote decides whether a line without a reading may be a note. It may not when it
// looks like a reading gone wrong: numbers with a letter in them, a misspelt word of
// readings beside a number, or two numbers that may be a depth and a temperature.
func (r *reader) mayBeNote(line int, c, raw string, taken bool) (note bool, err error) {
	words, dirty := sentenceWords(c), dirtyNumber(c)
	if dirty != "" && !numbersParted(dirty) && (words == 0 || startsWithDigit(c) && words < 3) {
		return false, fmt.Errorf("%q is not a number: write the line again, or put it after \"note:\"", dirty)
	}
	digits := strings.ContainsAny(c, "0123456789")
	if digits {
		if err := misspeltReading(c); err != nil {
			return false, err
		}
	}
	if words == 0 { // "no bottom at 40" is a note; what is none is read as a reading, with its own error
		return saysNo().MatchString(c) || taken || len(c) >= 3 && !digits, nil
	}
	ts := tokens(c, true)
	switch {
	case fishy().MatchString(c) || words > 2 || !beginsAsReading(ts, dirty):
		return r.notBoth(line, c, raw)
	case countValues(ts) < 2:
		return true, nil
	}
	return r.notOrReading(line, raw)
}

// sentenceWords counts the words of a line that no reading needs.
func sentenceWords(c string) (n int) {
	for _, w := range letters().FindAllString(c, -1) {
		if utf8.RuneCountInString(w) >= 3 && !isVocabulary(w) {
			n++
		}
	}
	return n
}

// dirtyNumber is the last piece of a line with letters in it that is written as no number
// and its unit.
func dirtyNumber(c string) (dirty string) {
	for _, piece := range strings.Fields(c) {
		if strings.ContainsAny(piece, "0123456789") && !soundPiece().MatchString(piece) && startsWithLetter(letters().FindString(piece)) {
			dirty = piece
		}
	}
	return dirty
}

// misspeltReading names a word of readings that a word of a line may have meant.
func misspeltReading(c string) error {
	for _, w := range letters().FindAllString(c, -1) {
		if like, near := nearest(w, readingWords, 1); near && len(w) >= 5 && !isVocabulary(w) {
			return fmt.Errorf("%q is not understood; did you mean %s? If it is not a reading, put the line after \"note:\"", w, like)
		}
	}
	return nil
}

// beginsAsReading reports whether a line begins as a reading does: with a number, or with a
// word that stands beside one.
func beginsAsReading(ts []token, dirty string) bool {
	if len(ts) == 0 {
		return false
	}
	switch t := ts[0]; t.kind {
	case number:
		return t.isValue() || t.text == dirty
	case surface, bottom, depthWord, tempWord:
		return true
	default:
		return t.text == dirty
	}
}

// isValue: a number that may be of a reading, and counts nothing.
func (t token) isValue() bool { return t.kind == number && t.role != otherRole && !t.counted }

func countValues(ts []token) (n int) {
	for _, t := range ts {
		if t.isValue() {
			n++
		}
	}
	return n
}

// notBoth asks about a sentence that holds one depth and one temperature, each with its
// unit: it may be meant as a reading.
func (r *reader) notBoth(line int, c, raw string) (bool, error) {
	if elsewhere().MatchString(c) {
		return true, nil
	}
	depths, temps := 0, 0
	for _, t := range tokens(c, true) {
		if t.kind == number && t.role == depthRole {
			depths++
		}
		if t.kind == number && t.role == tempRole {
			temps++
		}
	}
	if depths != 1 || temps != 1 {
		return true, nil
	}
	return r.notOrReading(line, raw)
}

// elsewhere are words by which a sentence speaks of other water, or another day.
var elsewhere = lazy(`\b(?:air|yesterday|last|ago|forecast|high|low|week|year|month|creek|stream|river|spring|guide|shop|said|says|caught|landed|hooked|lost|took)\b`)

func (r *reader) notOrReading(line int, raw string) (bool, error) {
	if r.o.Ask == nil {
		return false, errors.New("a reading or a note? Write the reading as \"5: 71.2\", or put the line after \"note:\"")
	}
	n, err := r.ask(Question{Line: line, Text: raw, What: "how the line is meant", Choices: []string{"a note", "a reading, which must be written another way"}})
	if err != nil {
		return false, err
	}
	if n == 1 {
		return false, errors.New("write the reading as \"5: 71.2\"")
	}
	return true, nil
}

// tornNumber matches a number with a letter in it that is no unit: 6x.5, 6q5.
var tornNumber = lazy(`\d[abdegi-lnp-z]\.\d|\d\.[a-z]\d|\d[bgjknquvwyz]\d`)

// torn finds a number with a letter in it on a line that is no sentence.
func torn(c string) string {
	sentence := 0
	for _, w := range letters().FindAllString(c, -1) {
		if len(w) >= 3 && !isVocabulary(w) {
			sentence++
		}
	}
	if sentence >= 3 {
		return ""
	}
	line, _ := mendDigits(c)
	for _, piece := range strings.Fields(line) {
		if tornNumber().MatchString(piece) {
			return piece
		}
	}
	return ""
}

func startsWithDigit(s string) bool { return s != "" && isDigit(s[0]) }

// numbersParted: "17#3" or a part number such as "b12-400" is no number gone wrong.
func numbersParted(s string) bool { return strings.Contains(s, "#") }

func isVocabulary(w string) bool {
	if _, ok := words[w]; ok {
		return true
	}
	if _, ok := lengthWord(w); ok {
		return true
	}
	if _, ok := unit.TemperatureNamed(w); ok {
		return true
	}
	_, number := numberWord(w)
	return number || strings.HasPrefix(w, "deg") && len(w) <= 7
}

// nearest finds the one of some words that a word may be a misspelling of, by at most so
// many letters put in, left out, changed or swapped.
func nearest(w string, among []string, most int) (string, bool) {
	best, found := most+1, ""
	for _, a := range among {
		if d := fish.Distance([]rune(w), []rune(a)); d < best && d > 0 {
			best, found = d, a
		}
	}
	return found, found != ""
}
