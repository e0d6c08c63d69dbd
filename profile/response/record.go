package response

import (
	"errors"
	"math"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// ErrNoReadings reports a record from which no reading can be made.
var ErrNoReadings = errors.New("the cast gives no readings: it needs a probe that states its depth, and some seconds of it on the way")

// MaxSamples is how many samples a record holds: more than a day of ten a second.
const MaxSamples = 1_000_000

// Limits of the clock of a record, s.
const (
	sameS    = 1e-3 // times closer than this are one time
	restartS = 1.0  // a clock that goes back by more has begun anew
	stepS    = 1.0  // taken for the step over a restart, where none was seen before
)

// Record gathers one cast of a probe that is lowered without stopping, and makes
// readings of it, one a mark of the line. The zero Record is empty.
type Record struct {
	Full bool // samples were left out, as there were more than MaxSamples

	samples []castSample
	shiftS  float64 // what a clock that began anew is behind
	step    float64 // between the last two samples
}

// Len is the number of samples.
func (r *Record) Len() int { return len(r.samples) }

// Add takes in a sample of the probe: its time in seconds since any fixed moment, its
// depth in metres and its temperature in degrees Celsius. One with the time of the last
// is left out; where the probe's clock begins anew, time goes on from the last sample.
func (r *Record) Add(atS, depthM, tempC float64) {
	if math.IsNaN(atS) || math.IsInf(atS, 0) {
		return
	}
	if n := len(r.samples); n > 0 {
		last := r.samples[n-1].timeS
		if atS+r.shiftS < last-restartS {
			step := r.step
			if step == 0 {
				step = stepS
			}
			r.shiftS = last + step - atS
		}
		if atS+r.shiftS-last < sameS {
			return
		}
		r.step = atS + r.shiftS - last
	}
	if len(r.samples) == MaxSamples {
		r.Full = true
		return
	}
	r.samples = append(r.samples, castSample{timeS: atS + r.shiftS, depthM: depthM, tempC: tempC})
}

// Readings bins the record by the marks of the line, and takes the lag out: with the time
// constant that way down and way up agree on, else with tauS (s, 0 for not known). Trip
// says which. The error is ErrNoReadings.
func (r *Record) Readings(u unit.System, tauS float64) ([]profile.Reading, Trip, error) {
	u = u.Shown()
	trip, err := newTrip(r.samples, tauS, u.DepthStepM())
	if err != nil || len(trip.layers) == 0 {
		return nil, Trip{}, ErrNoReadings
	}
	var out []profile.Reading
	for _, l := range trip.layers {
		s := State{TempC: l.tempC, Estimate: Estimate{Settled: true}}
		out = append(out, s.Reading(l.depthM, u))
	}
	return out, trip, nil
}
