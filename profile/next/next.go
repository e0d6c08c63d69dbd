// Package next says at which depth to read next: where the readings so far leave
// most to know. Each reading costs a minute or two, so it also says when it is
// enough.
//
// The rule: first the surface, then close above the bottom, then the middle of the
// interval over which density changes most, since the break must lie where density
// changes. Depths are whole marks on the line and never one that was read. It is
// enough when that interval is about 3 ft wide, or 6 ft after ten readings, or when
// four show hardly any change.
package next

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/layers"
	"coldseam/profile/water"
)

// Why is the reason for a depth, or for it being enough.
type Why string

// The reasons.
const (
	Surface     Why = "surface"   // nothing was read at the surface
	Bottom      Why = "bottom"    // nothing was read near the bottom
	Deeper      Why = "deeper"    // the bottom is not known, and fewer than three depths were read
	Halve       Why = "halve"     // the middle of the interval with the greatest change of density
	CloseEnough Why = "close"     // the interval that holds the break is as narrow as is worth knowing
	OneLayer    Why = "one layer" // hardly any change from top to bottom
)

// Advice is the next depth, or Enough.
type Advice struct {
	Enough bool
	DepthM float64 // meaningless when Enough
	Why    Why
	FromM  float64 // the interval that is halved, or that holds the break
	ToM    float64
}

// Limits of the rule.
const (
	atEndM  = 0.5  // a reading this near to the surface or the bottom counts as it
	enoughM = 0.95 // an interval no wider than about 3 ft is narrow enough
	quietC  = 1.0  // less change than this from top to bottom is one layer
	quietN  = 4    // when this many depths were read
	manyN   = 10   // depths, 10 to 20 minutes' work (common practice): from here on
	wideM   = 1.9  // an interval no wider than about 6 ft is narrow enough
)

// Find advises for a column, a bottom under the boat where known, and a line with
// marks every markM metres.
func Find(c profile.Column, bottom profile.Optional, markM float64) Advice {
	if c.Len() == 0 {
		return Advice{Why: Surface}
	}
	first, last := c.First(), c.Last()
	if first.DepthM > atEndM {
		return Advice{Why: Surface}
	}
	if bottom.Known {
		near := math.Floor((bottom.Value-0.3)/markM+1e-6) * markM // a foot above it: mud reads odd
		if last.DepthM < bottom.Value-math.Max(atEndM, 0.3+markM) && near >= last.DepthM+markM-1e-6 {
			return Advice{Why: Bottom, DepthM: near}
		}
	} else if c.Len() < 3 {
		return Advice{Why: Deeper, DepthM: math.Round((last.DepthM+2)/markM) * markM}
	}
	if c.Len() < 2 { // the bottom is so near that there is nothing between to read
		return Advice{Enough: true, Why: OneLayer, FromM: first.DepthM, ToM: math.Max(first.DepthM, bottom.Value)}
	}
	k := layers.NewCurve(c)
	most, widest := -1.0, 0
	span := k.Temps[0] - k.Temps[len(k.Temps)-1]
	for i := 0; i+1 < len(k.Depths); i++ {
		change := math.Abs(water.Density(k.Temps[i+1]) - water.Density(k.Temps[i]))
		if change > most+1e-9 {
			most, widest = change, i
		}
	}
	from, to := k.Depths[widest], k.Depths[widest+1]
	if math.Abs(span) < quietC && c.Len() >= quietN {
		return Advice{Enough: true, Why: OneLayer, FromM: first.DepthM, ToM: last.DepthM}
	}
	mid := math.Round((from+to)/2/markM) * markM
	enough := enoughM
	if c.Len() >= manyN {
		enough = wideM
	}
	if to-from <= enough || mid-from < markM-1e-6 || to-mid < markM-1e-6 {
		from, to = breakAt(c, from, to)
		return Advice{Enough: true, Why: CloseEnough, FromM: from, ToM: to}
	}
	return Advice{Why: Halve, DepthM: mid, FromM: from, ToM: to}
}

// breakAt gives the interval of the break as package layers finds it, so that both
// say the same: of two neighbours a wide interval may change more in all, and the
// narrow one more in each metre. Where there is no break it gives from and to.
func breakAt(c profile.Column, from, to float64) (float64, float64) {
	if t := layers.Find(c).Thermocline; t != nil {
		return t.Low, t.High
	}
	return from, to
}
