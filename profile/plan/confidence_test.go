package plan

import (
	"math"
	"slices"
	"testing"

	"coldseam/profile"
)

func TestConfidence(t *testing.T) {
	dense := withOxygen(metres(0, 24, 1, 24, 3, 24, 4, 23.5, 5, 20.5, 6, 15, 7, 11, 8, 9, 9, 8.5, 11, 8), 8, 8, 8, 8, 8, 8, 7, 7, 6, 4)
	bare := metres(0, 24, 1, 24, 3, 24, 4, 23.5, 5, 20.5, 6, 15, 7, 11, 8, 9, 9, 8.5, 11, 8)
	sparse := metres(0, 24, 5, 22, 15, 8)
	two := metres(0, 24, 6, 14)
	odd := withOxygen(metres(0, 24, 1, 24, 3, 2.4, 4, 23.5, 5, 20.5, 6, 15, 7, 11, 8, 9, 9, 8.5, 11, 8), 8, 8, 8, 8, 8, 8, 7, 7, 6, 4)
	for _, c := range []struct {
		name string
		drop profile.Drop
		want Level
		has  []Doubt
	}{
		{"readings close, oxygen measured", dense, Good, []Doubt{CloseReadings}},
		{"oxygen not measured", bare, Good, []Doubt{CloseReadings}},
		{"three readings, 10 m apart", sparse, Poor, []Doubt{TooFewReadings, WideBreak}},
		{"two readings", two, Poor, []Doubt{TooFewReadings}},
		{"one left out", odd, Fair, []Doubt{LeftOut}},
	} {
		p := planOf(t, c.drop, "rainbow")
		if p.Depths.Level != c.want {
			t.Errorf("%s: %q because %v, want %q", c.name, p.Depths.Level, p.Depths.Why, c.want)
		}
		for _, d := range c.has {
			if !slices.Contains(p.Depths.Why, d) {
				t.Errorf("%s: doubts %v, want %q among them", c.name, p.Depths.Why, d)
			}
		}
		if p.Depths.Level != Good && slices.Contains(p.Depths.Why, CloseReadings) {
			t.Errorf("%s: %q, yet nothing is said to speak against it", c.name, p.Depths.Level)
		}
	}
}

// The limits of width, from both sides, for both depths that are graded.
func TestWidths(t *testing.T) {
	for _, c := range []struct {
		widthM float64
		want   Level
	}{{1.39, Good}, {1.41, Fair}, {2.69, Fair}, {2.71, Poor}} {
		got := Good
		width(profile.Estimate{Low: 5, Best: 5.2, High: 5 + c.widthM}, WideBreak, func(l Level, d Doubt) {
			got = l
			if d != WideBreak {
				t.Errorf("%v m: %q", c.widthM, d)
			}
		})
		if got != c.want {
			t.Errorf("%v m wide: %q, want %q", c.widthM, got, c.want)
		}
	}
	wide := planOf(t, metres(0, 24, 5, 23, 12, 14, 18, 8), "rainbow")
	if !slices.Contains(wide.Depths.Why, WideEdge) || !slices.Contains(wide.Depths.Why, WideBreak) {
		t.Errorf("read at 5, 12 and 18 m, and not both the band's edge and the thermocline are called wide: %v", wide.Depths)
	}
}

// What is said of the oxygen follows where the fly starts: 0.80 of the depth at which 15 %
// of the fall is done (package oxygen), about 5.2 m here, is the depth to start above.
func TestSureOfOxygen(t *testing.T) {
	layered := []float64{0, 24, 2, 24, 4, 24, 6, 24, 7, 20, 8, 16, 9, 12, 10, 9, 14, 8}
	early := []float64{0, 19, 4, 19, 6, 14, 8, 9, 12, 7}
	for _, c := range []struct {
		name string
		drop profile.Drop
		fish string
		want Level
		why  Doubt
	}{
		{"cool only below the doubtful depth", metres(layered...), "rainbow", Unknown, OxygenUnknown},
		{"cool from high up", metres(early...), "rainbow", Likely, OxygenUnknown},
		{"one layer", metres(0, 15, 3, 15, 6, 15, 9, 15), "rainbow", Likely, OxygenUnknown},
		{"under ice, the warmest water is the deepest", metres(0.5, 0.4, 2, 1.8, 5, 3, 9, 3.9), "brook", Unknown, OxygenUnknown},
		{"too warm as far as read", metres(0, 24, 3, 24, 6, 24), "rainbow", Unknown, OxygenUnknown},
		{"measured", withOxygen(metres(layered...), 9, 9, 9, 9, 9, 9, 8, 8, 6), "rainbow", Measured, OxygenKnown},
		{"measured to a metre above the band, which begins deeper than trout feed", withOxygen(metres(layered...), 9, 9, 9, 9), "rainbow", Unknown, OxygenUnknown},
		{"measured at the top", withOxygen(metres(early...), 9), "rainbow", Likely, OxygenUnknown},
		{"measured, and gone before it is cool", withOxygen(metres(0, 24, 3, 24, 6, 23, 8, 22), 9, 8, 2, 1), "rainbow", Measured, OxygenKnown},
		{"measured, and none left", withOxygen(metres(layered...), 9, 9, 9, 9, 1, 0, 0, 0, 0), "rainbow", Measured, OxygenKnown},
	} {
		p := planOf(t, c.drop, c.fish)
		if p.Oxygen.Level != c.want || len(p.Oxygen.Why) != 1 || p.Oxygen.Why[0] != c.why {
			t.Errorf("%s: %v, start %v, doubtful below %v; want %q because of %q", c.name, p.Oxygen, p.Band.Start, p.Band.DoubtfulBelow, c.want, c.why)
		}
		if slices.Contains(p.Depths.Why, OxygenUnknown) {
			t.Errorf("%s: oxygen is held against the depths: %v", c.name, p.Depths)
		}
	}
}

