package response

import (
	"errors"
	"math"
	"testing"
)

func TestStepFraction(t *testing.T) {
	// First-order lag, closed form 1 - exp(-k).
	for _, c := range []struct{ k, want, tol float64 }{
		{0, 0, 0}, {0.5, .393469, 1e-6}, {1, .632121, 1e-6}, {2, .864665, 1e-6},
		{3, .950213, 1e-6}, {5, .993262, 1e-6},
	} {
		for _, tau := range []float64{5, 20, 120} {
			got, err := StepFraction(c.k*tau, tau)
			if err != nil || math.Abs(got-c.want) > c.tol {
				t.Errorf("k %g tau %g: %g %v, want %g", c.k, tau, got, err, c.want)
			}
		}
	}
	for _, c := range [][2]float64{{-1, 5}, {1, 0}, {1, math.NaN()}, {math.NaN(), 1}, {math.Inf(1), 1}} {
		if _, err := StepFraction(c[0], c[1]); !errors.Is(err, ErrArg) {
			t.Errorf("%v: error %v", c, err)
		}
	}
}

func TestStepReading(t *testing.T) {
	// Step 20 to 10 C, tau 20 s: first-order lag, closed form.
	for _, c := range []struct{ at, want, tol float64 }{
		{20, 13.679, 5e-4}, {60, 10.498, 5e-4}, {120, 10.025, 5e-4},
	} {
		got, err := StepReading(20, 10, c.at, 20)
		if err != nil || math.Abs(got-c.want) > c.tol {
			t.Errorf("at %g s: %g %v, want %g", c.at, got, err, c.want)
		}
	}
	if _, err := StepReading(math.NaN(), 10, 1, 20); !errors.Is(err, ErrArg) {
		t.Errorf("NaN start: error %v", err)
	}
}
