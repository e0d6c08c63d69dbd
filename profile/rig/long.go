package rig

import (
	"cmp"
	"math"
	"slices"

	"coldseam/profile"
)

// nearBottomM: a fly no more than 2 ft above the bottom still fishes it (common
// practice). A fly in open water may be a foot off.
const (
	nearBottomM = 0.6096
	openWaterM  = 0.3048
)

// allowed takes away what the water's rules do not allow, and says how many flies are tied on.
func (r *Rig) allowed(in Input) Input {
	in.Flies = max(in.Flies, 1)
	if most := in.Rules.MaxFlies; most > 0 && in.Flies > most {
		in.Flies = most
		r.Less = append(r.Less, FewerFlies)
	}
	if in.Rules.NoAddedWeight && in.ShotKg > 0 {
		in.ShotKg = 0
		r.Less = append(r.Less, NoShot)
	}
	r.FlyAssumed = !in.FlyKg.Known
	r.FlyKg = in.FlyKg.Or(cmp.Or(in.UsualKg, FlyKg))
	r.FliesTaken = in.Flies
	return in
}

// long is the long leader. Where the retrieve is stated it is the one that puts the
// point fly at its depth, else the rule's with the window of retrieves in which that
// holds. Where it may not be as long, the answer is a sinking line.
func (r *Rig) long(in Input, longest float64) {
	g := r.gear(in)
	wanted := r.RuleLeaderM
	if in.Retrieve.Known {
		r.Solved, r.RetrieveMps = true, in.Retrieve.Value
		wanted = g.length(in.FlyM, in.Retrieve.Value+in.DriftMps)
	}
	r.LeaderM = math.Min(up(wanted, in.StepM), down(longest, in.StepM)) // rounded up it may not pass the limit
	if r.Solved && wanted <= longest+slack {
		r.LeaderM = math.Min(math.Max(math.Round(wanted/in.StepM), 1)*in.StepM, down(longest, in.StepM))
		r.Leader = g.doubt(r.LeaderM)
	}
	if wanted > longest+slack {
		r.tooShort(in, g, longest)
		if r.Kind != LongLeader {
			return
		}
	}
	r.Window = g.window(r.LeaderM)
	r.RuleWindow = g.window(r.RuleLeaderM)
	r.flies(g)
	r.sinkTimes(g)
}

// tooShort is a leader that may not be as long as is wanted: by the water's rule, or
// since nobody casts it. Where it leaves the fly too far from its depth, and no rig was
// asked for, the answer is the next that can be fished; a sinking line before an
// indicator where the retrieve is the angler's, since a hung fly is not retrieved.
func (r *Rig) tooShort(in Input, g gear, longest float64) {
	r.Reachable = false
	r.CappedM = r.LeaderM
	above := in.WaterM - in.FlyM // the bottom
	if r.Solved {
		r.tooShortForRetrieve(in, g)
	} else {
		r.ReachM = math.Max(0, r.LeaderM/ruleShare-above)
		r.Why = append(r.Why, in.limited())
	}
	near := nearBottomM
	if in.Suspended {
		near = openWaterM
	}
	missed := in.FlyM - r.ReachM
	if in.Kind == "" && (missed > near-above+slack || r.Solved && missed > near) {
		order, _ := in.order()
		order = slices.DeleteFunc(order, func(k Kind) bool { return k == LongLeader || !in.fishable(k, longest) })
		if i := slices.Index(order, Sinking); r.Solved && i > 0 {
			order = slices.Insert(slices.Delete(order, i, i+1), 0, Sinking)
		}
		if len(order) == 0 { // too shallow for a sinking line, and no indicator is allowed
			return
		}
		r.Why = slices.DeleteFunc(r.Why, func(w Reason) bool { return w == LightWind || w == WindUnknown }) // which speak for a long leader
		if r.take(in, longest, order); r.Kind == Hung {
			r.hung(in, longest)
		} else {
			r.sinking(in, longest)
		}
		r.Reachable = false // on the rig that was wanted
	}
}

// tooShortForRetrieve says what reaches the depth on the leader that is allowed: a slower
// retrieve or a heavier fly.
func (r *Rig) tooShortForRetrieve(in Input, g gear) {
	speed := in.Retrieve.Value + in.DriftMps
	r.ReachM = math.Min(g.depth(r.LeaderM, speed), in.FlyM)
	why := TooFast
	if in.Rules.MaxLeaderM > 0 && in.Rules.MaxLeaderM < in.LongestM {
		why = CappedByRule
	}
	r.Why = append(r.Why, why)
	if v := g.speed(r.LeaderM, in.FlyM); v > in.DriftMps {
		r.NeedMps = profile.Some(v - in.DriftMps)
	}
	if kg, err := g.leader(r.LeaderM).FlyFor(in.FlyM, speed); err == nil && kg > 0 {
		r.NeedKg = profile.Some(kg)
	}
}

// limited says what keeps a leader shorter than wanted: the water's rule, or the
// angler's casting where that is the stricter.
func (in Input) limited() Reason {
	if in.Rules.MaxLeaderM > 0 && in.Rules.MaxLeaderM <= in.LongestM {
		return CappedByRule
	}
	return TooLong
}

// flies gives the depth of every fly: at the stated retrieve, else in the middle of
// the window.
func (r *Rig) flies(g gear) {
	speed := g.in.Retrieve.Value
	if !g.in.Retrieve.Known && r.Window.Known {
		speed = (r.Window.Slowest + r.Window.Fastest) / 2
	}
	shape, err := g.leader(r.LeaderM).Tow(speed + g.in.DriftMps)
	if err != nil {
		return
	}
	for i := range g.places(r.LeaderM) {
		r.FlyDepths = append(r.FlyDepths, math.Min(shape.Bodies[i].DepthM, g.in.WaterM))
	}
}
