package method

import (
	"math"

	"coldseam/profile/water"
)

// equal is the rounding error of a difference of two written figures, so that a fall
// of exactly 1 C per metre counts as one.
const equal = 1e-9

// column is the readings and the intervals between them: interval i lies between
// readings i and i+1.
type column struct {
	z, t, rho []float64 // m, C, kg/m3
	fall      []float64 // C per metre, positive where it is colder below
	rise      []float64 // kg/m3 per metre, positive where it is denser below
}

// newColumn refuses fewer than three readings, depths that do not rise, and what is
// no number or no temperature of water.
func newColumn(depths, temps []float64) (c column, ok bool) {
	n := len(depths)
	if n < 3 || len(temps) != n {
		return c, false
	}
	c = column{z: depths, t: temps, rho: make([]float64, n), fall: make([]float64, n-1), rise: make([]float64, n-1)}
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
func (c column) middle(i int) float64 { return (c.z[i] + c.z[i+1]) / 2 }

// most gives the index of the greatest rate, the shallowest where several are equal;
// -1 where none is positive.
func most(rates []float64) int {
	best := -1
	for i, r := range rates {
		if r > equal && (best < 0 || r > rates[best]+equal) {
			best = i
		}
	}
	return best
}
