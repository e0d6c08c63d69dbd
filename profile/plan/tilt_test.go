package plan

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/tilt"
)

// What water the fish wants decides the end: trout in July cool water, in a cold lake warm,
// bass in a warm top none in particular; where no depth suits, none is better.
func TestWants(t *testing.T) {
	july := []float64{0, 73, 5, 73, 10, 72, 13, 70, 15, 66, 17, 62, 20, 58, 25, 53, 29, 51}
	for _, c := range []struct {
		name, fish string
		pairs      []float64
		want       tilt.Want
	}{
		{"July", "rainbow", july, tilt.Cooler},
		{"bass in July", "smallmouth", july, tilt.Anyhow},
		{"May", "rainbow", []float64{0, 52, 5, 52, 10, 47, 15, 44, 20, 43}, tilt.Warmer},
		{"bass in May", "largemouth", []float64{0, 60, 5, 60, 10, 52, 15, 48, 20, 46}, tilt.Warmer},
		{"too warm as far as was read", "rainbow", []float64{0, 80, 5, 80, 10, 76, 15, 71}, tilt.Cooler},
	} {
		p := planOf(t, feet(c.pairs...), c.fish)
		if got := p.Wants(); got != c.want {
			t.Errorf("%s: %s, want %s (%+v)", c.name, got, c.want, p.Band.Verdict)
		}
	}
	d := feet(0, 80, 5, 80, 10, 76, 15, 71)
	d.Bottom, d.Deepest = profile.Some(15*ft), profile.Some(15*ft)
	if p := planOf(t, d, "rainbow"); p.Wants() != tilt.Nowhere {
		t.Errorf("too warm to the bottom: %s (%s)", p.Wants(), p.Band.Verdict)
	}
}

// The bottom is the deepest that is known; where only readings tell of it, the lake may be
// deeper.
func TestTiltBottom(t *testing.T) {
	d := feet(0, 73, 5, 73, 10, 72, 13, 70, 15, 66, 17, 62, 20, 58, 25, 53, 29, 51)
	d.Wind, d.LakeLength = profile.Some(5), profile.Some(1000)
	lower := func(bottom, deepest profile.Optional) (float64, bool) {
		d.Bottom, d.Deepest = bottom, deepest
		p := planOf(t, d, "rainbow")
		got, no := p.Tilt(profile.Optional{}, tilt.AnyPlace)
		if no != "" {
			t.Fatal(no)
		}
		return got.Layers.LowerM*1.5 + got.Layers.UpperM, got.BottomKnown
	}
	for _, c := range []struct {
		bottom, deepest profile.Optional
		wantFt          float64
		known           bool
	}{
		{profile.Optional{}, profile.Optional{}, 29, false}, {profile.Some(31 * ft), profile.Optional{}, 31, true},
		{profile.Some(31 * ft), profile.Some(38 * ft), 38, true}, {profile.Some(31 * ft), profile.Some(20 * ft), 31, true},
	} {
		got, known := lower(c.bottom, c.deepest)
		if got < c.wantFt*ft-1e-6 || got > c.wantFt*ft+1e-6 || known != c.known {
			t.Errorf("bottom %v, deepest %v: %v ft, %v", c.bottom, c.deepest, got/ft, known)
		}
	}
	d.Bottom, d.Deepest = profile.Optional{}, profile.Optional{}
	p := planOf(t, d, "rainbow")
	p.Basin = &Basin{FloorM: 44 * ft} // of the water's table of depth and area
	if got, _ := p.Tilt(profile.Optional{}, tilt.AnyPlace); !got.BottomKnown || math.Abs(got.Layers.LowerM*1.5+got.Layers.UpperM-44*ft) > 1e-6 {
		t.Errorf("%+v", got)
	}
	p = planOf(t, feet(0, 60, 10, 60, 20, 59.5), "rainbow")
	if _, no := p.Tilt(profile.Optional{}, tilt.AnyPlace); no != tilt.NotLayered {
		t.Errorf("%q", no)
	}
}
