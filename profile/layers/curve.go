package layers

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/interp"

	"coldseam/profile"
	"coldseam/profile/water"
)

// Curve is the temperature between the readings of a Column: the stable
// temperatures at the readings' depths, joined by a monotone cubic (gonum's
// FritschButland). Above the first and below the last reading it holds their
// values; whoever asks must know how far that may be trusted.
type Curve struct {
	Depths []float64 // m, rising
	Temps  []float64 // C, stable
	ErrC   []float64 // half-width of each temperature's error
	ErrM   []float64 // half-width of each depth's error
	cubic  *interp.FritschButland
}

// NewCurve makes the curve of a column.
func NewCurve(c profile.Column) *Curve {
	points := c.Points()
	k := &Curve{}
	for _, p := range points {
		k.Depths = append(k.Depths, p.DepthM)
		k.Temps = append(k.Temps, p.TempC)
		k.ErrC = append(k.ErrC, p.ErrC)
		k.ErrM = append(k.ErrM, p.ErrM)
	}
	k.Temps = stable(k.Temps)
	for i, p := range points { // a pooled reading's error covers what it read
		k.ErrC[i] = math.Max(k.ErrC[i], math.Abs(p.TempC-k.Temps[i]))
	}
	if len(points) > 1 {
		cubic := &interp.FritschButland{}
		if err := cubic.Fit(k.Depths, k.Temps); err == nil {
			k.cubic = cubic
		}
	}
	return k
}

// stable pools neighbouring temperatures whose densities lie the wrong way round
// into their mean (pool adjacent violators), so that density never falls from one
// reading to the next. Nor does it fall between readings, unless they lie on both
// sides of 3.98 C: there the curve passes the densest water, and its density may
// fall again as far as the deeper reading's, by less than 0.01 kg/m3 for readings
// within 1 C of it.
func stable(temps []float64) []float64 {
	type block struct {
		mean, rho float64
		n         int
	}
	var blocks []block
	for _, t := range temps {
		blocks = append(blocks, block{t, water.Density(t), 1})
		for n := len(blocks); n > 1 && blocks[n-2].rho > blocks[n-1].rho; n-- {
			a, b := blocks[n-2], blocks[n-1]
			mean := (a.mean*float64(a.n) + b.mean*float64(b.n)) / float64(a.n+b.n)
			blocks = append(blocks[:n-2], block{mean, water.Density(mean), a.n + b.n})
		}
	}
	out := make([]float64, 0, len(temps))
	for _, b := range blocks {
		for range b.n {
			out = append(out, b.mean)
		}
	}
	return out
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

// interval gives the index of the interval that holds a depth: Depths[i] to
// Depths[i+1]. A reading's own depth belongs to the interval above it, whatever its
// last binary digits.
func (k *Curve) interval(depthM float64) int {
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
	for range 60 {
		mid := (from + to) / 2
		if m := k.At(mid) - tempC; m*a > 0 {
			from = mid
		} else {
			to = mid
		}
	}
	return (from + to) / 2, true
}

// The share of the interval between two readings by which a crossing in it is
// uncertain (80 %). In the first interval, with no reading above to say where the
// warm water ends, it is greater.
//
// Both were fitted to the depth of 19 C in the columns of two lakes (Carpenter et al.,
// Cascade Project at NTL-LTER, EDI knb-lter-ntl.352; Paul and Peter Lake), thinned
// to 6, 8 and 10 readings; the share of full columns inside, there and in that
// study's other lakes:
//
//	error of a reading     6      8     10    all
//	0.10 C  fitted      0.80   0.79   0.85   0.81
//	        others      0.71   0.78   0.84   0.78
//	0.25 C  fitted      0.81   0.80   0.88   0.83
//	        others      0.71   0.79   0.86   0.79
//
// Few readings say too little where a stained lake's break lies wholly above the
// second of them: there the interval holds 7 times in 10.
const (
	gapShare   = 0.12
	firstShare = 0.32
)

// Doubt gives the 80 % interval of a crossing of tempC found at depthM: the space
// between the readings around it, the readings' own error and the depth's error.
// It never reaches past a reading that is clearly on one side.
func (k *Curve) Doubt(depthM, tempC float64) profile.Estimate {
	if len(k.Depths) < 2 {
		return profile.Exactly(depthM)
	}
	i := k.interval(depthM)
	gap := k.Depths[i+1] - k.Depths[i]
	slope := math.Abs(k.Temps[i+1]-k.Temps[i]) / gap
	share := gapShare
	if i == 0 {
		share = firstShare
	}
	half := share * gap
	if slope > 0 {
		half = math.Hypot(half, math.Min(sd80*math.Max(k.ErrC[i], k.ErrC[i+1])/slope, gap))
	}
	half = math.Hypot(half, sd80*k.ErrM[i])
	low, high := depthM-half, depthM+half
	for j, t := range k.Temps {
		switch warm := t - tempC; {
		case warm > k.ErrC[j] && k.Depths[j] <= depthM:
			low = math.Max(low, k.Depths[j]-k.ErrM[j])
		case warm < -k.ErrC[j] && k.Depths[j] >= depthM:
			high = math.Min(high, k.Depths[j]+k.ErrM[j])
		}
	}
	low = math.Max(low, math.Max(0, k.Top()-k.ErrM[0])) // the curve is held beyond its readings, not known
	high = math.Min(high, k.Bottom()+k.ErrM[len(k.ErrM)-1])
	return profile.Estimate{Best: depthM, Low: math.Min(low, depthM), High: math.Max(high, depthM)}
}

// sd80: an error's half-width is taken as that of an even spread; its 80 % part.
const sd80 = 0.8

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
