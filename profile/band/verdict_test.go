package band

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/light"
)

func TestVerdicts(t *testing.T) {
	warmZ, warmT := []float64{0, 3, 6}, []float64{26, 25, 22}
	for _, c := range []struct {
		name    string
		z, temp []float64
		oxygen  []float64
		deepest float64 // 0: not known
		fish    fish.Fish
		want    Verdict
		found   bool
	}{
		{"cool below the break", summerZ, summerT, nil, 0, trout(), Good, true},
		{"warm as far as was read", warmZ, warmT, nil, 0, trout(), NotReached, false},
		{"warm, and the lake goes on", warmZ, warmT, nil, 12, trout(), NotReached, false},
		{"warm down to the lake's deepest", warmZ, warmT, nil, 6.5, trout(), TooWarm, false},
		{"cool but starved", summerZ, summerT, []float64{8, 8, 7, 3, 1, 0.5, 0.2, 0.1}, 0, trout(), NoOxygen, false},
		{"too warm above, no oxygen below", warmZ, warmT, []float64{8, 2, 1}, 0, trout(), Squeezed, false},
		{"the same down to the lake's deepest", warmZ, warmT, []float64{8, 2, 1}, 6.5, trout(), Squeezed, false},
		{"the same, oxygen short from the top", warmZ, warmT, []float64{3, 2, 1}, 0, trout(), Squeezed, false},
		{"the same for bass", warmZ, []float64{30, 29, 28}, []float64{8, 2, 1}, 0, bass(), Squeezed, false},
		{"warm, and oxygen as far as was read", warmZ, warmT, []float64{8, 7, 6}, 0, trout(), NotReached, false},
		{"warm, oxygen read at the top alone", warmZ, warmT, []float64{8, none, none}, 0, trout(), NotReached, false},
		{"one reading, cool", []float64{0}, []float64{12}, nil, 0, trout(), Good, true},
		{"one reading, warm", []float64{0}, []float64{24}, nil, 0, trout(), NotReached, false},
		{"all too cold for bass", []float64{0, 4, 8}, []float64{16, 14, 8}, nil, 0, bass(), Warmest, true},
		{"all too cold and starved", []float64{0, 4, 8}, []float64{16, 14, 8}, []float64{2, 1, 0}, 0, bass(), NoOxygen, false},
		{"all too warm for bass", warmZ, []float64{30, 29, 28}, nil, 0, bass(), NotReached, false},
		{"bass between its edges", summerZ, summerT, nil, 0, bass(), Good, true},
		{"the bass's water starved, colder water not", summerZ, summerT, []float64{1, 1, 1, 1, 1, 8, 8, 8}, 0, bass(), NoOxygen, false},
	} {
		in := input(column(t, c.z, c.temp, c.oxygen), c.fish)
		if c.deepest > 0 {
			in.Deepest = profile.Some(c.deepest)
		}
		b := Find(in)
		if b.Verdict != c.want || b.Found != c.found {
			t.Errorf("%s: %q, found %v; want %q, %v", c.name, b.Verdict, b.Found, c.want, c.found)
		}
	}
	if b := Find(Input{Fish: trout()}); b.Verdict != NotReached || b.Found {
		t.Errorf("no readings: %q, found %v", b.Verdict, b.Found)
	}
}

// A verdict of none names the coolest water that was read.
func TestCoolest(t *testing.T) {
	b := Find(input(column(t, []float64{0, 3, 6}, []float64{26, 25, 22}, nil), trout()))
	near(t, "coolest", b.CoolestC, 22, 1e-9)
	near(t, "its depth", b.CoolestM, 6, 1e-9)
}

// Where measured oxygen ends above the cool water, the answer knows where it ends, by
// straight lines, where the cool water begins, and how cool the water is that has it.
func TestSqueezedBetween(t *testing.T) {
	z := []float64{0, 2, 4, 6, 8}
	for _, c := range []struct {
		name         string
		temp, oxygen []float64
		toM, coolM   float64 // NaN: nowhere
		coolestC     float64 // of the water with oxygen, or of all where none has it
	}{
		{"no cool water was reached", []float64{26, 26, 25, 23, 21}, []float64{8, 8, 7, 3, 0}, 5, none, 24.05},
		{"cool water below where it ends", []float64{26, 25, 24, 16, 10}, []float64{8, 8, 2, 0, 0}, 3, 5, 24.5},
		{"short at every depth, none cool", []float64{26, 26, 25, 23, 21}, []float64{4, 4, 3, 3, 0}, none, none, 21},
	} {
		in := input(column(t, z, c.temp, c.oxygen), trout())
		b := Find(in)
		if b.Found || !b.Oxygen || b.OxygenToM.Known == math.IsNaN(c.toM) || b.CoolFromM.Known == math.IsNaN(c.coolM) {
			t.Errorf("%s: %q, oxygen to %v, cool from %v", c.name, b.Verdict, b.OxygenToM, b.CoolFromM)
			continue
		}
		if b.OxygenToM.Known {
			near(t, c.name+", oxygen ends", b.OxygenToM.Value, c.toM, 1e-9)
			near(t, c.name+", coolest at", b.CoolestM, c.toM, 1e-9)
		}
		if b.CoolFromM.Known { // 20 C is halfway from 24 to 16 C, and the curve not far off a line
			near(t, c.name+", cool from", b.CoolFromM.Value, c.coolM, 0.5)
		}
		near(t, c.name+", coolest", b.CoolestC, c.coolestC, 0.3)
	}
}

