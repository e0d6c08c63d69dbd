package plan

import (
	"slices"
	"testing"

	"coldseam/profile"
)

func TestConfidence(t *testing.T) {
	dense := oxygen(metres(0, 24, 1, 24, 3, 24, 4, 23.5, 5, 20.5, 6, 15, 7, 11, 8, 9, 9, 8.5, 11, 8), 8, 8, 8, 8, 8, 8, 7, 7, 6, 4)
	bare := metres(0, 24, 1, 24, 3, 24, 4, 23.5, 5, 20.5, 6, 15, 7, 11, 8, 9, 9, 8.5, 11, 8)
	sparse := metres(0, 24, 5, 22, 15, 8)
	two := metres(0, 24, 6, 14)
	odd := oxygen(metres(0, 24, 1, 24, 3, 2.4, 4, 23.5, 5, 20.5, 6, 15, 7, 11, 8, 9, 9, 8.5, 11, 8), 8, 8, 8, 8, 8, 8, 7, 7, 6, 4)
	for _, c := range []struct {
		name string
		drop profile.Drop
		want Level
		has  []Doubt
	}{
		{"readings close, oxygen measured", dense, Good, []Doubt{CloseReadings}},
		{"oxygen not measured", bare, Fair, []Doubt{OxygenUnknown}},
		{"three readings, 10 m apart", sparse, Poor, []Doubt{TooFewReadings, WideBreak}},
		{"two readings", two, Poor, []Doubt{TooFewReadings}},
		{"one left out", odd, Fair, []Doubt{LeftOut}},
	} {
		p := planOf(t, c.drop, "rainbow")
		if p.Level != c.want {
			t.Errorf("%s: %q because %v, want %q", c.name, p.Level, p.Doubts, c.want)
		}
		for _, d := range c.has {
			if !slices.Contains(p.Doubts, d) {
				t.Errorf("%s: doubts %v, want %q among them", c.name, p.Doubts, d)
			}
		}
		if p.Level != Good && slices.Contains(p.Doubts, CloseReadings) {
			t.Errorf("%s: %q, yet nothing is said to speak against it", c.name, p.Level)
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
	d := oxygen(metres(0, 24, 2, 24, 4, 23.5, 5, 20.5, 6, 15, 8, 9), 8, 8, 8, 8, 7, 6)
	d.Bottom, d.LineAngle, d.Wind = profile.Some(8.3), profile.Some(0), profile.Some(2)
	d.IcePoint, d.Precision = profile.Some(0.1), profile.Some(0.3)
	in := input(t, d, "rainbow")
	in.Rules.Water = "Alder Kettle"
	p, err := Make(in)
	if err != nil || len(p.Assumed) > 0 {
		t.Errorf("everything was given, yet assumed: %v (%v)", p.Assumed, err)
	}
	p = planOf(t, oxygen(metres(0, 24, 2, 24, 4, 23.5, 5, 20.5, 6, 15, 8, 9), 8), "rainbow")
	if !slices.Contains(p.Assumed, OxygenPartly) || slices.Contains(p.Assumed, OxygenNotGiven) {
		t.Errorf("oxygen read at the top only: %v", p.Assumed)
	}
}
