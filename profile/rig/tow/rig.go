package tow

import (
	"errors"
	"fmt"
	"math"

	"coldseam/profile/water"
)

// Part is one length of line of a leader.
type Part struct {
	LengthM      float64 // above 0, to 60
	DiameterM    float64 // at its upper end, 1e-5 to 0.02
	EndDiameterM float64 // at its lower end, for one that tapers evenly; 0: the same as DiameterM
	DensityKgM3  float64 // of its material, 100 to 25000: nylon about 1140, fluorocarbon 1780 (common values)
}

// Body is something tied or pinched to the leader: a fly, a dropper, a shot.
type Body struct {
	AtM         float64 // along the line from the tip; that of the point fly is the length of the leader
	KgDry       float64 // mass out of the water, 0 to 1
	DensityKgM3 float64 // of hook, bead and dressing together, 100 to 25000; about 4000 with a metal bead
	// DragDiameterM is the diameter of the ball that has its drag, to 0.2. 0 takes
	// Dressing times that of a ball of its mass and density.
	DragDiameterM float64
}

// Dressing is how much wider than a ball of its mass and density a dressed fly meets
// the water: hackle, tail and hook stand out from the bead. It is an assumption, not
// measured; at the speeds of a slow retrieve the fly's drag is a few hundredths
// of its weight, so that 1 or 3 in its place moves the depth little.
const Dressing = 2.0

// Rig is a whole leader in water of one temperature.
type Rig struct {
	Parts  []Part  // from the tip down
	Bodies []Body  // in any order
	TempC  float64 // of the water, -2 to 40
}

// The range of lengths of a leader in metres.
const (
	ShortestM = 0.1
	LongestM  = 60.0
)

// maxSpeed in m/s is beyond all fishing and all the correlations; by then every rig
// lies flat.
const maxSpeed = 100

// ErrRig is in every error that says that a rig, a speed or a depth is out of range.
var ErrRig = errors.New("rig out of range")

// LengthM is the length of the leader: the sum of its parts.
func (r Rig) LengthM() float64 {
	sum := 0.0
	for _, p := range r.Parts {
		sum += p.LengthM
	}
	return sum
}

// BallDiameterM returns the diameter in metres of a ball of mass kg and density
// densityKgM3.
func BallDiameterM(kg, densityKgM3 float64) float64 {
	return math.Cbrt(6 * kg / (math.Pi * densityKgM3))
}

func (b Body) dragDiameter() float64 {
	if b.DragDiameterM > 0 {
		return b.DragDiameterM
	}
	return Dressing * BallDiameterM(b.KgDry, b.DensityKgM3)
}

// slack: a body this share of the leader past its end is at its end, for lengths
// that were added up in another order.
const slack = 1e-9

func (r Rig) check() error {
	if !(r.TempC >= -2 && r.TempC <= 40) {
		return fmt.Errorf("%w: water of %g C", ErrRig, r.TempC)
	}
	for i, p := range r.Parts {
		if !(p.LengthM > 0 && p.LengthM <= LongestM*(1+slack)) {
			return fmt.Errorf("%w: part %d is %g m long", ErrRig, i+1, p.LengthM)
		}
		if !thick(p.DiameterM) || p.EndDiameterM != 0 && !thick(p.EndDiameterM) {
			return fmt.Errorf("%w: part %d is %g to %g m thick", ErrRig, i+1, p.DiameterM, p.EndDiameterM)
		}
		if !dense(p.DensityKgM3) {
			return fmt.Errorf("%w: part %d has a density of %g kg/m3", ErrRig, i+1, p.DensityKgM3)
		}
	}
	length := r.LengthM()
	if !(length >= ShortestM*(1-slack) && length <= LongestM*(1+slack)) {
		return fmt.Errorf("%w: leader of %g m", ErrRig, length)
	}
	for i, b := range r.Bodies {
		switch {
		case !(b.AtM >= 0 && b.AtM <= length*(1+slack)):
			return fmt.Errorf("%w: body %d is at %g m of %g", ErrRig, i+1, b.AtM, length)
		case !(b.KgDry >= 0 && b.KgDry <= 1):
			return fmt.Errorf("%w: body %d weighs %g kg", ErrRig, i+1, b.KgDry)
		case !dense(b.DensityKgM3):
			return fmt.Errorf("%w: body %d has a density of %g kg/m3", ErrRig, i+1, b.DensityKgM3)
		case !(b.DragDiameterM >= 0 && b.DragDiameterM <= thickestM*(1+slack)):
			return fmt.Errorf("%w: body %d is %g m thick", ErrRig, i+1, b.DragDiameterM)
		}
	}
	return nil
}

// thickestM is the widest body that is taken, far wider than any fly.
const thickestM = 0.2

func thick(d float64) bool   { return d >= 1e-5 && d <= 0.02 }
func dense(rho float64) bool { return rho >= 100 && rho <= 25000 }

// fluid is what the model needs of the water.
type fluid struct{ rho, nu float64 }

func fluidAt(tempC float64) fluid {
	return fluid{rho: water.Density(tempC), nu: water.KinematicViscosity(tempC)}
}

// weight is that in water, in newtons, of a dry mass.
func (f fluid) weight(kg, density float64) float64 {
	return kg * water.StandardGravity * (1 - f.rho/density)
}
