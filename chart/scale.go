package chart

import "math"

// Step is the least of 1, 2, 5, 10, 20... and their tenths, hundredths... that cuts a span,
// more than 0, into at most so many pieces.
func Step(span, most float64) float64 {
	raw := span / most
	unit := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, k := range []float64{1, 2, 5} {
		if k*unit >= raw*(1-1e-9) {
			return k * unit
		}
	}
	return 10 * unit
}
