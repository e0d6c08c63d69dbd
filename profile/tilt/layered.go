package tilt

import (
	"math"

	"coldseam/profile/layers"
	"coldseam/profile/water"
)

// Least thickness of a layer that the balance can be worked out for, m. A thermocline that
// is found in the last metre that was read has no layer below it that anybody knows.
const (
	leastUpperM = 0.3
	leastLowerM = 1.0
)

// Parted parts a column at a depth: the mean densities of the water above and below, down
// to a bottom; below the deepest reading its temperature is taken to hold. ok is false
// where one of the layers is hardly there, or the lower one is no denser.
func Parted(c *layers.Curve, atM, bottomM float64) (w TwoLayers, ok bool) {
	w = TwoLayers{UpperM: atM, LowerM: bottomM - atM}
	if !(w.UpperM >= leastUpperM && w.LowerM >= leastLowerM) {
		return w, false
	}
	w.Above, w.Below = meanDensity(c, 0, atM), meanDensity(c, atM, bottomM)
	return w, w.Below > w.Above
}

// meanDensity is that of the water between two depths, kg/m3.
func meanDensity(c *layers.Curve, fromM, toM float64) float64 {
	const n = 200
	sum := 0.0
	for i := range n {
		sum += water.Density(c.At(fromM + (toM-fromM)*(float64(i)+0.5)/n))
	}
	return sum / n
}

// span is a value with the least and the most that it may be of itself, factors.
type span struct{ low, high float64 }

// product is the spread of a product of independent factors.
func product(factors ...span) span {
	var low, high float64
	for _, f := range factors {
		low += square(math.Log(f.low))
		high += square(math.Log(f.high))
	}
	return span{math.Exp(-math.Sqrt(low)), math.Exp(math.Sqrt(high))}
}

func square(x float64) float64 { return x * x }

// around gives the span of values about the first of them.
func around(best float64, others ...float64) span {
	s := span{1, 1}
	for _, v := range others {
		s.low, s.high = math.Min(s.low, v/best), math.Max(s.high, v/best)
	}
	return s
}
