package rig

import "slices"

// Kind is one of the three rigs.
type Kind string

// The rigs.
const (
	LongLeader Kind = "long-leader"
	Hung       Kind = "hung"
	Sinking    Kind = "sinking"
)

// Known says whether it is one of the three.
func (k Kind) Known() bool { return k == LongLeader || k == Hung || k == Sinking }

// Limits of common practice: a fly down to HungToM is hung, one deeper than LongToM
// takes a sinking line. A value that is past one by no more than slack, in its own
// unit, is still within: 13 ft less 1 ft is 12 ft in metres too.
const (
	HungToM   = 12 * 0.3048 // a fly this deep or less is hung
	LongToM   = 25 * 0.3048 // deeper than this takes a sinking line
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
	NoIndicators  Reason = "no indicators" // not allowed on this water
	OpenWater     Reason = "open water"    // the fish keep to it
	CappedByRule  Reason = "capped"        // the water's rule caps the leader
	TooLong       Reason = "too long"      // than the angler casts
	TooFast       Reason = "too fast"      // no leader that the angler casts holds the fly down at this retrieve
	FewerFlies    Reason = "fewer flies"   // the water's rule allows no more
	NoShot        Reason = "no shot"       // nor added weight
)

// choose picks the rig, the water's rules first: they come before the angler's own
// choice too.
func (r *Rig) choose(in Input) {
	if in.Kind == Hung && in.Rules.NoIndicator {
		in.Kind = ""
		r.Why = append(r.Why, NoIndicators)
	}
	kind, runnerUp, why := in.asked()
	if in.Kind == "" {
		kind, runnerUp, why = in.usual()
	}
	r.Kind, r.RunnerUp = kind, runnerUp
	if !slices.Contains(r.Why, why) {
		r.Why = append(r.Why, why)
	}
}

// asked is the angler's own choice.
func (in Input) asked() (kind, runnerUp Kind, why Reason) {
	if in.Kind == LongLeader {
		return LongLeader, Sinking, YourChoice
	}
	return in.Kind, LongLeader, YourChoice
}

// usual is the rig by depth and wind (common practice).
func (in Input) usual() (kind, runnerUp Kind, why Reason) {
	hangs, reaches, indicators := in.FlyM <= HungToM+slack, in.FlyM <= LongToM+slack, !in.Rules.NoIndicator
	switch {
	case in.Suspended && indicators && reaches:
		return Hung, Sinking, OpenWater
	case !reaches && indicators: // a slider hangs a fly deeper than anybody casts a leader
		return Sinking, Hung, TooDeep
	case !reaches:
		return Sinking, LongLeader, TooDeep
	case hangs && indicators:
		return Hung, LongLeader, ShallowEnough
	case hangs:
		return LongLeader, Sinking, NoIndicators
	case in.Wind.Or(0) > calmMps+slack:
		return Sinking, LongLeader, Windy
	case in.Wind.Known:
		return LongLeader, Sinking, LightWind
	}
	return LongLeader, Sinking, WindUnknown
}

// InOpenWater says that a fly so far above the bottom, more than 3 ft, is meant for fish in
// open water.
func InOpenWater(waterM, flyM float64) bool { return waterM-flyM > openWaterFromM+slack }

const openWaterFromM = 0.9144
