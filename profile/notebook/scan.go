package notebook

import (
	"errors"
	"fmt"
	"strings"
)

var (
	framed    = lazy(`^[-=*_~]{2,}\s+(.*\pL.*?)\s+[-=*_~]{2,}$`)
	rulerLine = lazy(`^[-=*_~]{3,}$`)
	decimal   = lazy(`[0-9]\.[0-9]`)
)

// scan reads the page line by line. It goes on after a line that cannot be read, so
// that all of them can be named at once.
func (r *reader) scan() error {
	for i, l := range r.raw {
		l = r.spelled(i+1, l)
		r.raw[i] = l
		if c := clean(l); decimal().MatchString(c) && !keyLine().MatchString(c) {
			r.points = true
		}
	}
	var t *table
	cut := r.cutOff()
	for i := 0; i < len(r.raw); i++ {
		if i == cut {
			r.note(i+1, "%s is left out: the log was cut off within it", shown(r.raw[i]))
			continue
		}
		c := clean(r.raw[i])
		if !isKey(c, r.raw[i]) { // "note: depth and temp" is no row of column names
			rows, err := r.wideAt(i, t != nil)
			if err != nil {
				return err
			}
			if rows > 0 {
				i += rows - 1
				continue
			}
			if r.columnNames(i+1, c, &t) {
				continue
			}
		}
		its, err := r.line(i+1, c, t)
		if err != nil {
			r.refuse(i+1, err)
			continue
		}
		r.items = append(r.items, its...)
		if err := r.count(its); err != nil {
			return err
		}
	}
	r.items = append(r.logDate(), r.items...)
	return r.refusal()
}

// columnNames reads a row of column names, or of the units under them.
func (r *reader) columnNames(line int, c string, t **table) bool {
	if *t != nil && !r.seen && (*t).unitRow(c) {
		return true
	}
	h, ok := headerRow(c)
	if !ok {
		return false
	}
	*t = &h
	for _, col := range h.columns {
		if col.role == unknown && col.name != "" {
			r.note(line, "the column %s is not read", shown(col.name))
		}
	}
	return true
}

// refuse keeps the error of a line.
func (r *reader) refuse(line int, err error) {
	var e *Error
	if !errors.As(err, &e) {
		e = r.failed(line, shown(r.raw[line-1]), err)
	}
	r.bad = append(r.bad, e)
}

// count keeps what later lines ask about the lines above.
func (r *reader) count(its []item) error {
	for _, it := range its {
		r.seen = r.seen || it.kind == readings
		r.titled = r.titled || it.kind != blank
		if it.kind == header && it.header.Key == "note" {
			r.kept++
		}
		if r.kept > maxNotes*maxDrops {
			return r.fail(it.line, "too many lines without a reading: is this a page of readings?")
		}
	}
	return nil
}

// refusal is the first bad line, with the others named.
func (r *reader) refusal() error {
	if len(r.bad) == 0 {
		return nil
	}
	e := *r.bad[0]
	var others []string
	for _, b := range r.bad[1:] {
		if len(others) == 5 {
			others = append(others, fmt.Sprintf("and %d more", len(r.bad)-6))
			break
		}
		others = append(others, fmt.Sprint(b.Line))
	}
	if len(others) > 0 {
		e.Msg += " (also line " + strings.Join(others, ", ") + ")"
	}
	return &e
}

