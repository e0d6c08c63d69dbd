package layers

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The metre of the greatest rise, in lines whose answer is plain.
func TestDensest(t *testing.T) {
	for _, c := range []struct {
		name   string
		z, rho []float64
		from   float64
		want   float64
		ok     bool
	}{
		{"a step of a metre", []float64{0, 3, 4, 9}, []float64{0, 0, 1, 1}, 0, 3.5, true},
		{"a thin step: the first of the metres that hold it", []float64{0, 3, 3.5, 9}, []float64{0, 0, 1, 1}, 0, 3, true},
		{"two metres alike: the first", []float64{0, 3, 5, 9}, []float64{0, 0, 2, 2}, 0, 3.5, true},
		{"the stronger of two", []float64{0, 1, 2, 6, 7, 9}, []float64{0, 0, 1, 1, 2.5, 2.5}, 0, 6.5, true},
		{"from under a skin", []float64{0, 1, 4, 5, 9}, []float64{0, 3, 3, 4, 4}, 1, 4.5, true},
		{"water of half a metre", []float64{0, 0.5}, []float64{0, 1}, 0, 0.25, true},
		{"nothing rises", []float64{0, 3, 9}, []float64{2, 2, 2}, 0, 0, false},
		{"no water under the skin", []float64{0, 3}, []float64{0, 1}, 3, 0, false},
	} {
		got, ok, _ := steepestMetre(c.z, c.rho, c.from, nil)
		if ok != c.ok || ok && math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, %v, want %v, %v", c.name, got, ok, c.want, c.ok)
		}
	}
}

// The knots of the sliding window's rise are found, not sampled: no place of a fine
// search does better.
func TestDensestIsBest(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(rt, "corners")
		z, rho := []float64{0}, []float64{0}
		for range n {
			z = append(z, z[len(z)-1]+rapid.Float64Range(0.1, 3).Draw(rt, "gap"))
			rho = append(rho, rho[len(rho)-1]+rapid.Float64Range(0, 1).Draw(rt, "rise"))
		}
		bottom := z[len(z)-1]
		window := math.Min(windowM, bottom)
		value := func(x float64) float64 {
			for i := range z {
				if i+1 < len(z) && x <= z[i+1] {
					return interpolate(z, rho, i, x)
				}
			}
			return rho[len(rho)-1]
		}
		rise := func(x float64) float64 { return value(x+window) - value(x) }
		got, ok, _ := steepestMetre(z, rho, 0, nil)
		if !ok {
			if rho[len(rho)-1] > 1e-6 {
				rt.Fatalf("nothing found in a rise of %v", rho[len(rho)-1])
			}
			return
		}
		for i := range 400 {
			x := (bottom - window) * float64(i) / 399
			if rise(x) > rise(got-window/2)+1e-9 {
				rt.Fatalf("%v at %v, but %v at %v", rise(got-window/2), got, rise(x), x+window/2)
			}
		}
	})
}
