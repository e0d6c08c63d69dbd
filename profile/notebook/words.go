package notebook

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// words reads a line that holds other words than a reading's: it takes what is known in
// it, and keeps the line as a note where that is not all of it. ok is false when the line
// holds no such words. A line that looks like a reading gone wrong is no note: it is
// asked about, or refused.
func (r *reader) words(line int, c, raw string, t *table) (items []item, ok bool, err error) {
	if shortDate().MatchString(c) {
		return nil, false, nil
	}
	p := &prose{text: oneSpelling(raw)}
	if !fishy().MatchString(p.text) { // "caught 2 over 10-12 ft" says where fish were
		one := r.oneLength(line, p.text)
		p.text, p.inexact = one, one != p.text // the note keeps the range
	}
	twice := p.certain()
	if len(p.found) == 0 && !p.inexact && !r.foreign(c) {
		return nil, false, nil
	}
	entries, reading := r.readingIn(p.text, t)
	if !reading {
		p.lengths()
		p.wind()
		if len(p.found) > 0 {
			entries, reading = r.readingIn(p.text, t)
		}
	}
	var left []string
	if !reading {
		left = p.names(!r.seen || p.titled || r.aboveReadings(line), r.o)
		if p.has("date") && !p.titled && !p.has("water") && !p.has("spot") && len(left) > 0 { // "ice out 4/12/26" dates something else
			p.drop("date")
			left, twice = append(left, "date"), nil
		}
		if len(left) > 0 {
			note, err := r.gone(line, strings.ToLower(strings.Join(left, "; ")), raw, len(p.found) > 0)
			if err != nil {
				return nil, true, err
			}
			if !note {
				return nil, false, nil
			}
		}
		var err error
		if left, err = r.lengthAlone(line, raw, p, left); err != nil {
			return nil, true, err
		}
		if len(p.found) == 0 && !r.titled && len(left) == 1 && capitals(left[0], strings.Fields(strings.ToLower(left[0]))) && r.o.Ask != nil {
			n, err := r.ask(Question{Line: line, Text: raw, What: "the first line", Choices: []string{"the name of the water", "a note"}})
			if err != nil {
				return nil, true, err
			}
			if n == 0 {
				p.found, left = append(p.found, Header{Key: "water", Value: left[0]}), nil
			}
		}
	}
	if twice != nil {
		day, err := r.whichDay(line, raw, twice)
		if err != nil {
			return nil, true, err
		}
		for i := range p.found {
			if p.found[i].Key == "date" {
				p.found[i].Value = day
			}
		}
	}
	var taken []string
	for _, h := range p.found {
		h.Line, h.soft = line, true
		taken = append(taken, h.Key+" "+h.Value)
		items = append(items, item{line: line, kind: header, header: h})
	}
	if reading {
		items = append(items, r.stamp(item{line: line, kind: readings, entries: entries}))
		if len(taken) > 0 {
			r.note(line, "%s: %s taken from it", shown(raw), strings.Join(taken, ", "))
		}
		if r.typed && slices.ContainsFunc(entries, func(e entry) bool { return len(e.remarks) > 0 }) { // the page that is saved has no other place for them
			items = append(items, item{line: line, kind: header, header: Header{Key: "note", Value: strings.TrimSpace(raw), Line: line}})
		}
		return items, true, nil
	}
	kept := len(left) > 0 || p.inexact || len(taken) == 0
	if kept {
		items = append(items, item{line: line, kind: header, header: Header{Key: "note", Value: strings.TrimSpace(raw), Line: line}})
	}
	text := shown(raw) + " kept as a note"
	switch {
	case len(taken) > 0 && kept:
		text += "; read from it: " + strings.Join(taken, ", ")
	case len(taken) > 0:
		text = shown(raw) + " read as " + strings.Join(taken, ", ")
	}
	if !p.has("date") && dayInside(c) {
		text += "; its date has no year: write date: 2026-07-18"
	}
	r.note(line, "%s", text)
	return items, true, nil
}

