package rig

import (
	"math"
	"slices"

	"coldseam/profile/rig/leader"
)

// Lengths of common practice.
const (
	spareM    = 0.9144 // of leader above an indicator
	rodSpareM = 0.3048 // a fixed indicator needs this much less than the rod
	nineFtM   = 2.7432 // the shortest leader that turns over; and the leader of a sinking line
	swivelM   = 0.4572 // of a swivel above the fly, 18 in: 18 to 24 are usual
)

// A small barrel swivel, size 14 (from memory), of brass.
const (
	swivelKg   = 0.0001
	swivelKgM3 = 8500
)

// hung is the fly under an indicator: the leader runs from the line through the
// indicator to the fly, with 3 ft to spare above it, and is at least 9 ft long
// (common practice). It is level, with a swivel where the water's rules allow one.
func (r *Rig) hung(in Input, longest float64) {
	r.HangM = in.FlyM
	r.LeaderM = up(math.Max(in.FlyM+spareM, nineFtM), in.StepM)
	if r.LeaderM > longest+slack {
		r.LeaderM = down(longest, in.StepM)
		if why := in.limited(); !slices.Contains(r.Why, why) {
			r.Why = append(r.Why, why)
		}
		if r.LeaderM < in.FlyM-slack {
			r.Reachable = false
			r.ReachM, r.HangM = r.LeaderM, r.LeaderM
		}
	}
	r.SlidingNeeded = r.HangM > in.RodM-rodSpareM+slack
	switch at := up(swivelM, in.StepM); {
	case r.HangM <= at+in.StepM: // it would hang beside the indicator
	case in.Rules.NoAddedWeight:
		r.Less = append(r.Less, NoSwivel)
	default:
		r.SwivelM = at
	}
	g := r.gear(in)
	r.FlyDepths = g.places(r.HangM) // it hangs straight but for the drift
	if shape, err := g.leader(r.HangM).Tow(in.DriftMps); err == nil && in.DriftMps > 0 {
		r.LiftM = math.Max(0, r.HangM-shape.Point.DepthM)
		for i := range r.FlyDepths {
			r.FlyDepths[i] = shape.Bodies[i].DepthM
		}
	}
	r.SinkTime = r.sinkTime(g, r.HangM, nearlyM*r.HangM, leader.Slides) // the fly pulls the indicator after it
}
