package check

import (
	"testing"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// A guess is of what was written on the thermometer, which reads 5 C too much: what is
// between 21.5 and 14 C on the line was written as something between 26.5 and 19.
func TestGuessOnAWrongThermometer(t *testing.T) {
	d := profile.Drop{Units: unit.System{Depth: unit.Metre, Temp: unit.Celsius}, IcePoint: profile.Some(5)}
	for i, temp := range []float64{27, 26.5, 2.3, 19, 15} {
		d.Readings = append(d.Readings, profile.Reading{Depth: float64(2 * i), DepthUnit: unit.Metre, Temp: temp, TempUnit: unit.Celsius, Step: 0.1, Line: i + 1})
	}
	d.Correct()
	d = Of(d).Drop()
	if r := d.Readings[2]; r.Flag != profile.SlippedDigit || r.Guess != "23 C" {
		t.Errorf("flag %q, guess %q, want 23 C", r.Flag, r.Guess)
	}
	if got := d.Readings[0].TempC; got != 22 {
		t.Errorf("27 on a thermometer that reads 5 C in ice is %v C, want 22", got)
	}
}
