package rig

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/sink"
)

// waits says how long the point fly takes to its depth with the line's tip held, on
// the leader to cut and on the rule's; this has the doubt of the first, since a sink
// takes a moment to work out.
func (r *Rig) waits(g gear) {
	depth := math.Min(r.FlyM, nearlyM*r.LeaderM)
	if !r.Reachable {
		depth = math.Min(r.ReachM, depth)
	}
	r.SinkTime = r.wait(g, r.LeaderM, depth, sink.Held)
	if math.Abs(r.RuleLeaderM-r.LeaderM) <= g.in.StepM && r.Reachable {
		r.RuleSinkTime = r.SinkTime
		return
	}
	s, err := sink.Wait(g.sunk(r.RuleLeaderM), r.FlyM, sink.Held)
	if r.SinkTime == nil || err != nil {
		return
	}
	if r.Correction > 0 {
		s *= r.Correction
	}
	share := s / r.SinkTime.Best
	r.RuleSinkTime = &profile.Estimate{Best: s, Low: r.SinkTime.Low * share, High: r.SinkTime.High * share}
}

// nearlyM: a leader as long as the fly is deep takes for ever over the last inches.
const nearlyM = 0.97

// wait works out one wait with its doubt, set right by a bottom that was touched.
func (r *Rig) wait(g gear, leaderM, depthM float64, tip sink.Tip) *profile.Estimate {
	if !(depthM > 0) {
		return nil
	}
	estimate := sink.WaitEstimate
	if r.FlyAssumed {
		estimate = g.anyFly(leaderM)
	}
	e, err := estimate(g.sunk(leaderM), depthM, tip)
	if err != nil {
		return nil
	}
	r.Correction = g.correction(r.Kind, leaderM, tip)
	if r.Correction > 0 {
		e.Best, e.Low, e.High = e.Best*r.Correction, e.Low*r.Correction, e.High*r.Correction
	}
	return &e
}

// anyFly is the wait of a fly of which nothing is known: it may weigh half or twice as
// much, beside which nothing else counts.
func (g gear) anyFly(leaderM float64) func(sink.Rig, float64, sink.Tip) (profile.Estimate, error) {
	return func(rig sink.Rig, depthM float64, tip sink.Tip) (profile.Estimate, error) {
		light, heavy := g, g
		light.kg, heavy.kg = g.kg/2, g.kg*2
		var s [3]float64
		for i, rig := range []sink.Rig{rig, heavy.sunk(leaderM), light.sunk(leaderM)} {
			var err error
			if s[i], err = sink.Wait(rig, depthM, tip); err != nil {
				return profile.Estimate{}, err
			}
		}
		return profile.Estimate{Best: s[0], Low: math.Min(s[0], s[1]), High: math.Max(s[0], s[2])}, nil
	}
}

// correction is what the last bottom touched on a rig of the kind says: how much
// longer the fly took than is worked out for it. 0 where none was touched.
func (g gear) correction(kind Kind, leaderM float64, tip sink.Tip) float64 {
	for i := len(g.in.BottomContacts) - 1; i >= 0; i-- {
		t := g.in.BottomContacts[i]
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
