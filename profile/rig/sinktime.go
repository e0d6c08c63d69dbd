package rig

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig/leader"
)

// sinkTimes says how long the point fly takes to its depth with the line's tip held, on
// the leader to cut and on the rule's; this has the doubt of the first, since a sink
// takes a moment to work out.
func (r *Rig) sinkTimes(g gear) {
	depth := math.Min(r.FlyM, nearlyM*r.LeaderM)
	if !r.Reachable {
		depth = math.Min(r.ReachM, depth)
	}
	r.SinkTime = r.sinkTime(g, r.LeaderM, depth, leader.Held)
	if math.Abs(r.RuleLeaderM-r.LeaderM) <= g.in.StepM && r.Reachable {
		r.RuleSinkTime = r.SinkTime
		return
	}
	s, err := g.leader(r.RuleLeaderM).SinkTime(r.FlyM, leader.Held)
	if r.SinkTime == nil || err != nil {
		return
	}
	if r.Correction > 0 {
		s *= r.Correction
	}
	r.RuleSinkTime = scaled(*r.SinkTime, s/r.SinkTime.Best)
	r.RuleSinkTime.Best = s
}

// nearlyM: a leader as long as the fly is deep takes for ever over the last inches.
const nearlyM = 0.97

// sinkTime works out one sink time with its doubt, set right by a bottom that was touched.
func (r *Rig) sinkTime(g gear, leaderM, depthM float64, tip leader.Tip) *profile.Estimate {
	if !(depthM > 0) {
		return nil
	}
	estimate := g.knownFly
	if r.FlyAssumed {
		estimate = g.anyFly
	}
	e, err := estimate(leaderM, depthM, tip)
	if err != nil {
		return nil
	}
	if r.Correction = g.correction(r.Kind, leaderM, tip); r.Correction > 0 {
		return scaled(e, r.Correction)
	}
	return &e
}

// scaled is an estimate times a factor.
func scaled(e profile.Estimate, by float64) *profile.Estimate {
	return &profile.Estimate{Best: e.Best * by, Low: e.Low * by, High: e.High * by}
}

// knownFly is the sink time of a fly of which the mass is known.
func (g gear) knownFly(leaderM, depthM float64, tip leader.Tip) (profile.Estimate, error) {
	return g.leader(leaderM).SinkTimeEstimate(depthM, tip)
}

// anyFly is that of a fly of which nothing is known: it may weigh half or twice as much,
// beside which nothing else counts.
func (g gear) anyFly(leaderM, depthM float64, tip leader.Tip) (profile.Estimate, error) {
	light, heavy := g, g
	light.kg, heavy.kg = g.kg/2, g.kg*2
	var s [3]float64
	for i, g := range []gear{g, heavy, light} {
		var err error
		if s[i], err = g.leader(leaderM).SinkTime(depthM, tip); err != nil {
			return profile.Estimate{}, err
		}
	}
	return profile.Estimate{Best: s[0], Low: math.Min(s[0], s[1]), High: math.Max(s[0], s[2])}, nil
}

// correction is what the last bottom contact on a rig of the kind says: how much longer
// the fly took than is worked out for it. 0 where there was none.
func (g gear) correction(kind Kind, leaderM float64, tip leader.Tip) float64 {
	for i := len(g.in.BottomContacts) - 1; i >= 0; i-- {
		c := g.in.BottomContacts[i]
		if c.Kind != kind || !touches(kind, leaderM, c.DepthM) {
			continue
		}
		l := g.leader(leaderM)
		l.BottomM = 0
		if s, err := l.SinkTime(c.DepthM, tip); err == nil && s > 0 {
			return slower(c.S, s)
		}
	}
	return 0
}

// Touches reports whether the fly touches a bottom so deep when it sinks on the rig, so that
// the time it took sets the sink time right.
func (r Rig) Touches(waterM float64) bool {
	leaderM := r.LeaderM
	if r.Kind == Hung {
		leaderM = r.HangM
	}
	return r.SinkTime != nil && touches(r.Kind, leaderM, waterM)
}

// touches reports whether a leader reaches a bottom so deep, on a rig whose leader sinks by
// itself.
func touches(kind Kind, leaderM, waterM float64) bool {
	return (kind == LongLeader || kind == Hung) && waterM <= leaderM
}

// CorrectedToLimit reports whether the bottom that was touched says more than is believed.
func (r Rig) CorrectedToLimit() bool {
	return r.Correction == mostSlower || r.Correction == leastSlower
}

// How much sink times are set right at most.
const (
	leastSlower = 0.5
	mostSlower  = 2.0
)

// slower is by how much to multiply sink times after the fly touched the bottom at
// touchedS seconds where it was worked out as workedOutS: their ratio, within 0.5 and 2,
// beyond which it is likelier that something else was touched. It is 1 if either is
// no time.
func slower(touchedS, workedOutS float64) float64 {
	if !(touchedS > 0 && workedOutS > 0) || math.IsInf(touchedS, 0) || math.IsInf(workedOutS, 0) {
		return 1
	}
	return math.Min(mostSlower, math.Max(leastSlower, touchedS/workedOutS))
}
