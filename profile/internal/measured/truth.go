package measured

import "coldseam/profile/water"

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
	r := readings{c.Depths, stable(c.Temps)}
	n := len(r.z)
	if n < 3 {
		return Truth{}
	}
	var out Truth
	start := r.skin()
	if start > 0 {
		out.SkinM = r.z[start]
	}
	if !r.anySteep(start) || r.t[start]-r.t[n-1] < 1.5-1e-9 {
		return out
	}
	out.Layered = true
	even := Cast{Depths: r.z, Temps: r.t, cubic: cubic(r.z, r.t)}
	out.Thermocline = even.steepest(r.z[start])
	return out
}

// readings are depths and stable temperatures; interval i lies between i and i+1.
type readings struct{ z, t []float64 }

func (r readings) fall(i int) float64 { return (r.t[i] - r.t[i+1]) / (r.z[i+1] - r.z[i]) }

func (r readings) steep(i int) bool {
	if r.t[i+1] >= r.t[i] {
		return false
	}
	width := r.z[i+1] - r.z[i]
	rise := (water.Density(r.t[i+1]) - water.Density(r.t[i])) / width
	return rise > 1e-9 && (r.fall(i) >= 1-1e-9 || width > 1+1e-9 && r.t[i]-r.t[i+1] >= 1-1e-9)
}

func (r readings) anySteep(from int) bool {
	for i := from; i+1 < len(r.z); i++ {
		if r.steep(i) {
			return true
		}
	}
	return false
}

// skin is the reading at the skin's lower edge, 0 without one.
func (r readings) skin() int {
	for i := 0; i+2 < len(r.z) && r.z[i] <= 1+1e-9; i++ {
		if r.t[i]-r.t[i+1] >= 0.5-1e-9 && !r.steep(i+1) && r.fall(i+1) < 1-1e-9 && r.fall(i+1) <= r.fall(i)/2 {
			most := 2.0
			if r.anySteep(i + 1) {
				most = 4
			}
			if r.t[0]-r.t[i+1] <= most+1e-9 {
				return i + 1
			}
			return 0
		}
	}
	return 0
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
