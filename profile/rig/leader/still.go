package leader

import "math"

// free starts a line with nothing at all at its end, neither weight nor drag: it
// leaves its end straight, at the critical angle, at which weight and drag across
// balance (Pode 1951), and the pull grows evenly. A part that does not taper is
// straight all along; of one that tapers a thousandth is taken so. It returns how
// much of the piece it has done.
func (m *march) free(p *piece) float64 {
	sin, cos := p.critical()
	if cos < 0 {
		m.top(m.s, m.x, m.z, 0)
	}
	across, along := p.forces(1, sin, cos)
	d := p.length
	if p.taper != 0 {
		d *= 1e-3
	}
	m.h = d * (along*sin + across*cos)
	m.v = d * (p.w + along*cos - across*sin)
	m.x += d * sin
	m.z += d * cos
	m.s += d
	return d
}

// critical is the sine and cosine of the angle from the vertical at which the
// weight of a line and the drag across it balance.
func (p *piece) critical() (sin, cos float64) {
	if p.w == 0 {
		return 1, 0
	}
	low, high := 0.0, math.Pi/2 // the weight's part grows with the angle, drag falls
	for range 60 {
		sin, cos = math.Sincos((low + high) / 2)
		across, _ := p.forces(1, sin, cos)
		if across > math.Abs(p.w)*sin {
			low = (low + high) / 2
		} else {
			high = (low + high) / 2
		}
	}
	return sin, math.Copysign(cos, p.w)
}

// rest goes up one piece of a line that does not move: it hangs straight down from
// above where all below it sinks, stands straight up where it floats, and lies
// level where nothing pulls.
func (m *march) rest(p *piece) {
	if m.v == 0 && m.h == 0 && p.w == 0 {
		m.x += p.length
		m.s += p.length
		return
	}
	if m.v == 0 && p.w < 0 {
		m.top(m.s, m.x, m.z, 0)
	}
	// The weight of the lowest s metres: w s, or of a taper w ((1+ks)^3-1)/(3k).
	k := p.taper
	weight := p.w * p.length
	if k != 0 {
		weight = p.w * (math.Pow(1+k*p.length, 3) - 1) / (3 * k)
	}
	turn := p.length // where the pull changes its sign
	if m.v != 0 && (m.v > 0) != (m.v+weight > 0) {
		turn = -m.v / p.w
		if k != 0 {
			turn = (math.Cbrt(1-3*k*m.v/p.w) - 1) / k
		}
		turn = math.Min(math.Max(turn, 0), p.length)
	}
	up := 1.0
	if m.v < 0 || m.v == 0 && weight < 0 {
		up = -1
	}
	if up > 0 && turn < p.length {
		m.top(m.s+turn, m.x, m.z+turn, 0)
	}
	m.z += up * (turn - (p.length - turn))
	m.v += weight
	m.s += p.length
}
