package rig

import (
	"errors"
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/leader"
)

// Leaders between which the one for a retrieve is sought.
const (
	shortestM = 0.1
	longestM  = 60.0
)

// depth is that of the point fly on a leader of a length towed at a speed against the
// water; 0 for a leader that is none.
func (g gear) depth(leaderM, mps float64) float64 {
	s, err := g.leader(leaderM).Tow(mps)
	if err != nil {
		return 0
	}
	return s.Point.DepthM
}

// length gives the leader that puts the point fly at a depth at a speed; +Inf where no
// leader of any sense does, since the fly is too light for the speed.
func (g gear) length(depthM, mps float64) float64 {
	found, err := leader.TowLength(g.leader, mps, depthM, math.Max(shortestM, depthM), longestM)
	if err != nil && !errors.Is(err, leader.ErrTooDeep) { // by no more than a hair: a leader of the depth hangs there at rest
		return math.Inf(1)
	}
	return found
}

// speed gives the speed at which a leader's point fly is at a depth; 0 where it is no
// deeper even at rest.
func (g gear) speed(leaderM, depthM float64) float64 {
	v, err := g.leader(leaderM).TowSpeed(depthM)
	if err != nil {
		return 0
	}
	return v
}

// window gives the retrieves at which a leader keeps the point fly over the bottom
// and no more than 2 ft off it, or, in open water, within a foot of its depth.
func (g gear) window(leaderM float64) Window {
	deep, shallow := g.in.WaterM, g.in.WaterM-nearBottomM
	if g.in.Suspended {
		deep, shallow = math.Min(deep, g.in.FlyM+openWaterM), g.in.FlyM-openWaterM
	}
	shallow = math.Max(math.Min(shallow, g.in.FlyM), 0)
	w, err := g.leader(leaderM).TowWindow(shallow, deep)
	if err != nil || leaderM > longestM || leaderM <= shallow+slack || w.FastestMps <= g.in.DriftMps {
		return Window{}
	}
	return Window{Slowest: math.Max(0, w.SlowestMps-g.in.DriftMps), Fastest: w.FastestMps - g.in.DriftMps, Known: true}
}

// doubt gives the solved leader's length for a fly as light and as heavy in the water
// as it may be, and a retrieve a tenth faster and slower than was measured (assumed).
func (g gear) doubt(leaderM float64) profile.Estimate {
	e := profile.Exactly(leaderM)
	mps := g.in.Retrieve.Value + g.in.DriftMps
	light, heavy := g, g
	if g.in.FlyDensity == 0 {
		light.density, heavy.density = leader.LightFlyKgM3, leader.HeavyFlyKgM3
	}
	if !g.in.FlyKg.Known {
		light.kg, heavy.kg = g.kg/2, g.kg*2
	}
	e.Low = math.Min(e.Best, heavy.length(g.in.FlyM, 0.9*mps))
	e.High = math.Max(e.Best, math.Min(longestM, light.length(g.in.FlyM, 1.1*mps)))
	return e
}
