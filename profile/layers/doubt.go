package layers

import "math"

// doubt gives every estimate its 80 % interval: each plausible column is asked the
// same questions as the readings' curve.
func (l *Layers) doubt() {
	k, p := l.Curve, l.Curve.plausible
	if l.MixedLayer == nil {
		return
	}
	start := p.reading[l.start]
	n := len(p.Temps)
	all := make([]float64, 0, 4*n)
	plane, top, bottom, mixed := all[0:0:n], all[n:n:2*n], all[2*n:2*n:3*n], all[3*n:3*n:4*n]
	var f falls
	c := crew{quick: true}
	var rho []float64
	for m, t := range p.Temps {
		limit := math.Inf(1)
		if l.Structure == Layered {
			f.reset(p.Depths, t)
			if i := f.densest(start); i >= 0 {
				rho = f.risen(rho)
				if z, ok := p.habits[m].steepest(&f, rho, k.Depths[l.start]); ok {
					plane = append(plane, k.shifted(m, z))
				}
				if m%2 == 0 { // half of them will do: crews take the most time
					c.marks(&f, start, i)
					limit = c.top.depth(p.habits[m].top)
					top = append(top, k.shifted(m, limit))
					bottom = append(bottom, k.shifted(m, c.bottom.depth(p.habits[m].bottom)))
				}
			}
		}
		if m%2 == 0 {
			mixed = append(mixed, k.shifted(m, min(limit, p.mixed(m, start))))
		}
	}
	*l.MixedLayer = k.around(l.MixedLayer.Best, mixed)
	if l.Structure != Layered {
		return
	}
	*l.Thermocline = k.around(l.Thermocline.Best, plane)
	*l.MetaTop = k.around(l.MetaTop.Best, top)
	*l.MetaBottom = k.around(l.MetaBottom.Best, bottom)
}

// mixed gives where member m has fallen by mixedC from place start on, give or take
// how uneven the warm water is.
func (p *Plausible) mixed(m, start int) float64 {
	t := p.Temps[m]
	level := t[start] - math.Max(leastMixedC, mixedC+unevenC*p.habits[m].uneven)
	for i := start + 1; i < len(t); i++ {
		if t[i] <= level {
			return p.Depths[i-1] + (p.Depths[i]-p.Depths[i-1])*(t[i-1]-level)/(t[i-1]-t[i])
		}
	}
	return p.Depths[len(t)-1]
}

const (
	unevenC     = 0.4 // standard deviation; from the dense columns of Paul, Peter and Beaverdam
	leastMixedC = 0.1
)
