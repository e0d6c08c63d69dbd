package rig

import (
	"math"
	"slices"

	"coldseam/profile"
)

// Kind is one of the three rigs.
type Kind string

// The rigs.
const (
	LongLeader Kind = "long-leader"
	Hung       Kind = "hung"
	Sinking    Kind = "sinking"
)

// Limits of common practice: a fly down to HungToM is hung, one deeper than LongToM
// takes a sinking line. A value that is past one by no more than slack, in its own
// unit, is still within: 13 ft less 1 ft is 12 ft in metres too.
const (
	HungToM   = 12 * 0.3048 // a fly this deep or less is hung
	LongToM   = 25 * 0.3048 // deeper than this takes a sinking line
	calmMps   = 10 * 0.44704
	slack     = 1e-6
	rodSpareM = 0.3048 // a fixed indicator needs this much less than the rod
)

// Input is what a rig is worked out from.
type Input struct {
	WaterM    float64          // depth of water under the fly
	FlyM      float64          // depth of the fly
	Wind      profile.Optional // m/s
	Suspended bool
	Kind      Kind // the angler's own choice, "" to have it chosen
	Rules     Rules
	Stock     []Piece
	StepM     float64 // to which pieces are cut: 6 in, or 0.1 m
	LongestM  float64 // the longest leader the angler casts
	RodM      float64
	FlyKg     profile.Optional // dry mass of the fly
}

// Defaults for what the settings may leave open.
const (
	LongestM = 30 * 0.3048
	RodM     = 10 * 0.3048
	StepFtM  = 0.1524
	StepM    = 0.1
)

// Reason says why a rig was chosen or what limits it.
type Reason string

// The reasons: codes, which package say puts into words.
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
)

// Part is a piece cut for the leader.
type Part struct {
	Name       string
	LengthM    float64
	DiameterMM float64 // 0 when not known
}

// Rig is the answer.
type Rig struct {
	Kind          Kind
	LeaderM       float64 // the one to cut, whole steps
	RuleLeaderM   float64 // depth of water plus a quarter
	FlyM          float64
	Reachable     bool    // the leader reaches the fly's depth within rule and casting
	ReachM        float64 // the depth that a capped leader reaches by the rule
	CappedM       float64 // what is allowed of a long leader, where that is less than the rule's; else 0
	HangM         float64 // below the indicator, for Hung
	SlidingNeeded bool    // the indicator must slide: it hangs longer than the rod
	Parts         []Part
	RunnerUp      Kind
	Why           []Reason
	Wait          *profile.Estimate // s, until the fly is down; nil for a sinking line of unknown class
}

// RuleLeader is the trade's rule for the leader's length, from the depth of water:
// a quarter more (common practice: 15 ft of water wants 19 to 20 ft).
func RuleLeader(waterM float64) float64 { return 1.25 * waterM }

// Find works out the rig. A step of nothing is taken as StepM.
func Find(in Input) Rig {
	if !(in.StepM > 0) {
		in.StepM = StepM
	}
	r := Rig{RuleLeaderM: RuleLeader(in.WaterM), FlyM: in.FlyM, Reachable: true}
	r.choose(in)
	longest := in.LongestM
	if in.Rules.MaxLeaderM > 0 {
		longest = math.Min(longest, in.Rules.MaxLeaderM)
	}
	switch r.Kind {
	case LongLeader:
		r.long(in, longest)
	case Hung:
		r.hung(in, longest)
	case Sinking:
		r.sinking(in, longest)
	}
	r.Parts = Cut(r.LeaderM, in.StepM, in.Stock)
	return r
}

