package layers

import (
	"math"

	"coldseam/profile/water"
)

// windowM is the thickness of the water over which the thermocline is sought: over
// less, a tenth of a degree of error moves it.
const windowM = 1.0

// alike is the share of the greatest rise from which on metres count as good: where
// several that overlap or follow each other do, the thermocline is the middle of them.
// Less than this and places are mixed that the water does not confuse.
const alike = 0.94

// The lines between the curve's places find the metres that are searched on the curve
// itself: those with searchShare of the lines' greatest rise or more, in steps of searchM.
const (
	searchShare = 0.8
	searchM     = 0.1 // a whole part of windowM
)

// risen sums the rise of density down the column, kg/m3, from its first place.
func (f *falls) risen(out []float64) []float64 {
	out = append(out[:0], 0)
	sum := 0.0
	for i, rise := range f.rho {
		sum += rise * (f.z[i+1] - f.z[i])
		out = append(out, sum)
	}
	return out
}

// slice is a window's upper end and the rise of density within it.
type slice struct{ z, rise float64 }

// densest finds the metre of water, at or below fromM, over which density rises most
// on the curve, and gives its middle. ok is false where nothing rises.
func (k *Curve) densest(fromM float64) (depthM float64, ok bool) {
	z, ok, lines := densest(k.z, newFalls(k.z, k.t).risen(nil), fromM, nil)
	if !ok || k.cubic == nil || k.Bottom()-math.Max(fromM, k.z[0]) < windowM {
		return z, ok
	}
	most := 0.0
	for _, s := range lines {
		most = math.Max(most, s.rise)
	}
	var fine []slice
	for i := 0; i < len(lines); i++ {
		first := i
		for i < len(lines) && lines[i].rise >= searchShare*most {
			i++
		}
		if i > first {
			fine = k.windows(fine, lines[max(first-1, 0)].z, lines[min(i, len(lines)-1)].z)
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
	return middle(fine, best, alike*fine[best].rise) + windowM/2, true
}

// windows adds the rises of density on the curve over the metres that begin between two
// depths, and one of nothing, which keeps them apart from what is added next.
func (k *Curve) windows(out []slice, from, to float64) []slice {
	const inWindow = int(windowM / searchM)
	n := int(math.Ceil((to-from)/searchM - equal))
	n = min(n, int((k.Bottom()-windowM-from)/searchM+equal))
	first := len(out)
	for i := range n + 1 + inWindow {
		z := from + float64(i)*searchM
		out = append(out, slice{z, water.Density(k.At(z))})
	}
	for i := first; i <= first+n; i++ {
		out[i].rise = out[i+inWindow].rise - out[i].rise
	}
	out = out[:first+n+1]
	return append(out, slice{out[first+n].z, 0})
}

// densest finds on straight lines the metre of water, at or below fromM, over which
// density rises most, and gives its middle, that of the first where there are several. z
// and rho are the corners of a line from risen; the rise within a sliding window of it
// has its own corners only where one end of the window passes one of them: they are
// used. ok is false where nothing rises.
func densest(z, rho []float64, fromM float64, scratch []slice) (depthM float64, ok bool, used []slice) {
	n := len(z)
	from := math.Max(fromM, z[0])
	window := math.Min(windowM, z[n-1]-from)
	if n < 2 || window <= equal {
		return 0, false, scratch
	}
	s := scratch[:0]
	a, b := 0, 0 // the corners at or above the window's two ends
	best := 0
	for x := from; ; {
		for a+2 < n && z[a+1] <= x+equal {
			a++
		}
		for b+2 < n && z[b+1] <= x+window+equal {
			b++
		}
		s = append(s, slice{x, at(z, rho, b, x+window) - at(z, rho, a, x)})
		if s[len(s)-1].rise > s[best].rise+equal {
			best = len(s) - 1
		}
		if x+window >= z[n-1]-equal {
			break
		}
		x += math.Min(z[a+1]-x, z[b+1]-(x+window))
	}
	if s[best].rise <= equal {
		return 0, false, s
	}
	return s[best].z + window/2, true, s
}

// at reads the line between corners i and i+1.
func at(z, v []float64, i int, x float64) float64 {
	return v[i] + (v[i+1]-v[i])*math.Min(1, (x-z[i])/(z[i+1]-z[i]))
}

// middle is the mean depth, weighted by the rise, of the unbroken run around best
// where it is at least level.
func middle(s []slice, best int, level float64) float64 {
	sum, weight := 0.0, 0.0
	add := func(p, q slice) {
		w := (q.z - p.z) * (p.rise + q.rise) / 2
		sum += w * (p.z + q.z) / 2
		weight += w
	}
	cut := func(in, out slice) slice {
		return slice{in.z + (out.z-in.z)*(in.rise-level)/(in.rise-out.rise), level}
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
