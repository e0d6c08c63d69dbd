package basin

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile/water"
)

// twoLayers is warm above the depth of a step, and cold below.
func twoLayers(stepM, warmC, coldC float64) func(float64) float64 {
	return func(z float64) float64 {
		if z < stepM {
			return warmC
		}
		return coldC
	}
}

// The closed forms. In a basin of straight walls two layers give g (rho2 - rho1) h1 h2/2;
// a density that rises evenly by gam gives g gam H^3/12. 20 C over 8 C differ by 1.6438477
// kg/m3 in the release IAPWS SR6-08(2011). The cone's figure was worked out apart from this
// code by the same integral.
func TestClosedForms(t *testing.T) {
	walls := func(h float64) Basin { return table(t, Row{0, 1234}, Row{h, 1234}) }
	near(t, "5 m over 5 m", walls(10).Stability(twoLayers(5, 20, 8), []float64{5}), 201.50799, 1e-4)
	near(t, "4 m over 8 m", walls(12).Stability(twoLayers(4, 20, 8), []float64{4}), 257.93023, 1e-4)
	near(t, "even", walls(10).moment(func(z float64) float64 { return 998 + 0.1*z }, nil), 81.722083, 1e-5)
	for _, rows := range []int{2, 5} {
		near(t, "cone", cone(t, 10, 777, rows).Stability(twoLayers(4, 20, 8), []float64{4}), 34.82058, 1e-4)
	}
	near(t, "one temperature", walls(10).Stability(func(float64) float64 { return 17 }, nil), 0, 1e-9)
	rise := water.Density(4) - water.Density(1) // colder above, under 4 C: a little
	near(t, "under ice", walls(10).Stability(twoLayers(5, 1, 4), []float64{5}), gravity*rise*25/2, 1e-9)
	if !(rise > 0.05 && rise < 0.1) {
		t.Errorf("from 1 to 4 C the density rises by %v", rise)
	}
}

// The cone by hand: with the centre of volume at H/4, the upper layer's volume and centre
// follow from the cone that is cut off, and the work is that of moving the difference in
// mass from one centre to the other.
func TestConeByHand(t *testing.T) {
	const h, step, rise = 10.0, 4.0, 1.5
	small := h - step                                       // height of the lower cone
	volume := h / 3                                         // per area of the surface
	lower := math.Pow(small/h, 3) * volume                  // of the lower cone
	want := gravity * rise * lower * (step + small/4 - h/4) // its excess mass lies so far under the centre
	got := cone(t, h, 50, 3).moment(func(z float64) float64 {
		if z < step {
			return 997
		}
		return 997 + rise
	}, []float64{step})
	near(t, "cone", got, want, 1e-9)
}

// Deep water that is denser than it was taken for can only add: a column that is read
// part of the way, and held from there on, gives the least.
func TestHeldIsTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(4, 40).Draw(t, "floor")
		left := rapid.Float64Range(0, 1).Draw(t, "left")
		b, err := New([]Row{{0, 100}, {h, 100 * left}})
		if err != nil {
			t.Fatal(err)
		}
		top, fall := rapid.Float64Range(10, 28).Draw(t, "top"), rapid.Float64Range(0, 1).Draw(t, "fall")
		full := func(z float64) float64 { return math.Max(4, top-fall*z) }
		read := rapid.Float64Range(0, 1).Draw(t, "read") * h
		held := func(z float64) float64 { return full(math.Min(z, read)) }
		if all, part := b.Stability(full, []float64{(top - 4) / math.Max(fall, 1e-9)}), b.Stability(held, []float64{read, (top - 4) / math.Max(fall, 1e-9)}); part > all+1e-6 || part < -1e-9 {
			t.Fatalf("read to %v: %v, all %v", read, part, all)
		}
	})
}
