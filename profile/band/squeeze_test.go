package band

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// casts is where the measured casts lie: Carpenter et al., Cascade Project at North
// Temperate Lakes LTER, Environmental Data Initiative knb-lter-ntl.352.
const casts = "../../../shared/data/cascade_cases.csv"

// cast reads one measured cast by the beginning of its name.
func cast(t *testing.T, name string) profile.Column {
	t.Helper()
	f, err := os.Open(casts)
	if errors.Is(err, fs.ErrNotExist) && os.Getenv("COLDSEAM_FULL") != "1" {
		t.Skipf("no measured casts here (%s); COLDSEAM_FULL=1 makes this a failure", casts)
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("%s: %v", casts, err)
		}
		return v
	}
	var z, temp, oxygen []float64
	for _, r := range rows[1:] {
		if strings.HasPrefix(r[0], name+" ") {
			z, temp = append(z, number(r[2])), append(temp, number(r[3]))
			if r[4] == "" {
				oxygen = append(oxygen, none)
			} else {
				oxygen = append(oxygen, number(r[4]))
			}
		}
	}
	return column(t, z, temp, oxygen)
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
