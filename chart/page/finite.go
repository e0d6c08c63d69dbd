package page

import (
	"fmt"
	"math"

	"coldseam/chart"
)

// finite refuses a figure with a number that is none: the script would draw nothing
// from it and say nothing.
func finite(d chart.Drop) error {
	check := func(what string, i int, values ...float64) error {
		for _, v := range values {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return fmt.Errorf("%s %d holds %v, which is no number", what, i+1, v)
			}
		}
		return nil
	}
	if err := check("depth of picture", 0, d.DeepestM); err != nil {
		return err
	}
	for i, r := range d.Readings {
		if err := check("reading", i, r.DepthM, r.TempC, r.ErrM, r.ErrC, r.Oxygen.Value); err != nil {
			return err
		}
	}
	for i, p := range d.Curve {
		if err := check("point of the curve", i, p.DepthM, p.TempC, p.LowC, p.HighC, p.RisePerM); err != nil {
			return err
		}
	}
	for i, z := range d.Zones {
		if err := check("zone", i, z.TopM, z.BottomM); err != nil {
			return err
		}
	}
	for i, m := range d.Marks {
		if err := check("mark", i, m.At.Low, m.At.Best, m.At.High); err != nil {
			return err
		}
	}
	return nil
}
