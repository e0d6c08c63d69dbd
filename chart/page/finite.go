package page

import (
	"fmt"
	"math"

	"coldseam/chart"
)

// finite refuses a figure with a number that is none: the script would draw nothing
// from it and say nothing.
func finite(d chart.Drop) error {
	for what, v := range d.Numbers() {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("%s holds %v, which is no number", what, v)
		}
	}
	return nil
}
