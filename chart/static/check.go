package static

import (
	"errors"
	"fmt"
	"math"

	"coldseam/chart"
)

// check refuses a figure that cannot be drawn: without a reading, or with a number that
// is none.
func check(d chart.Drop) error {
	if len(d.Readings) == 0 {
		return errors.New("no readings to draw")
	}
	for _, v := range d.Numbers() {
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return fmt.Errorf("a figure with the number %v cannot be drawn", v)
		}
	}
	if d.DeepestM <= 0 {
		return fmt.Errorf("a figure %v m deep cannot be drawn", d.DeepestM)
	}
	return nil
}
