package format

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"coldseam/profile/unit"
)

// column is what the lines have in one place, or under one name.
type column struct {
	name     string // by which the lines name it, "" by its place
	title    []byte // that name, or the one in the header row
	rows     int    // lines that have it
	nums     []float64
	texts    []string // of all that is not missing or a fault
	whole    bool     // all numbers are whole
	clocks   int
	faults   int
	mixed    bool      // more than one unit on the lines
	lineUnit unit.Unit // the unit on the lines

	reading // what it can be, once it is judged
}

func (c *column) add(v *value) {
	c.rows++
	switch v.kind {
	case number:
		point := bytes.ContainsAny(v.text, ".,")
		c.whole = (c.whole || len(c.nums) == 0) && !point
		c.nums = append(c.nums, v.num)
		c.texts = append(c.texts, string(v.text))
	case clock:
		c.clocks++
	case fault:
		c.faults++
	case bad:
		c.texts = append(c.texts, string(v.text))
	}
	if v.unit != unit.None {
		c.mixed = c.mixed || c.lineUnit != unit.None && c.lineUnit != v.unit
		c.lineUnit = v.unit
	}
}

// set is the columns of lines of one shape.
type set struct {
	cols   []*column
	places bool // by place, every line with all of them
	header bool // a header row names them

	time      int // the column that counts time, -1 for none
	mayBeTime int // one that may count time or be a depth, -1 for none
}

// shape is how a line by place looks: the name it begins with, as of a program or of a
// board ("probe: 12.4, 18.31"), mostly none, and how many values it has.
type shape struct {
	tag string
	n   int
}

// row is one line that has values.
type row struct {
	shape
	vals []value
}

// gather sorts the lines by their shape; the shape that more lines have comes first.
func gather(lines [][]byte, hex bool) []set {
	rows, headers := tabulate(lines, hex)
	sets, atPlaces := byPlaces(rows, headers)
	var named []set
	if tagged, ok := byTag(rows); ok {
		named = append(named, tagged)
	}
	names, atNames := byNames(rows)
	if len(names.cols) > 0 {
		named = append(named, names)
	}
	if atNames > atPlaces {
		return append(named, sets...)
	}
	return append(sets, named...)
}

// tabulate splits lines into rows of values and the cells of header rows. A value on a
// line of its own has the name that the line before announced.
func tabulate(lines [][]byte, hex bool) (rows []row, headers [][][]byte) {
	var pending []byte
	pendingUnit := unit.None
	s := scanner{hex: hex}
	for _, b := range lines {
		if len(b) == 0 || isRule(b) || s.split(b) != nil {
			continue
		}
		if !slices.ContainsFunc(s.vals, func(v value) bool { return v.kind != empty || len(v.name) == 0 }) {
			name, u, linked := s.tail()
			if pending = nil; linked {
				pending, pendingUnit = bytes.Clone(name), u
			} else if cells := headerCells(b); isHeader(cells) {
				headers = append(headers, cells)
			}
			continue
		}
		vals := slices.Clone(s.vals[:filled(s.vals)])
		if pending != nil && len(vals) == 1 && len(vals[0].name) == 0 {
			vals[0].name, vals[0].unit = pending, cmp.Or(vals[0].unit, pendingUnit)
		}
		pending = nil
		for i := range vals {
			vals[i].dropState()
		}
		rows = append(rows, row{shapeOf(vals), vals})
	}
	return rows, headers
}

// filled is how many values there are, one at least, without those that are missing at the
// end of the line: commas.
func filled(vals []value) int {
	n := len(vals)
	for n > 1 && vals[n-1].kind == empty && len(vals[n-1].name) == 0 {
		n--
	}
	return n
}

// dropState takes a word of state between two columns, which says nothing, off the value
// behind it.
func (v *value) dropState() {
	if v.carried && meaningOf(v.name).sure == 0 {
		v.name = nil
	}
}

// shapeOf is the shape of a line by place; its n is 0 for a line that names its values.
func shapeOf(vals []value) shape {
	for _, v := range vals[1:] {
		if len(v.name) > 0 {
			return shape{}
		}
	}
	if len(vals[0].name) > 0 && len(vals) == 1 {
		return shape{}
	}
	return shape{string(vals[0].name), len(vals)}
}

// isHeader reports cells of which one at least says what it is.
func isHeader(cells [][]byte) bool {
	says := false
	for _, c := range cells {
		if len(c) == 0 {
			return false
		}
		says = says || meaningOf(c).sure > 0
	}
	return says
}

// byPlaces makes columns of the lines without names, one set for each number of values
// that two lines have, or one line and a header row; the commonest first, with how many
// lines it has.
func byPlaces(rows []row, headers [][][]byte) (sets []set, most int) {
	var lines [maxValues + 1]int
	for _, r := range rows {
		if r.tag == "" {
			lines[r.n]++
		}
	}
	var heads [maxValues + 1][][]byte
	for _, cells := range headers {
		if n := len(cells); n <= maxValues && lines[n] > 0 {
			lines[n] += one(heads[n] == nil)
			heads[n] = cells
		}
	}
	var counts []int
	for n := 1; n <= maxValues; n++ {
		if lines[n] >= 2 {
			counts = append(counts, n)
		}
	}
	slices.SortStableFunc(counts, func(a, b int) int { return lines[b] - lines[a] })
	for _, n := range counts {
		sets = append(sets, ofShape(rows, shape{n: n}, heads[n]))
		most = max(most, lines[n])
	}
	return sets, most
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// ofShape makes columns of the lines of one shape.
func ofShape(rows []row, f shape, head [][]byte) set {
	s := set{places: true, header: head != nil}
	for i := range f.n {
		c := &column{}
		if head != nil {
			c.title = head[i]
		}
		if i == 0 {
			c.name = f.tag
		}
		for _, r := range rows {
			if r.shape == f {
				c.add(&r.vals[i])
			}
		}
		s.cols = append(s.cols, c)
	}
	return s
}

// byTag makes columns of the lines by place that begin with one name, which says nothing.
func byTag(rows []row) (set, bool) {
	count := map[shape]int{}
	var best shape
	for _, r := range rows {
		if r.tag == "" {
			continue
		}
		if count[r.shape]++; count[r.shape] > count[best] {
			best = r.shape
		}
	}
	if count[best] < 2 || !validName(best.tag) || meaningOf([]byte(best.tag)).sure > 0 {
		return set{}, false
	}
	return ofShape(rows, best, nil), true
}

// byNames makes columns of the values with names, wherever they stand, and counts the
// lines of the commonest whose name or unit says something.
func byNames(rows []row) (s set, most int) {
	named := map[string]*column{}
	for _, r := range rows {
		for i := range r.vals {
			v := &r.vals[i]
			if len(v.name) == 0 {
				continue
			}
			key := strings.ToLower(string(v.name))
			c := named[key]
			if c == nil {
				if !validName(string(v.name)) || len(s.cols) == maxParts {
					continue
				}
				c = &column{name: string(v.name), title: bytes.Clone(v.name)}
				named[key] = c
				s.cols = append(s.cols, c)
			}
			c.add(v)
		}
	}
	for _, c := range s.cols {
		if meaningOf(c.title).sure > 0 || c.lineUnit != unit.None {
			most = max(most, c.rows)
		}
	}
	return s, most
}
