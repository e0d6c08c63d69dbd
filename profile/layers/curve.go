package layers

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/interp"

	"coldseam/profile"
)

// Curve is the temperature between the readings of a Column: the stable
// temperatures at the readings' depths and, in gaps wider than maxCubicGapM, at places
// between (see infill), joined by a monotone cubic (gonum's FritschButland). Above
// the first and below the last reading it holds their values; whoever asks must
// know how far that may be trusted.
type Curve struct {
	Depths []float64 // m, of the readings, rising
	Temps  []float64 // C, stable
	ErrC   []float64 // standard error of each temperature
	ErrM   []float64 // standard error of each depth

	z, t     []float64 // knots: the readings and the places between
	reading  []int     // index of each reading among them
	cubic    *interp.FritschButland
	ensemble *Ensemble // nil where only the best answers are wanted
}

// maxCubicGapM is the widest gap that a cubic alone is let to bridge: readings 4 ft apart.
const maxCubicGapM = 1.25

// newCurve makes the curve of a column.
func newCurve(c profile.Column) *Curve {
	points := c.Points()
	n := len(points)
	k := &Curve{Depths: make([]float64, n), Temps: make([]float64, n), ErrC: make([]float64, n), ErrM: make([]float64, n)}
	for i, p := range points {
		k.Depths[i], k.Temps[i], k.ErrC[i], k.ErrM[i] = p.DepthM, p.TempC, p.ErrC, p.ErrM
	}
	new(pooler).pool(k.Temps)
	for i, p := range points { // a pooled reading's error covers what it read
		k.ErrC[i] = math.Max(k.ErrC[i], math.Abs(p.TempC-k.Temps[i]))
	}
	k.z, k.t = k.Depths, k.Temps
	if n > 1 {
		f := newInfill(k.Depths, maxCubicGapM)
		k.z, k.t, k.reading = f.z, make([]float64, len(f.z)), f.reading
		for i, at := range f.reading {
			k.t[at] = k.Temps[i]
		}
		f.fill(k.t, nil)
	}
	k.join()
	return k
}

// join puts the cubic through the knots.
func (k *Curve) join() {
	if len(k.z) < 2 {
		return
	}
	cubic := &interp.FritschButland{}
	if err := cubic.Fit(k.z, k.t); err == nil {
		k.cubic = cubic
	}
}

// At is the temperature at a depth, C.
func (k *Curve) At(depthM float64) float64 {
	if k.cubic == nil {
		if len(k.Temps) == 0 {
			return math.NaN()
		}
		return k.Temps[0]
	}
	return k.cubic.Predict(depthM)
}

// Top is the depth of the first reading, NaN when there is none.
func (k *Curve) Top() float64 { return k.depth(0) }

// Bottom is the depth of the last reading, NaN when there is none.
func (k *Curve) Bottom() float64 { return k.depth(len(k.Depths) - 1) }

func (k *Curve) depth(i int) float64 {
	if len(k.Depths) == 0 {
		return math.NaN()
	}
	return k.Depths[i]
}

// indexAt gives the index of the interval that holds a depth: Depths[i] to
// Depths[i+1]. A reading's own depth belongs to the interval above it, whatever its
// last binary digits.
func (k *Curve) indexAt(depthM float64) int {
	i := sort.SearchFloat64s(k.Depths, depthM-equal) - 1
	return min(max(i, 0), len(k.Depths)-2)
}

// Crossing finds the depth between from and to at which the curve reaches a
// temperature. ok is false when both ends lie on the same side of it.
func (k *Curve) Crossing(tempC, from, to float64) (depthM float64, ok bool) {
	a, b := k.At(from)-tempC, k.At(to)-tempC
	if a*b > 0 || math.IsNaN(a) || math.IsNaN(b) {
		return 0, false
	}
	for range 40 {
		mid := (from + to) / 2
		if m := k.At(mid) - tempC; m*a > 0 {
			from = mid
		} else {
			to = mid
		}
	}
	return (from + to) / 2, true
}

// CrossingInterval gives the 80 % interval of a crossing of tempC found at depthM, over all
// columns that the readings allow. A curve without intervals
// gives the depth itself.
func (k *Curve) CrossingInterval(depthM, tempC float64) profile.Estimate {
	if k.ensemble == nil {
		return profile.Exactly(depthM)
	}
	return k.interval80(depthM, k.crossings(tempC, depthM))
}

// Linear finds where straight lines between readings first reach a value, going
// down; it serves oxygen, which is sparse and not monotone, and checks against
// published linear answers.
func Linear(depths, values []float64, level float64) (depthM float64, ok bool) {
	for i := 1; i < min(len(depths), len(values)); i++ {
		a, b := values[i-1]-level, values[i]-level
		if a == 0 {
			return depths[i-1], true
		}
		if a*b <= 0 && a != b {
			return depths[i-1] + (depths[i]-depths[i-1])*a/(a-b), true
		}
	}
	return 0, false
}
