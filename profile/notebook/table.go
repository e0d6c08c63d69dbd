package notebook

import (
	"fmt"
	"regexp"
	"strings"

	"coldseam/profile/unit"
)

// column is what one column of a table holds.
type column struct {
	role  role
	depth unit.Length
	temp  unit.Temperature
	name  string // of a column that is not read
}

// table is a header row: what the columns hold, and the sign between them.
type table struct {
	columns []column
	sep     string // "" for blanks
}

var columnName = regexp.MustCompile(`^(depth|temp|temperature|water temp|water temperature|dissolved oxygen|oxygen|do|o2|saturation|sat)?[\s_.]*[(\[]?\s*(°?\s*[fc]|deg\s*[cf]|m|metres?|meters?|ft|feet|foot|'|mg/l|mgl|ppm|%|percent|pct)?\s*[)\]]?$`)

// headerRow reads a row of column names such as "Depth (m)\tTemp (°C)", "temp/depth"
// or "depth_m,temp_c,do_mgl". ok is false when the line is no such row.
func headerRow(line string) (t table, ok bool) {
	if strings.ContainsAny(line, "0123456789") && !strings.Contains(line, "o2") {
		return t, false
	}
	fields := []string{line}
	for _, sep := range []string{"\t", ";", ",", "|", "/", "  ", " "} {
		// "mg/l" holds a slash of its own
		parts := strings.Split(strings.ReplaceAll(line, "mg/l", "mgl"), sep)
		if len(parts) > 1 {
			fields, t.sep = parts, strings.TrimSpace(sep)
			if sep == "\t" {
				t.sep = sep
			}
			break
		}
	}
	seen := map[role]bool{}
	for _, f := range fields {
		f = strings.TrimSpace(f)
		if f == "" {
			if t.sep == "" {
				continue
			}
			t.columns = append(t.columns, column{})
			continue
		}
		c := readColumn(f)
		if c.role != unknown && seen[c.role] {
			c = column{name: f} // the first column of a kind is the one that counts
		}
		seen[c.role] = true
		t.columns = append(t.columns, c)
	}
	return t, seen[depthRole] && seen[tempRole]
}

func readColumn(f string) column {
	m := columnName.FindStringSubmatch(f)
	if m == nil || m[1] == "" {
		return column{name: f}
	}
	u := strings.TrimSpace(strings.TrimPrefix(strings.ReplaceAll(m[2], "°", ""), "deg"))
	u = strings.TrimSpace(u)
	c := column{}
	switch {
	case strings.HasPrefix(m[1], "depth"):
		c.role = depthRole
		c.depth, _ = unit.LengthNamed(u)
	case strings.Contains(m[1], "temp"):
		c.role = tempRole
		c.temp, _ = unit.TemperatureNamed(u)
	case u == "%" || u == "percent" || u == "pct" || strings.HasPrefix(m[1], "sat"):
		c.role = percentRole
	default:
		c.role = oxygenRole
	}
	return c
}

// row reads a line under a header row. ok is false when the line does not have the
// table's shape, and is then read like any other line.
func (t table) row(line string) (e entry, ok bool, err error) {
	var fields []string
	if t.sep != "" && strings.Contains(line, t.sep) {
		fields = strings.Split(line, t.sep)
	} else {
		fields = strings.Fields(strings.ReplaceAll(line, "\t", " "))
	}
	for len(fields) > len(t.columns) && strings.TrimSpace(fields[len(fields)-1]) == "" {
		fields = fields[:len(fields)-1]
	}
	if len(fields) < 2 || len(fields) > len(t.columns) {
		return e, false, nil
	}
	for i, f := range fields {
		c := t.columns[i]
		if c.role == unknown {
			continue
		}
		if err := e.field(c, strings.TrimSpace(f), t.sep != ","); err != nil {
			return e, false, err
		}
	}
	if len(e.depths) == 0 && !e.surface {
		return e, false, fmt.Errorf("no depth in its column")
	}
	if len(e.temps) == 0 && !e.same {
		e.missing, e.odd = true, true
	}
	return e, true, nil
}

// field reads one field of a row into the entry.
func (e *entry) field(c column, f string, comma bool) error {
	ts := tokens(f, comma)
	var n *token
	for i := range ts {
		switch ts[i].kind {
		case number:
			if n != nil {
				return fmt.Errorf("two numbers in one column: %q", f)
			}
			n = &ts[i]
			if i > 0 && ts[i-1].kind == dash {
				if c.role == depthRole {
					return fmt.Errorf("a depth cannot be negative: %q", f)
				}
				n.value.Value = -n.value.Value
			}
		case ditto:
			e.same, e.odd = c.role == tempRole, true
		case surface:
			e.surface = c.role == depthRole
		case missing, dash, mark, filler:
		case about:
			e.odd = true
		default:
			return fmt.Errorf("%q is not understood", f)
		}
	}
	if n == nil {
		return nil
	}
	n.role = c.role
	switch c.role {
	case depthRole:
		if n.depth == unit.NoLength {
			n.depth = c.depth
		}
		e.depths = append(e.depths, *n)
	case tempRole:
		if n.temp == unit.NoTemperature {
			n.temp = c.temp
		}
		e.temps = append(e.temps, *n)
	case oxygenRole:
		e.oxygen = n
	case percentRole:
		e.percent = n
	}
	return nil
}

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
		case depthWord:
			w.role = depthRole
		case tempWord:
			w.role = tempRole
		case oxygenWord:
			w.role = oxygenRole
		case mark, filler:
		case remark:
			l, isLength := unit.LengthNamed(t.text)
			u, isTemp := unit.TemperatureNamed(t.text)
			switch {
			case isLength:
				lengthUnit = l
			case isTemp:
				tempUnit = u
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
	labelled := depths.role == depthRole || temps.role == tempRole
	for i, c := range depths.cells {
		if c.kind != number || c.role == tempRole || i > 0 && c.value.Value <= depths.cells[i-1].value.Value {
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
		case t.kind == number && (t.role == depthRole || t.role == percentRole):
			return nil, false
		case t.kind == number:
			e.temps = temps.cells[i : i+1]
		case t.kind == ditto:
			e.same = true
		default:
			e.missing = true
		}
		if len(rows) > 2 && rows[2].cells[i].kind == number {
			e.oxygen = &rows[2].cells[i]
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
