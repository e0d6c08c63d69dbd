package rig

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/leader"
)

// A sinking line, by common practice: the number of its class is about the inches that
// it sinks a second.
const (
	usualClass   = 3
	fastestClass = 7
	classMps     = 0.0254
	sinkSlow     = 0.9 // most sink a tenth slower than rated
	ratedShare   = 0.1 // a known rate is good to a tenth (assumed)
	patienceS    = 120 // nobody waits longer than about two minutes
	aboutS       = 150
	OutM         = 18.288 // line out, a cast of 60 ft
	lineM        = 0.0011 // its thickness
)

// sunkM is how deep a line of a class is within two minutes.
func sunkM(class int) float64 { return patienceS * sinkSlow * classMps * float64(class) }

// class is that of the line to take for a depth: the usual one, or the slowest that is
// down within two minutes, or else the fastest.
func class(depthM float64) int {
	n := usualClass
	for n < fastestClass && sunkM(n) < depthM-slack {
		n++
	}
	return n
}

// sinking is a short leader on a sinking line: 9 ft, within the rule; a long one
// would ride above the line (common practice). The sink time is by the rate of the
// angler's own line where that is down within about two minutes, else by that of the
// class to take; the window says how fast a line of OutM may be retrieved before the
// fly rises.
func (r *Rig) sinking(in Input, longest float64) {
	r.sink(in, longest)
	g := r.gear(in)
	g.in.Flies = 1
	l := r.sunk(g)
	if v, err := l.TowSpeed(in.FlyM); err == nil && v > in.DriftMps {
		r.Window = Window{Fastest: v - in.DriftMps, Known: true}
	}
}

// sunk is the leader behind a line of OutM.
func (r *Rig) sunk(g gear) leader.Leader {
	l := g.leader(r.LeaderM)
	for i := range l.Bodies {
		l.Bodies[i].AtM += OutM
	}
	line := leader.Part{LengthM: OutM, DiameterM: lineM, DensityKgM3: leader.LineDensity(l.TempC, lineM, r.sinkMps)}
	l.Parts = append([]leader.Part{line}, l.Parts...)
	return l
}

// straightDown is the same line and leader hung under the boat, let down by its marks
// where it takes too long to sink by itself.
func (r *Rig) straightDown(in Input, longest float64) {
	if r.sink(in, longest); r.SinkTime.Best > aboutS {
		r.SinkTime = nil
	}
}

// sink is what every sinking line has: the leader, the class and the sink time.
func (r *Rig) sink(in Input, longest float64) {
	r.LeaderM = down(math.Min(nineFtM, longest), in.StepM)
	r.FlyDepths = []float64{in.FlyM}
	rate, share := in.SinkMps*sinkSlow, ratedShare
	r.ClassAssumed = in.SinkMps == 0
	if !r.ClassAssumed && in.FlyM/rate > aboutS {
		r.ClassAssumed, r.OwnLineS = true, in.FlyM/rate
	}
	if r.ClassAssumed {
		r.Class = class(in.FlyM)
		rate, share = float64(r.Class)*classMps*sinkSlow, 0.5/float64(r.Class)
	}
	r.sinkMps = rate
	r.SinkTime = &profile.Estimate{Best: in.FlyM / rate, Low: in.FlyM / (rate * (1 + share)), High: in.FlyM / (rate * (1 - share))}
}
