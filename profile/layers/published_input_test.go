package layers

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestPublishedBadInput(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name string
		z, t []float64
	}{
		{"nothing", nil, nil},
		{"two readings", []float64{0, 1}, []float64{20, 10}},
		{"unequal lengths", []float64{0, 1, 2}, []float64{20, 10}},
		{"depths falling", []float64{0, 2, 1}, []float64{20, 15, 10}},
		{"equal depths", []float64{0, 1, 1}, []float64{20, 15, 10}},
		{"a depth is no number", []float64{0, nan, 2}, []float64{20, 15, 10}},
		{"an endless depth", []float64{0, 1, inf}, []float64{20, 15, 10}},
		{"a temperature is no number", []float64{0, 1, 2}, []float64{20, nan, 10}},
		{"no temperature of water", []float64{0, 1, 2}, []float64{20, 300, 10}},
	} {
		lines, mixed, edges := Thermoclines(c.z, c.t), MixedLayers(c.z, c.t), Edges(c.z, c.t)
		if len(lines) != 6 || len(mixed) != 5 || len(edges) != 4 {
			t.Errorf("%s: %d, %d and %d methods", c.name, len(lines), len(mixed), len(edges))
		}
		for _, a := range append(lines, mixed...) {
			if a.OK || a.Name == "" || a.Source == "" {
				t.Errorf("%s: %+v", c.name, a)
			}
		}
		for _, e := range edges {
			if e.OK || e.Name == "" || e.Source == "" {
				t.Errorf("%s: %+v", c.name, e)
			}
		}
	}
}

// within fails where an answer lies out of the column, or a zone has its ends the wrong way
// round.
func within(t rapid.TB, answers []Answer, edges []Zone, top, bottom float64) {
	t.Helper()
	for _, a := range answers {
		if a.OK && !(a.DepthM >= top-1e-9 && a.DepthM <= bottom+1e-9) {
			t.Fatalf("%s at %v m, outside %v to %v", a.Name, a.DepthM, top, bottom)
		}
	}
	for _, e := range edges {
		if e.OK && !(e.TopM >= top-1e-9 && e.TopM < e.BottomM && e.BottomM <= bottom+1e-9) {
			t.Fatalf("%s: %v to %v m, outside %v to %v", e.Name, e.TopM, e.BottomM, top, bottom)
		}
	}
}

// Whatever the readings: every depth lies in the column, the local methods in the
// interval where density rises fastest, and the same input gives the same answers and
// stays as it was.
func TestPublishedAnyColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 15).Draw(t, "n")
		z, temps := []float64{rapid.Float64Range(0, 2).Draw(t, "first")}, []float64{}
		for i := range n {
			if i > 0 {
				z = append(z, z[i-1]+rapid.Float64Range(.05, 5).Draw(t, "width"))
			}
			temps = append(temps, rapid.Float64Range(0, 30).Draw(t, "temp"))
		}
		if rapid.Bool().Draw(t, "stable") {
			temps = stable(temps)
		}
		before := append(append([]float64{}, z...), temps...)
		lines, mixed, edges := Thermoclines(z, temps), MixedLayers(z, temps), Edges(z, temps)
		within(t, append(slices.Clone(lines), mixed...), edges, z[0], z[n-1])
		c, _ := newPublishedColumn(z, temps)
		if i := fastest(c.rise); i >= 0 {
			local := slices.DeleteFunc(slices.Clone(lines), func(a Answer) bool { return a.Name == FallMiddle || a.Name == StepCentre })
			for _, a := range local {
				if !(a.DepthM >= z[i]-1e-9 && a.DepthM <= z[i+1]+1e-9) {
					t.Fatalf("%s at %v m, outside %v to %v", a.Name, a.DepthM, z[i], z[i+1])
				}
			}
		}
		again := Thermoclines(z, temps)
		if !reflect.DeepEqual(lines, again) || !reflect.DeepEqual(edges, Edges(z, temps)) {
			t.Fatal("the second time, other answers")
		}
		if !reflect.DeepEqual(before, append(append([]float64{}, z...), temps...)) {
			t.Fatal("the input has changed")
		}
	})
}

// Depths from another zero give depths from that zero.
func TestPublishedShifted(t *testing.T) {
	const by = 5.0
	z := make([]float64, len(depthsA))
	for i := range z {
		z[i] = depthsA[i] + by
	}
	shifted := Thermoclines(z, tempsA)
	for i, a := range Thermoclines(depthsA, tempsA) {
		near(t, a.Name, shifted[i].DepthM, a.DepthM+by, 1e-3)
	}
}
