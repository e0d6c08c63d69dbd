package batch

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"coldseam/profile/plain"
)

// MaxLine is the longest line that is read, in bytes.
const MaxLine = 1 << 20

// InputError is an input that is not a CSV of columns: status 2 of the command. It
// says which input, and what is wrong with it.
type InputError struct{ Name, Text string }

func (e *InputError) Error() string { return e.Name + ": " + e.Text }

// row is one reading as text, which the next row overwrites.
type row struct {
	line                 int
	profile, depth, temp []byte
	problem              string // why it cannot be used; empty when it can
	nameless             bool   // the row cannot be read so far as to know its profile
}

// rows reads a CSV line by line. A line without a quote is cut at its commas; one with
// a quote is handed to encoding/csv, by itself, so that an open quote ends with its
// line. (encoding/csv for every line takes a fifth more time for the whole run, measured
// on columns of 14 rows.)
type rows struct {
	name   string
	in     *bufio.Reader
	long   []byte // a line longer than in's buffer
	line   int    // number of the last line read
	taken  int64  // bytes of the lines read
	one    oneLine
	quotes *csv.Reader
	cells  [][]byte

	profile, depth, temp int // which cell
	width                int // cells of a row
}

// oneLine is a reader that ends after each line it is given.
type oneLine struct{ rest []byte }

func (o *oneLine) Read(p []byte) (int, error) {
	if len(o.rest) == 0 {
		return 0, io.EOF
	}
	n := copy(p, o.rest)
	o.rest = o.rest[n:]
	return n, nil
}

// reset begins an input, and reads its names.
func (r *rows) reset(name string, in io.Reader) error {
	if r.in == nil {
		r.in = bufio.NewReaderSize(nil, 64<<10)
		r.quotes = csv.NewReader(&r.one)
		r.quotes.ReuseRecord = true
		r.quotes.FieldsPerRecord = -1
	}
	r.in.Reset(in)
	r.name, r.line, r.taken = name, 0, 0
	cells, err := r.header()
	if err != nil {
		return err
	}
	r.width = len(cells)
	var names []string
	for _, cell := range cells {
		names = append(names, strings.ToLower(strings.TrimSpace(string(cell))))
	}
	var missing []string
	for _, need := range []struct {
		name string
		cell *int
	}{{"profile", &r.profile}, {"depth_m", &r.depth}, {"temp_c", &r.temp}} {
		*need.cell = -1
		for i, n := range names {
			switch {
			case n != need.name:
			case *need.cell >= 0:
				return r.refuse("has two columns named %s", n)
			default:
				*need.cell = i
			}
		}
		if *need.cell < 0 {
			missing = append(missing, need.name)
		}
	}
	if missing != nil {
		return r.refuse("has no column named %s; its first line names %s", strings.Join(missing, " or "), plain.Quote(strings.Join(names, ", "), 200))
	}
	return nil
}

func (r *rows) refuse(format string, args ...any) error {
	return &InputError{r.name, fmt.Sprintf(format, args...)}
}

// header reads the row of names: the first that is not blank.
func (r *rows) header() ([][]byte, error) {
	for {
		line, long, err := r.next()
		switch {
		case errors.Is(err, io.EOF):
			return nil, r.refuse("is empty: CSV with the columns profile, depth_m and temp_c is wanted")
		case err != nil:
			return nil, err
		case long:
			return nil, r.refuse("its first line is longer than %d bytes: is it CSV?", MaxLine)
		}
		if r.line == 1 {
			line = bytes.TrimPrefix(line, []byte("\ufeff"))
		}
		names, err := r.split(line)
		if errors.Is(err, io.EOF) {
			continue
		}
		if err != nil {
			return nil, r.refuse("line %d, of the columns' names, %s", r.line, notCSV)
		}
		return names, nil
	}
}

const notCSV = "is not CSV: a quote stands within a cell, or is not closed on its line"

// split parts a line into its cells; io.EOF means that it is blank.
func (r *rows) split(line []byte) ([][]byte, error) {
	r.cells = r.cells[:0]
	if bytes.IndexByte(line, '"') >= 0 {
		r.one.rest = line
		cells, err := r.quotes.Read()
		for _, cell := range cells {
			r.cells = append(r.cells, []byte(cell))
		}
		return r.cells, err
	}
	line = bytes.TrimSuffix(bytes.TrimSuffix(line, []byte("\n")), []byte("\r"))
	if len(line) == 0 {
		return nil, io.EOF
	}
	for {
		i := bytes.IndexByte(line, ',')
		if i < 0 {
			r.cells = append(r.cells, line)
			return r.cells, nil
		}
		r.cells = append(r.cells, line[:i])
		line = line[i+1:]
	}
}

// next reads a line with its end. Of a line that is too long nothing is kept.
func (r *rows) next() (line []byte, long bool, err error) {
	line, err = r.in.ReadSlice('\n')
	r.taken += int64(len(line))
	if err == nil {
		r.line++
		return line, false, nil
	}
	r.long = append(r.long[:0], line...)
	for errors.Is(err, bufio.ErrBufferFull) {
		line, err = r.in.ReadSlice('\n')
		r.taken += int64(len(line))
		if long = long || len(r.long)+len(line) > MaxLine; !long {
			r.long = append(r.long, line...)
		}
	}
	switch {
	case err == nil:
	case !errors.Is(err, io.EOF):
		return nil, false, fmt.Errorf("%s: cannot be read: %w", r.name, err)
	case len(r.long) == 0:
		return nil, false, io.EOF
	default:
		r.long = append(r.long, '\n') // the last line lacked its end
	}
	r.line++
	return r.long, long, nil
}

// read reads the next row that is not blank; io.EOF ends the input. before is the
// profile of the row before it.
func (r *rows) read(before string) (row, error) {
	for {
		line, long, err := r.next()
		if err != nil {
			return row{}, err
		}
		out := row{line: r.line, nameless: true}
		if long {
			out.problem = fmt.Sprintf("the line is longer than %d bytes", MaxLine)
			return out, nil
		}
		cells, err := r.split(line)
		switch {
		case errors.Is(err, io.EOF):
			continue
		case err != nil:
			out.problem = "the line " + notCSV
		case len(cells) != r.width:
			out.problem = fmt.Sprintf("the line has %d cells, the line of names has %d", len(cells), r.width)
		default:
			out.profile, out.depth, out.temp, out.nameless = cells[r.profile], cells[r.depth], cells[r.temp], false
			if len(out.profile) > 0 {
				return out, nil
			}
			if len(bytes.Join(cells, nil)) == 0 {
				continue
			}
			out.problem = "the profile's name is empty: each row needs it"
			return out, nil
		}
		// The cells before a wrong quote are good. In a row with a cell too many or too
		// few, the name is good if it stands first, or if it is that of the row before.
		if r.profile < len(cells) {
			name := cells[r.profile]
			if len(name) > 0 && (err != nil || r.profile == 0 || string(name) == before) {
				out.profile, out.nameless = name, false
			}
		}
		return out, nil
	}
}

// waits reports whether the next row may have to be waited for: no whole line is there.
func (r *rows) waits() bool {
	have, _ := r.in.Peek(r.in.Buffered())
	return bytes.IndexByte(have, '\n') < 0
}
