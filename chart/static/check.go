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
	numbers := []float64{d.DeepestM}
	for _, r := range d.Readings {
		numbers = append(numbers, r.DepthM, r.TempC, r.ErrM, r.ErrC, r.Oxygen.Value)
	}
	for _, q := range d.Curve {
		numbers = append(numbers, q.DepthM, q.TempC, q.LowC, q.HighC)
	}
	for _, z := range d.Zones {
		numbers = append(numbers, z.TopM, z.BottomM)
	}
	for _, m := range d.Marks {
		numbers = append(numbers, m.At.Low, m.At.Best, m.At.High)
	}
	for _, v := range numbers {
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return fmt.Errorf("a figure with the number %v cannot be drawn", v)
		}
	}
	if d.DeepestM <= 0 {
		return fmt.Errorf("a figure %v m deep cannot be drawn", d.DeepestM)
	}
	return nil
}