// lengthAlone asks whether a length that stands by itself among names is the bottom.
func (r *reader) lengthAlone(line int, raw string, p *prose, left []string) ([]string, error) {
	if r.seen || p.has("bottom") || len(p.found) == 0 {
		return left, nil
	}
	for i, piece := range left {
		if _, u, err := unit.ParseLength(clean(piece)); err != nil || u == unit.Inch {
			continue
		}
		if r.o.Ask == nil {
			r.note(line, "if %s is the depth of the bottom, write \"bottom: %s\"", piece, piece)
			return left, nil
		}
		n, err := r.ask(Question{Line: line, Text: raw, What: "the length " + piece, Choices: []string{"the depth of the bottom", "something else"}})
		if err != nil || n == 1 {
			return left, err
		}
		p.found = append(p.found, Header{Key: "bottom", Value: piece})
		return slices.Delete(left, i, i+1), nil
	}
	return left, nil
}

// aboveReadings reports whether a line stands where the title of a second drop does:
// framed by dashes, or below a blank line or a rule with a reading right under it.
func (r *reader) aboveReadings(line int) bool {
	if framed().MatchString(clean(r.raw[line-1])) {
		return true
	}
	if line < 2 || line >= len(r.raw) {
		return false
	}
	before, after := clean(r.raw[line-2]), clean(r.raw[line])
	if before != "" && !rulerLine().MatchString(before) || r.foreign(after) {
		return false
	}
	_, ok := r.readingIn(after, nil)
	return ok
}

// drop takes a fact back.
func (p *prose) drop(key string) {
	var kept []Header
	for _, h := range p.found {
		if h.Key != key {
			kept = append(kept, h)
		}
	}
	p.found = kept
}

// whichDay asks which of two days a date is.
func (r *reader) whichDay(line int, raw string, err error) (string, error) {
	var two twoDates
	if !errors.As(err, &two) {
		return "", err
	}
	n, err := r.ask(Question{Line: line, Text: raw, What: "the date " + two.text, Choices: two.days[:], Instead: "write one of these"})
	return two.days[max(n, 0)], err
}

// foreign reports whether a line holds a word that no reading needs.
func (r *reader) foreign(c string) bool {
	line, _ := mendDigits(c)
	ts := tokens(line, false)
	for i, t := range ts {
		switch {
		case t.kind == otherWord && startsWithLetter(t.text) && t.text != "f":
			return true
		case t.kind == missing && i == 0 && len(t.text) > 3 && hasNumber(ts): // "missed 2 at 14 ft"
			return true
		case t.kind == number && t.role == otherRole:
			return true
		}
	}
	return !hasNumber(ts) && len(ts) > 1 && strings.ContainsFunc(c, func(x rune) bool { return x >= 'a' && x <= 'z' }) && noReading(ts)
}

// noReading: words of readings that say none, "mud bottom".
func noReading(ts []token) bool {
	for _, t := range ts {
		if t.kind == ditto || t.kind == missing || t.kind == surface {
			return false
		}
	}
	return true
}

// readingIn reads what is left of a line as whole readings, other words only behind
// them or in brackets; ok is false when it holds none.
func (r *reader) readingIn(text string, t *table) (entries []entry, ok bool) {
	c := strings.Trim(strings.ToLower(text), " ;,.")
	if c == "" || fishy().MatchString(c) && !fishyBehind(c) {
		return nil, false
	}
	meanings, err := parseLine(c, r.points)
	if err != nil || len(meanings) != 1 {
		return nil, false
	}
	for _, m := range meanings {
		t.dress(m)
		for _, e := range m {
			if !e.whole() || e.counts() {
				return nil, false
			}
		}
	}
	return meanings[0], true
}

// fishyBehind: a catch in brackets, or behind a reading: "15 66 (2 fish)".
func fishyBehind(c string) bool {
	at := fishy().FindStringIndex(c)[0]
	before, _, _ := strings.Cut(c[:at], "(")
	ts := tokens(before, false)
	n := 0
	for _, t := range ts {
		if t.kind == otherWord {
			break
		}
		if t.kind == number && !t.counted {
			n++
		}
	}
	if len(ts) == 0 {
		return false
	}
	return n >= 2 && ts[0].kind != missing || n == 1 && len(ts) > 1 && ts[0].kind == surface
}

