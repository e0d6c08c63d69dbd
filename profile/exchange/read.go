package exchange

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// Note says how a line was read, or what was passed over.
type Note = notebook.Note

// MaxFile is the largest file that is read, in bytes.
const MaxFile = 512 << 20

// reader holds a file while it is read.
type reader struct {
	name     string
	csv      *csv.Reader
	comma    bool // numbers may have decimal commas
	columns  []column
	oxygenAt map[depth][]int // columns of oxygen at one depth
	line     int             // of the row being read
	b        builder
	notes    []Note
	bad      []*notebook.Error
	skipped  map[string][]int // lines of rows without a reading, by why
}

// ReadCSV reads the drops of a CSV, corrected and not yet checked, in the order in which
// they begin there; name is for messages. An error is a *notebook.Error: one line that
// names the first row that cannot be read, and no drop is given then.
func ReadCSV(name string, r io.Reader) ([]profile.Drop, []Note, error) {
	sources, notes, err := ReadSources(name, r)
	var drops []profile.Drop
	for _, s := range sources {
		drops = append(drops, s.Drop)
	}
	return drops, notes, err
}

// ReadSources is ReadCSV for drops that are carried out again: with the identifiers that
// they had.
func ReadSources(name string, r io.Reader) ([]Source, []Note, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxFile+1))
	if err == nil && len(data) > MaxFile {
		err = errors.New("is larger than 512 MiB: part it")
	}
	text := ""
	if err == nil {
		text, err = notebook.Text(data)
	}
	if err != nil {
		return nil, nil, &notebook.Error{Name: name, Msg: err.Error()}
	}
	in := &reader{name: name, oxygenAt: map[depth][]int{}, skipped: map[string][]int{}}
	in.b.in = in
	in.open(text)
	drops, err := in.read()
	if err != nil {
		return nil, nil, err
	}
	in.tellSkipped()
	return drops, in.notes, nil
}

// open finds the sign between the cells.
func (in *reader) open(text string) {
	lead := len(text) - len(strings.TrimLeft(text, "\r\n"))
	first, rest, _ := strings.Cut(text[lead:], "\n")
	sep := ','
	if sign, ok := strings.CutPrefix(strings.TrimSpace(first), "sep="); ok && len(sign) == 1 && strings.Contains(",;|", sign) {
		sep, text = rune(sign[0]), strings.Repeat("\n", 1+strings.Count(text[:lead], "\n"))+rest
	} else {
		sep = between(text)
	}
	in.comma = sep != ','
	in.csv = csv.NewReader(strings.NewReader(text))
	in.csv.Comma, in.csv.FieldsPerRecord = sep, -1
}

// seps are the signs that may stand between cells.
const seps = ",;\t|"

// between is the sign that stands between the cells: that by which the most names of
// columns are known in the first line that has two of them, else that which stands most
// often in the first line, outside quotes.
func between(text string) rune {
	lines := strings.SplitN(strings.TrimLeft(text, "\r\n"), "\n", mostTitles+1)
	for _, line := range lines[:min(len(lines), mostTitles)] {
		most, sep := 1, rune(0)
		for _, r := range seps {
			known := 0
			if strings.Count(line, string(r)) > mostColumns {
				continue
			}
			for _, name := range strings.Split(line, string(r)) {
				if headOf(strings.Trim(name, "\" \r")).what != unknown {
					known++
				}
			}
			if known > most {
				most, sep = known, r
			}
		}
		if sep != 0 {
			return sep
		}
	}
	most, sep, quoted, counts := 0, ',', false, map[rune]int{}
	for _, r := range lines[0] {
		if r == '"' {
			quoted = !quoted
		} else if !quoted {
			counts[r]++
		}
	}
	for _, r := range seps {
		if counts[r] > most {
			most, sep = counts[r], r
		}
	}
	return sep
}

// next reads the next row that is not blank, its cells restored and without outer blanks.
func (in *reader) next() ([]string, error) {
	for {
		cells, err := in.csv.Read()
		var parse *csv.ParseError
		switch {
		case errors.As(err, &parse):
			return nil, &notebook.Error{Name: in.name, Line: parse.StartLine, Msg: "the row is not CSV: a quote stands within a cell, or is not closed"}
		case err != nil:
			return nil, err
		}
		in.line, _ = in.csv.FieldPos(0)
		for i, cell := range cells {
			cells[i] = strings.TrimSpace(restored(cell))
		}
		if strings.Join(cells, "") != "" {
			return cells, nil
		}
	}
}

