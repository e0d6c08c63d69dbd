package band

import (
	"math"
	"slices"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
)

// cast reads one measured cast by the beginning of its name: Carpenter et al., Cascade
// Project at North Temperate Lakes LTER, Environmental Data Initiative knb-lter-ntl.352.
func cast(t *testing.T, name string) profile.Column {
	t.Helper()
	for _, c := range measured.Casts(t, "cascade_cases.csv") {
		if !strings.HasPrefix(c.Name, name+" ") {
			continue
		}
		oxygen := make([]float64, len(c.Depths))
		for i, z := range c.Depths {
			oxygen[i] = none
			if j := slices.IndexFunc(c.Oxygen, func(o measured.Oxygen) bool { return o.DepthM == z }); j >= 0 {
				oxygen[i] = c.Oxygen[j].MgL
			}
		}
		return column(t, c.Depths, c.Temps, oxygen)
	}
	t.Fatalf("no cast %s", name)
	return profile.Column{}
}

// crossing walks down the curve in millimetres to where it first falls to a
// temperature: slow, and apart from the way the band looks for it.
func crossing(k *layers.Curve, tempC float64) float64 {
	for z := k.Top(); z < k.Bottom(); z += 0.001 {
		if k.At(z) <= tempC {
			return z
		}
	}
	return math.NaN()
}

// Water of at most 20 C with at least 5 mg/L, worked out from the casts by straight
// lines between their readings (source: casts, above). The band's temperature edge
// is of the cubic curve, and so may lie a little off the straight line's.
func TestSqueeze(t *testing.T) {
	for _, c := range []struct {
		name         string
		top          float64 // of the band
		topByTemp    bool
		bottom       float64 // always by oxygen
		starvedTop   float64 // a run that is cool enough but starved; 0: none but below the band
		starvedToTop bool    // and which ends where the band begins
	}{
		{"P3", 3.0536, true, 6.5814, 0, false},
		{"P4", 1.0303, true, 3.0714, 0, false},
		{"P5", 3.6111, false, 4.1795, 3.2353, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := input(cast(t, c.name), trout())
			b := Find(in)
			if b.Verdict != Good || !b.Found || !b.Oxygen || b.DoubtfulBelow != nil {
				t.Fatalf("verdict %q, found %v, oxygen measured %v: want a good band by measured oxygen", b.Verdict, b.Found, b.Oxygen)
			}
			near(t, "bottom, by oxygen", b.Bottom.Best, c.bottom, 1e-3)
			byTemp := b.Top.Best
			if !c.topByTemp {
				near(t, "top, by oxygen", b.Top.Best, c.top, 1e-3)
				byTemp = b.Others[0].TopM
			}
			linear := c.top
			if c.starvedToTop {
				linear = c.starvedTop
				near(t, "the starved run's bottom", b.Others[0].BottomM, c.top, 1e-3)
			}
			near(t, "where the curve falls to 20 C", byTemp, crossing(in.Layers.Curve, 20), 2e-3)
			near(t, "where straight lines do", byTemp, linear, 0.15)
			below := b.Others[len(b.Others)-1]
			near(t, "starved water begins under the band", below.TopM, c.bottom, 1e-3)
			for _, o := range b.Others {
				if o.Why != LittleOxygen {
					t.Errorf("%v to %v m: %q", o.TopM, o.BottomM, o.Why)
				}
			}
		})
	}
}

// P3's steep water gives the optimum a depth inside the band.
func TestSqueezeStart(t *testing.T) {
	in := input(cast(t, "P3"), trout())
	b := Find(in)
	// 13 C lies between the readings at 4 m (14.9 C) and 5 m (10.3 C)
	if b.Start.Best <= 4 || b.Start.Best >= 5 {
		t.Errorf("start at %.2f m, want between 4 and 5 m", b.Start.Best)
	}
	near(t, "temperature at the start", in.Layers.Curve.At(b.Start.Best), 13, 0.1)
}
