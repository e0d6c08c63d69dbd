package response

import (
	"errors"
	"math"
	"testing"

	"coldseam/profile/unit"
)

var metric = unit.System{Depth: unit.Metre, Temp: unit.Celsius}

// A probe that starts anew on the way begins its clock at 0 again: nothing of what it
// says afterwards is lost, and a line that came twice counts once.
func TestClockBeginsAnew(t *testing.T) {
	var r Record
	for i := range 40 {
		at := 100 + float64(i)/2
		if i >= 20 {
			at = float64(i-20) / 2
		}
		r.Add(at, float64(i)/4, 20-float64(i)/4)
		r.Add(at, 99, 99)
	}
	readings, trip, err := r.Readings(metric, 0)
	if err != nil || r.Len() != 40 || trip.TauS != 0 {
		t.Fatalf("%d samples, %v, %v", r.Len(), trip, err)
	}
	for _, q := range readings {
		if math.Abs(q.Temp-(20-q.Depth)) > 0.11 {
			t.Errorf("%v C at %v m", q.Temp, q.Depth)
		}
	}
	if last := readings[len(readings)-1]; last.Depth < 9.5 {
		t.Errorf("it ends at %v m", last.Depth)
	}
	for i := 1; i < len(r.samples); i++ {
		if step := r.samples[i].timeS - r.samples[i-1].timeS; math.Abs(step-0.5) > 1e-9 {
			t.Errorf("a step of %v s", step)
		}
	}
}

func TestNone(t *testing.T) {
	var r Record
	if _, _, err := r.Readings(metric, 0); !errors.Is(err, ErrNoReadings) {
		t.Errorf("nothing: %v", err)
	}
	r.Add(math.NaN(), 1, 10)
	r.Add(math.Inf(1), 1, 10)
	r.Add(1, 1, 10)
	if _, _, err := r.Readings(metric, 5); !errors.Is(err, ErrNoReadings) || r.Len() != 1 {
		t.Errorf("one sample: %v, %d", err, r.Len())
	}
}

func TestFull(t *testing.T) {
	var r Record
	for i := range MaxSamples + 5 {
		r.Add(float64(i), 1, 10)
	}
	if r.Len() != MaxSamples || !r.Full {
		t.Errorf("%d samples, full %v", r.Len(), r.Full)
	}
}
