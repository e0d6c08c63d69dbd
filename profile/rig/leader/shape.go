package leader

import (
	"errors"
	"math"
)

// Place is where something hangs.
type Place struct {
	DepthM  float64 // below the surface, 0 or more
	BehindM float64 // behind the tip of the fly line, level
}

// Shape is a leader under way.
type Shape struct {
	Bodies   []Place // in the order of the leader's
	Point    Place   // the lower end of the line, where the point fly is
	TensionN float64 // at the tip
	AngleDeg float64 // of the line at the tip from the vertical, 0 to 90
	AfloatM  float64 // length that lies on the surface, from the tip down
}

// ErrSteps is given when a shape cannot be worked out in any sensible number of
// steps. No leader is known that does so.
var ErrSteps = errors.New("the shape of the leader cannot be worked out")

// Tolerances of one step; they keep depths within 0.1 %. Where something floats, the
// line bends up and down, and its depth is what is left of that.
const (
	tolerance      = 1e-5
	floatTolerance = 1e-7
)

// Tow gives the shape of a leader that is retrieved, or drifts, at mps metres a second
// against the water, 0 or more; beyond 100 it is that of 100. Depths are those of the
// model within 0.1 % of the depth or 0.002 % of the leader. An error (ErrRange) says what
// of the leader or the speed is out of range.
func (l Leader) Tow(mps float64) (Shape, error) {
	if err := errors.Join(l.check(), checkSpeed(mps)); err != nil {
		return Shape{}, err
	}
	return newLine(l).shape(mps)
}

// depth of the point fly at a speed.
func (l *line) depth(speed float64) (float64, error) {
	l.at(speed)
	m, ok := l.solve(l.tol)
	if !ok {
		return 0, ErrSteps
	}
	if m.afloat() {
		return m.hump.z, nil
	}
	return math.Max(0, m.z), nil
}

// afloat says that the line would rise above the tip.
func (m *march) afloat() bool { return m.hump.found && m.hump.z > m.z }

func (l *line) shape(speed float64) (Shape, error) {
	l.at(speed)
	m, ok := l.solve(l.tol)
	if !ok {
		return Shape{}, ErrSteps
	}
	s := Shape{Bodies: make([]Place, len(l.nodes))}
	tip := m.x
	if m.afloat() {
		s.AfloatM = l.total - m.hump.s
		tip = m.hump.x + s.AfloatM
		s.TensionN, s.AngleDeg = m.hump.h+l.flat(m.hump.s), 90
	} else {
		s.TensionN = math.Hypot(m.h, m.v)
		if s.TensionN > 0 {
			s.AngleDeg = math.Min(90, math.Atan2(m.h, m.v)*180/math.Pi)
		} else if tip > 0 {
			s.AngleDeg = 90
		}
	}
	top := m.z
	if m.afloat() {
		top = m.hump.z
	}
	place := func(node int) Place {
		if below := l.below(node); m.afloat() && below > m.hump.s+slack*l.total {
			return Place{BehindM: l.total - below}
		}
		return Place{DepthM: math.Max(0, top-l.h[node]), BehindM: tip - l.x[node]}
	}
	for i, node := range l.nodes {
		s.Bodies[i] = place(node)
	}
	s.Point = place(0)
	return s, nil
}

// below is the length of line below a load.
func (l *line) below(node int) float64 {
	sum := 0.0
	for _, p := range l.pieces[:node] {
		sum += p.length
	}
	return sum
}

// flat is the drag of all that lies flat on the surface above the length from.
func (l *line) flat(from float64) float64 {
	sum, at := 0.0, 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		at += p.length
		if over := at - from; over > slack*l.total {
			_, along := p.forces(1, 1, 0)
			sum += along * math.Min(over, p.length)
			sum += l.loads[i+1].d
		}
	}
	return sum
}
