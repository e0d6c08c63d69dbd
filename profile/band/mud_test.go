package band

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/oxygen"
)

// muddy is an input with black mud at a bottom.
func muddy(t *testing.T, z, temps, oxygen []float64, f fish.Fish, bottomM float64) Input {
	in := input(column(t, z, temps, oxygen), f)
	in.Bottom, in.AnchorBlack = profile.Some(bottomM), true
	return in
}

// Mud that came up black takes the water below the doubtful depth out of the band, and the
// water taken is named; the depth is that of package oxygen.
func TestMudCutsTheBand(t *testing.T) {
	z, cool := []float64{0, 2, 4, 6, 8, 10}, []float64{17, 17, 16.5, 13, 10, 9}
	in := muddy(t, z, cool, nil, trout(), 11)
	want, _ := oxygen.Below(oxygen.Input{Column: in.Column, Layers: in.Layers, NeedMgL: in.Fish.OxygenMgL.Value, Bottom: in.Bottom, AnchorBlack: true})
	b := Find(in)
	if !b.Found || b.Verdict != Good || b.ToDeepest {
		t.Fatalf("%q, found %v, to the deepest %v", b.Verdict, b.Found, b.ToDeepest)
	}
	near(t, "bottom of the band", b.Bottom.Best, want.Low, 1e-9)
	near(t, "its safe end", b.Bottom.Low, want.Low, 1e-9)
	if b.Start.Best > want.Low || b.CastDeepM > want.Low+1e-9 {
		t.Errorf("start %.2f m, cast over %.2f m, but doubtful below %.2f m", b.Start.Best, b.CastDeepM, want.Low)
	}
	if len(b.Others) != 1 || b.Others[0].Why != OverMud || b.Others[0].TopM != want.Low || b.Others[0].BottomM < 10 {
		t.Errorf("others %+v", b.Others)
	}
	if _, _, bet := b.BestBet(10); bet != AllOfIt {
		t.Errorf("best bet %q: what is left is not in doubt", bet)
	}

	in.AnchorBlack = false
	if clean := Find(in); clean.Bottom.Best < 10 || len(clean.Others) != 0 {
		t.Errorf("clean mud: %+v", clean)
	}
	read := muddy(t, z, cool, []float64{9, 9, 9, 8, 7, 6}, trout(), 11)
	if b := Find(read); b.Bottom.Best < 10 || !b.Oxygen {
		t.Errorf("oxygen was measured down to 10 m, but the band ends at %.2f m", b.Bottom.Best)
	}
	turned := muddy(t, z, []float64{10.5, 10.5, 10.4, 10.4, 10.3, 10.3}, nil, trout(), 11)
	if b := Find(turned); b.Bottom.Best < 10 || b.DoubtfulBelow != nil {
		t.Errorf("right after a turnover: to %.2f m, doubtful below %v", b.Bottom.Best, b.DoubtfulBelow)
	}
}

// Where all the cool water lies below that depth there is none to fish: it is said from
// where on it is cool, and what the water above is like.
func TestSmothered(t *testing.T) {
	in := muddy(t, summerZ, summerT, nil, trout(), 11)
	in.Fish.UpperUseC = fish.Figure{Value: 24, Known: true, Source: "made up"}
	b := Find(in)
	if b.Found || b.Verdict != Smothered || b.DoubtfulBelow == nil {
		t.Fatalf("%q, found %v, doubtful below %v", b.Verdict, b.Found, b.DoubtfulBelow)
	}
	near(t, "cool from", b.CoolFromM.Value, crossing(in.Layers.Curve, 20), 2e-3)
	if b.CoolestM > b.DoubtfulBelow.Best || b.CoolestC <= 20 {
		t.Errorf("coolest above the doubtful depth %.2f m: %.1f C at %.2f m", b.DoubtfulBelow.Best, b.CoolestC, b.CoolestM)
	}
	for _, o := range b.Others {
		if o.Why == Surer && o.BottomM > b.DoubtfulBelow.Best+1e-9 {
			t.Errorf("%+v, doubtful below %.2f m", o, b.DoubtfulBelow.Best)
		}
	}
}

// A fish to whom all is too cold is looked for in the warmest water above that depth.
func TestWarmestOverMud(t *testing.T) {
	in := muddy(t, []float64{0, 2, 4, 6, 8}, []float64{0.5, 2, 3, 3.5, 3.9}, nil, bass(), 9)
	b := Find(in)
	if !b.Found || b.Verdict != Warmest || b.DoubtfulBelow == nil || math.Abs(b.Bottom.Best-b.DoubtfulBelow.Best) > 1e-9 {
		t.Fatalf("%q, found %v, %+v, doubtful below %v", b.Verdict, b.Found, b.Bottom, b.DoubtfulBelow)
	}
	in.AnchorBlack = false
	if clean := Find(in); clean.Top.Best <= b.Bottom.Best {
		t.Errorf("clean mud: warmest from %.2f m, over black mud down to %.2f m", clean.Top.Best, b.Bottom.Best)
	}
}

// The best bet is the part above the doubtful depth.
func TestBestBet(t *testing.T) {
	exactly := profile.Exactly
	for _, c := range []struct {
		name     string
		doubtful float64 // 0: none
		measured bool
		top, end float64
		want     Bet
	}{
		{"no doubt", 0, false, 4, 9, AllOfIt},
		{"measured", 6, true, 4, 9, AllOfIt},
		{"below it", 9.5, false, 4, 9, AllOfIt},
		{"hardly any of it", 8.8, false, 4, 9, AllOfIt},
		{"inside", 6, false, 4, 6, UpperPart},
		{"hardly inside", 4.2, false, 0, 0, NoPart},
		{"above it", 3, false, 0, 0, NoPart},
	} {
		b := Band{Found: true, Top: exactly(4), Bottom: exactly(9), Oxygen: c.measured}
		if c.doubtful > 0 {
			d := exactly(c.doubtful)
			b.DoubtfulBelow = &d
		}
		top, end, got := b.BestBet(9)
		if got != c.want || top != c.top || end != c.end {
			t.Errorf("%s: %q, %v to %v m; want %q, %v to %v m", c.name, got, top, end, c.want, c.top, c.end)
		}
	}
}

// The start by temperature never lies below the deepest oxygen reading, by day or in the sun.
func TestStartWithinOxygen(t *testing.T) {
	z, temps := []float64{0, 2, 4, 5, 6, 7, 8, 10}, []float64{24, 24, 22, 20.5, 19, 17, 16, 9}
	read := []float64{9, none, none, none, none, 8, none, none} // past 20 ft, and so taken to hold below
	in := input(column(t, z, temps, read), trout())
	in.Fish.OptimumC = fish.Figure{Value: 10, Known: true, Source: "made up"}
	b := Find(in)
	if !b.Found || !b.Oxygen {
		t.Fatalf("%q, oxygen measured %v", b.Verdict, b.Oxygen)
	}
	if b.Start.Best > 7+1e-9 {
		t.Errorf("start at %.2f m; the deepest oxygen reading is at 7 m", b.Start.Best)
	}
}
