package response

import "math"

// maxLeftS bounds the forecast: beyond some days it says nothing more.
const maxLeftS = 1e6

// flat reports whether the reading changes no more than the precision over one
// time constant. It fits lines over the last 1, 2, 4, ... time constants: a
// short stretch answers soon when readings are quiet or many, a longer one
// averages the noise away, and a lag still running is steeper further back, so
// the longer one errs on the side of waiting. The change and sureZ standard
// errors of it must both fit into the precision, and no shorter stretch may be
// surely steeper (a probe moved on after a long stay). levelC (C) is where the
// line is one time constant from now, which by the lag equation is the water,
// and errC (C) its standard error.
func (w *Filter) flat(tauS float64) (levelC, errC float64, ok bool) {
	n := len(w.since)
	nowS := w.since[n-1]
	spanS := tauS
	var k, mx, my, cxx, cxy, cyy float64
	for i := n - 1; i >= 0; i-- {
		k++
		dx, dy := w.since[i]-mx, w.temps[i]-my
		mx, my = mx+dx/k, my+dy/k
		cxx += dx * (w.since[i] - mx)
		cyy += dy * (w.temps[i] - my)
		cxy += dx * (w.temps[i] - my)
		if nowS-w.since[i] < spanS || k < 3 {
			continue
		}
		for spanS <= nowS-w.since[i] {
			spanS *= 2
		}
		slope := cxy / cxx
		rss := max(cyy-slope*cxy, 0) + noiseWeight*w.o.NoiseC*w.o.NoiseC
		s2 := rss / (noiseWeight + k - 2)
		change, doubt := math.Abs(slope)*tauS, sureZ*math.Sqrt(s2/cxx)*tauS
		if change-doubt > w.o.PrecisionC {
			break
		}
		if change+doubt <= w.o.PrecisionC {
			ahead := nowS + tauS - mx
			return my + slope*ahead, math.Sqrt(s2 * (1/k + ahead*ahead/cxx)), true
		}
	}
	return 0, 0, false
}

// left is a rough forecast (s) of the time until flat: the lag must fall until
// its change over one time constant is half the precision, and after that the
// noise must be averaged over a stretch whose slope is known well enough,
// which needs sqrt(12) z sigma tau/(n^1.5 dt) within the other half.
func (w *Filter) left(r fitted, sinceS float64) float64 {
	n := len(w.since)
	dt := (w.since[n-1] - w.since[0]) / float64(n-1)
	// The lag at the start, from the smoothed first reading of the fit.
	lag := math.Abs(w.f.lagAtStart())
	reach := 0.0
	if half := w.o.PrecisionC / 2; lag > half {
		reach = r.tauS * math.Log(lag*(math.E-1)/half)
	}
	count := math.Pow(math.Sqrt(12)*sureZ*r.noiseC*r.tauS/(dt*w.o.PrecisionC/2), 2.0/3)
	leftS := max(reach+max(r.tauS, count*dt)-sinceS, dt)
	if !(leftS <= maxLeftS) {
		return maxLeftS
	}
	return leftS
}

// lagAtStart is the fitted water less the fitted first reading (C), for the
// likeliest time constant.
func (f *fitter) lagAtStart() float64 {
	best := 0
	for i := range f.w {
		if f.w[i] > f.w[best] {
			best = i
		}
	}
	return f.nodes[best].cxy / f.nodes[best].cxx
}
