package sampling

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/water"
)

const (
	footM    = 0.3048 // m, exact: the mark of a line in feet
	quarterM = 0.25   // the mark of one in metres
)

// read makes a Column of readings of a lake at some depths.
func read(t testing.TB, lake func(float64) float64, depths ...float64) profile.Column {
	t.Helper()
	var points []profile.Point
	for _, z := range depths {
		points = append(points, profile.Point{DepthM: z, TempC: lake(z), ErrC: 0.25})
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// smooth is a made-up lake: warmC above, coldC below, with the middle of its break
// at breakM and most of the fall within twice halfM.
func smooth(warmC, coldC, breakM, halfM float64) func(float64) float64 {
	return func(z float64) float64 {
		return (warmC+coldC)/2 + (warmC-coldC)/2*math.Tanh((breakM-z)/halfM)
	}
}

// thermocline is where a lake's density rises fastest, by small steps.
func thermocline(lake func(float64) float64, bottomM float64) float64 {
	best, most := 0.0, 0.0
	const h = 0.001
	for z := h; z < bottomM; z += h {
		if rise := water.Density(lake(z)) - water.Density(lake(z-h)); rise > most {
			best, most = z-h/2, rise
		}
	}
	return best
}

// whole reports whether a depth is a whole number of marks.
func whole(depthM, markM float64) bool {
	n := depthM / markM
	return math.Abs(n-math.Round(n)) < 1e-6
}
