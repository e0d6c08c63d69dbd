package response

import "math"

// refine sharpens a fit whose likelihood is narrower than the grid, where the
// weighted mean would just be the nearest trial time constant. A parabola in
// the residual sum of squares through the best node and its neighbours gives
// the best time constant between nodes, and the water is read off there.
func (f *fitter) refine(r fitted, dof float64) fitted {
	best := 0
	for i := range f.nodes {
		if f.nodes[i].rss < f.nodes[best].rss {
			best = i
		}
	}
	if best == 0 || best == len(f.nodes)-1 {
		return r
	}
	a, b, c := f.nodes[best-1], f.nodes[best], f.nodes[best+1]
	bend := a.rss - 2*b.rss + c.rss
	at := (a.rss - c.rss) / (2 * bend) // in grid steps, from -0.5 to 0.5
	low := b.rss - 0.5*bend*at*at
	// The second derivative of the log likelihood, one over the variance of
	// the place in grid steps. Below 1 the grid is fine enough.
	sharp := 0.5 * dof * bend / low
	if !(sharp > 1) || !(low > 0) || math.IsInf(sharp, 0) {
		return r
	}
	rise := (c.waterC - a.waterC) / 2
	r.waterC = b.waterC + rise*at + 0.5*(a.waterC-2*b.waterC+c.waterC)*at*at
	r.errC = math.Sqrt(b.varC*low/b.rss + rise*rise/sharp)
	r.noiseC = math.Sqrt(low / dof)
	r.tauS = b.tauS * math.Pow(c.tauS/b.tauS, at)
	r.tauHighS = r.tauS * math.Pow(c.tauS/b.tauS, 1/math.Sqrt(sharp))
	return r
}
