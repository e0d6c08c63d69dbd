package layers

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"coldseam/profile/internal/measured"
	"coldseam/profile/water"
)

// gold is what follows from the numbers of one published cast by the plain
// definitions, and what the definitions of this package make of it. Casts:
// Carpenter et al., Cascade Project at North Temperate Lakes LTER, Environmental
// Data Initiative knb-lter-ntl.352.
//
// The rises of density were derived with a formula that is not named; Kell 1975 and
// EOS-80 differ among themselves by up to 0.0006 kg/m3 per metre on these casts, and
// IAPWS SR6-08 from the figures given by up to 0.0004. Hence riseTol.
type gold struct {
	name          string
	plane         [2]float64   // interval of the fastest rise of density
	rise, riseTol float64      // kg/m3 per metre there; 0 where not derived
	fallest       [2]float64   // interval of the fastest fall of temperature
	zone          [2]float64   // intervals of at least 1 C/m around the plane
	mixed         [4]float64   // straight lines: 0.2, 0.5, 0.8 and 1 C below the first reading
	isotherms     [][2]float64 // straight lines: temperature, depth
	breaks        [][2]float64 // ours: further breaks, middle and C/m
	skin          float64      // ours
}

var golds = []gold{
	// P1: temperature falls fastest in 3-4 m, but density, being steeper in warm
	// water, rises fastest in 2-3 m. 4-5 m still falls 0.9 C/m.
	{name: "P1", plane: [2]float64{2, 3}, rise: .3887, riseTol: 5e-4, fallest: [2]float64{3, 4}, zone: [2]float64{2, 4},
		mixed:     [4]float64{1.6667, 2.0625, 2.1562, 2.2188},
		isotherms: [][2]float64{{12, 2.6875}, {10, 3.25}, {8, 3.75}}},
	// P2: 5-6 m falls only 0.4 C/m, so 6-7 m is a break of its own. The warmer water
	// under the surface is pooled; that moves neither.
	{name: "P2", plane: [2]float64{2.5, 3}, rise: 1.3223, riseTol: 5e-4, fallest: [2]float64{2.5, 3}, zone: [2]float64{2.5, 5},
		mixed:     [4]float64{2.5, 2.5417, 2.5833, 2.6111},
		isotherms: [][2]float64{{18, 2.7361}, {15, 3.22}, {12, 3.8478}, {10, 4.3023}, {8, 4.7674}}, breaks: [][2]float64{{6.5, 1.1}}},
	// P3: 7-8 m falls 0.7 C/m.
	{name: "P3", plane: [2]float64{3, 3.5}, rise: 1.0898, riseTol: 5e-4, fallest: [2]float64{3, 3.5}, zone: [2]float64{2, 7},
		mixed:     [4]float64{2.1111, 2.2778, 2.4444, 2.5312},
		isotherms: [][2]float64{{20, 3.0536}, {18, 3.4107}, {15, 3.9808}, {12, 4.6304}, {10, 5.1071}, {8, 5.8214}}},
	// P4: the break begins within 1 m of the surface, and is steeper below: no skin.
	// 3.5-4 m falls 0.6 C/m; 4-5 m would make more than 1 m of it.
	{name: "P4", plane: [2]float64{1.5, 2}, rise: 1.3173, riseTol: 5e-4, fallest: [2]float64{1.5, 2}, zone: [2]float64{.5, 3.5},
		mixed:     [4]float64{.625, .8125, 1, 1.0303},
		isotherms: [][2]float64{{20, 1.0303}, {18, 1.3333}, {15, 1.7111}, {12, 2.0556}, {10, 2.3333}}},
	// P5: 7-8 m falls 0.8 C/m.
	{name: "P5", plane: [2]float64{3, 3.5}, fallest: [2]float64{3, 3.5}, zone: [2]float64{2.5, 7},
		mixed:     [4]float64{2.1667, 2.5357, 2.6429, 2.7143},
		isotherms: [][2]float64{{20, 3.2353}, {18, 3.5435}, {15, 4.1957}, {12, 4.8478}, {10, 5.3939}}},
	// P6: the first half metre falls 1.2 C/m, a skin; it is no break and spoils the
	// plain mixed layer. 9-10 m falls 0.6 C/m.
	{name: "P6", plane: [2]float64{5, 5.5}, rise: 1.2818, riseTol: 5e-4, fallest: [2]float64{5, 5.5}, zone: [2]float64{4.5, 9},
		mixed:     [4]float64{.1667, .4167, 1, 2.5},
		isotherms: [][2]float64{{20, 4.75}, {18, 5.2286}, {15, 5.7292}, {12, 6.3269}}, skin: .5},
	// P7: 6.5-7 m and 9-9.5 m fall exactly 1.0 C/m, which binary numbers miss; with
	// them the zone is whole. Below it 0.8 and 0.6 C/m in two half metres.
	{name: "P7", plane: [2]float64{7, 7.5}, rise: .5955, riseTol: 5e-4, fallest: [2]float64{7.5, 8}, zone: [2]float64{6.5, 10},
		mixed: [4]float64{6.5, 6.8, 7.0238, 7.0714}},
	// P10: 8-9 m falls 0.8 C/m.
	{name: "P10", plane: [2]float64{4, 4.5}, fallest: [2]float64{4, 4.5}, zone: [2]float64{3.5, 8}},
}