// read reads the names of the columns and then all rows.
func (in *reader) read() ([]Source, error) {
	take, err := in.names()
	if err != nil {
		return nil, err
	}
	rows := 0
	for {
		cells, err := in.next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
		rows++
		if rows == 1 && in.unitRow(cells) {
			continue
		}
		if n := len(in.columns); len(cells) > n && strings.Join(cells[n:], "") != "" || len(cells) < n && len(cells) < in.needed() {
			err = fmt.Errorf("the row has %s, the row of names has %d", unit.Count(len(cells), "cell"), n)
		} else {
			err = take(line{in.line, in.columns, slices.Concat(cells, make([]string, max(0, n-len(cells))))})
		}
		if err != nil {
			in.bad = append(in.bad, in.fail(in.line, err.Error()))
		}
	}
	if err := in.refused(); err != nil {
		return nil, err
	}
	drops, err := in.b.drops()
	if err == nil && len(drops) == 0 {
		err = in.fail(0, "has no row with a reading under its columns' names")
	}
	return drops, err
}

// mostTitles is how many rows may stand above the names of the columns.
const mostTitles = 10

// names reads the names of the columns, and gives what reads a row under them. Titles above
// them are passed over.
func (in *reader) names() (take func(line) error, err error) {
	var first error
	var titles []Note
	for range mostTitles {
		names, err := in.next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
		if take, err = in.shape(names); err == nil && (first == nil || in.tall()) {
			in.notes = append(titles, in.notes...)
			return take, nil
		}
		if first == nil {
			first = err
		}
		titles = append(titles, Note{Line: in.line, Text: fmt.Sprintf("%s stands above the columns' names: passed over", quote(strings.Trim(strings.Join(names, ", "), ", ")))})
		in.columns, in.notes, in.bad, in.oxygenAt = nil, nil, nil, map[depth][]int{}
	}
	if first == nil {
		first = in.fail(0, "is empty: a first row with the names of the columns is wanted, such as date,depth_ft,temp_f")
	}
	return nil, first
}

// needed is how many cells a row must have to reach the last of the columns that count.
func (in *reader) needed() int {
	n := 0
	for i, c := range in.columns {
		switch {
		case c.at != nil || c.date != "": // cells at the end of a wide row may be left out
		case c.what == ofDepth || c.what == ofTemp || c.what == ofResult:
			n = i + 1
		}
	}
	return n
}

func (in *reader) fail(line int, msg string) *notebook.Error {
	return &notebook.Error{Name: in.name, Line: line, Msg: msg}
}

// refused is the error of the first row that could not be read, and how many more there are.
func (in *reader) refused() error {
	if len(in.bad) == 0 {
		return nil
	}
	first := *in.bad[0]
	if n := len(in.bad) - 1; n > 0 {
		first.Msg += fmt.Sprintf(" (and %s more)", unit.Count(n, "row"))
	}
	return &first
}

// tell notes what holds for the whole file, once.
func (in *reader) tell(text string) {
	if note := (Note{Text: text}); !slices.Contains(in.notes, note) {
		in.notes = append(in.notes, note)
	}
}

func (in *reader) note(line int, format string, args ...any) {
	in.notes = append(in.notes, Note{Line: line, Text: fmt.Sprintf(format, args...)})
}

// skip passes over the row, or a cell of it, and tells so at the end.
func (in *reader) skip(why string) {
	if lines := in.skipped[why]; len(lines) == 0 || lines[len(lines)-1] != in.line {
		in.skipped[why] = append(lines, in.line)
	}
}

func (in *reader) tellSkipped() {
	var whys []string
	for why := range in.skipped {
		whys = append(whys, why)
	}
	slices.Sort(whys)
	for _, why := range whys {
		lines := in.skipped[why]
		text := why
		if n := len(lines) - 1; n > 0 {
			text += fmt.Sprintf(" (and %s more)", unit.Count(n, "row"))
		}
		in.note(lines[0], "%s", text)
	}
}

func quote(s string) string { return plain.Quote(s, 60) }
