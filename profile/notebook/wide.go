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
	var length unit.Length
	var temp unit.Temperature
	for i, t := range tokens(line, !strings.Contains(line, ", ") && !strings.Contains(line, ".")) {
		if label, is := labels[t.kind]; is { // "5: 73 DO 8" is a reading
			if len(w.cells) > 0 {
				return w, false
			}
			w.role = label
			continue
		}
		switch t.kind {
		case number, missing, ditto:
			w.cells = append(w.cells, t)
		case surface:
			if len(w.cells) > 0 {
				return w, false
			}
			w.cells = append(w.cells, token{kind: number, role: depthRole})
		case mark:
			if t.text == ":" && len(w.cells) > 0 {
				return w, false
			}
		case filler:
		case otherWord:
			u := w.unitOf(t.text)
			switch {
			case u.Quantity() == unit.OfLength:
				length = u
			case u.Quantity() == unit.OfTemperature:
				temp = u
			case i == 0 || t.text != "mgl" && t.text != "mg/l":
				return w, false
			}
		default:
			return w, false
		}
	}
	for i := range w.cells {
		w.cells[i].fillUnits(length, temp)
	}
	return w, len(w.cells) >= 3
}

// labels are the words before a row.
var labels = map[kind]role{depthWord: depthRole, tempWord: tempRole, oxygenWord: oxygenRole}

// unitOf takes the unit of a row, which labels it where it stands first.
func (w *wideRow) unitOf(name string) unit.Unit {
	u, r := unit.None, unknown
	if l, ok := unit.LengthNamed(name); ok {
		u, r = l, depthRole
	} else if t, ok := unit.TemperatureNamed(name); ok {
		u, r = t, tempRole
	}
	if u != unit.None && len(w.cells) == 0 {
		w.role = r
	}
	return u
}

// fillUnits gives a number the units that it lacks.
func (t *token) fillUnits(length unit.Length, temp unit.Temperature) {
	if t.depth == unit.NoLength {
		t.depth = length
	}
	if t.temp == unit.NoTemperature {
		t.temp = temp
	}
}

// wide joins a row of depths and the rows under it into readings. alone says that
// the page has no other lines of readings, which settles a table of three columns.
func wide(rows []wideRow, alone bool) ([]entry, bool) {
	if len(rows[0].cells) != len(rows[1].cells) {
		return nil, false
	}
	depths, temps := rows[0], rows[1]
	if depths.role == tempRole && temps.role == depthRole {
		depths, temps = temps, depths
	}
	if depths.role == oxygenRole || temps.role == oxygenRole || !goDown(depths.cells) {
		return nil, false
	}
	labelled := depths.role == depthRole || temps.role == tempRole
	if n := len(depths.cells); !labelled && (n == 3 && !alone || n == 4 && repeats(depths.cells) && repeats(temps.cells)) {
		return nil, false
	}
	entries := make([]entry, len(depths.cells))
	for i := range entries {
		e := &entries[i]
		e.depths = depths.cells[i : i+1]
		if !e.wideTemp(temps.cells[i : i+1]) {
			return nil, false
		}
		if len(rows) > 2 {
			e.wideOxygen(&rows[2].cells[i])
		}
	}
	return entries, true
}

// wideTemp takes the cell of a temperature; it is false for one of something else.
func (e *entry) wideTemp(cell []token) bool {
	t := cell[0]
	if t.kind != number {
		e.same, e.missing, e.odd = t.kind == ditto, t.kind != ditto, true
		return true
	}
	e.temps = cell
	return t.role == unknown || t.role == tempRole
}

// wideOxygen takes the cell of an oxygen.
func (e *entry) wideOxygen(cell *token) {
	switch {
	case cell.kind != number:
	case cell.role == percentRole:
		e.percent = cell
	default:
		e.oxygen = cell
	}
}

// goDown reports whether the cells are depths, each below the one before.
func goDown(cells []token) bool {
	for i, c := range cells {
		if c.kind != number || c.role != unknown && c.role != depthRole || i > 0 && c.value.Value <= cells[i-1].value.Value {
			return false
		}
	}
	return true
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
	rows := r.wideRowsAt(i)
	if len(rows) < 2 || named && rows[0].role == unknown {
		return 0, nil
	}
	entries, ok := wide(rows, r.onlyRows(len(rows)))
	if !ok {
		return 0, nil
	}
	if bare := rows[0].role == unknown && rows[1].role == unknown; bare {
		if len(rows[0].cells) == 3 && r.statesOxygen() {
			return 0, nil
		}
		if is, err := r.tableOrReadings(i, rows); err != nil || !is {
			return 0, err
		}
	}
	r.items = append(r.items, r.stamp(item{line: i + 1, kind: readings, entries: entries}))
	first, second := "depths", "temperatures"
	if rows[0].role == tempRole {
		first, second = second, first
	}
	r.note(i+1, "read as a table: %s in this line, %s in the next", first, second)
	return len(rows), nil
}

// wideRowsAt are the rows of a wide table from raw line i on: two, and a third of oxygen.
func (r *reader) wideRowsAt(i int) (rows []wideRow) {
	for _, l := range r.raw[i:min(i+3, len(r.raw))] {
		w, ok := readWide(clean(l))
		if !ok || len(rows) > 0 && len(w.cells) != len(rows[0].cells) || len(rows) == 2 && w.role != oxygenRole {
			break
		}
		rows = append(rows, w)
	}
	return rows
}

// tableOrReadings asks about rows without labels that may be two readings.
func (r *reader) tableOrReadings(i int, rows []wideRow) (table bool, err error) {
	if !mayBeReadings(rows) {
		return true, nil
	}
	n, err := r.ask(Question{Line: i + 1, Text: r.raw[i], What: "the numbers of this line and the next",
		Choices: []string{"depths in this line, temperatures in the next", "a depth, a temperature and a third number in each line"},
		Instead: "write \"depth\" and \"temp\" before the lines, or a row of column names above"})
	return n == 0, err
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
