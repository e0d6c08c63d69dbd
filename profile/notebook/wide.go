package notebook

import (
	"math"
	"slices"
	"strings"

	"coldseam/profile/unit"
)

// wideRow is one row of a wide table: a label or none, then cells.
type wideRow struct {
	role  role
	cells []token // a number, or a mark for no reading
}

// readWide reads a line as a row of a wide table; ok is false when it is none.
func readWide(line string) (w wideRow, ok bool) {
	line, _ = mendDigits(line)
	var lengthUnit unit.Length
	var tempUnit unit.Temperature
	for i, t := range tokens(line, !strings.Contains(line, ", ") && !strings.Contains(line, ".")) {
		switch t.kind {
		case number:
			w.cells = append(w.cells, t)
		case missing, ditto:
			w.cells = append(w.cells, t)
		case surface:
			if len(w.cells) > 0 {
				return w, false
			}
			w.cells = append(w.cells, token{kind: number, role: depthRole})
		case depthWord, tempWord, oxygenWord:
			if len(w.cells) > 0 { // "5: 73 DO 8" is a reading
				return w, false
			}
			w.role = map[kind]role{depthWord: depthRole, tempWord: tempRole, oxygenWord: oxygenRole}[t.kind]
		case mark:
			if t.text == ":" && len(w.cells) > 0 {
				return w, false
			}
		case filler:
		case otherWord:
			l, isLength := unit.LengthNamed(t.text)
			u, isTemp := unit.TemperatureNamed(t.text)
			switch {
			case isLength:
				if lengthUnit = l; len(w.cells) == 0 { // the unit alone labels the row
					w.role = depthRole
				}
			case isTemp:
				if tempUnit = u; len(w.cells) == 0 {
					w.role = tempRole
				}
			case i == 0 || t.text != "mgl" && t.text != "mg/l":
				return w, false
			}
		default:
			return w, false
		}
	}
	for i := range w.cells {
		if w.cells[i].depth == unit.NoLength {
			w.cells[i].depth = lengthUnit
		}
		if w.cells[i].temp == unit.NoTemperature {
			w.cells[i].temp = tempUnit
		}
	}
	return w, len(w.cells) >= 3
}

// wide joins a row of depths and the rows under it into readings. alone says that
// the page has no other lines of readings, which settles a table of three columns.
func wide(rows []wideRow, alone bool) ([]entry, bool) {
	if len(rows) < 2 || len(rows[0].cells) != len(rows[1].cells) {
		return nil, false
	}
	depths, temps := rows[0], rows[1]
	if depths.role == tempRole && temps.role == depthRole {
		depths, temps = temps, depths
	}
	if depths.role == oxygenRole || temps.role == oxygenRole {
		return nil, false
	}
	labelled := depths.role == depthRole || temps.role == tempRole
	for i, c := range depths.cells {
		if c.kind != number || c.role != unknown && c.role != depthRole || i > 0 && c.value.Value <= depths.cells[i-1].value.Value {
			return nil, false
		}
	}
	if !labelled && (len(depths.cells) == 3 && !alone || len(depths.cells) == 4 && repeats(depths.cells) && repeats(temps.cells)) {
		return nil, false
	}
	entries := make([]entry, len(depths.cells))
	for i := range entries {
		e := &entries[i]
		e.depths = depths.cells[i : i+1]
		switch t := temps.cells[i]; {
		case t.kind == number && t.role != unknown && t.role != tempRole:
			return nil, false
		case t.kind == number:
			e.temps = temps.cells[i : i+1]
		case t.kind == ditto:
			e.same, e.odd = true, true
		default:
			e.missing, e.odd = true, true
		}
		if len(rows) > 2 && rows[2].cells[i].kind == number {
			if o := &rows[2].cells[i]; o.role == percentRole {
				e.percent = o
			} else {
				e.oxygen = o
			}
		}
	}
	return entries, true
}

// repeats reports whether a row may be a depth and repeats of one temperature.
func repeats(cells []token) bool {
	for _, c := range cells[2:] {
		if d := c.value.Value - cells[1].value.Value; d > 5 || d < -5 {
			return false
		}
	}
	return true
}

// wideAt reads a wide table that begins at raw line i, and returns how many lines
// it took, 0 when none begins there. Under a row of column names only a table whose
// rows are labelled is one.
func (r *reader) wideAt(i int, named bool) (int, error) {
	var rows []wideRow
	for j := i; j < len(r.raw) && len(rows) < 3; j++ {
		w, ok := readWide(clean(r.raw[j]))
		if !ok || len(rows) > 0 && len(w.cells) != len(rows[0].cells) {
			break
		}
		if len(rows) == 2 && w.role != oxygenRole {
			break
		}
		rows = append(rows, w)
	}
	if len(rows) < 2 || named && rows[0].role == unknown {
		return 0, nil
	}
	entries, ok := wide(rows, r.onlyRows(len(rows)))
	if !ok {
		return 0, nil
	}
	bare := rows[0].role == unknown && rows[1].role == unknown
	if bare && len(rows[0].cells) == 3 && r.statesOxygen() {
		return 0, nil
	}
	if bare && mayBeReadings(rows) {
		n, err := r.ask(Question{Line: i + 1, Text: r.raw[i], What: "the numbers of this line and the next",
			Choices: []string{"depths in this line, temperatures in the next", "a depth, a temperature and a third number in each line"},
			Instead: "write \"depth\" and \"temp\" before the lines, or a row of column names above"})
		if err != nil || n == 1 {
			return 0, err
		}
	}
	it := r.stamp(item{line: i + 1, kind: readings, entries: entries})
	r.items = append(r.items, it)
	if rows[0].role == tempRole {
		r.note(i+1, "read as a table: temperatures in this line, depths in the next")
	} else {
		r.note(i+1, "read as a table: depths in this line, temperatures in the next")
	}
	return len(rows), nil
}

// mayBeReadings reports whether two rows of three numbers may be two readings, each
// a depth, a temperature and the oxygen or the temperature again.
func mayBeReadings(rows []wideRow) bool {
	oxygen, again := true, true
	for _, row := range rows {
		c := row.cells
		if len(c) != 3 {
			return false
		}
		oxygen = oxygen && c[2].value.Value <= maxLikelyMgL
		again = again && math.Abs(c[2].value.Value-c[1].value.Value) <= 2
	}
	return rows[1].cells[0].value.Value > rows[0].cells[0].value.Value && (oxygen || again)
}

// statesOxygen reports whether a flag or the page so far says that there is a column
// of oxygen.
func (r *reader) statesOxygen() bool {
	for _, it := range r.items {
		if it.kind == header && it.header.Key == "oxygen" {
			return true
		}
	}
	return r.base.OxygenUnit != "" || slices.ContainsFunc(r.o.Flags, func(h Header) bool { return h.Key == "oxygen" })
}

// onlyRows reports whether n rows are the only lines of the page with several
// numbers.
func (r *reader) onlyRows(n int) bool {
	if r.wideRows == 0 { // counted once: the page may be long
		for _, l := range r.raw {
			if _, ok := readWide(clean(l)); ok {
				r.wideRows++
			}
		}
	}
	return r.wideRows == n
}
