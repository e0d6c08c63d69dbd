package sink

import (
	"errors"
	"fmt"
	"math"
)

// How finely the usual solution is cut: twice the links and half the steps change a
// wait by less than 2 %.
const (
	usualLinks = 1.0
	usualMiss  = 0.002
)

// mostS is how long a fall is followed, s.
const mostS = 3600.0

// State is the rig at a time.
type State struct {
	TimeS float64
	FlyM  float64   // depth of the point fly: of the leader's end
	AwayM float64   // how far the point fly is from where the tip began, level
	TipM  float64   // by how much the tip has slid towards the fly
	BodyM []float64 // depth of each body, in the rig's order
}

// Wait gives the seconds until the point fly, or the leader's end where it has none,
// first is at a depth: ErrShort, ErrBottom or ErrNever where it never is there, and
// another error for a rig that makes no sense. A depth of 0 or less takes no time.
func Wait(r Rig, depthM float64, tip Tip) (float64, error) {
	return wait(r, depthM, tip, -1, usualLinks, usualMiss)
}

// BodyWait is Wait for one of the rig's bodies, by its place in r.Bodies.
func BodyWait(r Rig, body int, depthM float64, tip Tip) (float64, error) {
	if body < 0 || body >= len(r.Bodies) {
		return 0, fmt.Errorf("there is no body %d among %d", body, len(r.Bodies))
	}
	return wait(r, depthM, tip, body, usualLinks, usualMiss)
}

// Path gives the fall from rest to untilS seconds, 0 to 3600, in the solver's steps:
// dense where the course bends, so that straight lines between them will do to show
// it. What rests keeps its place.
func Path(r Rig, tip Tip, untilS float64) ([]State, error) {
	r, err := r.stated()
	if err != nil {
		return nil, err
	}
	if !(untilS >= 0 && untilS <= mostS) {
		return nil, fmt.Errorf("%g s is no time within an hour", untilS)
	}
	f := rest(newChain(r, tip, usualLinks), usualMiss)
	out := []State{f.look()}
	for f.step(untilS) {
		out = append(out, f.look())
	}
	return out, nil
}

func (f *fall) look() State {
	end := len(f.c.link)
	s := State{TimeS: f.now.time, FlyM: f.depth(end), AwayM: f.now.at[end].x, TipM: f.now.at[0].x}
	for _, k := range f.c.body {
		s.BodyM = append(s.BodyM, f.depth(k))
	}
	return s
}

// depth is a node's depth, without what it is pressed into the bottom or stands out
// of the surface.
func (f *fall) depth(node int) float64 {
	return math.Min(f.c.bottomM, math.Max(0, f.now.at[node].z))
}

// wait is Wait for a body, or for the leader's end if body is -1, with links of the
// usual number times fine and steps that miss a straight course by a share of the
// leader.
func wait(r Rig, depthM float64, tip Tip, body int, fine, miss float64) (float64, error) {
	r, err := r.stated()
	if err != nil {
		return 0, err
	}
	atM := r.length()
	if body >= 0 {
		atM = r.Bodies[body].AtM
	}
	switch {
	case math.IsNaN(depthM):
		return 0, errors.New("the depth is no number")
	case depthM <= 0:
		return 0, nil
	case depthM >= atM:
		return 0, ErrShort
	case r.BottomM > 0 && depthM > r.BottomM:
		return 0, ErrBottom
	}
	f := rest(newChain(r, tip, fine), miss)
	node := len(f.c.link)
	if body >= 0 {
		node = f.c.body[body]
	}
	for f.step(mostS) {
		if f.now.at[node].z >= depthM {
			return f.crossing(node, depthM), nil
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
