package rig

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/drag"
	"coldseam/profile/rig/tow"
	"coldseam/profile/water"
)

// A sinking line, by common practice.
const (
	classMps   = 3 * 0.0254 // of class 3, which sinks 2.5 to 3.5 in/s
	sinkSlow   = 0.9        // most sink a tenth slower than rated
	ratedShare = 0.1        // a known rate is good to a tenth (assumed)
	OutM       = 18.288     // line out, a cast of 60 ft
	lineM      = 0.0011     // its thickness
)

// sinking is a short leader on a sinking line: 9 ft, within the rule; a long one
// would ride above the line (common practice). The count is the line's own rate; the
// window says how fast a line of OutM may be drawn before the fly rises.
func (r *Rig) sinking(in Input, longest float64) {
	r.LeaderM = down(math.Min(nineFtM, longest), in.StepM)
	r.FlyDepths = []float64{in.FlyM}
	r.ClassAssumed = in.SinkMps == 0
	rate, share := in.SinkMps, ratedShare
	if r.ClassAssumed {
		rate, share = classMps, 0.5/3
	}
	rate *= sinkSlow
	r.SinkTime = &profile.Estimate{Best: in.FlyM / rate, Low: in.FlyM / (rate * (1 + share)), High: in.FlyM / (rate * (1 - share))}
	g := newGear(in)
	g.in.Flies = 1
	line := g.pulled(r.LeaderM)
	for i := range line.Bodies {
		line.Bodies[i].AtM += OutM
	}
	density := lineKgM3(rate, in.WaterC.Or(waterC))
	line.Parts = append([]tow.Part{{LengthM: OutM, DiameterM: lineM, DensityKgM3: density}}, line.Parts...)
	if v, err := tow.SpeedFor(line, in.FlyM); err == nil && v > in.DriftMps {
		r.Window = Window{Fastest: v - in.DriftMps, Known: true}
	}
}

// lineKgM3 is the density of a level line of thickness lineM that sinks broadside at
// a rate: its weight in water is the drag across it.
func lineKgM3(rateMps, tempC float64) float64 {
	rho, nu := water.Density(tempC), water.KinematicViscosity(tempC)
	cd := drag.Cylinder(rateMps * lineM / nu)
	return rho * (1 + 2*cd*rateMps*rateMps/(math.Pi*water.StandardGravity*lineM))
}
