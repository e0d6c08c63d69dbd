package light

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Figures of the formula at 5, 10, 30 and 50 degrees and overhead, as a table for the same
// formula in another program has them (from memory), and worked out again by hand.
func TestDaylight(t *testing.T) {
	for elevation, want := range map[float64]float64{-20: 0, 0: 0, 5: 48.63, 10: 135.74, 30: 487.89, 50: 778.77, 90: 1035.09} {
		near(t, "daylight", Daylight(elevation), want, 0.01)
	}
}

// A ray that grazes the water goes down at 48.6 degrees from the vertical, the edge of the
// window through which a fish sees the sky (Snell's law for an index of 1.333).
func TestSlant(t *testing.T) {
	near(t, "grazing", math.Acos(slant(0))*180/math.Pi, 48.6, 0.05)
	near(t, "overhead", slant(90), 1, 1e-12)
}

func TestEvening(t *testing.T) {
	const secchi = 2.7432 // 9 ft: 1 % of the light reaches 24 ft
	noon := EveningM(secchi, 65, 65)
	near(t, "at noon", noon.Low, OnePercentM(secchi), 1e-9)
	near(t, "at noon", noon.High, OnePercentM(secchi), 1e-9)
	e := EveningM(secchi, 65, 10)
	// by hand: 135.74 W/m2 of 932.4 are 14.6 %; ln 14.6 / ln 100 is 0.582; the beam's slant takes 0.674/0.948
	near(t, "10 degrees, spread", e.High/noon.High, math.Log(100*135.74/932.4)/math.Log(100), 1e-3)
	near(t, "10 degrees, beam", e.Low/e.High, 0.674/0.948, 2e-3)
	near(t, "sun down", EveningM(secchi, 65, -1).High, 0, 0)
	for _, c := range [][3]float64{{math.NaN(), 65, 10}, {0, 65, 10}, {3, -2, 10}, {3, math.NaN(), 1}} {
		if got := EveningM(c[0], c[1], c[2]); !math.IsNaN(got.Best) {
			t.Errorf("%v: %v, want NaN", c, got)
		}
	}
}

// The lower the sun, the shallower; never deeper than at noon.
func TestEveningFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		secchi, noon := rapid.Float64Range(0.1, 20).Draw(t, "secchi"), rapid.Float64Range(1, 90).Draw(t, "noon")
		a := rapid.Float64Range(-10, 90).Draw(t, "a")
		b := a - rapid.Float64Range(0, 20).Draw(t, "lower")
		high, low := EveningM(secchi, noon, a), EveningM(secchi, noon, b)
		if !(0 <= low.Low && low.Low <= low.Best && low.Best <= low.High && low.High <= high.High+1e-9 && low.Low <= high.Low+1e-9 && high.High <= OnePercentM(secchi)+1e-9) {
			t.Fatalf("%+v at %v, %+v at %v", high, a, low, b)
		}
	})
}
