package layers

import "fmt"

// The falls of temperature below the first reading, C, that end a mixed layer.
var mixedFalls = []struct {
	fallC  float64
	source string
}{
	{0.2, "de Boyer Montegut et al. 2004"},
	{0.5, "Monterey & Levitus 1997"},
	{0.8, "Kara et al. 2000, from memory"},
	{1.0, "common practice in lakes"},
}

// mixedRise is the rise of density below the first reading, kg/m3, that ends a mixed
// layer.
const mixedRise = 0.03

// MixedLayers gives the depth of the mixed layer by each method: the first place
// where straight lines between the readings are colder or denser than the first
// reading by a limit. Depths are m, rising, temperatures C, at least three; other
// input gives answers that are not OK, and so does a column that never reaches the
// limit: it is one mixed layer as deep as it was read.
//
// Sources: de Boyer Montegut et al. 2004 (JGR 109, C12003) for 0.2 C, 0.03 kg/m3 and
// the straight lines; Monterey & Levitus 1997 (NOAA Atlas NESDIS 14) for 0.5 C; Kara
// et al. 2000 (JGR 105, 16803) for 0.8 C, from memory; 1 C is common practice in
// lakes. The sea's first reading for this is that of 10 m; a lake's is its first.
func MixedLayers(depths, temps []float64) []Answer {
	c, ok := newPublishedColumn(depths, temps)
	var out []Answer
	for _, m := range mixedFalls {
		a := Answer{Name: fmt.Sprintf("%.1f C colder than the first reading", m.fallC), Source: m.source}
		if ok {
			a.DepthM, a.OK = firstReaching(c.z, c.t, -m.fallC)
		}
		out = append(out, a)
	}
	a := Answer{Name: "0.03 kg/m3 denser than the first reading", Source: "de Boyer Montegut et al. 2004"}
	if ok {
		a.DepthM, a.OK = firstReaching(c.z, c.rho, mixedRise)
	}
	return append(out, a)
}

// firstReaching gives the shallowest depth at which straight lines between the values are by
// change away from the first, in the direction of its sign.
func firstReaching(z, values []float64, change float64) (depthM float64, ok bool) {
	sign := 1.0
	if change < 0 {
		sign = -1
	}
	limit := sign * change
	before := 0.0
	for i := 1; i < len(values); i++ {
		now := sign * (values[i] - values[0])
		if now >= limit-equal {
			share := (limit - before) / (now - before)
			return z[i-1] + min(share, 1)*(z[i]-z[i-1]), true
		}
		before = now
	}
	return 0, false
}
