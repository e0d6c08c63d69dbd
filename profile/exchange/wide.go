package exchange

import (
	"fmt"
	"slices"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// acrossDepths reads a row of the wide form: a drop, with a column for each depth.
func (in *reader) acrossDepths(l line) error {
	c, err := in.b.cast(l, in.line) // each row is a drop of its own
	if err != nil {
		return err
	}
	units, _ := unit.ParseSystem(l.key("units"))
	warm := map[depth]bool{}
	for i, col := range l.columns {
		if col.at == nil || col.what != ofTemp || missing(l.cells[i]) {
			continue
		}
		r := profile.Reading{Line: in.line, Text: col.name + " " + l.cells[i], Depth: col.at.value, DepthUnit: first(col.at.unit, units.Depth)}
		if r.DepthUnit == unit.NoLength {
			return fmt.Errorf("the unit of the depth %s is not stated: name the columns temp_f_5ft or temp_c_1.5m", quote(col.name))
		}
		if err := in.temp(&r, l.cells[i], first(col.unit, units.Temp)); err != nil {
			return fmt.Errorf("%s: %w", col.name, err)
		}
		warm[*col.at] = true
		oxygen, percent, err := in.oxygenOf(l, col)
		if err != nil {
			return err
		}
		if err := in.b.add(c, r, oxygen, percent); err != nil {
			return err
		}
	}
	for at, columns := range in.oxygenAt {
		if !warm[at] && slices.ContainsFunc(columns, func(i int) bool { return !missing(l.cells[i]) }) {
			in.skip("oxygen at a depth without a temperature is passed over")
		}
	}
	return nil
}

// oxygenOf is the oxygen at the depth of a column of temperatures.
func (in *reader) oxygenOf(l line, temp column) (oxygen, percent cell, err error) {
	for _, i := range in.oxygenAt[*temp.at] {
		col := l.columns[i]
		if missing(l.cells[i]) {
			continue
		}
		switch col.what {
		case ofOxygen:
			oxygen, err = in.number(l.cells[i], col)
		case ofPercent:
			percent, err = in.number(l.cells[i], col)
		}
		if err != nil {
			return oxygen, percent, fmt.Errorf("%s: %w", col.name, err)
		}
	}
	return oxygen, percent, nil
}

// acrossDates reads a row of a table with a column for each date: the temperatures of all
// dates at one depth.
func (in *reader) acrossDates(l line) error {
	for i, col := range l.columns {
		if col.date == "" || missing(l.cells[i]) {
			continue
		}
		c, err := in.b.dated(l, col.date)
		if err != nil {
			return err
		}
		r := profile.Reading{Line: in.line, Text: l.of(ofDepth) + " " + l.cells[i]}
		for j, of := range l.columns {
			if of.what == ofDepth {
				err = in.depth(&r, l.cells[j], first(of.unit, l.unit(ofDepthUnit)))
			}
		}
		if err == nil {
			err = in.temp(&r, l.cells[i], l.unit(ofTempUnit))
		}
		if err != nil {
			return fmt.Errorf("%s: %w", col.name, err)
		}
		if err := in.b.add(c, r, cell{}, cell{}); err != nil {
			return err
		}
	}
	return nil
}
