package notebook

import (
	"errors"
	"fmt"
	"strings"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// Note says how a line was read, when it took more than plain reading.
type Note struct {
	Line int // 0 when it is about the whole page
	Text string
}

// Sheet is one drop of a page and how it was read.
type Sheet struct {
	Name  string // of the page, for messages
	Drop  profile.Drop
	Notes []Note
}

// Question is what a page leaves open, with the readings to choose from.
type Question struct {
	Line    int
	Text    string // the line
	What    string
	Choices []string
	Instead string // what to write on the page so that it need not be asked
}

// Options say where a page comes from and what is known besides it.
type Options struct {
	Name     string      // of the file, for messages
	Flags    []Header    // win over the page
	Defaults []Header    // from the settings: the page wins over them
	Unread   bool        // a page without readings is one drop that is yet to be read
	Fish     []fish.Fish // the angler's own, besides the table's
	Waters   []string    // names of waters that are known
	// Ask puts a question to the angler and returns the choice. Where it is nil an
	// open question refuses the page.
	Ask func(Question) (int, error)
}

// Error is a page that could not be read: what, where and what to do, in one line.
type Error struct {
	Name string
	Line int // 0 when it is the whole page
	Msg  string
	err  error
}

// Unwrap gives the error behind it, such as that of Ask; nil where there is none.
func (e *Error) Unwrap() error { return e.err }

func (e *Error) Error() string {
	if e.Line == 0 {
		return e.Name + ": " + e.Msg
	}
	return fmt.Sprintf("%s:%d: %s", e.Name, e.Line, e.Msg)
}

// Read reads a page of one or more drops, corrected but not yet checked. An error
// is an *Error, naming the first line that could not be read.
func Read(data []byte, o Options) ([]Sheet, error) {
	r := &reader{o: o}
	text, err := decode(data)
	if err != nil {
		return nil, &Error{Name: o.Name, Msg: err.Error(), err: err}
	}
	r.raw = split(text)
	return r.read()
}

// read reads the lines of a page.
func (r *reader) read() ([]Sheet, error) {
	if err := r.scan(); err != nil {
		return nil, err
	}
	if !r.hasEntries() && r.o.Unread {
		return r.unread()
	}
	if !r.hasEntries() {
		return nil, r.fail(0, "has no readings: write a depth and a temperature on each line, e.g. \"5 ft 71.2 F\"")
	}
	if err := r.columns(); err != nil {
		return nil, err
	}
	return r.drops()
}

// item is what a line turned out to be.
type item struct {
	line    int
	kind    itemKind
	header  Header
	entries []entry
}

type itemKind int

const (
	blank itemKind = iota
	header
	readings
	ruler // a line of dashes or equals signs
)

// reader holds a page while it is read.
type reader struct {
	o          Options
	base       profile.Drop // what was known before
	typed      bool         // the page is a line that was typed while base is taken: it wins over base
	raw        []string
	items      []item
	points     bool        // decimals are written with points
	wideRows   int         // lines that may be rows of a wide table, once counted
	shortDates int         // lines that look like 7/18/26, once counted
	others     bool        // and whether other lines have numbers
	said       unit.System // units the angler gave when asked: they hold for the whole page
	notes      map[int][]string
	bad        []*Error
	seen       bool   // a reading stands above
	titled     bool   // anything does
	kept       int    // notes above
	logDay     string // the day, and the time of day, of the first line of a probe's log
	logFrom    int    // its number
}

func (r *reader) fail(line int, msg string) *Error {
	return &Error{Name: r.o.Name, Line: line, Msg: msg}
}

// failed is the error of a line for which another is the reason.
func (r *reader) failed(line int, what string, err error) *Error {
	return &Error{r.o.Name, line, what + ": " + err.Error(), err}
}

func (r *reader) note(line int, format string, args ...any) {
	if r.notes == nil {
		r.notes = map[int][]string{}
	}
	r.notes[line] = append(r.notes[line], fmt.Sprintf(format, args...))
}

// ask puts a question, or refuses the page with the readings named.
func (r *reader) ask(q Question) (int, error) {
	if r.o.Ask == nil {
		msg := fmt.Sprintf("%s: either %s", q.What, strings.Join(q.Choices, ", or "))
		if q.Text != "" {
			msg = shown(q.Text) + " has two meanings: " + msg
		}
		return 0, r.fail(q.Line, msg+": "+q.Instead)
	}
	n, err := r.o.Ask(q)
	if err == nil && (n < 0 || n >= len(q.Choices)) {
		err = errors.New("no such choice")
	}
	if err != nil {
		return 0, r.failed(q.Line, q.What, err)
	}
	r.note(q.Line, "%s: %s, as you said", q.What, q.Choices[n])
	return n, nil
}

// shown quotes a piece of a page for a message.
func shown(s string) string { return plain.Quote(s, 60) }

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
	for i := 0; i < len(r.raw); i++ {
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
	if len(c) > MaxLine {
		return nil, errLong
	}
	if piece := torn(c); piece != "" {
		return nil, fmt.Errorf("%q is no number: write the line again, or put it after \"note:\"", piece)
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
