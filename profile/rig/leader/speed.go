package leader

import (
	"errors"
	"math"
)

// Why a point fly is at a depth at no speed.
var (
	ErrTooShallow = errors.New("even at rest the fly hangs shallower")
	ErrTooDeep    = errors.New("even at the fastest the fly lies deeper")
)

// depthShare is how closely a depth is met, as a share of it.
const depthShare = 1e-5

// maxSpeed in m/s is beyond all fishing and all the correlations; by then every leader
// lies flat.
const maxSpeed = 100

// TowSpeed gives the speed in m/s at which the point fly is depthM metres down. Faster it is shallower, slower deeper, as long as no part and no body is
// lighter than water; with one that floats there may be other speeds too.
// ErrTooShallow says that even at rest it hangs shallower, ErrTooDeep that it lies
// deeper at 100 m/s, ErrRange that the leader or the depth is out of range.
func (l Leader) TowSpeed(depthM float64) (float64, error) {
	if err := errors.Join(l.check(), checkDepth(depthM)); err != nil {
		return 0, err
	}
	return newLine(l).speedFor(depthM)
}

func (l *line) speedFor(depthM float64) (float64, error) {
	over := func(speed float64) (float64, error) {
		z, err := l.depth(speed)
		return z - depthM, err
	}
	slow, fast := 0.0, 0.05
	above, err := over(slow)
	if err != nil {
		return 0, err
	}
	near := depthShare * depthM
	if math.Abs(above) <= near {
		return 0, nil
	}
	if above < 0 {
		return 0, ErrTooShallow
	}
	for {
		below, err := over(fast)
		if err != nil {
			return 0, err
		}
		if below <= 0 {
			return root(over, slow, fast, above, below, 1e-9, near)
		}
		if fast >= maxSpeed {
			return 0, ErrTooDeep
		}
		slow, above, fast = fast, below, math.Min(2*fast, maxSpeed)
	}
}

// Window is a range of speeds in m/s.
type Window struct {
	SlowestMps float64 // 0: at rest the fly hangs no deeper than allowed
	FastestMps float64
}

// TowWindow gives the speeds that keep the point fly no shallower than shallowM and
// no deeper than deepM metres. The errors are those of TowSpeed: ErrTooShallow says
// that even at rest the fly does not come down to shallowM.
func (l Leader) TowWindow(shallowM, deepM float64) (w Window, err error) {
	if err := errors.Join(l.check(), checkDepth(shallowM), checkDepth(deepM)); err != nil {
		return w, err
	}
	shallowM, deepM = min(shallowM, deepM), max(shallowM, deepM)
	line := newLine(l)
	if w.FastestMps, err = line.speedFor(shallowM); err != nil {
		return Window{}, err
	}
	w.SlowestMps, err = line.speedFor(deepM)
	if errors.Is(err, ErrTooShallow) {
		w.SlowestMps, err = 0, nil
	}
	return w, err
}
