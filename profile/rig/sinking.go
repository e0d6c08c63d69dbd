package rig

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/leader"
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
// would ride above the line (common practice). The sink time is by the
// line's own rate; the window says how fast a line of OutM may be retrieved before the
// fly rises.
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
	l := r.sunk(g)
	if v, err := l.TowSpeed(in.FlyM); err == nil && v > in.DriftMps {
		r.Window = Window{Fastest: v - in.DriftMps, Known: true}
	}
}

// sunk is the leader behind a line of OutM that sinks as the angler's does.
func (r *Rig) sunk(g gear) leader.Leader {
	l := g.leader(r.LeaderM)
	for i := range l.Bodies {
		l.Bodies[i].AtM += OutM
	}
	rate := g.in.SinkMps
	if rate == 0 {
		rate = classMps
	}
	line := leader.Part{LengthM: OutM, DiameterM: lineM, DensityKgM3: leader.LineDensity(l.TempC, lineM, rate*sinkSlow)}
	l.Parts = append([]leader.Part{line}, l.Parts...)
	return l
}
