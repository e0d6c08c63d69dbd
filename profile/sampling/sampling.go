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
	"slices"

	"coldseam/profile"
	"coldseam/profile/water"
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
	LevelC float64 // for Edge
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
	c := in.Column
	if c.Len() == 0 {
		z := in.up(underM)
		for in.skips(z) {
			z += in.MarkM
		}
		return Advice{Why: Surface, DepthM: z}
	}
	if z := math.Min(in.up(underM), math.Max(0, in.down(c.First().DepthM-in.MarkM))); c.First().DepthM > atEndM && !in.skips(z) {
		return Advice{Why: Surface, DepthM: z}
	}
	if a, ok := in.deeper(); ok {
		return a
	}
	first, last := c.First(), c.Last()
	if math.Abs(first.TempC-last.TempC) < quietC && c.Len() >= endsN || c.Len() < 2 {
		return Advice{Enough: true, Why: OneLayer, FromM: first.DepthM, ToM: math.Max(last.DepthM, in.Bottom.Value)}
	}
	if c.Len() < endsN {
		if z, ok := in.freeMark(in.expectedThermocline()); ok {
			return Advice{Why: Guess, DepthM: z, FromM: first.DepthM, ToM: last.DepthM}
		}
	}
	return in.weigh()
}

// deeper advises to read below all that was read: close above the bottom, or as deep as
// lines usually reach; from there on as long as a greater step may lie below; and step by
// step where the bottom is not known or was passed over.
func (in Input) deeper() (Advice, bool) {
	c, last, limit := in.Column, in.Column.Last(), deepM
	if in.Bottom.Known {
		deepest := math.Min(in.Bottom.Value, math.Max(deepM, 2*in.expectedThermocline()))
		near := in.down(deepest - underM)
		if last.DepthM >= deepest-math.Max(atEndM, underM+in.MarkM) || near < last.DepthM+in.MarkM-1e-6 {
			z, ok := in.below()
			return Advice{Why: Deeper, DepthM: z}, ok && in.mayHideThermocline()
		}
		if !in.skips(near) {
			return Advice{Why: Bottom, DepthM: near}, true
		}
		limit = near
	}
	z := in.down(last.DepthM + stepM + in.MarkM/2)
	for in.skips(z) {
		z += stepM
	}
	wanted := c.Len() < endsN || !in.deepWaterReached() || in.mayHideThermocline()
	within := z <= limit || !in.Bottom.Known && (c.Len() < endsN || in.mayHideThermocline() && c.Len() < manyN)
	return Advice{Why: Deeper, DepthM: z}, wanted && within
}

// below gives a mark between the deepest reading and the known bottom: half way, or the
// last one where three readings found nothing, since one more then tells all.
func (in Input) below() (depthM float64, ok bool) {
	c, last := in.Column, in.Column.Last().DepthM
	floor := in.down(in.Bottom.Value - underM)
	z := math.Min(floor, in.down(math.Max(last+stepM, (last+in.Bottom.Value)/2)))
	if c.Len() >= endsN && math.Abs(c.First().TempC-c.Last().TempC) < quietC && !in.skips(floor) {
		z = floor
	}
	return z, z > last+in.MarkM-1e-6 && !in.skips(z)
}

// hidden reports whether a greater step than any between two readings may lie below the
// deepest: the last step is the greatest, and the water under it could gain more density
// yet before it is as dense as water gets.
func (in Input) mayHideThermocline() bool {
	c, last, most := in.Column, 0.0, 0.0
	for i := 1; i < c.Len(); i++ {
		last = math.Max(0, water.Density(c.At(i).TempC)-water.Density(c.At(i-1).TempC))
		most = math.Max(most, last)
	}
	deepest := c.Last().TempC
	left := water.Density(water.MaxDensityTempC) - water.Density(deepest)
	return deepest > water.MaxDensityTempC && last >= most && left > last
}

// weigh weighs the marks.
func (in Input) weigh() Advice {
	c := in.Column
	k := newEvaluator(c, in.LevelsC)
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

// up and down give the mark at or next to a depth.
func (in Input) up(z float64) float64   { return math.Ceil(z/in.MarkM-1e-6) * in.MarkM }
func (in Input) down(z float64) float64 { return math.Floor(z/in.MarkM+1e-6) * in.MarkM }

// settled reports whether the deepest readings have reached the even water under a
// break.
func (in Input) deepWaterReached() bool {
	c := in.Column
	a, b := c.At(c.Len()-2), c.Last()
	fallen := c.First().TempC - b.TempC
	return fallen >= quietC && (a.TempC-b.TempC)/(b.DepthM-a.DepthM) < belowC
}

// guess is where the break may lie before anything is known of it. By the size of
// the lake it is 4.4 m times the square root of the mean of its length and breadth
// in kilometres (Patalas 1984, from memory; the breadth is taken as half the length),
// but in a small clear lake not far above the depth that light reaches (0.8 of the
// Secchi depth, a rule of our own). By the bottom alone it is 1.42 times its 0.51th
// power, a fit to the steepest metre in 386 lakes (U.S. EPA, National Lakes
// Assessment 2007).
func (in Input) expectedThermocline() float64 {
	const lowest = 0.75 // of the bottom's depth
	z := 5.0
	if in.Bottom.Known {
		z = 1.42 * math.Pow(in.Bottom.Value, 0.51)
	}
	if in.Length.Known {
		z = math.Max(4.4*math.Sqrt(0.75*in.Length.Value/1000), 0.8*in.Secchi.Or(0))
	}
	if in.Bottom.Known {
		z = math.Min(z, lowest*in.Bottom.Value)
	}
	return z
}

// free gives the mark nearest to a depth, when nothing was read there.
func (in Input) freeMark(z float64) (float64, bool) {
	z = math.Round(z/in.MarkM) * in.MarkM
	for _, p := range in.Column.Points() {
		if math.Abs(p.DepthM-z) < in.MarkM-1e-6 {
			return 0, false
		}
	}
	return z, z > in.Column.First().DepthM && z < in.Column.Last().DepthM && !in.skips(z)
}

// skips reports whether the mark at a depth was passed over.
func (in Input) skips(z float64) bool {
	return slices.ContainsFunc(in.Skipped, func(s float64) bool { return math.Abs(s-z) < in.MarkM/2 })
}