// line reads one line that is no part of a wide table.
func (r *reader) line(line int, c string, t *table) ([]item, error) {
	raw := r.raw[line-1]
	switch {
	case c == "":
		return []item{{line: line, kind: blank}}, nil
	case strings.ContainsFunc(c, func(x rune) bool { return x < ' ' && x != '\t' || x == 0x7f }):
		return nil, errors.New("a control character stands in the line: type the line again")
	case rulerLine().MatchString(c):
		return []item{{line: line, kind: ruler}}, nil
	}
	if m := framed().FindStringSubmatch(c); m != nil { // "-- drop 2, inlet --"
		if its, ok, err := r.words(line, m[1], framed().FindStringSubmatch(oneSpelling(raw))[1], nil); ok || err != nil {
			return append([]item{{line: line, kind: blank}}, its...), err
		}
	}
	if m := keyLine().FindStringSubmatch(c); m != nil {
		if h, ok := headerOf(m, raw, line); ok {
			return r.key(h)
		}
		if err := misspelt(m[1]); err != nil {
			return nil, err
		}
	}
	if h, ok := r.caughtLine(line, c, raw); ok {
		return r.key(h)
	}
	if len(c) > MaxLine {
		return nil, errLong
	}
	if piece := torn(c); piece != "" {
		return nil, fmt.Errorf("%q is not a number: write the line again, or put it after \"note:\"", piece)
	}
	if rest, ok := r.logged(line, c, t); ok {
		return r.reading(line, rest, raw, t)
	}
	return r.unkeyed(line, c, raw, t)
}

// unkeyed reads a line without a key: a date, words, or readings.
func (r *reader) unkeyed(line int, c, raw string, t *table) ([]item, error) {
	if day, is, err := r.bareDate(line, c, raw); err != nil {
		return nil, err
	} else if is {
		return []item{{line: line, kind: header, header: Header{Key: "date", Value: day, Line: line}}}, nil
	}
	err := r.titleOrReading(line, c, raw)
	if err == nil {
		if its, ok, err := r.words(line, c, raw, t); ok || err != nil {
			return its, err
		}
	} else if !errors.Is(err, errReading) {
		return nil, err
	}
	return r.reading(line, c, raw, t)
}

// reading reads a line of one or more readings.
func (r *reader) reading(line int, c, raw string, t *table) ([]item, error) {
	it := item{line: line, kind: readings}
	if t != nil && !bottomLine().MatchString(c) {
		if e, ok, err := t.row(c); err != nil {
			return nil, err
		} else if ok {
			it.entries = []entry{e}
			return []item{r.stamp(it)}, nil
		}
	}
	meanings, err := r.meanings(c)
	if err != nil {
		return nil, err
	}
	for _, m := range meanings {
		t.dress(m)
	}
	it.entries = meanings[0]
	if len(meanings) > 1 {
		q := Question{Line: line, Text: raw, What: "how the line is meant", Instead: "write it another way, e.g. one reading a line as \"5: 71.2\""}
		for _, m := range meanings {
			q.Choices = append(q.Choices, describe(m))
		}
		n, err := r.ask(q)
		if err != nil {
			return nil, err
		}
		it.entries = meanings[n]
	}
	return []item{r.stamp(it)}, nil
}

// meanings are the readings that a line may hold, one way or another. The bottom at the
// end of "22 ft - 56 bottom 24" is no part of the reading.
func (r *reader) meanings(c string) ([][]entry, error) {
	if m := thenBottom().FindStringSubmatch(c); m != nil && strings.Count(shapeOf(m[1]), "0") > 1 {
		above, err := parseLine(m[1], r.points)
		below, errBelow := parseLine(m[2], r.points)
		if err == nil && errBelow == nil && len(above) == 1 && len(below) == 1 && whole(above[0]) {
			return [][]entry{append(above[0], below[0]...)}, nil
		}
	}
	return parseLine(c, r.points)
}

var bottomLine = lazy(`^(?:bottom|btm|bttm|bot)\b`)

var (
	thenBottom = lazy(`^(.*\d\S*) *[,;]? +((?:bottom|btm|bttm|bot|b|fond)\b(?: at| is| =|:|=)? *\d+(?:[.,]\d+)? ?(?:ft|feet|'|m|metres|meters)?)$`)
	digitRun   = lazy(`\d+(?:[.,]\d+)?`)
)

// shapeOf writes each number of a line as 0.
func shapeOf(c string) string { return digitRun().ReplaceAllString(c, "0") }

// stamp writes the line and its text on its entries.
func (r *reader) stamp(it item) item {
	for i := range it.entries {
		it.entries[i].line, it.entries[i].text = it.line, strings.TrimSpace(r.raw[it.line-1])
	}
	return it
}

func (r *reader) hasEntries() bool {
	for _, it := range r.items {
		if it.kind == readings {
			return true
		}
	}
	return false
}
