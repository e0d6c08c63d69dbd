package leader

import (
	"cmp"
	"math"
	"slices"

	"coldseam/profile/water"
)

// piece is a stretch of line between two loads, with what acts on it.
type piece struct {
	length float64 // m
	w      float64 // N/m, weight in water, at its lower end
	taper  float64 // 1/m: the diameter at s from its lower end is 1 + taper*s times that there
	dia    float64 // m, at its lower end
	// Forces by Reynolds number: re is that of the whole speed at the lower end,
	// viscous is rho*nu*speed.
	re, viscous float64
	// Forces by given constants, for fixed: N = r cos a |cos a|, F = f sin a |sin a|.
	fixed bool
	r, f  float64
}

// load is what hangs at one place of the line.
type load struct {
	w, d float64 // N: weight in water and drag
}

// line is a leader made ready for towing: loads[i] hangs at the lower end of
// pieces[i], from the point fly upward, and the last load at the tip.
type line struct {
	pieces []piece
	loads  []load
	x, h   []float64 // of each load from the point fly: forward and up, m, set by solving
	total  float64

	fluid   fluid
	drags   []float64 // drag diameter of each body
	nodes   []int     // the load to which each body belongs
	resting bool      // no speed at all
	tol     float64   // of a step
}

// newLine makes a leader that has passed check ready for a speed.
func newLine(r Leader) *line {
	l := &line{fluid: fluidAt(r.TempC), total: r.LengthM()}
	order := make([]int, len(r.Bodies))
	for i := range order {
		order[i] = i
	}
	// From the lowest up; those at one place in the order given.
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(r.Bodies[j].AtM, r.Bodies[i].AtM) })
	l.nodes = make([]int, len(r.Bodies))
	n := len(r.Parts) + len(r.Bodies) + 1
	l.pieces, l.loads = make([]piece, 0, n), make([]load, 1, n)
	tiny := slack * l.total
	next, below := 0, 0.0 // length already laid out
	place := func(upTo float64) {
		for next < len(order) && l.total-r.Bodies[order[next]].AtM <= upTo+tiny {
			l.nodes[order[next]] = len(l.loads) - 1
			next++
		}
	}
	place(0)
	for i := len(r.Parts) - 1; i >= 0; i-- {
		for done := 0.0; done < r.Parts[i].LengthM; {
			end := r.Parts[i].LengthM
			if next < len(order) {
				if at := l.total - r.Bodies[order[next]].AtM - below; at < end-tiny {
					end = at
				}
			}
			l.pieces = append(l.pieces, l.cut(r.Parts[i], done, end))
			l.loads = append(l.loads, load{})
			place(below + end)
			done = end
		}
		below += r.Parts[i].LengthM
	}
	place(math.Inf(1))
	l.x, l.h = make([]float64, len(l.loads)), make([]float64, len(l.loads))
	l.tol = tolerance
	l.drags = make([]float64, len(r.Bodies))
	for i, b := range r.Bodies {
		l.drags[i] = b.width()
		l.loads[l.nodes[i]].w += l.fluid.weight(b.KgDry, b.density())
	}
	for i := range l.loads {
		if l.loads[i].w < 0 || i < len(l.pieces) && l.pieces[i].w < 0 {
			l.tol = floatTolerance
		}
	}
	return l
}

// cut is the stretch of a part between two distances from its lower end.
func (l *line) cut(p Part, from, to float64) piece {
	low := p.end()
	slope := (p.DiameterM - low) / p.LengthM
	d := low + slope*from
	kgM := math.Pi / 4 * d * d * (p.density() - l.fluid.rho)
	return piece{length: to - from, dia: d, taper: slope / d, w: kgM * water.StandardGravity}
}

// at sets the speed.
func (l *line) at(speed float64) {
	speed = math.Min(speed, maxSpeed)
	l.resting = speed < 1e-9
	for i := range l.loads {
		l.loads[i].d = 0
	}
	if l.resting {
		return
	}
	for i := range l.pieces {
		p := &l.pieces[i]
		p.re, p.viscous = speed*p.dia/l.fluid.nu, l.fluid.rho*l.fluid.nu*speed
	}
	for i, d := range l.drags {
		l.loads[l.nodes[i]].d += l.fluid.ballDrag(d, speed)
	}
}

// across is the drag across the line and along the friction along it, in N/m, where
// the line of diameter share times that at the lower end slants by the angle with
// this sine and cosine.
func (p *piece) forces(share, sin, cos float64) (across, along float64) {
	if p.fixed {
		return p.r * cos * math.Abs(cos), p.f * sin * math.Abs(sin)
	}
	re := p.re * share * math.Abs(cos)
	along = math.Pi * p.viscous * sin * friction(re)
	if re > 1e-30 {
		across = p.viscous / 2 * cos * re * cylinder(re)
	}
	return across, along
}

// slope is how the pull on the line and its place change per metre: pull and place
// forward (h, x) and up (v, z).
func (p *piece) slope(s, h, v float64) (d rates) {
	t := math.Sqrt(h*h + v*v)
	sin, cos := 1.0, 0.0
	if t > 0 {
		sin, cos = h/t, v/t
	}
	share, w := 1.0, p.w
	if p.taper != 0 {
		share += p.taper * s
		w *= share * share
	}
	across, along := p.forces(share, sin, cos)
	return rates{h: along*sin + across*cos, v: w + along*cos - across*sin, x: sin, z: cos}
}

// rates are those of slope.
type rates struct{ h, v, x, z float64 }
