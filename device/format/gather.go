package format

import (
	"bytes"
	"slices"
	"strings"
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
	bads     int
	lineUnit unitID // on the lines
	mixed    bool   // more than one unit on the lines
}

func (c *column) add(v *value) {
	c.rows++
	switch v.kind {
	case number:
		if len(c.nums) == 0 {
			c.whole = true
		}
		c.nums = append(c.nums, v.num)
		c.whole = c.whole && bytes.IndexByte(v.text, '.') < 0 && bytes.IndexByte(v.text, ',') < 0
		c.texts = append(c.texts, string(v.text))
	case clock:
		c.clocks++
	case fault:
		c.faults++
	case bad:
		c.bads++
		c.texts = append(c.texts, string(v.text))
	}
	if v.unit != noUnit {
		c.mixed = c.mixed || c.lineUnit != noUnit && c.lineUnit != v.unit
		c.lineUnit = v.unit
	}
}

// set is the columns of lines of one form.
type set struct {
	cols   []*column
	places bool // by place, every line with all of them
	header bool // a header row names them
}

// row is one line that has values.
type row struct {
	vals  []value
	names bool // some have names
}

// gather sorts the lines by their form; the form that more lines have comes first.
func gather(lines [][]byte, hex bool) []set {
	var rows []row
	var headers [][][]byte
	var pending []byte
	pendingUnit := noUnit
	s := scanner{hex: hex}
	for _, b := range lines {
		if isRule(b) {
			continue
		}
		b, ok := unframe(b)
		if !ok || len(b) == 0 {
			continue
		}
		if b[0] == '{' {
			if s.scanJSON(b) != nil {
				continue
			}
		} else {
			s.scan(b)
		}
		if s.overflow {
			continue
		}
		if !hasValue(s.vals) {
			name, unit, linked := s.tail()
			if pending = nil; linked {
				pending, pendingUnit = bytes.Clone(name), unit
			} else if cells := headerCells(b); isHeader(cells) {
				headers = append(headers, cells)
			}
			continue
		}
		r := row{vals: slices.Clone(s.vals)}
		for n := len(r.vals); n > 1 && r.vals[n-1].kind == empty && len(r.vals[n-1].name) == 0; n-- {
			r.vals = r.vals[:n-1] // commas at the end of the line
		}
		if pending != nil && len(r.vals) == 1 && len(r.vals[0].name) == 0 {
			if r.vals[0].name = pending; r.vals[0].unit == noUnit {
				r.vals[0].unit = pendingUnit
			}
		}
		pending = nil
		for i := range r.vals {
			v := &r.vals[i]
			if v.carried && meaningOf(v.name).sure == 0 {
				v.name = nil
			}
			r.names = r.names || len(v.name) > 0
		}
		rows = append(rows, r)
	}
	if len(rows) == 0 {
		return nil
	}
	byPlace, n := gatherPlaces(rows, headers)
	byName, m := gatherNames(rows)
	sets := append(byPlace, byName...)
	if m > n {
		sets = append(byName, byPlace...)
	}
	return sets
}

func hasValue(vals []value) bool {
	for _, v := range vals {
		if v.kind != empty || len(v.name) == 0 {
			return true
		}
	}
	return false
}

// isHeader reports cells of which one at least says what it is.
func isHeader(cells [][]byte) bool {
	said := false
	for _, c := range cells {
		if len(c) == 0 {
			return false
		}
		said = said || meaningOf(c).sure > 0
	}
	return said
}

// gatherPlaces makes columns of the lines without names, one set for each number of
// values that two lines have, or one line and a header row; the commonest first.
func gatherPlaces(rows []row, headers [][][]byte) (sets []set, most int) {
	var count [maxValues + 1]int
	for _, r := range rows {
		if !r.names {
			count[len(r.vals)]++
		}
	}
	used := [maxValues + 1]bool{}
	for {
		best, bestLines := 0, 0
		var head [][]byte
		for n := 1; n <= maxValues; n++ {
			var h [][]byte
			for _, cells := range headers {
				if len(cells) == n {
					h = cells
				}
			}
			lines := count[n]
			if h != nil && lines > 0 {
				lines++
			}
			if !used[n] && lines >= 2 && lines > bestLines {
				best, bestLines, head = n, lines, h
			}
		}
		if best == 0 {
			return sets, most
		}
		used[best] = true
		most = max(most, bestLines)
		s := set{places: true, header: head != nil}
		for i := range best {
			c := &column{}
			if head != nil {
				c.title = head[i]
			}
			for _, r := range rows {
				if !r.names && len(r.vals) == best {
					c.add(&r.vals[i])
				}
			}
			s.cols = append(s.cols, c)
		}
		sets = append(sets, s)
	}
}

// gatherNames makes columns of the values with names, wherever they stand.
func gatherNames(rows []row) (sets []set, most int) {
	byName := map[string]*column{}
	s := set{}
	tagged, unnamed := 0, -1
	for _, r := range rows {
		free := 0
		for i := range r.vals {
			v := &r.vals[i]
			if len(v.name) == 0 {
				free++
				continue
			}
			key := strings.ToLower(string(v.name))
			c := byName[key]
			if c == nil {
				if !validName(string(v.name)) || len(s.cols) == maxParts {
					continue
				}
				c = &column{name: string(v.name), title: bytes.Clone(v.name)}
				byName[key] = c
				s.cols = append(s.cols, c)
			}
			c.add(v)
		}
		if r.names && free > 0 {
			tagged++
			unnamed = free
		}
	}
	for _, c := range s.cols {
		if meaningOf(c.title).sure > 0 || c.lineUnit != noUnit {
			most = max(most, c.rows)
		}
	}
	if len(s.cols) > 0 {
		sets = append(sets, s)
	}
	if tagged > 1 && unnamed > 0 {
		if t, ok := gatherTagged(rows); ok {
			sets = append([]set{t}, sets...)
		}
	}
	return sets, most
}

// gatherTagged makes columns of lines that begin with a name that says nothing, as of a
// program or of a board, before values by place: "probe: 12.4, 18.31".
func gatherTagged(rows []row) (set, bool) {
	type form struct {
		tag string
		n   int
	}
	count := map[form]int{}
	var best form
	for _, r := range rows {
		if !r.names || len(r.vals[0].name) == 0 {
			continue
		}
		f := form{string(r.vals[0].name), len(r.vals)}
		for _, v := range r.vals[1:] {
			if len(v.name) > 0 {
				f.n = 0
			}
		}
		if f.n > 1 {
			if count[f]++; count[f] > count[best] {
				best = f
			}
		}
	}
	if count[best] < 2 || !validName(best.tag) || meaningOf([]byte(best.tag)).sure > 0 {
		return set{}, false
	}
	s := set{places: true}
	for i := range best.n {
		c := &column{}
		if i == 0 {
			c.name = best.tag
		}
		for _, r := range rows {
			if r.names && len(r.vals) == best.n && string(r.vals[0].name) == best.tag {
				c.add(&r.vals[i])
			}
		}
		s.cols = append(s.cols, c)
	}
	return s, true
}
