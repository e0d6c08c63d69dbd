package band

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/light"
	"coldseam/profile/oxygen"
)

// Oxygen that was not measured removes no water: the band is by temperature alone,
// starts a foot inside its shallow edge, and what lies under the break is unknown.
func TestOxygenNotMeasured(t *testing.T) {
	in := input(column(t, summerZ, summerT, nil), trout())
	b := Find(in)
	if b.Oxygen || b.DoubtfulBelow == nil {
		t.Fatalf("oxygen %v, doubtful below %v: want not measured, and unknown from somewhere", b.Oxygen, b.DoubtfulBelow)
	}
	near(t, "top", b.Top.Best, crossing(in.Layers.Curve, 20), 2e-3)
	near(t, "bottom", b.Bottom.Best, 11+2*ft, 1e-9)
	near(t, "start", b.Start.Best, b.Top.High+ft, 1e-9)
	want, ok := oxygen.Below(oxygen.Input{Column: in.Column, Layers: in.Layers, NeedMgL: in.Fish.OxygenMgL.Value, Bottom: in.Bottom})
	if !ok || want.Low >= want.Best {
		t.Fatalf("unknown: %v, %v", want, ok)
	}
	near(t, "unknown from the safe end on", b.DoubtfulBelow.Best, want.Low, 1e-9)
	near(t, "the end of its interval", b.DoubtfulBelow.High, want.High, 1e-9)

	mixed := input(column(t, []float64{0, 2, 4}, []float64{18, 18, 17.8}, nil), trout())
	mixed.Bottom = profile.Some(5)
	clean := Find(mixed)
	mixed.AnchorBlack = true
	if black := Find(mixed); clean.DoubtfulBelow != nil || black.DoubtfulBelow == nil || black.Top != clean.Top {
		t.Errorf("black mud under one layer: unknown below %v, without it %v", black.DoubtfulBelow, clean.DoubtfulBelow)
	}
}

// Water above the band that the fish uses though it likes cooler is named where the band
// may lack oxygen.
func TestSurerWater(t *testing.T) {
	in := input(column(t, summerZ, summerT, nil), trout())
	in.Fish.UpperUseC = fish.Figure{Value: 23.95, Known: true, Source: "made up"}
	in.Fish.ComfortHighC.Value = 15
	b := Find(in)
	for _, o := range b.Others {
		if o.Why != Surer {
			continue
		}
		if in.Layers.Curve.At(o.TopM) > 23.95+1e-6 || o.BottomM > b.DoubtfulBelow.Best+1e-9 || o.BottomM > b.Top.Best || o.TopM >= o.BottomM {
			t.Errorf("more likely to hold oxygen: %+v, unknown below %v", o, b.DoubtfulBelow.Best)
		}
		return
	}
	t.Errorf("no likelier water is named: %+v, unknown below %v", b.Others, b.DoubtfulBelow)
}

// Sky and hour move the start within the band, up or down, and are named when they do.
func TestStartByLight(t *testing.T) {
	oxygen := []float64{9, 9, 9, 9, 8, 8, 7, 7}
	in := input(column(t, summerZ, summerT, oxygen), trout())
	plain := Find(in)
	for _, a := range []light.Advice{{Shift: light.Shallower, Why: light.LowSun}, {Shift: light.Deeper, Why: light.BrightCalm}} {
		in.Light = a
		b := Find(in)
		moved := b.Start.Best - plain.Start.Best
		if a.Shift == light.Shallower && moved > 0 || a.Shift == light.Deeper && moved < 0 || math.Abs(moved) > light.StepM+1e-9 {
			t.Errorf("%s moves the start by %.2f m", a.Shift, moved)
		}
		if (moved != 0) != (b.Shift == a) {
			t.Errorf("%s moves the start by %.2f m and says %+v", a.Shift, moved, b.Shift)
		}
		if b.Start.Best < b.Top.Best || b.Start.Best > b.Bottom.Best || b.Top != plain.Top || b.Bottom != plain.Bottom {
			t.Errorf("%s: start %.2f, band %.2f to %.2f", a.Shift, b.Start.Best, b.Top.Best, b.Bottom.Best)
		}
		if moved == 0 && a.Shift == light.Shallower {
			t.Errorf("%s moves nothing: start %.2f, band %.2f to %.2f", a.Shift, plain.Start.Best, b.Top.Best, b.Bottom.Best)
		}
	}
}

