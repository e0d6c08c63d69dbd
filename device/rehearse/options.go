package rehearse

import (
	"math"
	"time"
)

// Options set up a rehearsal. A zero value takes the default in brackets, NaN too, and
// a value out of its range the nearest end of it.
type Options struct {
	Lake        Lake    // [Kettle()]
	TauS        float64 // time constant of the sensor's lag, s, 0.01 to 600 [8]
	NoiseC      float64 // standard deviation of the temperature, C, up to 2; below 0 is none [0.03]
	DepthNoiseM float64 // standard deviation of the stated depth, m, up to 2; below 0 is none [0.03]
	PeriodS     float64 // from one line to the next, s, 0.05 to 600 [0.5]
	StatesDepth bool    // lines are "depth_m,temp_c" under a row of names, else the temperature alone
	HaulIn      bool    // once it is at the bottom, the probe is hauled in by itself
	SpeedMps    float64 // of lowering and of hauling in, m/s, 0.01 to 10 [0.5]
	Seed        uint64  // of noise and faults
	Speed       float64 // the lake's clock against the wall's, 0.01 to 100 [1]
	Faults      Faults
}

// whole gives the options with defaults in place and every number in its range.
func (o Options) whole() Options {
	if len(o.Lake.points) == 0 {
		o.Lake = Kettle()
	}
	o.TauS = within(o.TauS, 8, 0.01, 600)
	o.NoiseC = within(o.NoiseC, 0.03, 0, 2)
	o.DepthNoiseM = within(o.DepthNoiseM, 0.03, 0, 2)
	o.PeriodS = within(o.PeriodS, 0.5, 0.05, 600)
	o.SpeedMps = within(o.SpeedMps, 0.5, 0.01, 10)
	o.Speed = within(o.Speed, 1, 0.01, 100)
	return o
}

func within(v, unset, low, high float64) float64 {
	if v == 0 || math.IsNaN(v) {
		return unset
	}
	return min(max(v, low), high)
}

func duration(s float64) time.Duration { return time.Duration(math.Round(s * 1e9)) }
