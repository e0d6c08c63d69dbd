package layers

import "math"

// intervals gives every estimate its 80 % interval: each member of the ensemble is asked
// the same questions as the readings' curve.
func (l *Layers) intervals() {
	k, p := l.Curve, l.Curve.ensemble
	if l.MixedLayer == nil {
		return
	}
	start := p.reading[l.start]
	n := len(p.Temps)
	all := make([]float64, 0, 4*n)
	plane, top, bottom, mixed := all[0:0:n], all[n:n:2*n], all[2*n:2*n:3*n], all[3*n:3*n:4*n]
	var f gradients
	c := edgeModel{quick: true}
	var rho []float64
	for m, t := range p.Temps {
		limit := math.Inf(1)
		if l.Structure == Layered {
			f.reset(p.Depths, t)
			if i := f.greatestRise(start); i >= 0 {
				rho = f.cumulativeRise(rho)
				if z, ok := p.perturbations[m].thermocline(&f, rho, k.Depths[l.start]); ok {
					plane = append(plane, k.shifted(m, z))
				}
				if m%2 == 0 { // half of them will do: the edge model takes the most time
					c.apply(&f, start, i)
					limit = c.top.quantile(p.perturbations[m].top)
					top = append(top, k.shifted(m, limit))
					bottom = append(bottom, k.shifted(m, c.bottom.quantile(p.perturbations[m].bottom)))
				}
			}
		}
		if m%2 == 0 {
			mixed = append(mixed, k.shifted(m, min(limit, p.mixed(m, start))))
		}
	}
	*l.MixedLayer = k.interval80(l.MixedLayer.Best, mixed)
	if l.Structure != Layered {
		return
	}
	*l.Thermocline = k.interval80(l.Thermocline.Best, plane)
	*l.MetalimnionTop = k.interval80(l.MetalimnionTop.Best, top)
	*l.MetalimnionBottom = k.interval80(l.MetalimnionBottom.Best, bottom)
}

// mixed gives where member m has fallen by mixedC from place start on, give or take
// how uneven the warm water is.
func (p *Ensemble) mixed(m, start int) float64 {
	t := p.Temps[m]
	level := t[start] - math.Max(leastMixedC, mixedC+unevenC*p.perturbations[m].uneven)
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