// To a coldwater fish no water is too cold: the band is all of it, and the start is in
// its warmest part: at any depth where oxygen was measured, else as far as the shelf. The
// light does not move it into colder water.
func TestAllCold(t *testing.T) {
	z := []float64{0, 3, 6, 9}
	for _, c := range []struct {
		name      string
		temp      []float64
		oxygen    []float64
		low, high float64 // where the start lies
		warmer    bool
	}{
		{"spring, oxygen measured", []float64{8, 7, 6, 5}, []float64{11, 11, 10, 10}, 0.9, 2.5, true},
		{"under ice, oxygen measured", []float64{0.5, 2, 3, 3.9}, []float64{12, 11, 9, 7}, 8.5, 9, true},
		{"spring, not measured", []float64{8, 6.5, 6, 5}, nil, 0.9, 2, true},
		{"spring, as warm at the shelf", []float64{8, 7.8, 7.7, 7}, nil, 3, 3.1, true},
		{"under ice, not measured", []float64{0.5, 2, 3, 3.9}, nil, 3, 3.1, true}, // over the middle of the shelf
		{"a cool skin over warmer water", []float64{6, 8, 7.7, 7}, nil, 2.5, 3.1, true},
		{"cool, none of it too cold", []float64{14, 13, 12, 11}, []float64{10, 10, 9, 9}, 2.5, 3.5, false},
		{"the least they like is not cold", []float64{10, 10, 10, 10}, nil, 3, 3.1, false},
	} {
		in := input(column(t, z, c.temp, c.oxygen), trout())
		in.Light = light.Advice{Shift: light.Deeper, Why: light.BrightCalm}
		if moved, still := Find(in).Start.Best, Find(input(in.Column, in.Fish)).Start.Best; c.warmer && in.Layers.Curve.At(moved) < in.Layers.Curve.At(still)-asGoodC {
			t.Errorf("%s: bright sun moves the start from %.2f to %.2f m, into colder water", c.name, still, moved)
		}
		b := Find(input(in.Column, in.Fish))
		if !b.Found || !b.ToSurface || !b.ToDeepest || b.Top.Best != 0 {
			t.Errorf("%s: found %v, top %v, to the surface %v, to the deepest %v: want the whole column", c.name, b.Found, b.Top.Best, b.ToSurface, b.ToDeepest)
		}
		near(t, c.name+", bottom", b.Bottom.Best, 9+2*ft, 1e-9)
		for at := 0.9; c.warmer && at <= b.Start.Best; at += 0.1 { // 3 ft down and deeper nothing above is warmer by more than half a degree
			if in.Layers.Curve.At(at) > in.Layers.Curve.At(b.Start.Best)+0.5+1e-6 {
				t.Errorf("%s: %.2f C at the start, %.2f C at %.1f m", c.name, in.Layers.Curve.At(b.Start.Best), in.Layers.Curve.At(at), at)
			}
		}
		if b.Start.Best < c.low || b.Start.Best > c.high || b.Cold != c.warmer {
			t.Errorf("%s: start %.2f m, cold %v; want %v to %v m, %v", c.name, b.Start.Best, b.Cold, c.low, c.high, c.warmer)
		}
	}
}

// The warmest layer is what lies within half a degree of the warmest water that has
// the oxygen.
func TestWarmest(t *testing.T) {
	in := input(column(t, []float64{0, 2, 4, 6, 8}, []float64{16, 16, 15.8, 12, 9}, nil), bass())
	b := Find(in)
	if b.Verdict != Warmest || !b.ToSurface || !b.Cold {
		t.Fatalf("%q, to the surface %v", b.Verdict, b.ToSurface)
	}
	near(t, "bottom of the warmest layer", b.Bottom.Best, crossing(in.Layers.Curve, 15.5), 2e-3)
	starved := input(column(t, []float64{0, 2, 4, 6, 8}, []float64{16, 16, 15.8, 12, 9}, []float64{3, 3, 3, 7, 7}), bass())
	b = Find(starved)
	if b.Verdict != Warmest || b.Top.Best <= 4 {
		t.Errorf("top starved: %q from %.2f m, want the warmest water below 4 m", b.Verdict, b.Top.Best)
	}
}

// Cool- and warmwater fish: both edges of their comfort range count.
func TestBothEdges(t *testing.T) {
	in := input(column(t, summerZ, []float64{28, 28, 27, 23, 17, 12, 8, 7}, nil), ask(t, "smallmouth"))
	b := Find(in)
	if !b.Found || b.ToSurface || b.ToDeepest || b.Cold {
		t.Fatalf("found %v, to the surface %v, to the deepest %v", b.Found, b.ToSurface, b.ToDeepest)
	}
	k := in.Layers.Curve
	near(t, "warm edge", b.Top.Best, crossing(k, in.Fish.ComfortHighC.Value), 2e-3)
	near(t, "cold edge", b.Bottom.Best, crossing(k, in.Fish.ComfortLowC.Value), 2e-3)
}
