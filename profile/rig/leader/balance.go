package leader

import (
	"math"
)

// load works out the force on each node save the pull of the links, and how it falls
// with a shift of the node: weight, drag, inertia, surface and bottom.
func (f *fall) load() {
	first := 1
	if f.c.slides {
		first = 0
	}
	for i := first; i < len(f.c.node); i++ {
		k, v := &f.c.node[i], f.next.speed[i]
		force, m := vec{0, k.weight}, sym{}

		// Across and along the line each part of the speed has its own drag (Sears
		// 1948); the line runs midway between the links that meet here.
		along := f.dir[max(0, i-1)]
		if 0 < i && i < len(f.dir) {
			if mid := along.add(f.dir[i]); mid.length() > 0.1 { // else it folds back
				along = mid.times(1 / mid.length())
			}
		}
		across := along.across()
		vAcross, vAlong := v.dot(across), v.dot(along)
		re := math.Abs(vAcross) * k.perMps
		q, slope := f.across.at(re)
		friction := k.along * friction(re)
		force = force.sub(across.times(k.across * q * vAcross)).sub(along.times(friction * vAlong))
		m.addAlong(across, f.rate*k.across*(q+slope*re))
		m.addAlong(along, f.rate*friction)

		for _, b := range k.ball {
			speed := v.length()
			re := speed * b.perMps
			q, slope := f.round.at(re)
			force = force.sub(v.times(b.drag * q))
			m.xx += f.rate * b.drag * q
			m.zz += f.rate * b.drag * q
			m.addAlong(v, f.rate*b.drag*slope*re/(speed*speed+1e-12))
		}

		force = force.sub(v.times(f.rate).sub(f.offSpeed[i]).times(k.mass))
		m.xx += f.rate * f.rate * k.mass
		m.zz += f.rate * f.rate * k.mass

		f.force[i], f.matrix[i] = f.touch(i, force, m)
	}
}

// touch adds what keeps a node under the surface and on the bottom, where friction
// also keeps it in its place. They set in smoothly, and friction by how hard the node
// was pressed when the step began: else Newton's method turns in circles.
func (f *fall) touch(i int, force vec, m sym) (vec, sym) {
	z, v := f.next.at[i].z, f.next.speed[i]
	push, slope := f.press(-z)
	force.z += push
	m.zz += slope
	push, slope = f.press(z - f.c.bottomM)
	force.z -= push
	m.zz += slope
	pressed, _ := f.press(f.now.at[i].z - f.c.bottomM)
	force = force.sub(vec{bottomDrag * v.x, bottomGive * v.z}.times(pressed))
	m.xx += bottomDrag * pressed * f.rate
	m.zz += bottomGive * pressed * f.rate
	return force, m
}

// How friction on the bottom grows with speed, as a share of what presses a node
// down, s/m: along it, so that what is pulled with a tenth of that moves 0.01 mm/s, and
// up and down, so that nothing bounces.
const bottomDrag, bottomGive = 1e4, 1e2

// press is how hard surface or bottom push back for a node that is so far in, and
// how fast that grows.
func (f *fall) press(in float64) (push, slope float64) {
	switch {
	case !(in > 0):
		return 0, 0
	case in < pressM:
		return f.stiff * in * in / (2 * pressM), f.stiff * in / pressM
	}
	return f.stiff * (in - pressM/2), f.stiff
}

// turn is what the sweep leaves at each link for the way back: it turns by own less
// the shift of its upper end times per, in m at its lower end.
type turn struct {
	own float64
	per vec
}

// sweep makes one round of Newton's method for the angles of all links at once and
// gives the largest turn. From the free end to the tip it gathers the force on all
// that hangs below a link: what lies along the link the link carries, what lies
// across turns it. That leaves one unknown a link, and none at the tip, from where
// the turns follow. (For rigid bodies: Featherstone 1983, from memory.)
func (f *fall) sweep() float64 {
	var force vec
	var m sym
	for i := len(f.dir) - 1; i >= 0; i-- {
		force, m = force.add(f.force[i+1]), m.add(f.matrix[i+1])
		n := f.dir[i].across()
		mn := m.times(n)
		pull := math.Max(0, f.dir[i].dot(force)) // a link that is pulled rights itself
		stiff := n.dot(mn) + pull/f.c.link[i]
		f.turn[i] = turn{n.dot(force) / stiff, mn.times(1 / stiff)}
		force = force.sub(mn.times(f.turn[i].own))
		m.addAlong(mn, -1/stiff)
	}
	var shift vec
	if f.c.slides { // level: the line floats
		force, m = force.add(f.force[0]), m.add(f.matrix[0])
		force.x -= f.c.tipDrag * f.next.speed[0].x
		shift.x = force.x / (m.xx + f.rate*f.c.tipDrag)
		f.next.at[0].x += shift.x
	}
	most := math.Abs(shift.x) / f.c.lengthM
	for i, t := range f.turn {
		by := t.own - t.per.dot(shift)
		shift = shift.add(f.dir[i].across().times(by))
		angle := by / f.c.link[i]
		most = math.Max(most, math.Abs(angle))
		f.next.angle[i] += math.Max(-mostTurn, math.Min(mostTurn, angle))
	}
	return most
}

// mostTurn is the most by which a round turns a link, rad: further the sine is no
// longer the angle and Newton's method overshoots.
const mostTurn = 0.7
