package band

import (
	"testing"

	"coldseam/profile"
	"coldseam/profile/light"
)

// The water to begin over is deeper than the fly by the clearance that was asked for, so
// that the fly is above the bottom and not in it.
func TestWaterToBeginOver(t *testing.T) {
	for _, clearance := range []float64{ft, 2 * ft} {
		in := input(column(t, []float64{0, 1, 2, 3, 4, 5, 6}, []float64{24, 24, 21, 17, 13, 11, 10}, []float64{9, 9, 9, 9, 9, 9, 9}), trout())
		in.ClearanceM = clearance
		b := Find(in)
		near(t, "water less fly", b.WaterM-b.Start.Best, clearance, 1e-9)
		near(t, "water to cast over less the inner top", b.CastShallowM-b.Top.High, clearance, 1e-9)
	}
}

// A suspended fish's fly hangs at the start, and the water under it is deeper.
func TestSuspendedFly(t *testing.T) {
	in := input(column(t, summerZ, summerT, nil), ask(t, "kokanee"))
	in.Bottom = profile.Some(18)
	b := Find(in)
	// kokanee's water ends at 12 C (Spohn 1996 and Birtwell 1994 as quoted)
	warm := crossing(in.Layers.Curve, 12)
	if b.Start.Best < warm || b.Start.Best > b.Top.High+2*ft {
		t.Errorf("start %.2f m, the band begins at %.2f m (%.2f at the latest)", b.Start.Best, warm, b.Top.High)
	}
	near(t, "water less fly", b.WaterM-b.Start.Best, ft, 1e-9)
}

// An oxygen reading holds for the surface when it was taken within a metre of it, and the
// deepest one for all that lies under it.
func TestOxygenAtTheEnds(t *testing.T) {
	z := []float64{0, 0.9, 1.1, 3, 6, 8}
	temp := []float64{15, 15, 15, 14, 12, 11}
	at := func(i int, v float64) []float64 {
		o := []float64{none, none, none, 8, none, none}
		o[i] = v
		return o
	}
	low := Find(input(column(t, z, temp, at(1, 2)), trout()))
	if low.ToSurface || low.Top.Best < 1.5 { // 5 mg/L is halfway from 2 at 0.9 m to 8 at 3 m
		t.Errorf("2 mg/L at 0.9 m: the band begins at %.2f m", low.Top.Best)
	}
	near(t, "where it has 5 mg/L", low.Top.Best, 1.95, 1e-6)
	above := func(b Band) bool { // water over the first oxygen reading is named as good
		return len(b.Others) > 0 && b.Others[0].TopM == 0 && b.Others[0].Why == Thinner
	}
	over := Find(input(column(t, z, temp, at(2, 2)), trout()))
	if above(low) || !above(over) {
		t.Errorf("2 mg/L at 0.9 m: %+v, at 1.1 m: %+v", low.Others, over.Others)
	}
	deep := []float64{9, none, none, 9, 9, 4.9}
	b := Find(input(column(t, z, temp, deep), trout()))
	near(t, "just short at the deepest reading", b.Bottom.Best, 6+2*4/4.1, 1e-6)
	deep[5] = 5
	if b = Find(input(column(t, z, temp, deep), trout())); !b.ToDeepest || b.Bottom.Best != 8+2*ft {
		t.Errorf("just enough at the deepest reading: the band ends at %.2f m", b.Bottom.Best)
	}
}

// Bright sun sends the start down, but not into water whose oxygen is in doubt.
func TestLightKeepsToSureWater(t *testing.T) {
	in := input(column(t, []float64{0, 2, 4, 6, 8, 11}, []float64{17, 17, 15, 12, 9, 7}, nil), trout())
	still := Find(in)
	in.Light = light.Advice{Shift: light.Deeper, Why: light.BrightCalm}
	b := Find(in)
	if b.DoubtfulBelow == nil || still.Start.Best > b.DoubtfulBelow.Best+1e-9 {
		t.Fatalf("start %.2f m, unknown below %+v", still.Start.Best, b.DoubtfulBelow)
	}
	if b.Start.Best > b.DoubtfulBelow.Best+1e-9 {
		t.Errorf("the sun moves the start from %.2f to %.2f m, unknown below %.2f m", still.Start.Best, b.Start.Best, b.DoubtfulBelow.Best)
	}
}

// Warmwater fish have a lower limit as coolwater fish have: largemouth bass are found from
// 21 to 27 C (Wyoming review of bass temperatures).
func TestWarmwaterLowerLimit(t *testing.T) {
	in := input(column(t, summerZ, []float64{26, 26, 25, 23, 17, 12, 8, 7}, nil), ask(t, "largemouth"))
	b := Find(in)
	if !b.Found || !b.ToSurface {
		t.Fatalf("%q, to the surface %v", b.Verdict, b.ToSurface)
	}
	near(t, "bottom", b.Bottom.Best, crossing(in.Layers.Curve, 21), 2e-3)
}
