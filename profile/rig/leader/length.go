package leader

import (
	"errors"
	"fmt"
	"math"
)

// TowLength gives the shortest of the lengths tried, between minM and maxM metres, at
// which the point fly of the leader that cut makes of a length is depthM metres down when
// towed at mps metres a second. Where none does, the length is the one that comes nearest:
// with ErrTooShallow that at which the fly is deepest, with ErrTooDeep the shortest.
// ErrRange says that a leader, the depth, the speed or the limits are out of range.
func TowLength(cut func(lengthM float64) Leader, mps, depthM, minM, maxM float64) (float64, error) {
	if err := errors.Join(checkSpeed(mps), checkDepth(depthM)); err != nil {
		return 0, err
	}
	if !(minM > 0 && minM <= maxM) {
		return 0, fmt.Errorf("lengths from %g to %g m are %w", minM, maxM, ErrRange)
	}
	over := func(length float64) (float64, error) {
		l := cut(length)
		if err := l.check(); err != nil {
			return 0, err
		}
		z, err := newLine(l).depth(mps)
		return z - depthM, err
	}
	near := depthShare * depthM
	least, err := over(minM)
	if err != nil {
		return 0, err
	}
	if least > near {
		return minM, ErrTooDeep
	}
	most, err := over(maxM)
	if err != nil {
		return 0, err
	}
	low, high := tried{minM, least}, tried{maxM, most}
	if high.over < -near {
		if low, high, err = deepEnough(over, low, high, -near); err != nil {
			return high.at, err
		}
	}
	switch {
	case math.Abs(low.over) <= near:
		return low.at, nil
	case high.over <= near:
		return high.at, nil
	}
	return root(over, low.at, high.at, low.over, high.over, 1e-9, near)
}

// tried is a length and by how much the fly lies too deep with it.
type tried struct{ at, over float64 }

// deepEnough looks between two lengths, the longer of which leaves the fly too shallow,
// for one that does not, since longer is deeper with most leaders, but a caller may cut
// them as he likes. It gives that length as the high end and the last one before it as
// the low end; or, with ErrTooShallow, the deepest as the high end.
func deepEnough(over func(float64) (float64, error), low, high tried, least float64) (tried, tried, error) {
	const tries = 16
	from, step := low.at, (high.at-low.at)/tries
	for i := 1; i < tries; i++ {
		at := from + step*float64(i)
		v, err := over(at)
		if err != nil {
			return low, high, err
		}
		this := tried{at, v}
		if v >= least {
			return low, this, nil
		}
		if low = this; v > high.over {
			high = this
		}
	}
	return low, high, ErrTooShallow
}
