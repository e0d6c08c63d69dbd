package layers

import (
	"math"

	"gonum.org/v1/gonum/interp"

	"coldseam/profile/water"
)

// What published methods make of one column of temperatures, side by side with what this
// package says: the thermocline here, the metalimnion in published_edges_test.go and the
// mixed layer in published_mixed_test.go. They do not ask whether the column is layered,
// take no skin off it, and give no intervals. Only the centre of a fitted step is used
// by the program, as a warning: see StepApart.

// Answer is what one method says of a column.
type Answer struct {
	Name   string  // what the method looks for
	Source string  // who published it, "common practice", or "ours"
	DepthM float64 // m below the surface; 0 where the method finds nothing
	OK     bool    // whether it finds anything
}

// Named gives the answer of that name, and one that is not OK where there is none.
func Named(answers []Answer, name string) Answer {
	for _, a := range answers {
		if a.Name == name {
			return a
		}
	}
	return Answer{Name: name}
}

// publishedColumn is the readings and the intervals between them: interval i lies between
// readings i and i+1.
type publishedColumn struct {
	z, t, rho []float64 // m, C, kg/m3
	fall      []float64 // C per metre, positive where it is colder below
	rise      []float64 // kg/m3 per metre, positive where it is denser below
}

// newPublishedColumn refuses fewer than three readings, depths that do not rise, and what is
// no number or no temperature of water.
func newPublishedColumn(depths, temps []float64) (c publishedColumn, ok bool) {
	n := len(depths)
	if n < 3 || len(temps) != n {
		return c, false
	}
	c = publishedColumn{z: depths, t: temps, rho: make([]float64, n), fall: make([]float64, n-1), rise: make([]float64, n-1)}
	for i := range n {
		c.rho[i] = water.Density(temps[i])
		if math.IsNaN(c.rho[i]) || math.IsNaN(depths[i]) || math.IsInf(depths[i], 0) {
			return c, false
		}
		if i == 0 {
			continue
		}
		dz := depths[i] - depths[i-1]
		if !(dz > equal) {
			return c, false
		}
		c.fall[i-1] = (temps[i-1] - temps[i]) / dz
		c.rise[i-1] = (c.rho[i] - c.rho[i-1]) / dz
	}
	return c, true
}

// middle of interval i, m.
func (c publishedColumn) middle(i int) float64 { return (c.z[i] + c.z[i+1]) / 2 }

// fastest gives the index of the greatest rate, the shallowest where several are equal;
// -1 where none is positive.
func fastest(rates []float64) int {
	best := -1
	for i, r := range rates {
		if r > equal && (best < 0 || r > rates[best]+equal) {
			best = i
		}
	}
	return best
}

// Names of the thermocline's methods.
const (
	FallMiddle = "steepest fall of temperature"
	RiseMiddle = "steepest rise of density"
	Parabola   = "parabola through three rises of density"
	Cubic      = "steepest place of a smooth curve"
	StepCentre = "centre of a fitted step"
	RiseCentre = "centre of the rise of density"
)

