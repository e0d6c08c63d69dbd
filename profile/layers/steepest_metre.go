package layers

import (
	"math"

	"coldseam/profile/water"
)

// windowM is the thickness of the water over which the thermocline is sought: over
// less, a tenth of a degree of error moves it.
const windowM = 1.0

// similarShare is the share of the greatest rise from which on metres count as good: where
// several that overlap or follow each other do, the thermocline is the middle of them.
// Less than this and places are mixed that the water does not confuse.
const similarShare = 0.94

// The lines between the curve's places find the metres that are searched on the curve
// itself: those with searchShare of the lines' greatest rise or more, in steps of searchM.
const (
	searchShare = 0.8
	searchM     = 0.1 // a whole part of windowM
)

// cumulativeRise sums the rise of density down the column, kg/m3, from its first place.
func (f *gradients) cumulativeRise(out []float64) []float64 {
	out = append(out[:0], 0)
	sum := 0.0
	for i, rise := range f.rise {
		sum += rise * (f.z[i+1] - f.z[i])
		out = append(out, sum)
	}
	return out
}

// window is a metre of water: its upper end, and the rise of density within it.
type window struct{ z, rise float64 }

// steepestMetre finds the metre of water, at or below fromM, over which density rises most
// on the curve, and gives its middle. ok is false where nothing rises.
func (k *Curve) steepestMetre(fromM float64) (depthM float64, ok bool) {
	z, ok, lines := steepestMetre(k.z, newGradients(k.z, k.t).cumulativeRise(nil), fromM, nil)
	if !ok || k.cubic == nil || k.Bottom()-math.Max(fromM, k.z[0]) < windowM {
		return z, ok
	}
	most := 0.0
	for _, s := range lines {
		most = math.Max(most, s.rise)
	}
	var fine []window
	for i := 0; i < len(lines); i++ {
		first := i
		for i < len(lines) && lines[i].rise >= searchShare*most {
			i++
		}
		if i > first {
			fine = k.addWindows(fine, lines[max(first-1, 0)].z, lines[min(i, len(lines)-1)].z)
		}
	}
	best := 0
	for i, s := range fine {
		if s.rise > fine[best].rise+equal {
			best = i
		}
	}
	if fine[best].rise <= equal {
		return z, true
	}
	return centroid(fine, best, similarShare*fine[best].rise) + windowM/2, true
}

// addWindows adds the rises of density on the curve over the metres that begin between two
// depths, and one of nothing, which keeps them apart from what is added next.
func (k *Curve) addWindows(out []window, from, to float64) []window {
	const inWindow = int(windowM / searchM)
	n := int(math.Ceil((to-from)/searchM - equal))
	n = min(n, int((k.Bottom()-windowM-from)/searchM+equal))
	first := len(out)
	for i := range n + 1 + inWindow {
		z := from + float64(i)*searchM
		out = append(out, window{z, water.Density(k.At(z))})
	}
	for i := first; i <= first+n; i++ {
		out[i].rise = out[i+inWindow].rise - out[i].rise
	}
	out = out[:first+n+1]
	return append(out, window{out[first+n].z, 0})
}

// steepestMetre finds on straight lines the metre of water, at or below fromM, over which
// density rises most, and gives its middle, that of the first where there are several. z
// and rho are the knots of a line from cumulativeRise; the rise within a sliding window of
// it has its own knots only where one end of the window passes one of them: they are
// used. ok is false where nothing rises.
func steepestMetre(z, rho []float64, fromM float64, scratch []window) (depthM float64, ok bool, used []window) {
	n := len(z)
	from := math.Max(fromM, z[0])
	thickM := math.Min(windowM, z[n-1]-from)
	if n < 2 || thickM <= equal {
		return 0, false, scratch
	}
	s := scratch[:0]
	a, b := 0, 0 // the knots at or above the window's two ends
	best := 0
	for x := from; ; {
		for a+2 < n && z[a+1] <= x+equal {
			a++
		}
		for b+2 < n && z[b+1] <= x+thickM+equal {
			b++
		}
		s = append(s, window{x, interpolate(z, rho, b, x+thickM) - interpolate(z, rho, a, x)})
		if s[len(s)-1].rise > s[best].rise+equal {
			best = len(s) - 1
		}
		if x+thickM >= z[n-1]-equal {
			break
		}
		x += math.Min(z[a+1]-x, z[b+1]-(x+thickM))
	}
	if s[best].rise <= equal {
		return 0, false, s
	}
	return s[best].z + thickM/2, true, s
}

// interpolate reads the line between knots i and i+1.
func interpolate(z, v []float64, i int, x float64) float64 {
	return v[i] + (v[i+1]-v[i])*math.Min(1, (x-z[i])/(z[i+1]-z[i]))
}

// centroid is the mean depth, weighted by the rise, of the unbroken run around best
// where it is at least level.
func centroid(s []window, best int, level float64) float64 {
	sum, weight := 0.0, 0.0
	add := func(p, q window) {
		w := (q.z - p.z) * (p.rise + q.rise) / 2
		sum += w * (p.z + q.z) / 2
		weight += w
	}
	cut := func(in, out window) window {
		return window{in.z + (out.z-in.z)*(in.rise-level)/(in.rise-out.rise), level}
	}
	for i := best; i > 0; i-- {
		if s[i-1].rise < level {
			add(cut(s[i], s[i-1]), s[i])
			break
		}
		add(s[i-1], s[i])
	}
	for i := best; i+1 < len(s); i++ {
		if s[i+1].rise < level {
			add(s[i], cut(s[i], s[i+1]))
			break
		}
		add(s[i], s[i+1])
	}
	if weight == 0 {
		return s[best].z
	}
	return sum / weight
}
