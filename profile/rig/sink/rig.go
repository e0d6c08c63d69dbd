package sink

import (
	"errors"
	"fmt"
	"math"

	"coldseam/profile/water"
)

// Part is a level piece of leader. A tapered one is given as several pieces.
type Part struct {
	LengthM   float64 // above 0
	DiameterM float64 // 2e-5 to 0.01
	Density   float64 // kg/m3, 200 to 25000; 0: not stated, which Wait takes as AnyLine
}

// Body is a fly, a shot or another weight on the leader.
type Body struct {
	AtM      float64 // distance from the tip of the fly line, 0 to the leader's length
	KgDry    float64 // mass when dry, 0 to 1
	Density  float64 // kg/m3 of all of it together, 200 to 25000; 0: not stated, taken as AnyFly
	Dressing float64 // how much wider than a ball of its mass and density the water finds it, 0.5 to 10; 0: not stated, taken as AnyDressing. A bare shot or bead has 1.
}

// Rig is a leader, from the tip of the fly line to the point fly, and the water.
type Rig struct {
	Parts   []Part  // in that order; at most 100, together 0.05 to 100 m
	Bodies  []Body  // in any order, at most 20; one at the leader's end is the point fly
	TempC   float64 // of the water, 0 to 40
	BottomM float64 // depth of the water, where what touches lies; 0: bottomless
}

// Tip is what the tip of the fly line does.
type Tip int

// What the tip may do.
const (
	// Held: the tip stays where it is, as when the line is kept just tight.
	Held Tip = iota
	// Slides: the sinking leader draws the tip along the surface towards itself,
	// against the friction of LineM metres of straight floating line.
	Slides
)

// What is assumed where a rig leaves it open.
const (
	Nylon  = 1140.0 // kg/m3 (from memory)
	Fluoro = 1780.0 // kg/m3, fluorocarbon (from memory)
	// AnyLine is between the two and is neither.
	AnyLine = 1400.0
	// AnyFly is the density of hook, bead and dressing together (common practice
	// finds 3000 to 6000).
	AnyFly = 4000.0
	// AnyDressing makes a fly twice as wide as the ball: flies of 0.1 to 0.3 g then
	// fall at 0.29 to 0.36 m/s off the leader, the foot a second of common practice,
	// where the bare balls would fall at twice that.
	AnyDressing = 2.0
	// LineM is how much floating line a sliding tip draws after it: a head of 30 ft,
	// half of it under water. More line than that lies in curves, which straighten
	// before they slide.
	LineM = 9.144

	lineWideM = 0.0011 // across (from memory, of a floating line of weight 5)
)

// Why there is no wait.
var (
	ErrShort  = errors.New("the leader is no longer than the depth")
	ErrBottom = errors.New("the water is shallower than the depth")
	ErrNever  = errors.New("the depth is not reached within an hour")
)

// stated gives the rig with what it leaves open filled in, or says what is wrong.
func (r Rig) stated() (Rig, error) {
	if len(r.Parts) == 0 || len(r.Parts) > 100 || len(r.Bodies) > 20 {
		return r, fmt.Errorf("%d parts and %d bodies: want 1 to 100 parts and at most 20 bodies", len(r.Parts), len(r.Bodies))
	}
	if !(r.TempC >= 0 && r.TempC <= 40) {
		return r, fmt.Errorf("water of %g C: want 0 to 40", r.TempC)
	}
	if !(r.BottomM >= 0) || math.IsInf(r.BottomM, 0) {
		return r, fmt.Errorf("bottom at %g m: want a depth, or 0 for none", r.BottomM)
	}
	parts, bodies := make([]Part, len(r.Parts)), make([]Body, len(r.Bodies))
	for i, p := range r.Parts {
		if p.Density == 0 {
			p.Density = AnyLine
		}
		if !(p.LengthM > 0 && p.DiameterM >= 2e-5 && p.DiameterM <= 0.01 && dense(p.Density)) {
			return r, fmt.Errorf("part %d of %g m, %g m across, %g kg/m3 is no line", i+1, p.LengthM, p.DiameterM, p.Density)
		}
		parts[i] = p
	}
	r.Parts = parts
	length := r.length()
	if !(length >= 0.05 && length <= 100) {
		return r, fmt.Errorf("leader of %g m: want 0.05 to 100", length)
	}
	for i, b := range r.Bodies {
		if b.Density == 0 {
			b.Density = AnyFly
		}
		if b.Dressing == 0 {
			b.Dressing = AnyDressing
		}
		if !(b.AtM >= 0 && b.AtM <= length+1e-6 && b.KgDry >= 0 && b.KgDry <= 1 && dense(b.Density) && b.Dressing >= 0.5 && b.Dressing <= 10) {
			return r, fmt.Errorf("body %d at %g m of %g, %g kg, %g kg/m3, dressing %g", i+1, b.AtM, length, b.KgDry, b.Density, b.Dressing)
		}
		b.AtM = math.Min(b.AtM, length)
		bodies[i] = b
	}
	r.Bodies = bodies
	return r, nil
}

func dense(density float64) bool { return density >= 200 && density <= 25000 }

func (r Rig) length() float64 {
	sum := 0.0
	for _, p := range r.Parts {
		sum += p.LengthM
	}
	return sum
}

// ball is the diameter in m of a ball of the body's mass and density.
func (b Body) ball() float64 { return math.Cbrt(6 * b.KgDry / (math.Pi * b.Density)) }

// inWater is the body's weight in water of density rho, in N.
func (b Body) inWater(rho float64) float64 {
	return water.StandardGravity * b.KgDry * (1 - rho/b.Density)
}
