package rig

import (
	"math"
	"slices"
)

// Kind is one of the rigs.
type Kind string

// The rigs.
const (
	LongLeader   Kind = "long-leader"
	Hung         Kind = "hung"          // under an indicator, fixed or sliding
	Sinking      Kind = "sinking"       // a sinking line, cast and let down
	StraightDown Kind = "straight-down" // the line hangs under the boat
	Jig          Kind = "jig"           // through a hole in the ice
)

// Known says whether it is a rig that may be asked for.
func (k Kind) Known() bool {
	return slices.Contains([]Kind{LongLeader, Hung, Sinking, StraightDown}, k)
}

// Limits of common practice. A value that is past one by no more than slack, in its own
// unit, is still within: 13 ft less 1 ft is 12 ft in metres too.
const (
	HungToM   = 12 * 0.3048 // a fly this deep or less is hung, whatever the wind
	LongToM   = 25 * 0.3048 // deeper than this takes a sinking line
	downFromM = 12 * 0.3048 // fish shallower than this shy from the boat above them
	sunkFromM = 4 * 0.3048  // a sinking line in shallower water lies on the bottom
	calmMps   = 10 * 0.44704
	breezeMps = 5 * 0.44704 // a breeze that bows a line
	slack     = 1e-6
)

// Reason says why a rig was chosen or what limits it.
type Reason string

// The reasons: codes, which package report puts into words.
const (
	ShallowEnough Reason = "shallow enough" // the fly is no deeper than 12 ft
	LightWind     Reason = "light wind"     // 12 to 25 ft down, wind 10 mph or less
	WindUnknown   Reason = "wind unknown"   // 12 to 25 ft down
	Windy         Reason = "windy"          // over 10 mph bows a long leader
	TooDeep       Reason = "too deep"       // deeper than 25 ft
	YourChoice    Reason = "your choice"
	Preferred     Reason = "preferred"     // by the settings
	NoIndicators  Reason = "no indicators" // not allowed on this water
	OpenWater     Reason = "open water"    // the fish keep to it
	CappedByRule  Reason = "capped"        // the water's rule caps the leader
	TooLong       Reason = "too long"      // than the angler casts
	TooFast       Reason = "too fast"      // no leader that the angler casts holds the fly down at this retrieve
	OutOfReach    Reason = "out of reach"  // no sinking line is down within about two minutes
	UnderIce      Reason = "ice"           // or ice likely
	FewerFlies    Reason = "fewer flies"   // the water's rule allows no more
	NoShot        Reason = "no shot"       // nor added weight
	NoSwivel      Reason = "no swivel"     // which is added weight too
)

// choose picks the rig, the water's rules first: they come before the angler's own
// choice too. The runner-up is the next that can be fished there, "" where none can.
func (r *Rig) choose(in Input, longest float64) {
	if in.Ice {
		r.Kind, r.Why = Jig, []Reason{UnderIce}
		return
	}
	order, why := in.order()
	if (order[0] == Hung || in.Kind == Hung) && in.Rules.NoIndicator {
		r.Why = append(r.Why, NoIndicators)
	}
	order = slices.DeleteFunc(order, func(k Kind) bool { return !in.fishable(k, longest) && k != LongLeader })
	switch {
	case in.Kind != "" && !(in.Kind == Hung && in.Rules.NoIndicator):
		why, order = YourChoice, slices.Insert(order, 0, in.Kind)
	case in.Prefer != "" && in.fishable(in.Prefer, longest):
		why, order = Preferred, slices.Insert(order, 0, in.Prefer)
	}
	if r.Why == nil || why != ShallowEnough && why != OpenWater { // which speak for the indicator
		r.Why = append(r.Why, why)
	}
	r.take(in, longest, order)
}

// take takes the first of the rigs, and as the runner-up the next that can be fished.
func (r *Rig) take(in Input, longest float64, order []Kind) {
	r.Kind, r.RunnerUp = order[0], ""
	for _, k := range order[1:] {
		if k != r.Kind && in.fishable(k, longest) {
			r.RunnerUp = k
			return
		}
	}
}

// order is that of the rigs by depth and wind, the best first, and why (common practice):
// an indicator slides down to 25 ft and stands beside the long leader, and before it in
// wind and for fish in open water; deeper a fast sinking line, or one hung straight down.
func (in Input) order() ([]Kind, Reason) {
	windy := in.Wind.Or(0) > calmMps+slack
	switch shallow := in.FlyM <= HungToM+slack; {
	case in.FlyM > LongToM+slack && in.FlyM <= sunkM(fastestClass)+slack:
		return []Kind{Sinking, StraightDown}, TooDeep
	case in.FlyM > LongToM+slack:
		return []Kind{StraightDown}, OutOfReach
	case in.Suspended && shallow:
		return []Kind{Hung, LongLeader, Sinking}, OpenWater
	case in.Suspended:
		return []Kind{Hung, Sinking, StraightDown, LongLeader}, OpenWater
	case shallow && windy:
		return []Kind{Hung, Sinking, LongLeader}, ShallowEnough
	case shallow:
		return []Kind{Hung, LongLeader, Sinking}, ShallowEnough
	case windy:
		return []Kind{Hung, Sinking, StraightDown, LongLeader}, Windy
	case in.Wind.Known:
		return []Kind{LongLeader, Hung, Sinking, StraightDown}, LightWind
	}
	return []Kind{LongLeader, Hung, Sinking, StraightDown}, WindUnknown
}

// fishable says whether a rig reaches the fly's depth here, within the water's rules and
// on the longest leader.
func (in Input) fishable(k Kind, longest float64) bool {
	switch k {
	case Hung:
		return !in.Rules.NoIndicator && in.FlyM <= math.Min(LongToM, longest)+slack
	case LongLeader:
		return in.FlyM <= LongToM+slack && RuleLeader(in.WaterM) <= longest+slack
	case Sinking:
		return in.FlyM >= sunkFromM-slack && in.FlyM <= sunkM(fastestClass)+slack
	case StraightDown:
		return in.FlyM >= downFromM-slack
	}
	return false
}

// InOpenWater says that a fly so far above the bottom, more than 3 ft, is meant for fish in
// open water.
func InOpenWater(waterM, flyM float64) bool { return waterM-flyM > openWaterFromM+slack }

const openWaterFromM = 0.9144