// goldCast finds the cast of a short name.
func goldCast(t *testing.T, name string) measured.Cast {
	t.Helper()
	for _, c := range measured.Casts(t, "cascade_cases.csv") {
		if strings.HasPrefix(c.Name, name+" ") {
			return c
		}
	}
	t.Fatalf("no cast %s", name)
	return measured.Cast{}
}

func TestGoldPlain(t *testing.T) {
	for _, g := range golds {
		c := goldCast(t, g.name)
		z, temps := c.Depths, c.Temps
		k := newCurve(c.Column(t))
		f := newGradients(k.Depths, k.Temps)
		start := slices.Index(f.z, g.skin)
		plane := f.greatestRise(start)
		if got := [2]float64{z[plane], z[plane+1]}; got != g.plane {
			t.Errorf("%s: density rises fastest in %v m, want %v", g.name, got, g.plane)
		}
		if g.rise > 0 {
			near(t, g.name+": rise of density", f.rise[plane], g.rise, g.riseTol)
		}
		fallest, first, last := start, plane, plane
		for i := start; i < len(f.fall); i++ {
			if f.fall[i] > f.fall[fallest] {
				fallest = i
			}
		}
		if got := [2]float64{z[fallest], z[fallest+1]}; got != g.fallest {
			t.Errorf("%s: temperature falls fastest in %v m, want %v", g.name, got, g.fallest)
		}
		for first > 0 && f.steep(first-1) {
			first--
		}
		for last+1 < len(f.fall) && f.steep(last+1) {
			last++
		}
		if got := [2]float64{z[first], z[last+1]}; got != g.zone {
			t.Errorf("%s: at least 1 C/m in %v m, want %v", g.name, got, g.zone)
		}
		for i, below := range []float64{.2, .5, .8, 1} {
			if g.mixed[i] == 0 {
				continue
			}
			got, _ := Linear(z, temps, temps[0]-below)
			near(t, fmt.Sprintf("%s: %g C below the first reading", g.name, below), got, g.mixed[i], 5.1e-5)
		}
		for _, iso := range g.isotherms {
			got, _ := Linear(z, temps, iso[0])
			near(t, fmt.Sprintf("%s: %g C", g.name, iso[0]), got, iso[1], 5.1e-5)
		}
	}
}

