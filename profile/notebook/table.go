package notebook

import (
	"fmt"
	"strings"

	"coldseam/profile/unit"
)

// column is what one column of a table holds.
type column struct {
	role   role
	depth  unit.Length
	temp   unit.Temperature
	stated bool   // oxygen: its unit stands in the name
	name   string // of a column that is not read
}

// table is a header row: what the columns hold, and the sign between them.
type table struct {
	columns []column
	sep     string // "" for blanks
}

var columnName = lazy(`^(depth|temp|temperature|water temp|water temperature|dissolved oxygen|oxygen|do|o2|saturation|sat)?[\s_.]*[(\[]?\s*(°?\s*[fc]|deg\s*[cf]|m|metres?|meters?|ft|feet|foot|'|mg/l|mgl|ppm|%|percent|pct)?\s*[)\]]?$`)

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
	if t.sep == "" {
		fields = joinNames(fields)
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

// unitRow takes the units of the columns from a row under their names, "(ft) (F) (mg/L)".
func (t *table) unitRow(line string) bool {
	fields := strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(" \t()[]|;", r) })
	if len(fields) != len(t.columns) {
		return false
	}
	for i, f := range fields {
		l, isLength := unit.LengthNamed(f)
		u, isTemp := unit.TemperatureNamed(f)
		switch c := &t.columns[i]; {
		case isLength && c.role == depthRole:
			c.depth = l
		case isTemp && c.role == tempRole:
			c.temp = u
		case (f == "mg/l" || f == "mgl" || f == "ppm") && c.role == oxygenRole:
			c.stated = true
		case f == "%" && c.role == oxygenRole:
			c.role = percentRole
		case c.role == unknown:
		default:
			return false
		}
	}
	return true
}

// joinNames puts the words of a blank-separated row of column names together where
// they are one name: "depth (ft) water temp (f)".
func joinNames(fields []string) []string {
	var out []string
	for _, f := range fields {
		f = strings.TrimSpace(f)
		if f == "" || f == "in" || f == "and" {
			continue
		}
		if n := len(out); n > 0 {
			joined := out[n-1] + " " + f
			if m := columnName().FindStringSubmatch(joined); m != nil && m[1] != "" {
				out[n-1] = joined
				continue
			}
		}
		out = append(out, f)
	}
	return out
}

func readColumn(f string) column {
	m := columnName().FindStringSubmatch(f)
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
		c.role, c.stated = oxygenRole, u != ""
	}
	return c
}

// dress gives the readings of a line that has not the table's shape the order and
// the units of its columns, where the line has none of its own.
func (t *table) dress(entries []entry) {
	if t == nil {
		return
	}
	var depth, temp column
	tempFirst := false
	for _, c := range t.columns {
		switch c.role {
		case depthRole:
			depth = c
		case tempRole:
			temp, tempFirst = c, depth.role == unknown
		}
	}
	for i := range entries {
		e := &entries[i]
		if e.open() && len(e.free) < 4 {
			e.take(tempFirst)
		}
		for j := range e.depths {
			if e.depths[j].depth == unit.NoLength {
				e.depths[j].depth = depth.depth
			}
		}
		for j := range e.temps {
			if e.temps[j].temp == unit.NoTemperature {
				e.temps[j].temp = temp.temp
			}
		}
	}
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
	e.odd = e.odd || e.approximate()
	return e, true, nil
}

// field reads one field of a row into the entry.
func (e *entry) field(c column, f string, comma bool) error {
	n, err := e.fieldNumber(c, f, comma)
	if n == nil || err != nil {
		return err
	}
	if n.role == percentRole && c.role == oxygenRole {
		c.role = percentRole
	}
	n.role = c.role
	n.fillUnits(c.depth, c.temp)
	switch c.role {
	case depthRole:
		e.depths = append(e.depths, *n)
	case tempRole:
		e.temps = append(e.temps, *n)
	case oxygenRole:
		n.stated = n.stated || c.stated
		e.oxygen = n
	case percentRole:
		e.percent = n
	}
	return nil
}

// fieldNumber finds the number of a field, nil where it has none, and takes the words and
// signs beside it.
func (e *entry) fieldNumber(c column, f string, comma bool) (n *token, err error) {
	ts := tokens(f, comma)
	for i := range ts {
		switch ts[i].kind {
		case number:
			if n != nil {
				return nil, fmt.Errorf("two numbers in one column: %q", f)
			}
			n = &ts[i]
			if i > 0 && ts[i-1].kind == dash {
				if c.role == depthRole {
					return nil, fmt.Errorf("a depth cannot be negative: %q", f)
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
			return nil, fmt.Errorf("%q is not understood", f)
		}
	}
	return n, nil
}
