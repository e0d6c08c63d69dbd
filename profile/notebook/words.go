package notebook

import (
	"errors"
	"slices"
	"strings"

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
	p.certain()
	if len(p.found) == 0 && !p.inexact && !r.foreign(c) {
		return nil, false, nil
	}
	var left []string
	entries := r.readingBeside(p, t)
	if entries == nil {
		if left, ok, err = r.leftOver(line, raw, p); err != nil || !ok {
			return nil, err != nil, err
		}
	}
	if err := r.chooseDay(line, raw, p); err != nil {
		return nil, true, err
	}
	for _, h := range p.found {
		h.Line, h.soft = line, true
		items = append(items, item{line: line, kind: header, header: h})
	}
	if entries != nil {
		return r.withReading(items, line, raw, entries), true, nil
	}
	return r.withNote(items, line, c, raw, len(left) > 0 || p.inexact, p.has("date")), true, nil
}

// readingBeside reads what is left of a line as readings, and takes lengths and the wind
// out of it where only then it is one; nil where it holds none.
func (r *reader) readingBeside(p *prose, t *table) []entry {
	if entries, ok := r.readingIn(p.text, t); ok {
		return entries
	}
	p.lengths()
	p.wind()
	if len(p.found) == 0 {
		return nil
	}
	entries, _ := r.readingIn(p.text, t)
	return entries
}

// leftOver takes the names out of a line without a reading, and gives what is left of it;
// ok is false where that may be no note.
func (r *reader) leftOver(line int, raw string, p *prose) (left []string, ok bool, err error) {
	left = p.names(!r.seen || p.titled || r.aboveReadings(line), r.o)
	if p.has("date") && !p.titled && !p.has("water") && !p.has("spot") && len(left) > 0 { // "ice out 4/12/26" dates something else
		p.drop("date")
		left, p.twoDays = append(left, "date"), nil
	}
	if len(left) > 0 && !p.caught {
		ok, err := r.mayBeNote(line, strings.ToLower(strings.Join(left, "; ")), raw, len(p.found) > 0)
		if err != nil || !ok {
			return nil, false, err
		}
	}
	if left, err = r.lengthAlone(line, raw, p, left); err != nil {
		return nil, false, err
	}
	left, err = r.firstLine(line, raw, p, left)
	return left, true, err
}

// firstLine asks whether a name on the first line is that of the water.
func (r *reader) firstLine(line int, raw string, p *prose, left []string) ([]string, error) {
	if r.o.Ask == nil || len(p.found) > 0 || r.titled || len(left) != 1 || !capitals(left[0], strings.Fields(strings.ToLower(left[0]))) {
		return left, nil
	}
	n, err := r.ask(Question{Line: line, Text: raw, What: "the first line", Choices: []string{"the name of the water", "a note"}})
	if err == nil && n == 0 {
		p.found, left = append(p.found, Header{Key: "water", Value: left[0]}), nil
	}
	return left, err
}

// chooseDay asks which of two days the date is.
func (r *reader) chooseDay(line int, raw string, p *prose) error {
	if p.twoDays == nil {
		return nil
	}
	day, err := r.whichDay(line, raw, p.twoDays)
	for i := range p.found {
		if p.found[i].Key == "date" && err == nil {
			p.found[i].Value = day
		}
	}
	return err
}

// withReading are the items of a line that holds readings beside the headers taken from it.
func (r *reader) withReading(items []item, line int, raw string, entries []entry) []item {
	if taken := toldBy(items); taken != "" {
		r.note(line, "%s: %s taken from it", shown(raw), taken)
	}
	items = append(items, r.stamp(item{line: line, kind: readings, entries: entries}))
	if r.typed && slices.ContainsFunc(entries, func(e entry) bool { return len(e.remarks) > 0 }) { // the page that is saved has no other place for them
		items = append(items, noteItem(line, raw))
	}
	return items
}

// withNote are the items of a line without a reading: it is kept as a note where more was
// told than the headers taken from it hold.
func (r *reader) withNote(items []item, line int, c, raw string, more, dated bool) []item {
	text, taken := shown(raw)+" kept as a note", toldBy(items)
	switch {
	case taken != "" && more:
		text += "; read from it: " + taken
	case taken != "":
		text = shown(raw) + " read as " + taken
	}
	if more || taken == "" {
		items = append(items, noteItem(line, raw))
	}
	if !dated && dayInside(c) {
		text += "; its date has no year: write date: 2026-07-18"
	}
	r.note(line, "%s", text)
	return items
}

func noteItem(line int, raw string) item {
	return item{line: line, kind: header, header: Header{Key: "note", Value: strings.TrimSpace(raw), Line: line}}
}

// toldBy lists the headers of items.
func toldBy(items []item) string {
	var told []string
	for _, it := range items {
		told = append(told, it.header.Key+" "+it.header.Value)
	}
	return strings.Join(told, ", ")
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
// framed by dashes, or below a blank line or a rule with a reading under it, right there or
// below lines that tell of the drop alone, such as its date.
func (r *reader) aboveReadings(line int) bool {
	if framed().MatchString(clean(r.raw[line-1])) {
		return true
	}
	if line < 2 || line >= len(r.raw) {
		return false
	}
	if before := clean(r.raw[line-2]); before != "" && !rulerLine().MatchString(before) {
		return false
	}
	for _, raw := range r.raw[line:] {
		after := clean(raw)
		if r.tellsAlone(raw, after) {
			continue
		}
		_, ok := r.readingIn(after, nil)
		return ok && !r.foreign(after)
	}
	return false
}

// tellsAlone reports whether a line holds facts of a drop and nothing else: its date, its
// units, its bottom, what it is for.
func (r *reader) tellsAlone(raw, c string) bool {
	if _, err := parseDate(c); err == nil || isKey(c, raw) {
		return true
	}
	p := &prose{text: oneSpelling(raw)}
	p.certain()
	p.lengths()
	left := p.names(false, r.o)
	return len(p.found) > 0 && len(left) == 0
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
