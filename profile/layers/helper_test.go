package layers

import (
	"fmt"
	"slices"
	"testing"

	"coldseam/profile"
	"coldseam/profile/expect"
)

var near = expect.Near

// metres makes a Column of temperatures in Celsius at depths in metres.
func metres(tb testing.TB, depths, temps []float64) profile.Column {
	tb.Helper()
	if len(depths) != len(temps) {
		tb.Fatalf("%d depths and %d temperatures", len(depths), len(temps))
	}
	var points []profile.Point
	for i, z := range depths {
		points = append(points, profile.Point{DepthM: z, TempC: temps[i], ErrC: 0.25})
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

// feet makes a Column of temperatures in Fahrenheit at depths in feet.
func feet(tb testing.TB, depths, temps []float64) profile.Column {
	tb.Helper()
	z, c := make([]float64, len(depths)), make([]float64, len(temps))
	for i := range depths {
		z[i] = depths[i] * 0.3048
	}
	for i := range temps {
		c[i] = (temps[i] - 32) / 1.8
	}
	return metres(tb, z, c)
}

// stable is a copy of temperatures, pooled.
func stable(temps []float64) []float64 {
	out := slices.Clone(temps)
	new(pooler).pool(out)
	return out
}

// cubicOnly is a column's curve without places between readings: the cubic alone.
func cubicOnly(c profile.Column) *Curve {
	k := newCurve(c)
	k.z, k.t, k.cubic = k.Depths, k.Temps, nil
	k.join()
	return k
}

// probability is the chance of place i.
func (s *edge) probability(i int) float64 { return s.survival(i) - s.survival(i+1) }

// medians are the depths by which half the crews have marked the top and the bottom.
func (c *edgeModel) medians() (topM, bottomM float64) {
	return c.top.quantile(0.5), c.bottom.quantile(0.5)
}

// middle80 gives the depths by which 10 % and 90 % of the crews have marked the top,
// and the bottom.
func (c *edgeModel) middle80() (top, bottom [2]float64) {
	return [2]float64{c.top.quantile(0.1), c.top.quantile(0.9)}, [2]float64{c.bottom.quantile(0.1), c.bottom.quantile(0.9)}
}

// String is a short form for messages.
func (l Layers) String() string {
	s := string(l.Structure)
	if l.Thermocline != nil {
		s += fmt.Sprintf(", thermocline %.2f m", l.Thermocline.Best)
	}
	return s
}
