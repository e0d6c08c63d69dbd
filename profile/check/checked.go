package check

import (
	"errors"
	"slices"

	"coldseam/profile"
)

// ErrAllFlagged reports a drop that has readings, all of them flagged as not to be used.
var ErrAllFlagged = errors.New("no reading is left to use: every one is flagged")

// Checked is a drop whose readings have been corrected for its line and its thermometer,
// and flagged. Only a Checked makes a Column, so nothing that was not checked gets into
// one. The zero Checked is a drop without readings.
type Checked struct{ drop profile.Drop }

// Of corrects and checks a drop. d and its readings stay as they are; depths,
// temperatures, flags and guesses that they had do not count.
func Of(d profile.Drop) Checked {
	d.Readings = slices.Clone(d.Readings)
	d.Correct()
	for i := range d.Readings {
		d.Readings[i].Flag, d.Readings[i].Guess = "", ""
	}
	c := checker{d: &d, precision: d.PrecisionC()}
	c.outOfRange()
	c.spikes()
	c.bottom()
	c.repeats()
	c.warmerBelow()
	return Checked{d}
}

// Drop gives the drop with its readings in their order, each with its depth (m below the
// surface), temperature (C), and flag. What is done to it does not change the Checked.
func (c Checked) Drop() profile.Drop {
	d := c.drop
	d.Readings = slices.Clone(d.Readings)
	return d
}

// Column makes the Column of the readings that are used. The error is ErrAllFlagged, or
// that of profile.NewColumn.
func (c Checked) Column() (profile.Column, error) {
	var points []profile.Point
	for i, r := range c.drop.Readings {
		if r.Used() {
			points = append(points, profile.Point{
				DepthM: r.DepthM, TempC: r.TempC,
				ErrC: c.drop.ErrorC(i), ErrM: c.drop.DepthError(r.DepthM),
				Oxygen: r.Oxygen, Odd: r.Flag != "",
			})
		}
	}
	if len(points) == 0 && len(c.drop.Readings) > 0 {
		return profile.Column{}, ErrAllFlagged
	}
	return profile.NewColumn(points)
}