func TestGoldLayers(t *testing.T) {
	for _, g := range golds {
		l := Find(goldCast(t, g.name).Column(t))
		if l.Structure != Layered {
			t.Errorf("%s: %s, want layered", g.name, l.Structure)
			continue
		}
		// crews' marks are good to about a metre of the plain zone's ends
		near(t, g.name+": top", l.MetalimnionTop.Best, g.zone[0], 1)
		near(t, g.name+": bottom", l.MetalimnionBottom.Best, g.zone[1], 1)
		near(t, g.name+": skin", l.SkinM, g.skin, 1e-9)
		// The metre of the thermocline holds the middle of the interval of the fastest rise:
		// its neighbours draw it to their side.
		if z, mid := l.Thermocline.Best, (g.plane[0]+g.plane[1])/2; math.Abs(z-mid) > windowM/2 {
			t.Errorf("%s: thermocline at %v m, whose metre does not hold %v m", g.name, z, mid)
		}
		if len(l.OtherBreaks) != len(g.breaks) {
			t.Errorf("%s: further breaks %v, want %v", g.name, l.OtherBreaks, g.breaks)
			continue
		}
		for i, b := range g.breaks {
			near(t, g.name+": further break", l.OtherBreaks[i].DepthM, b[0], 1e-9)
			near(t, g.name+": its fall", l.OtherBreaks[i].CPerM, b[1], 1e-9)
		}
		if l.BottomReached {
			t.Errorf("%s: the break is said to run past the deepest reading", g.name)
		}
	}
}

// The mixed layer lies between the readings that hold the straight-line answer from
// the first reading under the skin, or at the metalimnion's top where that is less.
func TestGoldMixedLayer(t *testing.T) {
	for _, g := range golds {
		l := Find(goldCast(t, g.name).Column(t))
		k := l.Curve
		start := slices.Index(k.Depths, g.skin)
		want, ok := Linear(k.Depths[start:], k.Temps[start:], k.Temps[start]-mixedC)
		if !ok || l.MixedLayer == nil || l.MetalimnionTop == nil {
			t.Errorf("%s: no mixed layer to compare", g.name)
			continue
		}
		got := l.MixedLayer.Best
		if want >= l.MetalimnionTop.Best {
			near(t, g.name+": mixed layer, at the break", got, l.MetalimnionTop.Best, 1e-9)
		} else if i := k.indexAt(want); got < k.Depths[i]-1e-9 || got > k.Depths[i+1]+1e-9 {
			t.Errorf("%s: mixed layer to %v m, want between %v and %v", g.name, got, k.Depths[i], k.Depths[i+1])
		}
	}
	// Under P6's skin the first reading is 21.0 C at 0.5 m; 20.5 C begins at 3 m. From
	// 1 m, 20.8 C, a fall of 0.2 C is complete at 2.5 m.
	p6 := newCurve(goldCast(t, "P6").Column(t))
	z, _ := Linear(p6.Depths[1:], p6.Temps[1:], 20.5)
	near(t, "P6: 0.5 C below the reading under the skin", z, 3, 1e-9)
	z, _ = Linear(p6.Depths[2:], p6.Temps[2:], 20.6)
	near(t, "P6: 0.2 C below 1 m", z, 2.5, 1e-9)
}

// P11: the plane by temperature is 3.5-4 m; the 1.0 C/m from 2 m on belong to it.
func TestGoldP11(t *testing.T) {
	l := Find(goldCast(t, "P11").Column(t))
	f := newGradients(l.Curve.Depths, l.Curve.Temps)
	fallest := 0
	for i := range f.fall {
		if f.fall[i] > f.fall[fallest] {
			fallest = i
		}
	}
	near(t, "P11: steepest fall", f.fall[fallest], 5.4, 1e-9)
	near(t, "P11: its depth", f.z[fallest], 3.5, 1e-9)
	if l.Structure != Layered {
		t.Fatalf("P11: %s", l.Structure)
	}
	near(t, "P11: top", l.MetalimnionTop.Best, 2, 1)
}

// One layer: P8 is 5.0 C all through. P9 is 4.2 C over 4.6 and 4.5 C: lighter water
// below by 0.005 kg/m3, none of it under the 3.98 C of the densest water, so it is
// not the water under ice.
func TestGoldMixed(t *testing.T) {
	for _, name := range []string{"P8", "P9"} {
		l := Find(goldCast(t, name).Column(t))
		if l.Structure != Mixed || l.Thermocline != nil || l.MetalimnionTop != nil || l.SkinM != 0 {
			t.Errorf("%s: %v, skin %v m, want mixed without a break", name, l, l.SkinM)
			continue
		}
		near(t, name+": mixed layer", l.MixedLayer.Best, l.Curve.Bottom(), 1e-9)
	}
	near(t, "P9: rise of density at the surface, as read", (water.Density(4.6)-water.Density(4.2))/.5, -.0053, 5.1e-5)
}
