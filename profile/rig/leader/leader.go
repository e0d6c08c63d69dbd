package leader

import (
	"errors"
	"fmt"
	"math"
)

// Leader is what hangs from the tip of the fly line, and the water it is in.
type Leader struct {
	Parts   []Part  // from the tip down; at most 100, together 0.05 to 100 m
	Bodies  []Body  // in any order, at most 20; one at the leader's end is the point fly
	TempC   float64 // of the water, 0 to 40
	BottomM float64 // depth of the water, where what sinks comes to lie; 0: bottomless
}

// Part is one length of line.
type Part struct {
	LengthM      float64 // above 0
	DiameterM    float64 // at its upper end, 1e-5 to 0.02
	EndDiameterM float64 // at its lower end, for one that tapers evenly; 0: the same as DiameterM
	DensityKgM3  float64 // of its material, 100 to 25000; 0: not known, taken as AnyLineKgM3
}

// Body is something tied or pinched to the leader: a fly, a dropper, a shot.
type Body struct {
	AtM         float64 // along the line from the tip; that of the point fly is the length of the leader
	KgDry       float64 // mass out of the water, 0 to 1
	DensityKgM3 float64 // of hook, bead and dressing together, 100 to 25000; 0: not known, taken as AnyFlyKgM3
	Dressing    float64 // how much wider than a ball of its mass and density the water finds it, 0.5 to 10; 0: not known, taken as AnyDressing. A bare shot or bead has 1.
}

// What is assumed where a leader leaves it open.
const (
	NylonKgM3  = 1140.0 // (from memory)
	FluoroKgM3 = 1780.0 // fluorocarbon (from memory)
	// AnyLineKgM3 is between the two and is neither.
	AnyLineKgM3 = 1400.0
	// AnyFlyKgM3 is the density of hook, bead and dressing together (common practice
	// finds 3000 to 6000).
	AnyFlyKgM3 = 4000.0
	// AnyDressing makes a fly twice as wide as the ball: hackle, tail and hook stand out
	// from the bead. Flies of 0.1 to 0.3 g then fall at 0.29 to 0.36 m/s off the leader,
	// the foot a second of common practice, where the bare balls would fall at twice that.
	// At the speeds of a slow retrieve the fly's drag is a few hundredths of its weight, so
	// that 1 or 3 in its place moves the depth little.
	AnyDressing = 2.0
)

// ErrRange is in every error that says that a leader, a speed or a depth is out of
// range.
var ErrRange = errors.New("out of range")

// LengthM is the length of the leader: the sum of its parts.
func (l Leader) LengthM() float64 {
	sum := 0.0
	for _, p := range l.Parts {
		sum += p.LengthM
	}
	return sum
}

func (p Part) density() float64 { return or(p.DensityKgM3, AnyLineKgM3) }

// end is the diameter at the lower end.
func (p Part) end() float64 { return or(p.EndDiameterM, p.DiameterM) }

func (b Body) density() float64 { return or(b.DensityKgM3, AnyFlyKgM3) }

// ball is the diameter in m of a ball of the body's mass and density.
func (b Body) ball() float64 { return math.Cbrt(6 * b.KgDry / (math.Pi * b.density())) }

// width is the diameter in m of the ball that has the body's drag.
func (b Body) width() float64 { return or(b.Dressing, AnyDressing) * b.ball() }

// or is v, or what is assumed where v is 0.
func or(v, assumed float64) float64 {
	if v == 0 {
		return assumed
	}
	return v
}

// slack: a body this share of the leader past its end is at its end, for lengths
// that were added up in another order.
const slack = 1e-9

func (l Leader) check() error {
	if len(l.Parts) == 0 || len(l.Parts) > 100 || len(l.Bodies) > 20 {
		return fmt.Errorf("%d parts and %d bodies are %w: want 1 to 100 parts and at most 20 bodies", len(l.Parts), len(l.Bodies), ErrRange)
	}
	length := l.LengthM()
	err := inRange("water", 0, limit{"C", l.TempC, 0, 40}, limit{"m of depth", l.BottomM, 0, math.MaxFloat64})
	for i := 0; err == nil && i < len(l.Parts); i++ {
		p := l.Parts[i]
		err = inRange("part", i+1, limit{"m", p.LengthM, math.SmallestNonzeroFloat64, length},
			limit{"m across", p.DiameterM, 1e-5, 0.02}, limit{"m across at its end", p.end(), 1e-5, 0.02}, limit{"kg/m3", p.density(), leastKgM3, mostKgM3})
	}
	if err == nil {
		err = inRange("leader", 0, limit{"m", length, 0.05 * (1 - slack), 100 * (1 + slack)})
	}
	for i := 0; err == nil && i < len(l.Bodies); i++ {
		b := l.Bodies[i]
		err = inRange("body", i+1, limit{"m from the tip", b.AtM, 0, length * (1 + slack)}, limit{"kg", b.KgDry, 0, 1},
			limit{"kg/m3", b.density(), leastKgM3, mostKgM3}, limit{"times as wide as a ball", or(b.Dressing, AnyDressing), 0.5, 10})
	}
	return err
}

// Densities that a thing on a leader can have: from balsa to past the heaviest metal.
const (
	leastKgM3 = 100.0
	mostKgM3  = 25000.0
)

// limit is a value and the range that it must be in.
type limit struct {
	unit         string
	v, low, high float64
}

// inRange says which of a thing's values is out of its range; number tells it from
// others of its kind, from 1.
func inRange(thing string, number int, limits ...limit) error {
	for _, m := range limits {
		if m.v >= m.low && m.v <= m.high {
			continue
		}
		if number > 0 {
			thing = fmt.Sprintf("%s %d", thing, number)
		}
		return fmt.Errorf("%s of %g %s is %w: want %g to %g", thing, m.v, m.unit, ErrRange, m.low, m.high)
	}
	return nil
}

func checkSpeed(v float64) error { return inRange("speed", 0, limit{"m/s", v, 0, math.MaxFloat64}) }

func checkDepth(z float64) error {
	return inRange("depth", 0, limit{"m", z, math.SmallestNonzeroFloat64, math.MaxFloat64})
}
