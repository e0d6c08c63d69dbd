package method

import "slices"

// Answer is what one method says of a column.
type Answer struct {
	Name   string  // what the method looks for
	Source string  // who published it, "common practice", or "ours"
	DepthM float64 // m below the surface; 0 where the method finds nothing
	OK     bool    // whether it finds anything
}

// Agreement is how far the answers of the given names lie apart, or all of them when
// none is given: the greatest depth less the least, m. ok is false when fewer than
// two of them found anything.
//
// Of all thermoclines together it says next to nothing about the error; of
// StepCentre and RiseCentre it is a warning when over ApartM. See the package comment.
func Agreement(answers []Answer, names ...string) (spreadM float64, ok bool) {
	var depths []float64
	for _, a := range answers {
		if a.OK && (len(names) == 0 || slices.Contains(names, a.Name)) {
			depths = append(depths, a.DepthM)
		}
	}
	if len(depths) < 2 {
		return 0, false
	}
	return slices.Max(depths) - slices.Min(depths), true
}

// ApartM is how far apart StepCentre and RiseCentre may lie, m, before the
// thermocline is in doubt.
const ApartM = 0.5
