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
	Units    string      // how units can be given beside the page, for messages: "--units", or "" for not at all
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

// Read reads a page of one or more drops, or the pages that Pages made one text of,
// corrected but not yet checked. An error is an *Error, naming the first line that could
// not be read.
func Read(data []byte, o Options) ([]Sheet, error) {
	text, err := decode(data)
	if err != nil {
		return nil, &Error{Name: o.Name, Msg: err.Error(), err: err}
	}
	return readAll(split(text), o)
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
	above      int // lines of the text above the page
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
	return &Error{Name: r.o.Name, Line: r.inText(line), Msg: msg}
}

// failed is the error of a line for which another is the reason.
func (r *reader) failed(line int, what string, err error) *Error {
	return &Error{r.o.Name, r.inText(line), what + ": " + err.Error(), err}
}

// inText is a line of the page as a line of the whole text; 0 stays.
func (r *reader) inText(line int) int {
	if line > 0 {
		line += r.above
	}
	return line
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
	asked := q
	asked.Line = r.inText(q.Line)
	n, err := r.o.Ask(asked)
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
