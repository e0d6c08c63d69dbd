package response

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// step is the last digit to which a probe's reading is kept, in degrees of the
// angler's scale and in feet; depths in metres are kept to half of it.
const step = 0.1

// Reading makes a reading of a state at a depth, in the angler's units: the estimate
// of what it settles at. While it has not settled, twice the estimate's standard error
// is its spread.
func (s State) Reading(depthM float64, u unit.System) profile.Reading {
	u = u.Shown()
	c := s.TempC
	if s.Fitted {
		c = s.EstimateC
	}
	grain := step
	if !u.Feet() {
		grain = step / 2
	}
	r := profile.Reading{
		Depth: round(u.Depth.From(depthM), grain), DepthUnit: u.Depth,
		Temp: round(u.Temp.FromC(c), step), TempUnit: u.Temp, Step: step,
	}
	if !s.Settled && s.Fitted {
		r.SpreadC = u.Temp.DiffToC(math.Ceil(u.Temp.DiffFromC(2*s.ErrC)/step) * step)
	}
	return r
}

func round(v, grain float64) float64 {
	return math.Round(math.Round(v/grain)*grain*1e6) / 1e6 // and not 12.3000000000000001
}
