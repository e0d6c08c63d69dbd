// Package sampling says at which depth to read next: where the readings so far leave
// most to know. Each reading costs a minute or two, so it also says when it is
// enough.
//
// The rule: first just under the surface, then close above the bottom, then where
// lakes of that size have their break. From then on every mark on the line is
// weighed: the columns that the readings allow (layers.Ensemble) differ in the
// depth of the break and of the temperatures that matter to the fish, and a reading
// is worth how much of that difference it would settle. It is enough when that is
// less than would move the fly.
package sampling

import (
	"math"

	"coldseam/profile"
)

// Why is the reason for a depth, or for it being enough.
type Why string

// The reasons.
const (
	Surface     Why = "surface"   // nothing was read at the surface
	Bottom      Why = "bottom"    // nothing was read near the bottom
	Guess       Why = "guess"     // lakes of this size have their break about here
	Deeper      Why = "deeper"    // the bottom is not known, and it is still getting colder
	Thermocline Why = "break"     // it settles most about the break
	Isotherm    Why = "edge"      // it settles most about the depth of LevelC
	CloseEnough Why = "close"     // another reading would not move the fly
	NoGain      Why = "no gain"   // no reading would narrow the rest by much
	OneLayer    Why = "one layer" // hardly any change from top to bottom
	NoBreak     Why = "no break"  // some change, but no break in it: winter, or slowly colder
)

// Input is what the advice is made from.
type Input struct {
	Column  profile.Column   // may be empty
	Bottom  profile.Optional // under the boat, m
	Length  profile.Optional // of the lake, m
	Secchi  profile.Optional // depth, m
	LevelsC []float64        // the fish's limits of temperature
	MarkM   float64          // from one mark on the line to the next, m
	Skipped []float64        // depths the angler passed over, not asked for again, m
}

// Advice is the next depth, or Enough.
type Advice struct {
	Enough bool
	DepthM float64 // meaningless when Enough
	Why    Why
	FromM  float64 // the break, or LevelC, lies between these so far
	ToM    float64
	LevelC float64 // for Isotherm
}

// Limits of the rule.
const (
	underM       = 0.3  // how deep "just under the surface" is, and how far off the mud
	atEndM       = 0.5  // a reading this near to the surface or the bottom counts as it
	quietC       = 1.0  // less change than this from top to bottom is one layer
	endsN        = 3    // readings before the marks are weighed
	thermoclineM = 0.9  // a break known to about 3 ft, and
	isothermM    = 0.75 // a limit known to about 2.5 ft, are known well enough
	thinM        = 1.5  // and the readings around the break no further apart, about 5 ft;
	gainM        = 0.03 // a reading that settles less than this is not worth taking
	manyN        = 12   // depths are always enough
	deepM        = 18.0 // about 60 ft, as deep as sinking lines reach: where the search for the bottom stops at first
	belowC       = 0.5  // a last metre that falls less than this is the deep water's
	stepM        = 2.0  // down, while the bottom is not known
)

// Find advises.
func Find(in Input) Advice {
	if a, ok := in.byRule(); ok {
		return a
	}
	return in.weigh(newEvaluator(in.Column, in.LevelsC))
}

// weigh weighs the marks.
func (in Input) weigh(k *evaluator) Advice {
	c := in.Column
	done := Advice{Enough: true, Why: CloseEnough, FromM: k.targets[0].low, ToM: k.targets[0].high}
	if !k.layered {
		done.Why, done.FromM, done.ToM = NoBreak, c.First().DepthM, c.Last().DepthM
	}
	if k.resolved() {
		return done
	}
	if done.Why == CloseEnough {
		done.Why = NoGain
	}
	if c.Len() >= manyN {
		return done
	}
	from, to := math.Max(c.First().DepthM, atEndM), c.Last().DepthM-in.MarkM
	if in.Bottom.Known {
		to = math.Min(to, in.Bottom.Value-atEndM)
	}
	z, left, a, ok := k.bestMark(in, from, to)
	if !ok || k.lossNow()-left < gainM {
		return done
	}
	return Advice{Why: a.why, DepthM: z, FromM: a.low, ToM: a.high, LevelC: a.levelC}
}
