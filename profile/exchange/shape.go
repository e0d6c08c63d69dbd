package exchange

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// line is a row under its columns.
type line struct {
	number  int
	columns []column
	cells   []string
}

// of is the cell of the first column of a kind, "" where there is none.
func (l line) of(w what) string {
	if i := slices.IndexFunc(l.columns, func(c column) bool { return c.what == w }); i >= 0 {
		return l.cells[i]
	}
	return ""
}

// mostColumns is more than any table of drops has.
const mostColumns = 2000

// shape reads the names of the columns, and gives what reads a row under them.
func (in *reader) shape(names []string) (take func(line) error, err error) {
	for len(names) > 0 && names[len(names)-1] == "" {
		names = names[:len(names)-1]
	}
	if len(names) > mostColumns {
		return nil, in.fail(in.line, fmt.Sprintf("has more than %d columns: is it a table of drops?", mostColumns))
	}
	for _, name := range names {
		in.columns = append(in.columns, headOf(name))
	}
	switch {
	case in.has(ofCharacteristic) && in.has(ofResult):
		take = in.result
	case in.has(ofDepth) && in.has(ofTemp):
		take = in.reading
	case in.has(ofDepth) && in.dated():
		take = in.acrossDates
	case in.deep():
		take = in.acrossDepths
	case in.has(ofDepth):
		return nil, in.fail(in.line, "no column is named for the temperature: name it temp_f or temp_c; the row has "+quote(strings.Join(names, ", ")))
	default:
		return nil, in.fail(in.line, "no column is named for the depth: name it depth_ft or depth_m; the row has "+quote(strings.Join(names, ", ")))
	}
	in.once()
	return take, nil
}

// tall reports whether the columns have a reading, or a result, a row.
func (in *reader) tall() bool {
	return in.has(ofDepth) && in.has(ofTemp) || in.has(ofCharacteristic) && in.has(ofResult)
}

func (in *reader) has(w what) bool {
	return slices.ContainsFunc(in.columns, func(c column) bool { return c.what == w })
}

// dated finds the columns that are named by a date.
func (in *reader) dated() bool {
	found := false
	for i, c := range in.columns {
		if c.what != unknown {
			continue
		}
		date, err := notebook.ParseDate(c.name)
		if err != nil && !notebook.TwoDates(err) {
			continue
		}
		if found = true; err != nil {
			in.bad = append(in.bad, in.fail(in.line, err.Error()))
		}
		in.columns[i].what, in.columns[i].date = ofTemp, date
	}
	return found
}

// deep finds the columns that are named by a depth.
func (in *reader) deep() bool {
	found := false
	for i, c := range in.columns {
		if c.what != unknown && c.at == nil {
			continue
		}
		if d, ok := depthOf(c.name); ok {
			if d.what != ofTemp {
				in.oxygenAt[*d.at] = append(in.oxygenAt[*d.at], i)
			}
			in.columns[i], found = d, found || d.what == ofTemp
		}
	}
	return found
}

// once tells of columns that are not known, and of a second one of a kind, and takes them
// out.
func (in *reader) once() {
	type kind struct {
		what what
		key  string
	}
	seen := map[kind]string{}
	for i := range in.columns {
		c := &in.columns[i]
		k := kind{c.what, c.key}
		switch first, again := seen[k]; {
		case c.at != nil || c.date != "" || c.what == made || c.what == ofKey && notebook.Several(c.key):
		case c.name == "": // no name: told where there is something under it
		case c.what == unknown:
			in.note(in.line, "column %s is not known: passed over", quote(c.name))
		case c.what == passed:
			in.note(in.line, "column %s is passed over: a drop has no place for it", quote(c.name))
		case again:
			in.note(in.line, "column %s is passed over: %s stands before it", quote(c.name), quote(first))
			c.what = unknown
		default:
			seen[k] = c.name
		}
	}
}

// unitRow takes the units of the columns from a row under their names: "(ft)", "(F)". It
// reports whether the row was one.
func (in *reader) unitRow(cells []string) bool {
	found := map[int]unit.Unit{}
	for i, cell := range cells {
		if i >= len(in.columns) {
			return false
		}
		sign := plainly(cell)
		length, isLength := unit.LengthNamed(sign)
		scale, isScale := unit.TemperatureNamed(sign)
		switch w := in.columns[i].what; {
		case w == ofDepth && isLength && in.columns[i].unit == unit.None:
			found[i] = length
		case w == ofTemp && isScale && in.columns[i].unit == unit.None && in.columns[i].at == nil:
			found[i] = scale
		case w == ofDepth || w == ofTemp:
			return false
		}
	}
	for i, u := range found {
		in.columns[i].unit = u
	}
	return len(found) > 0
}

var errNoDepthUnit = errors.New("the depths' unit is not stated: name the column depth_ft or depth_m")
