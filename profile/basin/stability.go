package basin

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"coldseam/profile/water"
)

const (
	gravity = 9.80665 // m/s2, the standard
	sliceM  = 0.25    // no slice of an integral is thicker
	points  = 4       // of Gauss and Legendre in a slice
)

// Stability is Schmidt's: the work in J per m2 of surface that it would take to mix the
// water to one density, without heat, against its weight: 0 for one density, more the
// warmer and the deeper the upper water. tempC gives the temperature at each depth down
// to the floor, and cuts the depths at which it may bend or jump.
//
// Source: Schmidt 1928 in the form of Idso 1973, referred to the surface's area and the
// centre of the lake's volume. Pure water at the pressure of the surface (package water).
func (b Basin) Stability(tempC func(depthM float64) float64, cuts []float64) float64 {
	return b.moment(func(z float64) float64 { return water.Density(tempC(z)) }, cuts)
}

// moment is the stability of a column of densities: g/A0 times the integral of the
// density by its distance below the centre of volume, weighted by area. A mean taken off
// the density changes nothing, since distances from the centre of volume add up to none.
func (b Basin) moment(rho func(depthM float64) float64, cuts []float64) float64 {
	const about = 1000 // kg/m3, taken off so that no digits are lost
	volume := b.integral(func(z float64) float64 { return b.AreaM2(z) }, nil)
	centre := b.integral(func(z float64) float64 { return z * b.AreaM2(z) }, nil) / volume
	work := b.integral(func(z float64) float64 { return (z - centre) * (rho(z) - about) * b.AreaM2(z) }, cuts)
	return gravity * work / b.rows[0].AreaM2
}

// integral is that of f from the surface to the floor, in slices that end at each row of
// the table and at each cut.
func (b Basin) integral(f func(float64) float64, cuts []float64) float64 {
	sum, from := 0.0, 0.0
	for from < b.FloorM() {
		to := b.FloorM()
		for _, r := range b.rows {
			to = nearer(to, r.DepthM, from)
		}
		for _, z := range cuts {
			to = nearer(to, z, from)
		}
		n := max(1, int(math.Ceil((to-from)/sliceM)))
		for i := range n {
			low, high := from+(to-from)*float64(i)/float64(n), from+(to-from)*float64(i+1)/float64(n)
			sum += quad.Fixed(f, low, high, points, nil, 0)
		}
		from = to
	}
	return sum
}

// nearer is z where it lies between from and to, else to.
func nearer(to, z, from float64) float64 {
	if z > from && z < to {
		return z
	}
	return to
}
