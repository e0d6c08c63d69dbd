package rig

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/sink"
)

// waits says how long the point fly takes to its depth with the line's tip held, on
// the leader to cut and on the rule's.
func (r *Rig) waits(g gear) {
	depth := math.Min(r.FlyM, nearlyM*r.LeaderM)
	if !r.Reachable {
		depth = math.Min(r.ReachM, depth)
	}
	r.Wait = r.wait(g, r.LeaderM, depth, sink.Held)
	switch {
	case math.Abs(r.RuleLeaderM-r.LeaderM) <= g.in.StepM:
		r.RuleWait = r.Wait
	default:
		r.RuleWait = r.wait(g, r.RuleLeaderM, r.FlyM, sink.Held)
	}
}

// nearlyM: a leader as long as the fly is deep takes for ever over the last inches.
const nearlyM = 0.97

// wait works out one wait with its doubt, set right by a bottom that was touched.
func (r *Rig) wait(g gear, leaderM, depthM float64, tip sink.Tip) *profile.Estimate {
	if !(depthM > 0) {
		return nil
	}
	e, err := sink.WaitEstimate(g.sunk(leaderM), depthM, tip)
	if err != nil {
		return nil
	}
	if r.FlyAssumed { // it may weigh half or twice as much
		light, heavy := g, g
		light.kg, heavy.kg = g.kg/2, g.kg*2
		late, err1 := sink.Wait(light.sunk(leaderM), depthM, tip)
		soon, err2 := sink.Wait(heavy.sunk(leaderM), depthM, tip)
		if err1 == nil && err2 == nil {
			e.Low, e.High = e.Best-math.Hypot(e.Best-e.Low, e.Best-soon), e.Best+math.Hypot(e.High-e.Best, late-e.Best)
		}
	}
	r.Correction = g.correction(r.Kind, leaderM, tip)
	if r.Correction > 0 {
		e.Best, e.Low, e.High = e.Best*r.Correction, e.Low*r.Correction, e.High*r.Correction
	}
	return &e
}

// correction is what the last bottom touched on a rig of the kind says: how much
// longer the fly took than is worked out for it. 0 where none was touched.
func (g gear) correction(kind Kind, leaderM float64, tip sink.Tip) float64 {
	for i := len(g.in.Touched) - 1; i >= 0; i-- {
		t := g.in.Touched[i]
		if t.Kind != kind || t.DepthM > leaderM {
			continue
		}
		made := g.sunk(leaderM)
		made.BottomM = 0
		if s, err := sink.Wait(made, t.DepthM, tip); err == nil && s > 0 {
			return sink.Scale(t.S, s)
		}
	}
	return 0
}
