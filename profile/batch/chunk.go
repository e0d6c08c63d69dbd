package batch

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"

	"coldseam/profile"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// MaxRows is the most rows that a column may have.
const MaxRows = 10_000

// column is one run of rows of one name.
type column struct {
	profile  string
	line     int // of its first row
	rows     int
	from, to int // its points in the chunk
	problem  string
}

// chunk is a number of columns that are handed over together: one at a time would
// cost more in waiting than the work takes.
type chunk struct {
	columns []column
	points  []profile.Point
	lines   []int // the line of each point
	bytes   int   // about what the above hold
	passed  int64 // bytes of the inputs up to its end
	name    string
	out     []byte
	done    chan struct{}
}

// A chunk is handed over when it holds so many columns, or about so many bytes.
const (
	fullColumns = 64
	fullBytes   = 1 << 20
	pointBytes  = 72
)

// splitter makes chunks of the rows of one input.
type splitter struct {
	rows    rows
	options Options
	full    int // columns of a full chunk

	c       *chunk
	open    bool   // the chunk's last column may get more rows
	unknown string // problem of a row just before, whose profile is not known
	names   seen   // of the input
	before  int64  // bytes of the inputs before

	fresh func() *chunk // nil when nobody wants more
	send  func(*chunk)
}

var errStopped = errors.New("nobody reads the output")

// input makes chunks of one input, up to its end.
func (s *splitter) input(in Input) error {
	f, err := in.Open()
	if err != nil {
		return err
	}
	defer func() {
		s.before += s.rows.taken
		f.Close()
	}()
	if err := s.rows.reset(in.Name, f); err != nil {
		return err
	}
	if s.c == nil {
		if s.c = s.fresh(); s.c == nil {
			return errStopped
		}
	}
	s.c.name, s.open, s.unknown = in.Name, false, ""
	s.names.reset()
	if s.options.Unsorted {
		return s.gather()
	}
	for {
		if s.rows.waits() && !s.handOver() {
			return errStopped
		}
		r, err := s.rows.read(s.current())
		if err != nil {
			return s.end(err)
		}
		if !s.add(r) {
			return errStopped
		}
	}
}

// end ends an input that gives no more rows: at its end, or because it broke off.
func (s *splitter) end(err error) error {
	whole := errors.Is(err, io.EOF)
	if !whole && s.open {
		s.spoil("the input broke off in this column")
	}
	if s.unknown != "" && !s.open { // there was no other row
		s.begin("", s.rows.line)
	}
	s.open = false
	s.handOver()
	if whole {
		return nil
	}
	return err
}

func (s *splitter) current() string {
	if !s.open {
		return ""
	}
	return s.c.columns[len(s.c.columns)-1].profile
}

// add adds a row to its column. It reports whether more is wanted.
func (s *splitter) add(r row) bool {
	if r.nameless {
		problem := s.at(r.line) + r.problem + "; it may be a row of this profile"
		if s.open {
			s.spoil(problem)
		}
		if s.unknown == "" {
			s.unknown = problem
		}
		return true
	}
	if !s.open || s.current() != string(r.profile) {
		s.open = false
		if (len(s.c.columns) >= s.full || s.c.bytes >= fullBytes) && !s.handOver() {
			return false
		}
		s.begin(string(r.profile), r.line)
	}
	s.unknown = ""
	s.reading(r)
	return true
}

func (s *splitter) begin(name string, line int) {
	n := len(s.c.points)
	problem := s.unknown
	if again := name != "" && s.names.again(name); again && problem == "" {
		problem = s.comesBack(line)
	}
	s.c.columns = append(s.c.columns, column{profile: name, line: line, from: n, to: n, problem: problem})
	s.c.bytes += len(name)
	s.open, s.unknown = true, ""
}

// reading adds a row to the open column.
func (s *splitter) reading(r row) {
	col := &s.c.columns[len(s.c.columns)-1]
	col.rows++
	if col.problem != "" {
		return
	}
	temp := bytes.TrimSpace(r.temp)
	switch {
	case r.problem != "":
		s.spoil(s.at(r.line) + r.problem)
		return
	case col.rows > MaxRows:
		s.spoil(fmt.Sprintf("%smore than %d rows of one profile", s.at(r.line), MaxRows))
		return
	case len(temp) == 0:
		return
	}
	p := profile.Point{ErrC: s.options.ErrC, ErrM: s.options.ErrM}
	var ok bool
	if p.TempC, ok = unit.ParseDecimal(temp); !ok {
		s.spoil(fmt.Sprintf("%stemp_c %s is no usable number", s.at(r.line), plain.Quote(string(r.temp), 40)))
		return
	}
	if p.DepthM, ok = unit.ParseDecimal(bytes.TrimSpace(r.depth)); !ok {
		s.spoil(fmt.Sprintf("%sdepth_m %s is no usable number", s.at(r.line), plain.Quote(string(r.depth), 40)))
		return
	}
	s.c.points = append(s.c.points, p)
	s.c.lines = append(s.c.lines, r.line)
	s.c.bytes += pointBytes
	col.to++
}

// spoil gives the open column its problem, the first that it has, and drops its
// points.
func (s *splitter) spoil(problem string) {
	col := &s.c.columns[len(s.c.columns)-1]
	if col.problem == "" {
		col.problem = problem
	}
	s.c.bytes -= pointBytes * (col.to - col.from)
	s.c.points, s.c.lines = s.c.points[:col.from], s.c.lines[:col.from]
	col.to = col.from
}

func (s *splitter) at(line int) string { return place(s.rows.name, line) }

func place(name string, line int) string { return name + ":" + strconv.Itoa(line) + ": " }

// handOver sends the columns that are complete, and keeps the open one in a fresh
// chunk. It reports whether more is wanted.
func (s *splitter) handOver() bool {
	old := s.c
	whole := len(old.columns)
	if s.open {
		whole--
	}
	if whole == 0 {
		return true
	}
	if s.c = s.fresh(); s.c == nil {
		return false
	}
	s.c.name = old.name
	old.passed = s.before + s.rows.taken
	if s.open {
		col := old.columns[whole]
		s.c.points = append(s.c.points, old.points[col.from:col.to]...)
		s.c.lines = append(s.c.lines, old.lines[col.from:col.to]...)
		s.c.bytes = len(col.profile) + pointBytes*(col.to-col.from)
		col.from, col.to = 0, col.to-col.from
		s.c.columns = append(s.c.columns, col)
		old.columns = old.columns[:whole]
	}
	s.send(old)
	return true
}
