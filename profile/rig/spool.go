package rig

import (
	"math"
	"slices"
)

// Spool is the tippet to take where the stock has several, and why.
type Spool struct {
	Name   string
	Of     int  // how many there are
	Sinks  bool // it is fluorocarbon, and others are not
	Strong bool // it is thick for a heavy fly; else thin for a light one
	Sized  bool // its thickness had a part in it
}

// Tippet for a fly, by common practice: about 4X for the light flies of trout, about 1X
// for heavier ones.
const (
	lightFlyKg = 0.00045
	thinSpool  = 0.18 // mm
	thickSpool = 0.25
)

// spool chooses among the spools of tippet, fluorocarbon before nylon since nylon barely
// sinks, and puts the one to take before the others.
func (in *Input) spool(flyKg float64) *Spool {
	wanted := thinSpool
	if flyKg > lightFlyKg+1e-9 {
		wanted = thickSpool
	}
	var best, n, fluoro, sized int
	best = -1
	for i, p := range in.Stock {
		if p.Kind != Tippet {
			continue
		}
		n++
		if p.Material == "fluorocarbon" {
			fluoro++
		}
		if p.DiameterMM > 0 {
			sized++
		}
		if best < 0 || better(p, in.Stock[best], wanted) {
			best = i
		}
	}
	if n < 2 {
		return nil
	}
	take := in.Stock[best]
	in.Stock = append([]Piece{take}, slices.Delete(slices.Clone(in.Stock), best, best+1)...)
	sinks := take.Material == "fluorocarbon"
	return &Spool{Name: take.Name, Of: n, Sinks: sinks && fluoro < n, Strong: wanted == thickSpool,
		Sized: sized > 1 && take.DiameterMM > 0 && (!sinks || fluoro > 1)}
}

// better says whether a spool is to be taken before another.
func better(p, than Piece, wantedMM float64) bool {
	if a, b := p.Material == "fluorocarbon", than.Material == "fluorocarbon"; a != b {
		return a
	}
	off := func(p Piece) float64 {
		if p.DiameterMM > 0 {
			return math.Abs(p.DiameterMM - wantedMM)
		}
		return math.Inf(1)
	}
	return off(p) < off(than)-slack
}
