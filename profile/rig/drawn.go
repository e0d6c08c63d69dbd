package rig

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/tow"
)

// shape is a leader of a length drawn at a speed against the water.
func (g gear) shape(leaderM, mps float64) (tow.Shape, bool) {
	s, err := tow.Solve(g.pulled(leaderM), mps)
	return s, err == nil
}

// depth is that of the point fly; 0 for a leader that is none.
func (g gear) depth(leaderM, mps float64) float64 {
	s, ok := g.shape(leaderM, mps)
	if !ok {
		return 0
	}
	return s.Point.DepthM
}

// length gives the leader that puts the point fly at a depth at a speed; +Inf where no
// leader of any sense does, since the fly is too light for the speed.
func (g gear) length(depthM, mps float64) float64 {
	least := math.Max(tow.ShortestM, depthM)
	found, err := tow.LengthFor(g.pulled, mps, depthM, least, tow.LongestM)
	switch {
	case err != nil:
		return math.Inf(1)
	case found.Reach == tow.OverDeep: // by no more than a hair: a leader of the depth hangs there at rest
		return least
	case found.Reach != tow.Reached:
		return math.Inf(1)
	}
	return found.LengthM
}

// speed gives the speed at which a leader's point fly is at a depth; 0 where it is no
// deeper even at rest.
func (g gear) speed(leaderM, depthM float64) float64 {
	v, err := tow.SpeedFor(g.pulled(leaderM), depthM)
	if err != nil {
		return 0
	}
	return v
}

// weight gives the dry mass of a point fly that a leader holds at a depth at a speed.
func (g gear) weight(leaderM, depthM, mps float64) (kg float64, ok bool) {
	found, err := tow.LengthFor(g.pulled, mps, depthM, leaderM, leaderM)
	return found.PointKg, err == nil && found.PointKg > 0
}

// window gives the retrieves at which a leader keeps the point fly over the bottom
// and no more than 2 ft off it, or, in open water, within a foot of its depth.
func (g gear) window(leaderM float64) Window {
	deep, shallow := g.in.WaterM, g.in.WaterM-nearBottomM
	if g.in.Suspended {
		deep, shallow = math.Min(deep, g.in.FlyM+openWaterM), g.in.FlyM-openWaterM
	}
	shallow = math.Max(math.Min(shallow, g.in.FlyM), 0)
	w := Window{Slowest: g.speed(leaderM, deep), Fastest: g.speed(leaderM, shallow)}
	w.Slowest, w.Fastest = math.Max(0, w.Slowest-g.in.DriftMps), w.Fastest-g.in.DriftMps
	w.Known = leaderM > shallow+slack && w.Fastest > 0
	return w
}

// doubt gives the solved leader's length for a fly as light and as heavy in the water
// as it may be, and a retrieve a tenth faster and slower than was counted (assumed).
func (g gear) doubt(leaderM float64) profile.Estimate {
	e := profile.Exactly(leaderM)
	mps := g.in.Retrieve.Value + g.in.DriftMps
	light, heavy := g, g
	if g.in.FlyDensity == 0 {
		light.density, heavy.density = lightKgM3, heavyKgM3
	}
	if !g.in.FlyKg.Known {
		light.kg, heavy.kg = FlyKg/2, FlyKg*2
	}
	e.Low = math.Min(e.Best, heavy.length(g.in.FlyM, 0.9*mps))
	e.High = math.Max(e.Best, math.Min(tow.LongestM, light.length(g.in.FlyM, 1.1*mps)))
	return e
}

// A fly's density lies between these (common practice).
const (
	lightKgM3 = 3000.0
	heavyKgM3 = 6000.0
)
