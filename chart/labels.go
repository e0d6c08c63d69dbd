package chart

import "math"

// PlaceLabels places the names beside a picture one under the other without overlap, each as near to where it
// wants to be as the others allow (least squares). want are the middles they want, in
// rising order, high their heights; it returns their middles, kept between top and
// bottom if they have room there, else one under the other from the top.
func PlaceLabels(want, high []float64, top, bottom float64) []float64 {
	// With the heights above taken off, "no overlap" becomes "not falling", and least
	// squares under that is solved by pooling neighbours that fall.
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	above := 0.0
	for i, w := range want {
		pools = append(pools, pool{w - high[i]/2 - above, 1})
		above += high[i]
		for k := len(pools) - 1; k > 0 && pools[k-1].sum/float64(pools[k-1].n) > pools[k].sum/float64(pools[k].n); k-- {
			pools[k-1] = pool{pools[k-1].sum + pools[k].sum, pools[k-1].n + pools[k].n}
			pools = pools[:k]
		}
	}
	out := make([]float64, 0, len(want))
	total := above
	above = 0
	for _, q := range pools {
		at := math.Max(math.Min(q.sum/float64(q.n), bottom-total), top)
		for range q.n {
			i := len(out)
			out = append(out, at+above+high[i]/2)
			above += high[i]
		}
	}
	return out
}
