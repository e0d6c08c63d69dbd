package check

import (
	"testing"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// TestSlackOfGuesses: what a slipped reading may have been lies within 1 C of its
// neighbours, or twice the thermometer's precision, and the last one not more than 12 C
// under the one above it.
func TestSlackOfGuesses(t *testing.T) {
	for _, c := range []struct {
		precision, slipped, below float64
		want                      bool
	}{
		{0.25, 209, 15.05, true}, {0.25, 210, 15.05, false}, // warmer than the reading above, 19.95 C
		{2, 239, 15.05, true},
		{0.25, 141, 15.05, true}, {0.25, 140, 15.05, false}, // colder than the one below
		{0.25, 80, 0, true}, {0.25, 79, 0, false}, // the last
	} {
		d := profile.Drop{Units: unit.System{Depth: unit.Metre, Temp: unit.Celsius}, Precision: profile.Some(c.precision)}
		add := func(depth, temp float64) {
			d.Readings = append(d.Readings, profile.Reading{Depth: depth, DepthUnit: unit.Metre, Temp: temp, TempUnit: unit.Celsius, Step: 0.1})
		}
		add(0, 19.95)
		add(1, 19.95)
		add(4, c.slipped)
		if c.below > 0 {
			add(7, c.below)
		}
		d.Correct()
		d = Of(d).Drop()
		if got := d.Readings[2]; got.Flag == "" || (got.Guess != "") != c.want {
			t.Errorf("%v between 19.95 and %v C, precision %v: flag %q, guess %q, want one: %v", c.slipped, c.below, c.precision, got.Flag, got.Guess, c.want)
		}
	}
}
