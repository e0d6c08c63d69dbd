package leader

import "math"

// march carries the balance along the line from the point fly upward.
type march struct {
	h, v    float64 // pull forward and up, N
	x, z    float64 // place forward and up from the point fly, m
	s       float64 // length so far
	total   float64
	tol     float64
	step    float64 // the next to try
	steps   int
	hump    hump
	stopped bool // gave up: more steps than any leader needs
}

// hump is the highest place so far where the line turns from rising to falling.
type hump struct {
	found   bool
	s, x, z float64
	h       float64 // pull forward there
}

const mostSteps = 20000

// solve works out the place of every load and the pull at the tip, its error being
// some tol of the depth. It gives false when it needs too many steps.
func (l *line) solve(tol float64) (m march, ok bool) {
	m = march{total: l.total, tol: tol}
	for i := range l.loads {
		m.hang(l.loads[i])
		l.x[i], l.h[i] = m.x, m.z
		if i == len(l.pieces) {
			break
		}
		if l.resting {
			m.rest(&l.pieces[i])
		} else {
			m.along(&l.pieces[i])
		}
	}
	return m, !m.stopped
}

// hang adds a load. A load that floats can make a hump.
func (m *march) hang(ld load) {
	first := m.s == 0
	before := m.v
	m.h += ld.d
	m.v += ld.w
	if m.v < 0 && (before > 0 || first) {
		m.top(m.s, m.x, m.z, m.h)
	}
}

func (m *march) top(s, x, z, h float64) {
	if !m.hump.found || z > m.hump.z {
		m.hump = hump{true, s, x, z, h}
	}
}

// along goes up one piece by the Runge-Kutta pair of Dormand & Prince 1980 (Journal
// of Computational and Applied Mathematics 6:19), orders 5 and 4.
func (m *march) along(p *piece) {
	at := 0.0
	if m.h == 0 && m.v == 0 {
		at = m.free(p)
	}
	k1 := p.slope(at, m.h, m.v)
	if m.step == 0 {
		// A length along which the pull changes by a fifth.
		m.step = 0.2 * math.Hypot(m.h, m.v) / (math.Hypot(k1.h, k1.v) + 1e-300)
	}
	for at < p.length {
		if m.steps++; m.steps > mostSteps {
			m.stopped = true
			return
		}
		d := math.Min(m.step, p.length-at)
		last := at+d >= p.length*(1-1e-12)
		if last {
			d = p.length - at
		}
		next, k7, bad := m.try(p, at, d, k1)
		// A step too small to matter is taken as it is: the line turns on a point.
		if math.IsNaN(bad) {
			m.step = d / 10
			continue
		}
		grow := grows(bad)
		if bad > 1 && d > 1e-11*m.total {
			m.step = d * grow
			continue
		}
		if m.v >= 0 && next.v < 0 {
			m.turn(next, d, k1, k7)
		}
		if !last || d*grow > m.step { // the short last step of a piece says nothing of the next one's
			m.step = d * grow
		}
		m.h, m.v, m.x, m.z, m.s = next.h, next.v, next.x, next.z, m.s+d
		k1 = k7
		if at += d; last {
			break
		}
	}
}

// grows is by how much the next step may be longer after one of such an error over the
// one allowed.
func grows(bad float64) float64 {
	if bad <= 2e-4 {
		return 5
	}
	return math.Max(0.2, 0.9*math.Exp(-0.2*math.Log(bad)))
}

// try takes one step of d from at and says how bad it is: its error over the one
// allowed.
func (m *march) try(p *piece, at, d float64, k1 rates) (next rates, k7 rates, bad float64) {
	k2 := p.slope(at+d/5, m.h+d*(k1.h/5), m.v+d*(k1.v/5))
	k3 := p.slope(at+d*3/10, m.h+d*(3.0/40*k1.h+9.0/40*k2.h), m.v+d*(3.0/40*k1.v+9.0/40*k2.v))
	k4 := p.slope(at+d*4/5,
		m.h+d*(44.0/45*k1.h-56.0/15*k2.h+32.0/9*k3.h),
		m.v+d*(44.0/45*k1.v-56.0/15*k2.v+32.0/9*k3.v))
	k5 := p.slope(at+d*8/9,
		m.h+d*(19372.0/6561*k1.h-25360.0/2187*k2.h+64448.0/6561*k3.h-212.0/729*k4.h),
		m.v+d*(19372.0/6561*k1.v-25360.0/2187*k2.v+64448.0/6561*k3.v-212.0/729*k4.v))
	k6 := p.slope(at+d,
		m.h+d*(9017.0/3168*k1.h-355.0/33*k2.h+46732.0/5247*k3.h+49.0/176*k4.h-5103.0/18656*k5.h),
		m.v+d*(9017.0/3168*k1.v-355.0/33*k2.v+46732.0/5247*k3.v+49.0/176*k4.v-5103.0/18656*k5.v))
	fifth := func(a, c, d, e, f float64) float64 {
		return 35.0/384*a + 500.0/1113*c + 125.0/192*d - 2187.0/6784*e + 11.0/84*f
	}
	next = rates{
		h: m.h + d*fifth(k1.h, k3.h, k4.h, k5.h, k6.h),
		v: m.v + d*fifth(k1.v, k3.v, k4.v, k5.v, k6.v),
		x: m.x + d*fifth(k1.x, k3.x, k4.x, k5.x, k6.x),
		z: m.z + d*fifth(k1.z, k3.z, k4.z, k5.z, k6.z),
	}
	k7 = p.slope(at+d, next.h, next.v)
	off := func(a, c, e, f, g, i float64) float64 {
		return math.Abs(d * (71.0/57600*a - 71.0/16695*c + 71.0/1920*e - 17253.0/339200*f + 22.0/525*g - 1.0/40*i))
	}
	const level = 1e-3
	t := math.Sqrt(next.h*next.h + next.v*next.v)
	bad = off(k1.h, k3.h, k4.h, k5.h, k6.h, k7.h) / t
	// Where the line is nearly level, the depth hangs on the little pull upward.
	bad = max(bad, off(k1.v, k3.v, k4.v, k5.v, k6.v, k7.v)/(math.Abs(next.v)+level*t))
	bad = max(bad, off(k1.x, k3.x, k4.x, k5.x, k6.x, k7.x)/m.total)
	bad = max(bad, off(k1.z, k3.z, k4.z, k5.z, k6.z, k7.z)/(math.Abs(next.z)+level*m.total))
	return next, k7, bad / m.tol
}

// turn notes the top of the line between two ends of a step, from the cubic through
// both.
func (m *march) turn(next rates, d float64, k1, k7 rates) {
	f := m.v / (m.v - next.v)
	e := 1 - f
	cubic := func(a, slopeA, b, slopeB float64) float64 {
		return a*e*e*(1+2*f) + b*f*f*(1+2*e) + d*f*e*(slopeA*e-slopeB*f)
	}
	m.top(m.s+f*d, cubic(m.x, k1.x, next.x, k7.x), cubic(m.z, k1.z, next.z, k7.z), m.h+f*(next.h-m.h))
}
