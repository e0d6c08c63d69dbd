package next

import (
	"math"
	"testing"

	"coldseam/profile"
)

func TestFind(t *testing.T) {
	lake := smooth(23, 7, 5, 1)
	mixed := func(float64) float64 { return 18 }
	unknown, at9 := profile.Optional{}, profile.Some(9.0)
	for _, c := range []struct {
		name   string
		lake   func(float64) float64
		depths []float64
		bottom profile.Optional
		mark   float64
		enough bool
		why    Why
		depth  float64
	}{
		{"nothing read", lake, nil, at9, quarterM, false, Surface, 0},
		{"the surface was left out", lake, []float64{3, 6}, at9, quarterM, false, Surface, 0},
		{"half a metre is the surface", lake, []float64{0.5}, at9, quarterM, false, Bottom, 8.5},
		{"then close above the bottom", lake, []float64{0}, at9, quarterM, false, Bottom, 8.5},
		{"the same in feet, 29.5 ft", lake, []float64{0}, at9, footM, false, Bottom, 28 * footM},
		{"bottom not known: 2 m on", lake, []float64{0}, unknown, quarterM, false, Deeper, 2},
		{"and on", lake, []float64{0, 2}, unknown, quarterM, false, Deeper, 4},
		{"the same in feet", lake, []float64{0}, unknown, footM, false, Deeper, 7 * footM},
		{"three depths: halve", lake, []float64{0, 4, 8}, unknown, quarterM, false, Halve, 6},
		{"both ends read: halve", lake, []float64{0, 8.5}, at9, quarterM, false, Halve, 4.25},
		{"the greatest change, not the widest", lake, []float64{0, 4, 6, 8.5}, at9, quarterM, false, Halve, 5},
		{"halved to a whole foot", lake, []float64{0, 14 * footM, 20 * footM, 28 * footM}, at9, footM, false, Halve, 17 * footM},
		{"close enough", lake, []float64{0, 4, 4.5, 5.25, 6, 8.5}, at9, quarterM, true, CloseEnough, 0},
		{"one layer", mixed, []float64{0, 3, 6, 8.5}, at9, quarterM, true, OneLayer, 0},
		{"one layer takes four depths", mixed, []float64{0, 6, 8.5}, at9, quarterM, false, Halve, 3},
		{"too shallow for more", lake, []float64{0}, profile.Some(0.5), quarterM, true, OneLayer, 0},
	} {
		var column profile.Column
		if c.depths != nil {
			column = read(t, c.lake, c.depths...)
		}
		a := Find(column, c.bottom, c.mark)
		if a.Enough != c.enough || a.Why != c.why {
			t.Errorf("%s: enough %v because %q, want %v because %q", c.name, a.Enough, a.Why, c.enough, c.why)
		}
		if !a.Enough && math.Abs(a.DepthM-c.depth) > 1e-9 {
			t.Errorf("%s: read %.4f m, want %.4f m", c.name, a.DepthM, c.depth)
		}
	}
}

// The same change of temperature is a greater change of density in warm water: 4 C
// from 24 C are chosen before 5 C from 9 C.
func TestDensityCounts(t *testing.T) {
	steps := map[float64]float64{0: 24, 3: 20, 6: 9, 6.5: 9, 9.5: 4}
	lake := func(z float64) float64 { return steps[z] }
	a := Find(read(t, lake, 0, 3), profile.Some(3.3), quarterM)
	if a.Why != Halve || a.DepthM != 1.5 {
		t.Errorf("%+v, want 1.5 m", a)
	}
	cold := map[float64]float64{0: 24, 3: 20, 3.25: 9, 6.25: 4}
	a = Find(read(t, func(z float64) float64 { return cold[z] }, 0, 3, 3.25, 6.25), profile.Some(6.5), quarterM)
	if !a.Enough || a.FromM != 3 || a.ToM != 3.25 {
		t.Errorf("%+v, want enough: the break is between 3 and 3.25 m", a)
	}
}
