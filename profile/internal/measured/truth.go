package measured

import (
	"math"

	"coldseam/profile/water"
)

// Truth is what a dense cast says of its layers by their definitions, worked out
// apart from the packages that are tested by it: the skin left out, the metre of the
// greatest rise of density, the depth of a temperature.
type Truth struct {
	Layered     bool
	SkinM       float64 // lower edge; 0 without a skin
	Thermocline float64 // m
}

// Truth finds the layers of the cast, every reading of it used. A skin is a fall of at
// least 0.5 C in an interval that begins within 1 m of the surface, with less than 1
// C/m and half its rate under it, up to 4 C where there is a break below and else up
// to 2 C. Layered is an interval of at least 1 C/m under the skin, or of 1 C where it
// is wider than 1 m, and 1.5 C in all. The thermocline is the middle of the metre under the
// skin over which density rises most, on the cubic through the stable readings, by a search
// in small steps.
func (c Cast) Truth() Truth {
	z, t := c.Depths, stable(c.Temps)
	n := len(z)
	if n < 3 {
		return Truth{}
	}
	fall := func(i int) float64 { return (t[i] - t[i+1]) / (z[i+1] - z[i]) }
	rise := func(i int) float64 {
		if t[i+1] >= t[i] {
			return 0
		}
		return math.Max(0, (water.Density(t[i+1])-water.Density(t[i]))/(z[i+1]-z[i]))
	}
	steep := func(i int) bool {
		return rise(i) > 1e-9 && (fall(i) >= 1-1e-9 || z[i+1]-z[i] > 1+1e-9 && t[i]-t[i+1] >= 1-1e-9)
	}
	anySteep := func(from int) bool {
		for i := from; i+1 < n; i++ {
			if steep(i) {
				return true
			}
		}
		return false
	}
	start := 0
	for i := 0; i+2 < n && z[i] <= 1+1e-9; i++ {
		if t[i]-t[i+1] >= 0.5-1e-9 && !steep(i+1) && fall(i+1) < 1-1e-9 && fall(i+1) <= fall(i)/2 {
			most := 2.0
			if anySteep(i + 1) {
				most = 4
			}
			if t[0]-t[i+1] <= most+1e-9 {
				start = i + 1
			}
			break
		}
	}
	out := Truth{SkinM: z[start]}
	if start == 0 {
		out.SkinM = 0
	}
	if !anySteep(start) || t[start]-t[n-1] < 1.5-1e-9 {
		return out
	}
	out.Layered = true
	even := Cast{Depths: z, Temps: t, cubic: cubic(z, t)}
	out.Thermocline = even.steepest(z[start])
	return out
}

// steepest is the middle of the metre, at or below a depth, over which density rises most;
// of the water where there is no metre of it.
func (c Cast) steepest(from float64) float64 {
	const inMetre = 50 // steps
	bottom := c.Bottom()
	if bottom-from <= 1 {
		return (from + bottom) / 2
	}
	n := int((bottom-from)*inMetre + 1e-9)
	rho := make([]float64, n+1)
	best, most := 0, 0.0
	for i := range rho {
		rho[i] = water.Density(c.At(from + float64(i)/inMetre))
		if i >= inMetre && rho[i]-rho[i-inMetre] > most+1e-9 {
			best, most = i-inMetre, rho[i]-rho[i-inMetre]
		}
	}
	return from + float64(best)/inMetre + 0.5
}

// stable pools neighbours whose densities lie the wrong way round, until none do.
func stable(temps []float64) []float64 {
	type block struct{ sum, n float64 }
	var blocks []block
	for _, t := range temps {
		blocks = append(blocks, block{t, 1})
		for k := len(blocks); k > 1 && water.Density(blocks[k-2].sum/blocks[k-2].n) > water.Density(blocks[k-1].sum/blocks[k-1].n); k-- {
			blocks[k-2].sum += blocks[k-1].sum
			blocks[k-2].n += blocks[k-1].n
			blocks = blocks[:k-1]
		}
	}
	var out []float64
	for _, b := range blocks {
		for range int(b.n) {
			out = append(out, b.sum/b.n)
		}
	}
	return out
}

// Reaches finds where the cast first falls to a temperature; ok is false when it is
// colder from the first reading on, or never so cold.
func (c Cast) Reaches(tempC float64) (depthM float64, ok bool) {
	from, to := c.Depths[0], c.Bottom()
	if c.Temps[0] <= tempC || c.Temps[len(c.Temps)-1] > tempC {
		return 0, false
	}
	for range 60 {
		if mid := (from + to) / 2; c.At(mid) > tempC {
			from = mid
		} else {
			to = mid
		}
	}
	return (from + to) / 2, true
}
