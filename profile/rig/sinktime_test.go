package rig

import (
	"math"
	"testing"
)

func TestSlower(t *testing.T) {
	for _, row := range []struct{ touched, model, want float64 }{
		{52, 40, 1.3}, {40, 50, 0.8}, {200, 40, 2}, {5, 40, 0.5}, {0, 40, 1}, {40, 0, 1},
		{math.NaN(), 40, 1}, {40, math.NaN(), 1}, {math.Inf(1), 40, 1}, {40, math.Inf(1), 1}, {-3, 5, 1},
	} {
		if got := slower(row.touched, row.model); math.Abs(got-row.want) > 1e-12 {
			t.Errorf("touched at %g s, modelled %g s: %g, want %g", row.touched, row.model, got, row.want)
		}
	}
}
