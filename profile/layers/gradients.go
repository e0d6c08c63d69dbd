package layers

import (
	"math"

	"coldseam/profile/water"
)

// gradients holds the intervals between readings: how fast temperature falls and
// density rises in each. Interval i lies between readings i and i+1.
type gradients struct {
	z, t []float64
	fall []float64 // C per metre, positive where it is colder below
	drop []float64 // C
	rise []float64 // kg/m3 per metre by falling temperature, 0 where it is warmer below
}

func newGradients(z, t []float64) *gradients { return new(gradients).reset(z, t) }

// reset takes other temperatures, in the memory of the last.
func (f *gradients) reset(z, t []float64) *gradients {
	f.z, f.t = z, t
	f.fall, f.drop, f.rise = f.fall[:0], f.drop[:0], f.rise[:0]
	above := water.Density(t[0])
	for i := 0; i+1 < len(z); i++ {
		perM, drop, below := 1/(z[i+1]-z[i]), t[i]-t[i+1], water.Density(t[i+1])
		rise := 0.0
		if drop > 0 && below > above { // water warmer below is stable under 4 C, but no break
			rise = (below - above) * perM
		}
		f.drop = append(f.drop, drop)
		f.fall = append(f.fall, drop*perM)
		f.rise = append(f.rise, rise)
		above = below
	}
	return f
}

func (f *gradients) width(i int) float64 { return f.z[i+1] - f.z[i] }

// steep reports whether interval i is steep. A fall from one side of the densest
// water to equally light water on its other side is none.
func (f *gradients) steep(i int) bool {
	if f.rise[i] <= equal {
		return false
	}
	return f.fall[i] >= SteepCPerM-equal || f.width(i) > wideM+equal && f.drop[i] >= wideFallC-equal
}

// inverse reports whether the column is colder above, below the temperature of
// maximum density: stable, as under ice.
func (f *gradients) inverse(errC float64) bool {
	n := len(f.t)
	top, bottom := f.t[0], f.t[n-1]
	limit := math.Max(inverseC, 2*math.Min(errC, inverseC))
	return top < water.MaxDensityTempC && bottom-top >= limit-equal
}

// Limits of a skin. A sunny calm afternoon warms the top by 3 to 6 F (common
// practice): more than skinC is taken for a skin only when there is a break below,
// since a greater fall with nothing under it is itself the lake's layering.
const (
	skinStartM  = 1.0 // its steep interval begins no deeper
	skinGapM    = 2.0 // or is the first, when nothing was read above this depth
	skinDeepM   = 3.0 // and ends no deeper: a wider fall may be the break itself
	skinLeastC  = 0.5
	skinC       = 2.0
	skinMostC   = 4.0
	skinQuieter = 0.5 // the water under it falls at most at this share of its rate
)

// skin gives the index of the reading at the skin's lower edge, 0 when there is no
// skin; maybe is true when it may be one all the same, if a break lies deeper than was
// read: an interval at the top that falls at least 0.5 C, with less than 1 C per
// metre, and less than half its own rate, directly under it.
func (f *gradients) skin() (edge int, maybe bool) {
	for i := 0; i+1 < len(f.fall); i++ {
		near := f.z[i] <= skinStartM+equal || i == 0 && f.z[0] < skinGapM
		if !near || f.z[i+1] > skinDeepM+equal {
			break
		}
		under := f.fall[i+1]
		if f.drop[i] >= skinLeastC-equal && !f.steep(i+1) && under < SteepCPerM-equal && under <= skinQuieter*f.fall[i] {
			edge = i + 1
			break
		}
	}
	if edge == 0 {
		return 0, false
	}
	fall := f.t[0] - f.t[edge]
	if f.anySteep(edge) && fall <= skinMostC+equal || fall <= skinC+equal {
		return edge, false
	}
	return 0, fall <= skinMostC+equal
}

// anySteep reports whether an interval at or below reading start is steep.
func (f *gradients) anySteep(start int) bool {
	for i := start; i < len(f.rise); i++ {
		if f.steep(i) {
			return true
		}
	}
	return false
}

// greatestRise gives the interval with the fastest rise of density at or below reading
// start, steep or not: the thermocline's; -1 where density rises nowhere.
func (f *gradients) greatestRise(start int) int {
	best := -1
	for i := start; i < len(f.rise); i++ {
		if f.rise[i] > equal && (best < 0 || f.rise[i] > f.rise[best]+equal) {
			best = i
		}
	}
	return best
}

// zone gives the first and the last interval that hang together with interval i: the
// steep intervals that reach it over at most bridgeM of water at least half as steep.
// What is steep outside it is a break of its own.
func (f *gradients) zone(start, i int) (first, last int) {
	half := func(j int) bool { return f.fall[j] >= bridgeShare*SteepCPerM-equal }
	first, last = i, i
	gap := 0.0
	for j := i - 1; j >= start; j-- {
		if f.steep(j) {
			first, gap = j, 0
		} else if gap += f.width(j); gap > bridgeM+equal || !half(j) {
			break
		}
	}
	gap = 0
	for j := i + 1; j < len(f.fall); j++ {
		if f.steep(j) {
			last, gap = j, 0
		} else if gap += f.width(j); gap > bridgeM+equal || !half(j) {
			break
		}
	}
	return first, last
}

// lesserC is the least fall that is worth a word as another break: less may be the
// thermometer's error between two readings close together.
const lesserC = 0.5

// others lists the runs of steep intervals outside the metalimnion.
func (f *gradients) others(start, first, last int) []Break {
	var out []Break
	for i := start; i < len(f.fall); i++ {
		if i >= first && i <= last || !f.steep(i) {
			continue
		}
		j := i
		for j+1 < len(f.fall) && f.steep(j+1) && !(j+1 >= first && j+1 <= last) {
			j++
		}
		z0, z1, fall := f.z[i], f.z[j+1], f.t[i]-f.t[j+1]
		if fall >= lesserC {
			out = append(out, Break{(z0 + z1) / 2, fall / (z1 - z0)})
		}
		i = j
	}
	return out
}
