package layers

import "coldseam/profile/water"

// pooler makes temperatures stable; it keeps its memory from one use to the next.
type pooler struct{ blocks []block }

// block is a run of readings pooled into their mean.
type block struct {
	mean, weight float64
	n            int
}

// pool makes neighbouring temperatures whose densities lie the wrong way round their
// mean (pool adjacent violators), so that density never falls from one reading to
// the next. Nor does it fall between readings, unless they lie on both sides of
// 3.98 C: there the curve passes the densest water, and its density may fall again
// as far as the deeper reading's, by less than 0.01 kg/m3 for readings within 1 C of
// it.
func (p *pooler) pool(temps []float64) {
	weight := water.Density
	if warm(temps) { // there density rises as temperature falls
		weight = func(t float64) float64 { return -t }
	}
	b := p.blocks[:0]
	for _, t := range temps {
		b = append(b, block{t, weight(t), 1})
		for n := len(b); n > 1 && b[n-2].weight > b[n-1].weight; n-- {
			above, below := b[n-2], b[n-1]
			mean := (above.mean*float64(above.n) + below.mean*float64(below.n)) / float64(above.n+below.n)
			b = append(b[:n-2], block{mean, weight(mean), above.n + below.n})
		}
	}
	i := 0
	for _, one := range b {
		for range one.n {
			temps[i] = one.mean
			i++
		}
	}
	p.blocks = b
}

// warm reports whether all of the water is warmer than the densest.
func warm(temps []float64) bool {
	for _, t := range temps {
		if t <= water.MaxDensityTempC {
			return false
		}
	}
	return true
}