// counts reports whether an entry's temperature counts something: "14 ft: 2 fish".
func (e *entry) counts() bool {
	for _, list := range [][]token{e.temps, e.free} {
		for _, t := range list {
			if t.role == otherRole || t.worded && t.temp == unit.NoTemperature && t.value.Step == 1 && t.value.Value <= 20 && t.counted {
				return true
			}
		}
	}
	return false
}

var (
	// a piece with digits in it that is written as numbers and their units are
	soundPiece = lazy(`^\d{1,2}h\d{2}[.,;]?$|^[-+~(\["'#$@]*\d+(?:[.,:/x-]\d+)*(?:/\d+)?[.,;:)\]!?]*(?:['"°%+]|ft|feet|in|inch|inches|m|cm|mm|yd|yds|f|c|°f|°c|mph|kts?|kn|km/h|kph|m/s|am|pm|a|p|h|hr|hrs|min|mins|s|sec|lb|lbs|oz|g|kg|gr|x|wt|st|nd|rd|th|mg/l|ppm|k|yo|fow|d|w|n|e|hp|v|mb|hpa|er)?[.,;:)\]!?]*$`)
	letters    = lazy(`[\pL']+`)
)

// saysNo begins a line that tells what was not found.
var saysNo = lazy(`^(?:no|not|never|nothing)\b`)

// readingWords are those that are looked for in a misspelt line.
var readingWords = []string{"surface", "bottom", "degrees", "temperature", "depth", "metres", "meters", "secchi", "fathoms", "oxygen", "celsius", "fahrenheit"}

// gone decides whether a line without a reading may be a note. It may not when it looks
// like a reading gone wrong: numbers with a letter in them, a misspelt word of readings
// beside a number, or two numbers that may be a depth and a temperature.
func (r *reader) gone(line int, c, raw string, taken bool) (note bool, err error) {
	words, dirty := 0, ""
	for _, w := range letters().FindAllString(c, -1) {
		if len([]rune(w)) >= 3 && !isVocabulary(w) {
			words++
		}
	}
	digits := strings.ContainsAny(c, "0123456789")
	for _, piece := range strings.Fields(c) {
		if strings.ContainsAny(piece, "0123456789") && !soundPiece().MatchString(piece) && startsWithLetter(letters().FindString(piece)) {
			dirty = piece
		}
	}
	ts := tokens(c, true)
	first := len(ts) > 0 && (ts[0].kind == number && ts[0].role != otherRole && !ts[0].counted || ts[0].kind == surface || ts[0].kind == bottom || ts[0].kind == depthWord || ts[0].kind == tempWord || ts[0].text == dirty)
	if dirty != "" && !numbersParted(dirty) && (words == 0 || startsWithDigit(c) && words < 3) {
		return false, fmt.Errorf("%q is no number: write the line again, or put it after \"note:\"", dirty)
	}
	if digits {
		for _, w := range letters().FindAllString(c, -1) {
			if like, near := nearest(w, readingWords, 1); near && len(w) >= 5 && !isVocabulary(w) {
				return false, fmt.Errorf("%q is not understood, did you mean %s? If it is no reading, put the line after \"note:\"", w, like)
			}
		}
	}
	if words == 0 {
		if saysNo().MatchString(c) { // "no bottom at 40"
			return true, nil
		}
		if !taken && (len(c) < 3 || digits) {
			return false, nil // as a reading, with its own error
		}
		return true, nil
	}
	if fishy().MatchString(c) || !first || words > 2 {
		return r.notBoth(line, c, raw)
	}
	numbers := 0
	for _, t := range ts {
		if t.kind == number && t.role != otherRole && !t.counted {
			numbers++
		}
	}
	if numbers < 2 {
		return true, nil
	}
	return r.notOrReading(line, raw)
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
	n, err := r.ask(Question{Line: line, Text: raw, What: "how the line is meant", Choices: []string{"a note", "a reading: it must be written another way"}})
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
	line, _ := mendDigits(c)
	for _, piece := range strings.Fields(line) {
		if tornNumber().MatchString(piece) && sentence < 3 {
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
