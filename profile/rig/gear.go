package rig

import (
	"math"

	"coldseam/profile/rig/leader"
)

// What is assumed where the angler has not said it.
const (
	FlyKg     = 0.00025 // a nymph with a bead of medium size (common practice)
	steelKgM3 = 7850.0  // of a bite tippet of wire
	shotKgM3  = 7290.0  // tin: lead is banned on many waters
	waterC    = 12.0    // about that of the water under a summer's break
	thinMM    = 0.20    // a leader of unknown thickness, about 3X
	thickMM   = 0.51    // the thick end of a tapered leader (common practice, 0.020 in)
	DropperM  = 1.524   // from one fly to the next, 5 ft (common practice, 4 to 6 ft)
	shotUpM   = 0.3048  // of a shot above the point fly
)

// gear is a fly, or several, on a leader of any length, ready for the physics.
type gear struct {
	in      Input
	kind    Kind
	swivelM float64 // above the fly; 0: none
	kg      float64 // dry mass of each fly
	density float64 // of each, kg/m3; 0: not known
}

func (r *Rig) gear(in Input) gear { return gear{in, r.Kind, r.SwivelM, r.FlyKg, in.FlyDensity} }

// parts makes the parts of a leader: level line with its swivel under an indicator, else
// a tapered one, and a bite tippet for fish with teeth; none for a jig.
func (g gear) parts(leaderM, stepM float64) []Part {
	switch {
	case g.kind == Jig:
		return nil
	case g.kind == Hung:
		return level(leaderM, g.swivelM, stepM, g.in.Stock, g.in.Teeth)
	}
	return cutFor(leaderM, stepM, g.in.Stock, g.in.Teeth)
}

// cut makes the parts of a leader of any length, not rounded: the tippet takes up
// what is left.
func (g gear) cut(leaderM float64) []Part {
	const fine = 0.005
	parts := g.parts(math.Max(leaderM, 2*fine), fine)
	sum := 0.0
	for _, p := range parts {
		sum += p.LengthM
	}
	if n := len(parts); n > 0 {
		parts[n-1].LengthM += leaderM - sum
	}
	return parts
}

// upper and lower give a part's thickness at its ends, m.
func (p Part) upper() float64 {
	if p.ThickMM > 0 {
		return p.ThickMM / 1000
	}
	return p.lower()
}

func (p Part) lower() float64 {
	if p.DiameterMM > 0 {
		return p.DiameterMM / 1000
	}
	return thinMM / 1000
}

// places are the distances from the tip of the point fly and the droppers above it,
// as many as there is room for.
func (g gear) places(leaderM float64) []float64 {
	out := []float64{leaderM}
	for len(out) < g.in.Flies && out[len(out)-1] > 2*DropperM {
		out = append(out, out[len(out)-1]-DropperM)
	}
	return out
}

// materials are what line is made of, kg/m3.
var materials = map[string]float64{"nylon": leader.NylonKgM3, "fluorocarbon": leader.FluoroKgM3, "wire": steelKgM3}

// leader is the leader of a length, of any.
func (g gear) leader(leaderM float64) leader.Leader {
	l := leader.Leader{TempC: math.Max(0, g.in.WaterC.Or(waterC)), BottomM: g.in.WaterM}
	for _, p := range g.cut(leaderM) {
		l.Parts = append(l.Parts, leader.Part{LengthM: p.LengthM, DiameterM: p.upper(), EndDiameterM: p.lower(), DensityKgM3: materials[p.Material]})
	}
	for _, at := range g.places(leaderM) {
		l.Bodies = append(l.Bodies, leader.Body{AtM: at, KgDry: g.kg, DensityKgM3: g.density})
	}
	if g.swivelM > 0 {
		l.Bodies = append(l.Bodies, leader.Body{AtM: math.Max(0, leaderM-g.swivelM), KgDry: swivelKg, DensityKgM3: swivelKgM3, Dressing: 1})
	}
	if g.in.ShotKg > 0 {
		l.Bodies = append(l.Bodies, leader.Body{AtM: math.Max(0, leaderM-shotUpM), KgDry: g.in.ShotKg, DensityKgM3: shotKgM3, Dressing: 1})
	}
	return l
}