// Thermoclines gives the depth of the thermocline by each method, in the order of
// their names above. Depths are m, rising; temperatures C, made stable, without a
// surface skin; at least three. Other input gives answers that are not OK. None asks
// whether the column is layered: a fall of a tenth of a degree has its steepest place
// too.
//
//   - FallMiddle: the middle of the interval in which temperature falls fastest
//     (Hutchinson 1957, from memory).
//   - RiseMiddle: the middle of the interval in which density rises fastest.
//   - Parabola: the highest point of the parabola through that interval's rise and
//     its two neighbours', at their middles and within the interval; the middle where
//     there is only one neighbour.
//   - Cubic: where in that interval density rises fastest if temperature follows the
//     monotone cubic of Fritsch & Butland 1984.
//   - StepCentre: the centre of a sigmoid of four parameters fitted to density. Pujoni
//     et al. 2019 (L&O Methods 17:320) found such a fit sturdier than gradients where
//     readings are few; the logistic form and its limits are ours.
//   - RiseCentre: the mean depth of the interval in which density rises fastest and of
//     the water within one width of it above and below, weighted by the square of the
//     rise per metre. The neighbours say on which side of the interval the break lies;
//     the square keeps a long tail of slowly cooling water from drawing it down. Width
//     and power were chosen on the columns of Cascade (see TestMethods in package
//     layers).
func Thermoclines(depths, temps []float64) []Answer {
	out := []Answer{
		{Name: FallMiddle, Source: "Hutchinson 1957, from memory"},
		{Name: RiseMiddle, Source: "common practice"},
		{Name: Parabola, Source: "common practice"},
		{Name: Cubic, Source: "curve of Fritsch & Butland 1984"},
		{Name: StepCentre, Source: "Pujoni et al. 2019"},
		{Name: RiseCentre, Source: "ours"},
	}
	c, ok := newPublishedColumn(depths, temps)
	if !ok {
		return out
	}
	if i := fastest(c.fall); i >= 0 {
		out[0].DepthM, out[0].OK = c.middle(i), true
	}
	i := fastest(c.rise)
	if i < 0 {
		return out
	}
	for j, depthM := range []float64{c.middle(i), c.parabola(i), c.cubic(i)} {
		out[j+1].DepthM, out[j+1].OK = depthM, true
	}
	if z, ok := stepCentre(depths, temps); ok {
		out[4].DepthM, out[4].OK = z, true
	}
	out[5].DepthM, out[5].OK = c.centre(i), true
	return out
}

// centre of the rise around interval i, which rises fastest: it lies within it.
func (c publishedColumn) centre(i int) float64 {
	width := c.z[i+1] - c.z[i]
	from, to := c.z[i]-width, c.z[i+1]+width
	sum, weight := 0.0, 0.0
	for j, rise := range c.rise {
		top, bottom := math.Max(from, c.z[j]), math.Min(to, c.z[j+1])
		if bottom <= top || rise <= 0 {
			continue
		}
		share := rise / c.rise[i]
		w := share * share * (bottom - top)
		sum += w * (top + bottom) / 2
		weight += w
	}
	return sum / weight
}

// parabola gives where the parabola through the rises of interval i, the fastest, and
// its two neighbours is highest.
func (c publishedColumn) parabola(i int) float64 {
	if i == 0 || i == len(c.rise)-1 {
		return c.middle(i)
	}
	up, down := c.middle(i)-c.middle(i-1), c.middle(i+1)-c.middle(i)
	// the slopes towards it and away from it, half way to each neighbour
	before, after := (c.rise[i]-c.rise[i-1])/up, (c.rise[i+1]-c.rise[i])/down
	if before-after <= 0 { // all three alike
		return c.middle(i)
	}
	from := c.middle(i) - up/2
	z := from + before/(before-after)*(up+down)/2
	return min(max(z, c.z[i]), c.z[i+1])
}

// cubicSteps is into how many parts the interval is cut to look for its steepest.
const cubicSteps = 32

// cubic gives where in interval i the density of the monotone cubic rises fastest.
// The cubic's slopes depend on the nearest readings only, so no others are fitted.
func (c publishedColumn) cubic(i int) float64 {
	from, to := max(i-1, 0), min(i+3, len(c.z))
	var f interp.FritschButland
	if err := f.Fit(c.z[from:to], c.t[from:to]); err != nil {
		return c.middle(i)
	}
	h := (c.z[i+1] - c.z[i]) / cubicSteps
	var rises [cubicSteps]float64
	best, before := 0, c.rho[i]
	for j := range rises {
		now := water.Density(f.Predict(c.z[i] + float64(j+1)*h))
		rises[j], before = now-before, now
		if rises[j] > rises[best]+equal {
			best = j
		}
	}
	z := c.z[i] + (float64(best)+0.5)*h
	if best > 0 && best < cubicSteps-1 {
		if bend := rises[best-1] - 2*rises[best] + rises[best+1]; bend < 0 {
			// among rises that are equal but for rounding the vertex may lie anywhere
			z += max(-h, min(h, h/2*(rises[best-1]-rises[best+1])/bend))
		}
	}
	return z
}
