package rig

import (
	"math"

	"coldseam/profile"
)

// Input is what a rig is worked out from.
type Input struct {
	WaterM    float64          // depth of water under the fly
	FlyM      float64          // depth of the fly
	Wind      profile.Optional // m/s
	Suspended bool
	Ice       bool // or ice likely: the fish are reached through a hole
	Kind      Kind // the angler's own choice, "" to have it chosen
	Rules     Rules
	StepM     float64 // to which pieces are cut: 6 in, or 0.1 m
	Tackle

	FlyKg      profile.Optional // dry mass of the point fly
	UsualKg    float64          // that of the fly usual for the fish, where none is named; 0: FlyKg of this package
	Teeth      bool             // the fish bites through tippet
	FlyDensity float64          // kg/m3 of its hook, bead and dressing together; 0: not known
	ShotKg     float64          // pinched on a foot above the point fly
	Retrieve   profile.Optional // m/s: line retrieved divided by all the time it took, pauses too
	DriftMps   float64          // of the line's tip against the water; 0 at anchor
	WaterC     profile.Optional // temperature of the water
}

// Steps to which pieces are cut.
const (
	StepFtM = 0.1524 // 6 in
	StepM   = 0.1
)

// Step is that of an angler who measures in feet, or does not.
func Step(feet bool) float64 {
	if feet {
		return StepFtM
	}
	return StepM
}

// Part is a piece cut for the leader.
type Part struct {
	Name       string
	LengthM    float64
	DiameterMM float64 // at its thin end; 0 when not known
	ThickMM    float64 // at its thick end, of a tapered leader; 0 for level line
	Material   string  // "nylon", "fluorocarbon" or ""
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
	SinkTime      *profile.Estimate // s, until the fly is down

	Leader       profile.Estimate  // LeaderM with its doubt
	Solved       bool              // for the retrieve that was stated, else the rule's
	RetrieveMps  float64           // that retrieve
	WindLeft     bool              // the wind drifts the line by something that is not worked in
	Window       Window            // of retrieves, on the leader to cut
	RuleWindow   Window            // on the rule's leader
	RuleSinkTime *profile.Estimate // s, on the rule's leader
	FlyDepths    []float64         // the point fly's and the droppers', at the stated retrieve or in the middle of the window
	LiftM        float64           // by which the drift lifts a hung fly
	NeedMps      profile.Optional  // the fastest retrieve that would do, where the stated one does not
	NeedKg       profile.Optional  // the fly that would do
	Class        int               // of the sinking line to take, where the angler's own is not known or too slow; else 0
	ClassAssumed bool              // the line is of that class
	sinkMps      float64           // at which the sinking line sinks
	OwnLineS     float64           // s, that the angler's own line would take, where that is too long; else 0
	SwivelM      float64           // of a swivel above the fly; 0: none
	Spool        *Spool            // which tippet to take of several, else nil
	AddBite      bool              // a bite tippet is needed, and the stock has none
	FlyKg        float64           // of the fly it is worked out for
	FlyAssumed   bool              // of what weight it is was not said
	FliesTaken   int               // how many flies are tied on
	Less         []Reason          // what the water's rules took away
	Course       Course            // of line and leader in the water, for a drawing
	Correction   float64           // of the sink times by a bottom that was touched; 0: none
}

// Window is a range of retrieves in m/s: any slower and the fly lies on the bottom,
// any faster and it is over the water to fish. Known is false where there is none.
type Window struct {
	Slowest, Fastest float64
	Known            bool
}

// RuleLeader is the trade's rule for the leader's length, from the depth of water:
// a quarter more (common practice: 15 ft of water wants 19 to 20 ft).
func RuleLeader(waterM float64) float64 { return ruleShare * waterM }

const ruleShare = 1.25

// Find works out the rig. A step of nothing is taken as StepM.
func Find(in Input) Rig {
	if !(in.StepM > 0) {
		in.StepM = StepM
	}
	r := Rig{RuleLeaderM: RuleLeader(in.WaterM), FlyM: in.FlyM, Reachable: true}
	in = r.allowed(in)
	r.WindLeft = in.Wind.Known && in.Wind.Value > breezeMps+slack && in.DriftMps == 0
	longest := in.LongestM
	if in.Rules.MaxLeaderM > 0 {
		longest = math.Min(longest, in.Rules.MaxLeaderM)
	}
	r.choose(in, longest)
	r.Spool = in.spool(r.FlyKg)
	r.AddBite = in.Teeth && !has(in.Stock, Bite)
	switch r.Kind {
	case LongLeader:
		r.long(in, longest)
	case Hung:
		r.hung(in, longest)
	case Sinking:
		r.sinking(in, longest)
	case StraightDown:
		r.straightDown(in, longest)
	case Jig:
		r.jig(in)
	}
	r.Parts = r.gear(in).parts(r.LeaderM, in.StepM)
	r.course(in)
	if !(r.Leader.High > 0) {
		r.Leader = profile.Exactly(r.LeaderM)
	}
	return r
}

// up and down round a length to whole steps.
func up(m, step float64) float64   { return math.Ceil(m/step-1e-6) * step }
func down(m, step float64) float64 { return math.Floor(m/step+1e-6) * step }