func TestOxygenPartlyMeasured(t *testing.T) {
	warm := crossing(input(column(t, summerZ, summerT, nil), trout()).Layers.Curve, 20)
	at := func(i int, v float64) []float64 {
		o := make([]float64, len(summerZ))
		for j := range o {
			o[j] = none
		}
		o[i] = v
		return o
	}
	two := at(4, 3) // 3 mg/L at 6 m, 0.5 at 9 m: nothing was measured above
	two[6] = 0.5
	for _, c := range []struct {
		name        string
		oxygen      []float64
		top, bottom float64
		measured    bool
	}{
		{"one good reading", at(4, 8), warm, 11 + 2*ft, false},
		{"one low reading ends the band", at(4, 2), warm, 6, false},
		{"two low readings, none above", two, warm, 6, false},
		{"good at 5 and 7 m, past 20 ft: taken to hold below", []float64{none, none, none, 8, none, 7, none, none}, warm, 11 + 2*ft, true},
		{"good at 0 and 5 m: not measured where it matters", []float64{9, none, none, 8, none, none, none, none}, warm, 11 + 2*ft, false},
		{"good at 5 m, low at 9 m: straight between", []float64{none, none, none, 9, none, none, 1, none}, warm, 7, true},
		{"good from top to bottom", []float64{9, none, none, 9, none, 8, none, 7}, warm, 11 + 2*ft, true},
	} {
		b := Find(input(column(t, summerZ, summerT, c.oxygen), trout()))
		if !b.Found || b.Oxygen != c.measured {
			t.Errorf("%s: %q, oxygen measured %v, want %v", c.name, b.Verdict, b.Oxygen, c.measured)
			continue
		}
		near(t, c.name+", top", b.Top.Best, c.top, 2e-3)
		near(t, c.name+", bottom", b.Bottom.Best, c.bottom, 1e-6)
		if b.Bottom.Best == 6 && (b.Bottom.High > 6 || b.Bottom.Low >= 6) {
			t.Errorf("%s: bottom %.2f to %.2f m: the low reading at 6 m is the latest it can end", c.name, b.Bottom.Low, b.Bottom.High)
		}
	}
}

// A low reading at the surface holds for the water under it as far as nothing else
// was read.
func TestOxygenLowAtTheSurface(t *testing.T) {
	o := []float64{2, none, none, none, none, none, none, none}
	if b := Find(input(column(t, summerZ, summerT, o), trout())); b.Verdict != NoOxygen {
		t.Errorf("%q, want no oxygen", b.Verdict)
	}
}

// Two runs that suit: the thicker is the band, the other is named.
func TestTwoRuns(t *testing.T) {
	o := []float64{8, 8, 8, 8, 2, 8, 8, 8} // starved at 6 m only
	b := Find(input(column(t, summerZ, summerT, o), trout()))
	if !b.Found || b.Top.Best <= 6 {
		t.Fatalf("top %v m, want the run below 6 m", b.Top.Best)
	}
	near(t, "top, halfway up from 2 to 8 mg/L", b.Top.Best, 6.5, 1e-9)
	if len(b.Others) != 2 || b.Others[0].Why != Thinner || b.Others[1].Why != LittleOxygen {
		t.Fatalf("others %v", b.Others)
	}
	near(t, "the thinner ends halfway down", b.Others[0].BottomM, 5.5, 1e-9)
	near(t, "the starved between them", b.Others[1].BottomM-b.Others[1].TopM, 1, 1e-9)
}

// For a fish with two edges, water too cold for it is not called cool enough.
func TestStarvedIsOfTheRightTemperature(t *testing.T) {
	o := []float64{8, 8, 8, 8, 2, 1, 1, 1}
	in := input(column(t, summerZ, summerT, o), bass())
	cold := crossing(in.Layers.Curve, in.Fish.ComfortLowC.Value)
	for _, b := range Find(in).Others {
		if b.BottomM > cold+1e-3 {
			t.Errorf("%.2f to %.2f m is called %q, but is too cold from %.2f m on", b.TopM, b.BottomM, b.Why, cold)
		}
	}
}

// Nothing is said of water deeper than 2 ft under the deepest reading, nor under
// the bottom or the lake's deepest.
func TestExtent(t *testing.T) {
	unknown := profile.Optional{}
	for _, c := range []struct {
		name            string
		first           float64 // depth of the first reading
		bottom, deepest profile.Optional
		from, to        float64
		toDeepest       bool
	}{
		{"nothing known", 0, unknown, unknown, 0, 8 + 2*ft, true},
		{"the bottom is near", 0, profile.Some(8.3), unknown, 0, 8.3, false},
		{"the bottom is far", 0, profile.Some(12), unknown, 0, 8 + 2*ft, true},
		{"the lake's deepest is near", 0, unknown, profile.Some(8.2), 0, 8.2, false},
		{"the lake's deepest is the nearer", 0, profile.Some(8.5), profile.Some(8.2), 0, 8.2, false},
		{"the bottom is above the last reading", 0, profile.Some(7.8), unknown, 0, 8, false},
		{"the bottom is far above it", 0, profile.Some(6), unknown, 0, 8, false},
		{"first reading within a metre", 1, unknown, unknown, 0, 8 + 2*ft, true},
		{"first reading deeper", 2, unknown, unknown, 2, 8 + 2*ft, true},
	} {
		in := input(column(t, []float64{c.first, 4, 6, 8}, []float64{14, 13, 12, 11}, nil), trout())
		in.Bottom, in.Deepest = c.bottom, c.deepest
		b := Find(in)
		near(t, c.name+", top", b.Top.Best, c.from, 1e-9)
		near(t, c.name+", bottom", b.Bottom.Best, c.to, 1e-9)
		if b.ToDeepest != c.toDeepest {
			t.Errorf("%s: may go deeper %v, want %v", c.name, b.ToDeepest, c.toDeepest)
		}
		if b.ToSurface != (c.from == 0) {
			t.Errorf("%s: to the surface %v", c.name, b.ToSurface)
		}
	}
}
