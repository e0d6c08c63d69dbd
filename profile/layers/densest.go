package layers

import "math"

// windowM is the thickness of the water over which the thermocline is sought: over
// less, a tenth of a degree of error moves it.
const windowM = 1.0

// alike is the share of the greatest rise from which on places count as good: where
// several neighbours do, the thermocline is the middle of them.
const alike = 0.85

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

// densest finds the metre of water, at or below fromM, over which density rises
// most, and gives its middle. z and rho are the corners of a line from risen; the
// rise within a sliding window of it has its own corners only where one end of the
// window passes one of them. share 1 takes the first such place, less than 1 the
// middle of its neighbours that are nearly as good. ok is false where nothing rises.
func densest(z, rho []float64, fromM, share float64, scratch []slice) (depthM float64, ok bool, used []slice) {
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
	most := s[best].rise
	if most <= equal {
		return 0, false, s
	}
	if share >= 1 {
		return s[best].z + window/2, true, s
	}
	return middle(s, best, share*most) + window/2, true, s
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
