package tow

import (
	"fmt"
	"math"
	"slices"
)

// Leader makes the rig of a leader of a given length in metres.
type Leader func(lengthM float64) Rig

// LongerTippet makes leaders from a rig by a longer or shorter last part. What is
// tied into that part, the point fly too, keeps its distance from the point, or
// sits at that part's upper knot where it is too short; what hangs above it stays
// where it is. A leader no longer than the other parts together comes out as a rig
// that is out of range.
func LongerTippet(r Rig) Leader {
	old := r.LengthM()
	return func(lengthM float64) Rig {
		made := Rig{Parts: slices.Clone(r.Parts), Bodies: slices.Clone(r.Bodies), TempC: r.TempC}
		if len(made.Parts) == 0 {
			return made
		}
		last := &made.Parts[len(made.Parts)-1]
		knot := old - last.LengthM
		last.LengthM = lengthM - knot
		for i := range made.Bodies {
			if b := &made.Bodies[i]; b.AtM > knot*(1+slack) {
				b.AtM = math.Max(knot, b.AtM+lengthM-old)
			}
		}
		return made
	}
}

// Scaled makes leaders from a rig by stretching every part alike, bodies keeping
// their share of the length.
func Scaled(r Rig) Leader {
	old := r.LengthM()
	return func(lengthM float64) Rig {
		made := Rig{Parts: slices.Clone(r.Parts), Bodies: slices.Clone(r.Bodies), TempC: r.TempC}
		for i := range made.Parts {
			made.Parts[i].LengthM *= lengthM / old
		}
		for i := range made.Bodies {
			made.Bodies[i].AtM *= lengthM / old
		}
		return made
	}
}

// Reach says what LengthFor came to.
type Reach string

// What LengthFor can come to.
const (
	Reached    Reach = "reached"
	NotReached Reach = "not reachable" // the fly lies shallower at every length allowed
	OverDeep   Reach = "too deep"      // the fly lies deeper even on the shortest
)

// Length is a leader found for a depth.
type Length struct {
	Reach   Reach
	LengthM float64
	Shape   Shape
	// What would do it at LengthM where Reach is not Reached; 0 when nothing would.
	SpeedMPerS float64 // the speed that puts the fly at the depth
	PointKg    float64 // for NotReached the dry mass of the point fly that does, to 0.1 kg, its drag growing with it
}

// LengthFor gives the shortest of the lengths tried at which the point fly is depthM
// metres down when drawn at speedMPerS, between minM and maxM metres. Where none
// does, Reach says so and LengthM and Shape are those that come nearest: the deepest,
// or the shortest. ErrRig says that a rig made, the depth, the speed or the limits
// are out of range.
func LengthFor(leader Leader, speedMPerS, depthM, minM, maxM float64) (Length, error) {
	if err := checkSpeed(speedMPerS); err != nil {
		return Length{}, err
	}
	if err := checkDepth(depthM); err != nil {
		return Length{}, err
	}
	if !(minM > 0 && minM <= maxM && maxM <= LongestM) {
		return Length{}, fmt.Errorf("%w: lengths from %g to %g m", ErrRig, minM, maxM)
	}
	over := func(length float64) (float64, error) {
		r := leader(length)
		if err := r.check(); err != nil {
			return 0, err
		}
		z, err := newLine(r).depth(speedMPerS)
		return z - depthM, err
	}
	near := depthShare * depthM
	least, err := over(minM)
	if err != nil {
		return Length{}, err
	}
	if least > near {
		return missed(leader, OverDeep, minM, speedMPerS, depthM)
	}
	most, err := over(maxM)
	if err != nil {
		return Length{}, err
	}
	// Longer is deeper with most leaders, but the caller may make them as he likes:
	// where the longest does not do, some in between may.
	low, high, deepest := minM, maxM, maxM
	if most < -near {
		const tries = 16
		for i := 1; i < tries && most < -near; i++ {
			at := minM + (maxM-minM)*float64(i)/tries
			v, err := over(at)
			if err != nil {
				return Length{}, err
			}
			if v > most {
				most, deepest = v, at
			}
			if v >= -near {
				high = at
			} else {
				low, least = at, v
			}
		}
		if most < -near {
			return missed(leader, NotReached, deepest, speedMPerS, depthM)
		}
	}
	found := high
	switch {
	case math.Abs(least) <= near:
		found = low
	case most > near:
		if found, err = root(over, low, high, least, most, 1e-9, near); err != nil {
			return Length{}, err
		}
	}
	s, err := Solve(leader(found), speedMPerS)
	return Length{Reach: Reached, LengthM: found, Shape: s}, err
}

// missed fills in what a length that does not do comes to, and what would.
func missed(leader Leader, why Reach, length, speed, depth float64) (Length, error) {
	r := leader(length)
	l := newLine(r)
	s, err := l.shape(speed)
	if err != nil {
		return Length{}, err
	}
	out := Length{Reach: why, LengthM: length, Shape: s}
	if v, err := l.speedFor(depth); err == nil {
		out.SpeedMPerS = v
	}
	if why == NotReached {
		out.PointKg, err = massFor(r, speed, depth)
	}
	return out, err
}

// heaviestKg is the heaviest point fly that massFor tries.
const heaviestKg = 0.1

// massFor is the dry mass of the point fly, the last of the bodies at the end of
// the line, that puts it at a depth; 0 when none does. A fly whose size
// is not given grows with it.
func massFor(r Rig, speed, depth float64) (float64, error) {
	point, length := -1, r.LengthM()
	for i, b := range r.Bodies {
		if b.AtM >= length*(1-slack) {
			point = i
		}
	}
	if point < 0 || length < depth {
		return 0, nil
	}
	r.Bodies = slices.Clone(r.Bodies)
	was := r.Bodies[point]
	over := func(ln float64) (float64, error) {
		kg := math.Exp(ln)
		r.Bodies[point].KgDry = kg
		if was.DragDiameterM > 0 && was.KgDry > 0 { // a heavier fly is a bigger one
			r.Bodies[point].DragDiameterM = was.DragDiameterM * math.Cbrt(kg/was.KgDry)
		}
		z, err := newLine(r).depth(speed)
		return z - depth, err
	}
	heaviest := heaviestKg
	if was.DragDiameterM > 0 && was.KgDry > 0 { // no thicker than any body may be
		heaviest = math.Min(heaviest, was.KgDry*math.Pow(thickestM/was.DragDiameterM, 3))
	}
	low, high := math.Log(math.Max(was.KgDry, 1e-6)), math.Log(heaviest)
	if high <= low {
		return 0, nil
	}
	below, err := over(low)
	if err != nil || below > 0 {
		return 0, err
	}
	above, err := over(high)
	if err != nil || above < 0 {
		return 0, err
	}
	ln, err := root(over, low, high, below, above, 1e-9, depthShare*depth)
	return math.Exp(ln), err
}
