package rig

import (
	"math"

	"coldseam/profile/rig/sink"
	"coldseam/profile/rig/tow"
)

// What is assumed where the angler has not said it.
const (
	FlyKg      = 0.00025 // a nymph with a bead of medium size (common practice)
	flyDensity = 4000.0  // kg/m3 of hook, bead and dressing together
	shotKgM3   = 7290.0  // tin: lead is banned on many waters
	waterC     = 12.0    // about that of the water under a summer's break
	thinMM     = 0.20    // a leader of unknown thickness, about 3X
	thickMM    = 0.51    // the thick end of a tapered leader (common practice, 0.020 in)
	DropperM   = 1.524   // from one fly to the next, 5 ft (common practice, 4 to 6 ft)
	shotUpM    = 0.3048  // of a shot above the point fly
)

// gear is a fly, or several, on a leader of any length, ready for the physics.
type gear struct {
	in      Input
	kg      float64 // dry mass of each fly
	density float64 // of each
}

func newGear(in Input) gear {
	g := gear{in, in.FlyKg.Or(FlyKg), in.FlyDensity}
	if g.density == 0 {
		g.density = flyDensity
	}
	return g
}

// cut makes the parts of a leader of any length, not rounded: the tippet takes up
// what is left.
func (g gear) cut(leaderM float64) []Part {
	const fine = 0.005
	parts := Cut(math.Max(leaderM, 2*fine), fine, g.in.Stock)
	sum := 0.0
	for _, p := range parts {
		sum += p.LengthM
	}
	if n := len(parts); n > 0 {
		parts[n-1].LengthM += leaderM - sum
	}
	return parts
}

// kgM3 is the density of a leader's material; 0 where it is not known.
func kgM3(material string) float64 {
	switch material {
	case "nylon":
		return sink.Nylon
	case "fluorocarbon":
		return sink.Fluoro
	}
	return 0
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

// pulled is the leader as it is drawn.
func (g gear) pulled(leaderM float64) tow.Rig {
	r := tow.Rig{TempC: g.in.WaterC.Or(waterC)}
	for _, p := range g.cut(leaderM) {
		density := kgM3(p.Material)
		if density == 0 {
			density = sink.AnyLine
		}
		r.Parts = append(r.Parts, tow.Part{LengthM: p.LengthM, DiameterM: p.upper(), EndDiameterM: p.lower(), DensityKgM3: density})
	}
	for _, at := range g.places(leaderM) {
		r.Bodies = append(r.Bodies, tow.Body{AtM: at, KgDry: g.kg, DensityKgM3: g.density})
	}
	if g.in.ShotKg > 0 {
		r.Bodies = append(r.Bodies, tow.Body{AtM: math.Max(0, leaderM-shotUpM), KgDry: g.in.ShotKg, DensityKgM3: shotKgM3, DragDiameterM: tow.BallDiameterM(g.in.ShotKg, shotKgM3)})
	}
	return r
}

// taperPieces is how many level pieces stand for a tapered leader while it sinks.
const taperPieces = 3

// sunk is the leader as it sinks.
func (g gear) sunk(leaderM float64) sink.Rig {
	r := sink.Rig{TempC: math.Max(0, g.in.WaterC.Or(waterC)), BottomM: g.in.WaterM}
	for _, p := range g.cut(leaderM) {
		n := 1
		if p.ThickMM > 0 {
			n = taperPieces
		}
		for i := range n {
			share := (float64(i) + 0.5) / float64(n)
			r.Parts = append(r.Parts, sink.Part{LengthM: p.LengthM / float64(n), DiameterM: p.upper() + share*(p.lower()-p.upper()), Density: kgM3(p.Material)})
		}
	}
	for _, at := range g.places(leaderM) {
		r.Bodies = append(r.Bodies, sink.Body{AtM: at, KgDry: g.kg, Density: g.in.FlyDensity, Dressing: 0})
	}
	if g.in.ShotKg > 0 {
		r.Bodies = append(r.Bodies, sink.Body{AtM: math.Max(0, leaderM-shotUpM), KgDry: g.in.ShotKg, Density: shotKgM3, Dressing: 1})
	}
	return r
}
