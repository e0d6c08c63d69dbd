package forecast

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// fit finds the coefficients of the change by the least sum of misses without sign, each
// lake's drops weighing as the root of their number does, and the scale with which the
// doubt holds a share of the misses. Earlier years are left out of the first, as in a
// water without any.
func fit(all []hidden, share float64) coefficients {
	n := len(all[0].features)
	count := map[string]float64{}
	for _, h := range all {
		count[h.lake]++
	}
	weight := func(h hidden) float64 { return 1 / math.Sqrt(count[h.lake]) }
	c := coefficients{change: make([]float64, n)}
	for range 60 {
		a, b := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
		for i := range n {
			a.SetSym(i, i, 1e-6)
		}
		for _, h := range all {
			miss := h.truth - h.same
			for i, x := range h.features {
				miss -= c.change[i] * x
			}
			w := weight(h) / math.Hypot(miss, 0.05) // m; what is nearer than that weighs no more
			for i, x := range h.features {
				b.SetVec(i, b.AtVec(i)+w*x*(h.truth-h.same))
				for j := i; j < n; j++ {
					a.SetSym(i, j, a.At(i, j)+w*x*h.features[j])
				}
			}
		}
		var x mat.VecDense
		if err := x.SolveVec(a, b); err != nil {
			panic(err)
		}
		copy(c.change, x.RawVector().Data)
	}
	c.scale = 1
	type ratio struct{ r, w float64 }
	var rs []ratio
	total := 0.0
	for _, h := range all {
		best, half := h.of(c)
		rs = append(rs, ratio{math.Abs(h.truth-best) / half, weight(h)})
		total += weight(h)
	}
	slices.SortFunc(rs, func(a, b ratio) int {
		switch {
		case a.r < b.r:
			return -1
		case a.r > b.r:
			return 1
		}
		return 0
	})
	sum := 0.0
	for _, r := range rs {
		if sum += r.w; sum >= share*total {
			c.scale = r.r
			break
		}
	}
	return c
}

// without fits on all lakes but one, for each.
func without(all []hidden, share float64) map[string]coefficients {
	out := map[string]coefficients{}
	for _, h := range all {
		if _, ok := out[h.lake]; ok {
			continue
		}
		out[h.lake] = fit(slices.DeleteFunc(slices.Clone(all), func(o hidden) bool { return o.lake == h.lake }), share)
	}
	return out
}
