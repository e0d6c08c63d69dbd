package rig

import (
	"math"

	"coldseam/profile/rig/leader"
)

// Course is where the line runs in the water while the fly is at its depth, for a drawing to
// scale: from where the line leaves the surface, or the leader begins there, to the point fly.
type Course struct {
	Points []leader.Place
	Leader int // the first point that is of the leader; what comes before is sinking line
}

// coursePoints is into how many stretches the leader is cut for its course: with flies and
// shot they are bodies of the physics, of which there may be 20.
const coursePoints = 15

// course is that of the rig that was found: a long leader at the retrieve that holds the
// fly at its depth, a sinking line at the fastest that does, all else straight down but for
// the drift.
func (r *Rig) course(in Input) {
	g := r.gear(in)
	switch r.Kind {
	case LongLeader:
		depth := r.FlyM
		if !r.Reachable {
			depth = r.ReachM
		}
		speed := g.speed(r.LeaderM, depth)
		if r.Solved && r.Reachable {
			speed = r.RetrieveMps + in.DriftMps
		}
		r.Course = courseOf(g.leader(r.LeaderM), speed, 0)
	case Sinking:
		if r.Window.Known {
			g.in.Flies = 1
			r.Course = courseOf(r.sunk(g), r.Window.Fastest+in.DriftMps, OutM)
		}
	case StraightDown:
		r.Course = Course{Points: []leader.Place{{}, {DepthM: math.Max(0, r.FlyM-r.LeaderM)}, {DepthM: r.FlyM}}, Leader: 1}
	default:
		r.Course = courseOf(g.leader(math.Max(r.FlyM, shortestM)), in.DriftMps, 0)
	}
	if len(r.Course.Points) == 0 {
		r.Course = Course{Points: []leader.Place{{}, {DepthM: r.FlyM}}}
	}
}

// courseOf is the course of a leader at a speed, whose first lineM are fly line. It is empty
// where the physics refuses the leader.
func courseOf(l leader.Leader, mps, lineM float64) Course {
	n := coursePoints
	if lineM > 0 {
		n -= 5
	}
	length := l.LengthM()
	var at []float64
	for i := range 5 {
		if lineM > 0 {
			at = append(at, lineM*float64(i)/5)
		}
	}
	c := Course{Leader: len(at)}
	for i := range n {
		at = append(at, lineM+(length-lineM)*float64(i)/float64(n))
	}
	first := len(l.Bodies)
	for _, s := range at { // bodies that weigh nothing change nothing
		l.Bodies = append(l.Bodies, leader.Body{AtM: s})
	}
	shape, err := l.Tow(mps)
	if err != nil {
		return Course{}
	}
	c.Points = append(shape.Bodies[first:len(shape.Bodies):len(shape.Bodies)], shape.Point)
	return c
}
