package tow

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

// SpeedFor gives the speed in m/s at which the point fly of a rig is depthM metres
// down. Faster it is shallower, slower deeper, as long as no part and no body is
// lighter than water; with one that floats there may be other speeds too.
// ErrTooShallow says that even at rest it hangs shallower, ErrTooDeep that it lies
// deeper at 100 m/s, ErrRig that the rig or the depth is out of range.
func SpeedFor(r Rig, depthM float64) (float64, error) {
	if err := r.check(); err != nil {
		return 0, err
	}
	if err := checkDepth(depthM); err != nil {
		return 0, err
	}
	return newLine(r).speedFor(depthM)
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
	SlowestMPerS float64 // 0: at rest the fly hangs no deeper than allowed
	FastestMPerS float64
}

// WindowFor gives the speeds that keep the point fly no shallower than shallowM and
// no deeper than deepM metres. The errors are those of SpeedFor: ErrTooShallow says
// that even at rest the fly does not come down to shallowM.
func WindowFor(r Rig, shallowM, deepM float64) (w Window, err error) {
	if err := r.check(); err != nil {
		return w, err
	}
	if err := errors.Join(checkDepth(shallowM), checkDepth(deepM)); err != nil {
		return w, err
	}
	if shallowM > deepM {
		shallowM, deepM = deepM, shallowM
	}
	l := newLine(r)
	if w.FastestMPerS, err = l.speedFor(shallowM); err != nil {
		return w, err
	}
	w.SlowestMPerS, err = l.speedFor(deepM)
	if errors.Is(err, ErrTooShallow) {
		w.SlowestMPerS, err = 0, nil
	}
	return w, err
}
