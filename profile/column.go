package profile

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
)

// SameDepthM is how close two depths may be and still be one depth.
const SameDepthM = 0.05

// Point is one depth of a Column.
type Point struct {
	DepthM float64
	TempC  float64
	ErrC   float64  // standard error of the temperature
	ErrM   float64  // standard error of the depth
	Oxygen Optional // mg/L
	Odd    bool     // a flagged reading is in it
}

// Column is the readings of one drop that are used, one Point a depth, from the
// surface down: at least one point, depths rising and at least SameDepthM apart, no
// NaN and no infinity.
type Column struct {
	points []Point
}

// NewColumn makes the Column of points in any order; readings of one depth are
// joined into their mean (the median of three or more), with an error wide enough
// to cover them. It refuses an empty set, and values that are not numbers or are
// no depth or temperature of a lake.
func NewColumn(points []Point) (Column, error) {
	if len(points) == 0 {
		return Column{}, errors.New("no readings")
	}
	ps := slices.Clone(points)
	for _, p := range ps {
		switch {
		case !finite(p.DepthM, p.TempC, p.ErrC, p.ErrM, p.Oxygen.Value):
			return Column{}, fmt.Errorf("a reading at %v m is not a number", p.DepthM)
		case p.DepthM < 0 || p.DepthM > 2000:
			return Column{}, fmt.Errorf("a depth of %v m is outside 0 to 2000 m", p.DepthM)
		case p.TempC < -5 || p.TempC > 60:
			return Column{}, fmt.Errorf("a temperature of %v C is outside -5 to 60 C", p.TempC)
		}
	}
	rising := func(i, j int) bool { return ps[i].DepthM < ps[j].DepthM }
	if !sort.SliceIsSorted(ps, rising) {
		sort.SliceStable(ps, rising)
	}
	out := make([]Point, 0, len(ps))
	for i := 0; i < len(ps); {
		j := i + 1
		for j < len(ps) && ps[j].DepthM-ps[i].DepthM < SameDepthM {
			j++
		}
		out = append(out, join(ps[i:j]))
		i = j
	}
	return Column{out}, nil
}

// join makes one point of the readings of one depth.
func join(ps []Point) Point {
	p := ps[0]
	if len(ps) == 1 {
		return p
	}
	temps := make([]float64, len(ps))
	var oxygen []float64
	for i, q := range ps {
		temps[i] = q.TempC
		p.ErrC = math.Max(p.ErrC, q.ErrC)
		p.Odd = p.Odd || q.Odd
		if q.Oxygen.Known {
			oxygen = append(oxygen, q.Oxygen.Value)
		}
	}
	p.TempC = middle(temps)
	p.ErrC = math.Max(p.ErrC, (slices.Max(temps)-slices.Min(temps))/2)
	if len(oxygen) > 0 {
		p.Oxygen = Some(middle(oxygen))
	}
	return p
}

// middle is the median, which for two values is their mean.
func middle(v []float64) float64 {
	s := slices.Clone(v)
	slices.Sort(s)
	n := len(s)
	return (s[(n-1)/2] + s[n/2]) / 2
}

// Len is the number of depths.
func (c Column) Len() int { return len(c.points) }

// Points gives a copy of the points, from the surface down.
func (c Column) Points() []Point { return slices.Clone(c.points) }

// At is the i-th point from the surface.
func (c Column) At(i int) Point { return c.points[i] }

// First and Last are the shallowest and the deepest point. The zero Column has
// neither, and gives zero points.
func (c Column) First() Point { return c.end(0) }

// Last is the deepest point.
func (c Column) Last() Point { return c.end(len(c.points) - 1) }

func (c Column) end(i int) Point {
	if len(c.points) == 0 {
		return Point{}
	}
	return c.points[i]
}

func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
