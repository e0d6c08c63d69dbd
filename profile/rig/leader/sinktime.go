package leader

import (
	"errors"
	"math"
)

// Tip is what the tip of the fly line does while the leader sinks.
type Tip int

// What the tip may do.
const (
	// Held: the tip stays where it is, as when the line is kept just tight.
	Held Tip = iota
	// Slides: the sinking leader pulls the tip along the surface towards itself,
	// against the friction of slidingM metres of straight floating line.
	Slides
)

// Why there is no sink time.
var (
	ErrShort  = errors.New("the leader is no longer than the depth")
	ErrBottom = errors.New("the water is shallower than the depth")
	ErrNever  = errors.New("the depth is not reached within an hour")
)

// How finely the usual solution is cut: twice the links and half the steps change a
// sink time by less than 2 %.
const (
	usualLinks = 1.0
	usualMiss  = 0.002
)

// mostS is how long a fall is followed, s.
const mostS = 3600.0

// SinkTime gives the seconds until the point fly, or the leader's end where it has none,
// first is at a depth: ErrShort, ErrBottom or ErrNever where it never is there, ErrRange
// for a leader or a depth that makes no sense. A depth of 0 or less takes no time.
func (l Leader) SinkTime(depthM float64, tip Tip) (float64, error) {
	return l.sinkTime(depthM, tip, usualLinks, usualMiss)
}

// sinkTime is SinkTime with links of the usual number times fine and steps that miss a
// straight course by a share of the leader.
func (l Leader) sinkTime(depthM float64, tip Tip, fine, miss float64) (float64, error) {
	if err := l.check(); err != nil {
		return 0, err
	}
	switch {
	case math.IsNaN(depthM):
		return 0, checkDepth(depthM)
	case depthM <= 0:
		return 0, nil
	case depthM >= l.LengthM():
		return 0, ErrShort
	case l.BottomM > 0 && depthM > l.BottomM:
		return 0, ErrBottom
	}
	f := rest(newChain(l, tip, fine), miss)
	end := len(f.c.link)
	for f.step(mostS) {
		if f.now.at[end].z >= depthM {
			return f.crossing(end, depthM), nil
		}
	}
	return 0, ErrNever
}

// crossing is when a node passed a depth in the last step: where the cubic with the
// places and speeds at both ends of the step does.
func (f *fall) crossing(node int, depthM float64) float64 {
	h := f.now.time - f.before.time
	z0, v0 := f.before.at[node].z, h*f.before.speed[node].z
	z1, v1 := f.now.at[node].z, h*f.now.speed[node].z
	lo, hi := 0.0, 1.0
	for range 40 {
		x := (lo + hi) / 2
		y := 1 - x
		if z0*y*y*(1+2*x)+v0*x*y*y+z1*x*x*(1+2*y)-v1*x*x*y < depthM {
			lo = x
		} else {
			hi = x
		}
	}
	return f.before.time + h*hi
}
