package response

import (
	"errors"
	"math"
)

// ErrArg reports an argument that is not finite or out of its range.
var ErrArg = errors.New("settle: argument out of range")

// StepFraction is the part (0 to 1) of a step that a first-order probe of
// time constant tauS (s, above 0) shows elapsedS (s, 0 or more) after it:
// 1 - exp(-t/tau), closed form. It returns ErrArg for other arguments.
func StepFraction(elapsedS, tauS float64) (float64, error) {
	if !(elapsedS >= 0) || !(tauS > 0) || math.IsInf(elapsedS, 0) || math.IsInf(tauS, 0) {
		return 0, ErrArg
	}
	return -math.Expm1(-elapsedS / tauS), nil
}

// StepReading is the reading (C) of a first-order probe elapsedS (s) after it
// went from startC into water of waterC. It returns ErrArg as StepFraction
// does, and for temperatures that are not finite.
func StepReading(startC, waterC, elapsedS, tauS float64) (float64, error) {
	f, err := StepFraction(elapsedS, tauS)
	if err != nil {
		return 0, err
	}
	if !plausible(startC) || !plausible(waterC) {
		return 0, ErrArg
	}
	return startC + (waterC-startC)*f, nil
}

// plausible keeps out values no thermometer in or above a lake can give; NaN
// fails both comparisons.
func plausible(tempC float64) bool { return tempC >= -100 && tempC <= 200 }

func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