// A step fitted to the readings is a doubt where it lies elsewhere, and only with
// readings enough. The column falls 3.8 C in the metre above 3 m and 11.7 C in the 8 m
// below it: the tool says 2.5 m. The least squares of a step over a grid of centres and
// widths, done apart with the density of Kell 1975, lie at 4.6 m; without the reading at
// 0 m and one at 0.5 m instead at 4.0 m, and with a skin's at 0 m as well at 3.2 m.
func TestMethodsApart(t *testing.T) {
	slope := []float64{0, 24, 2, 23.8, 3, 20, 5, 18.5, 7, 15, 9, 11, 11, 8.3}
	warmTop := []float64{0, 25.2, 0.5, 24, 2, 23.8, 3, 20, 5, 18.5, 7, 15, 9, 11, 11, 8.3}
	for _, c := range []struct {
		name  string
		pairs []float64
		want  bool
		level Level
		stepM float64
	}{
		{"a slope under a sharp edge", slope, true, Fair, 4.6},
		{"one reading fewer", slope[:12], false, Fair, 0},
		{"a skin, which is left out", warmTop, true, Fair, 4.0},
		{"a step", []float64{0, 24, 1, 24, 3, 24, 4, 23.5, 5, 20.5, 6, 15, 7, 11, 8, 9, 9, 8.5, 11, 8}, false, Good, 0},
		{"one layer", []float64{0, 12, 1, 12, 2, 12, 3, 12, 4, 12, 5, 12, 6, 12, 7, 12}, false, Good, 0},
	} {
		mgl := slices.Repeat([]float64{9}, len(c.pairs)/2)
		p := planOf(t, withOxygen(metres(c.pairs...), mgl...), "rainbow")
		if got := slices.Contains(p.Depths.Why, MethodsApart); got != c.want || p.Depths.Level != c.level {
			t.Errorf("%s: %q because %v, want %q and %q among them: %v", c.name, p.Depths.Level, p.Depths.Why, c.level, MethodsApart, c.want)
		}
		if math.Abs(p.StepM-c.stepM) > 0.15 {
			t.Errorf("%s: step at %.2f m, want %g m", c.name, p.StepM, c.stepM)
		}
	}
}

// A fall of 6 F in the top 3 ft over even water may be a sunny day's skin (common
// practice: 3 to 6 F), as long as deeper water was not read.
func TestMaybeASkin(t *testing.T) {
	page := []float64{0, 79, 3, 73, 6, 72.8, 10, 72.5, 15, 72}
	for _, c := range []struct {
		name    string
		bottomM profile.Optional
		pairs   []float64
		want    bool
	}{
		{"deep water below", profile.Some(30 * ft), page, true},
		{"bottom not known", profile.Optional{}, page, true},
		{"read to the bottom", profile.Some(16 * ft), page, false},
		{"too great a fall for a skin", profile.Some(30 * ft), []float64{0, 84, 3, 73, 6, 72.8, 10, 72.5, 15, 72}, false},
		{"small enough to be one", profile.Some(30 * ft), []float64{0, 76, 3, 73, 6, 72.8, 10, 72.5, 15, 72}, false},
	} {
		d := feet(c.pairs...)
		d.Bottom = c.bottomM
		p := planOf(t, d, "rainbow")
		if got := slices.Contains(p.Depths.Why, MaybeSkin); got != c.want {
			t.Errorf("%s: %v, doubts %v, want %q among them: %v", c.name, p.Layers, p.Depths.Why, MaybeSkin, c.want)
		}
	}
}

func TestAssumed(t *testing.T) {
	p := planOf(t, metres(0, 24, 2, 24, 4, 23.5, 5, 20.5, 6, 15, 8, 9), "rainbow")
	for _, a := range []Assumption{OxygenNotGiven, BottomNotGiven, AngleNotGiven, IcePointUnknown, PrecisionAssumed, BelowAssumed, WindUnknown, RulesUnknown} {
		if !slices.Contains(p.Assumed, a) {
			t.Errorf("%q is not among what was assumed: %v", a, p.Assumed)
		}
	}
	d := withOxygen(metres(0, 24, 2, 24, 4, 23.5, 5, 20.5, 6, 15, 8, 9), 8, 8, 8, 8, 7, 6)
	d.Bottom, d.LineAngle, d.Wind = profile.Some(8.3), profile.Some(0), profile.Some(2)
	d.IcePoint, d.Precision = profile.Some(0.1), profile.Some(0.3)
	in := input(t, d, "rainbow")
	in.Rules.Water = "Alder Kettle"
	p, err := Make(in)
	if err != nil || len(p.Assumed) > 0 {
		t.Errorf("everything was given, yet assumed: %v (%v)", p.Assumed, err)
	}
	p = planOf(t, withOxygen(metres(0, 24, 2, 24, 4, 23.5, 5, 20.5, 6, 15, 8, 9), 8), "rainbow")
	if !slices.Contains(p.Assumed, OxygenPartly) || slices.Contains(p.Assumed, OxygenNotGiven) {
		t.Errorf("oxygen read at the top only: %v", p.Assumed)
	}
}