// choose picks the rig by depth and wind (common practice), the water's rules
// first: they come before the angler's own choice too.
func (r *Rig) choose(in Input) {
	noHang := in.Rules.NoIndicator
	if in.Kind == Hung && noHang {
		in.Kind = ""
		r.Why = append(r.Why, NoIndicators)
	}
	windy := in.Wind.Known && in.Wind.Value > calmMps+slack
	hangs, reaches := in.FlyM <= HungToM+slack, in.FlyM <= LongToM+slack
	switch {
	case in.Kind != "":
		r.pick(in.Kind, LongLeader, YourChoice)
		if in.Kind == LongLeader {
			r.RunnerUp = Sinking
		}
	case in.Suspended && !noHang && reaches:
		r.pick(Hung, Sinking, OpenWater)
	case !reaches && noHang:
		r.pick(Sinking, LongLeader, TooDeep)
	case !reaches: // a slider hangs a fly deeper than anybody casts a leader
		r.pick(Sinking, Hung, TooDeep)
	case hangs && !noHang:
		r.pick(Hung, LongLeader, ShallowEnough)
	case hangs:
		r.pick(LongLeader, Sinking, NoIndicators)
	case windy:
		r.pick(Sinking, LongLeader, Windy)
	case in.Wind.Known:
		r.pick(LongLeader, Sinking, LightWind)
	default:
		r.pick(LongLeader, Sinking, WindUnknown)
	}
}

func (r *Rig) pick(kind, runnerUp Kind, why Reason) {
	r.Kind, r.RunnerUp = kind, runnerUp
	if !slices.Contains(r.Why, why) {
		r.Why = append(r.Why, why)
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

// nearBottomM: a fly no more than 2 ft above the bottom still fishes it (common
// practice).
const nearBottomM = 0.6096

// long is the long leader: the rule's length, or as much of it as is allowed. Where
// that leaves the fly too far above the bottom, the answer is a sinking line.
func (r *Rig) long(in Input, longest float64) {
	r.LeaderM = math.Min(up(r.RuleLeaderM, in.StepM), down(longest, in.StepM)) // rounded up it may not pass the limit
	if r.RuleLeaderM > longest+slack {
		r.Reachable = false
		r.ReachM = math.Max(0, r.LeaderM/1.25-(in.WaterM-in.FlyM))
		r.CappedM = r.LeaderM
		r.Why = append(r.Why, in.limited())
		if in.Kind == "" && in.WaterM-r.ReachM > nearBottomM+slack {
			r.Kind, r.RunnerUp = Sinking, LongLeader
			r.sinking(in, longest)
			return
		}
	}
	depth := in.FlyM
	if !r.Reachable {
		depth = r.ReachM
	}
	best := waitPerM(in.FlyKg) * depth
	r.Wait = &profile.Estimate{Best: best, Low: 0.6 * best, High: 1.4 * best}
}

// waitPerM is the seconds per metre that a fly takes on a long leader: 5 s a foot
// for a light one, 3.5 s for a heavy one, give or take four tenths (common practice,
// a rule of thumb).
func waitPerM(fly profile.Optional) float64 {
	const light, heavy = 5 / 0.3048, 3.5 / 0.3048
	switch {
	case !fly.Known:
		return (light + heavy) / 2
	case fly.Value >= heavyFlyKg:
		return heavy
	}
	return light
}

// heavyFlyKg: a fly with a tungsten bead of 3 mm or more weighs about this.
const heavyFlyKg = 0.0003

// hung is the fly under an indicator: the leader runs from the line through the
// indicator to the fly, with 3 ft to spare above it, and is at least 9 ft long
// (common practice).
func (r *Rig) hung(in Input, longest float64) {
	r.HangM = in.FlyM
	r.LeaderM = up(math.Max(in.FlyM+0.9144, 2.7432), in.StepM)
	if r.LeaderM > longest+slack {
		r.LeaderM = down(longest, in.StepM)
		r.Why = append(r.Why, in.limited())
		if r.LeaderM < in.FlyM-slack {
			r.Reachable = false
			r.ReachM, r.HangM = r.LeaderM, r.LeaderM
		}
	}
	r.SlidingNeeded = r.HangM > in.RodM-rodSpareM+slack
	best := 1.5 / 0.3048 * in.FlyM
	r.Wait = &profile.Estimate{Best: best, Low: best / 1.5, High: best * 4 / 3}
}

// sinking is a short leader on a sinking line: 9 ft, within the rule; a long one
// would ride above the line (common practice).
func (r *Rig) sinking(in Input, longest float64) {
	r.LeaderM = down(math.Min(2.7432, longest), in.StepM)
}

// up and down round a length to whole steps.
func up(m, step float64) float64   { return math.Ceil(m/step-1e-6) * step }
func down(m, step float64) float64 { return math.Floor(m/step+1e-6) * step }
