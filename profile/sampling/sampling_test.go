package sampling

import (
	"math"
	"testing"

	"coldseam/profile"
)

func TestFind(t *testing.T) {
	lake := smooth(23, 7, 5, 1)
	mixed := func(float64) float64 { return 18 }
	unknown, at9 := profile.Optional{}, profile.Some(9.0)
	for _, c := range []struct {
		name   string
		lake   func(float64) float64
		depths []float64
		bottom profile.Optional
		mark   float64
		enough bool
		why    Why
		depth  float64 // -1: any
	}{
		{"nothing read, metres", lake, nil, at9, quarterM, false, Surface, 0.5},
		{"nothing read, feet", lake, nil, at9, footM, false, Surface, footM},
		{"the surface was left out", lake, []float64{3, 6}, at9, quarterM, false, Surface, 0.5},
		{"half a metre is the surface", lake, []float64{0.5}, at9, quarterM, false, Bottom, 8.5},
		{"then close above the bottom", lake, []float64{0}, at9, quarterM, false, Bottom, 8.5},
		{"the same in feet, 29.5 ft", lake, []float64{0}, at9, footM, false, Bottom, 28 * footM},
		{"half a metre above the bottom is the bottom", lake, []float64{0, 8.5}, at9, quarterM, false, Guess, 4.25},
		{"no deeper than lines reach", lake, []float64{0}, profile.Some(60), quarterM, false, Bottom, 22.5},
		{"bottom not known: 2 m on", lake, []float64{0}, unknown, quarterM, false, Deeper, 2},
		{"and on", lake, []float64{0, 2}, unknown, quarterM, false, Deeper, 4},
		{"while it is getting colder", lake, []float64{0, 2, 4, 6}, unknown, quarterM, false, Deeper, 8},
		{"the same in feet", lake, []float64{0}, unknown, footM, false, Deeper, 7 * footM},
		{"the even water below is reached: weigh", lake, []float64{0, 3, 6, 9, 12}, unknown, quarterM, false, Thermocline, -1},
		{"close enough", lake, []float64{0.5, 3.5, 4.25, 4.5, 4.75, 5, 5.25, 5.5, 6, 8.5}, at9, quarterM, true, CloseEnough, 0},
		{"one layer", mixed, []float64{0, 5, 8.5}, at9, quarterM, true, OneLayer, 0},
		{"one layer takes three depths", mixed, []float64{0, 8.5}, at9, quarterM, false, Guess, 4.25},
		{"under ice", func(z float64) float64 { return math.Min(3.9, 0.2+z) }, []float64{0, 2, 5, 8.5}, at9, quarterM, true, NoBreak, 0},
		{"slowly colder", func(z float64) float64 { return 20 - z/6 }, []float64{0, 2, 5, 8.5}, at9, quarterM, true, NoBreak, 0},
		{"too shallow for more", lake, []float64{0}, profile.Some(0.5), quarterM, true, OneLayer, 0},
	} {
		var column profile.Column
		if c.depths != nil {
			column = read(t, c.lake, c.depths...)
		}
		a := Find(Input{Column: column, Bottom: c.bottom, MarkM: c.mark})
		if a.Enough != c.enough || a.Why != c.why {
			t.Errorf("%s: enough %v because %q, want %v because %q", c.name, a.Enough, a.Why, c.enough, c.why)
		}
		if !a.Enough && c.depth >= 0 && math.Abs(a.DepthM-c.depth) > 1e-9 {
			t.Errorf("%s: read %.4f m, want %.4f m", c.name, a.DepthM, c.depth)
		}
	}
}

// A bigger lake is looked for its break deeper, a small clear one deeper than a small
// dark one.
func TestGuess(t *testing.T) {
	known := profile.Some
	for _, c := range []struct {
		name string
		in   Input
		want float64
	}{
		{"by the bottom: 1.42*9^0.51", Input{Bottom: known(9)}, 4.3546},
		{"by the length: 4.4*(0.75*1)^0.5", Input{Bottom: known(30), Length: known(1000)}, 3.8105},
		{"a long lake: 4.4*(0.75*8)^0.5", Input{Bottom: known(30), Length: known(8000)}, 10.7778},
		{"a small dark lake", Input{Bottom: known(30), Length: known(200), Secchi: known(1)}, 1.7041},
		{"a small clear lake: 0.8*5", Input{Bottom: known(30), Length: known(200), Secchi: known(5)}, 4},
		{"no deeper than three quarters of the water", Input{Bottom: known(2), Length: known(8000)}, 1.5},
		{"nothing known", Input{}, 5},
	} {
		if got := c.in.expectedThermocline(); math.Abs(got-c.want) > 1e-4 {
			t.Errorf("%s: %.4f m, want %.4f", c.name, got, c.want)
		}
	}
}

// What matters to the fish is sought too: two lakes with one break, but the fish's
// limit is in the mixed layer of the one and far below the break of the other.
func TestLimitsAreSought(t *testing.T) {
	lake := func(z float64) float64 { // a sharp break at 4 m, then slowly colder
		return smooth(22, 14, 4, 0.3)(z) - 0.5*math.Max(0, z-6)
	}
	depths := []float64{0.5, 3, 3.5, 3.75, 4, 4.25, 4.5, 5, 14.5}
	in := Input{Column: read(t, lake, depths...), Bottom: profile.Some(15), MarkM: quarterM}
	if a := Find(in); !a.Enough {
		t.Errorf("the break alone: read %v m (%s), want enough", a.DepthM, a.Why)
	}
	in.LevelsC = []float64{12}
	a := Find(in)
	if a.Enough || a.Why != Isotherm || a.LevelC != 12 || a.DepthM < 6 || a.DepthM > 13 {
		t.Errorf("12 C sought: %+v, want a reading between 6 and 13 m", a)
	}
	if !(a.FromM < 10 && a.ToM > 10) {
		t.Errorf("12 C lies at 10 m, said to lie between %v and %v m", a.FromM, a.ToM)
	}
}

// The work of a drop is done in a moment: advice on eight readings.
func BenchmarkFind(b *testing.B) {
	c := read(b, smooth(23, 7, 5, 1), 0.5, 3, 4, 4.5, 5, 6, 7, 11.5)
	b.ReportAllocs()
	for b.Loop() {
		Find(Input{Column: c, Bottom: profile.Some(12), LevelsC: []float64{19}, MarkM: quarterM})
	}
}

// A depth that was passed over is not asked for again, whatever it was wanted for.
func TestSkipped(t *testing.T) {
	t.Parallel()
	lake := smooth(24, 10, 5, 1)
	for _, bottom := range []profile.Optional{{}, profile.Some(12)} {
		in := Input{Bottom: bottom, LevelsC: []float64{19}, MarkM: footM}
		var depths []float64
		reasons := map[Why]bool{}
		for range 40 { // every other depth asked for is skipped
			a := Find(in)
			if a.Enough {
				break
			}
			reasons[a.Why] = true
			for _, z := range in.Skipped {
				if math.Abs(z-a.DepthM) < footM/2 {
					t.Fatalf("asks for %.2f m (%s), skipped %v", a.DepthM, a.Why, in.Skipped)
				}
			}
			if len(in.Skipped) <= len(depths) {
				in.Skipped = append(in.Skipped, a.DepthM)
				continue
			}
			depths = append(depths, a.DepthM)
			in.Column = read(t, lake, depths...)
		}
		if len(depths) < 3 || len(reasons) < 3 {
			t.Errorf("bottom %v: read only %v, for %v", bottom, depths, reasons)
		}
	}
}

// Where nothing was found above, or the greatest step is the last one, the water below is
// read, however deep; where the break was passed, it is not.
func TestLooksDeeper(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name        string
		bottom      profile.Optional
		depths      []float64
		temps       []float64
		deeper      bool
		least, most float64
	}{
		{"nothing found down to 18 m", profile.Some(42), []float64{0.3, 18.6}, []float64{18, 17.8}, true, 28, 31},
		{"nothing found in three", profile.Some(42), []float64{0.3, 18.6, 29.9}, []float64{18, 17.9, 17.7}, true, 41, 42},
		{"the last step is the greatest", profile.Some(42), []float64{0.3, 9, 18.6}, []float64{22, 21.5, 18}, true, 28, 31},
		{"the break was passed", profile.Some(42), []float64{0.3, 9, 18.6}, []float64{22, 9, 7}, false, 0, 18.6},
		{"as dense below as water gets", profile.Some(42), []float64{0.3, 9, 18.6}, []float64{20, 19.5, 4}, false, 0, 18.6},
		{"no bottom known, and nothing found", profile.Optional{}, []float64{0.3, 5, 9, 13, 17.7}, []float64{20, 20, 20, 19.9, 18}, true, 18, 21},
	} {
		var points []profile.Point
		for i, z := range c.depths {
			points = append(points, profile.Point{DepthM: z, TempC: c.temps[i], ErrC: 0.25})
		}
		column, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		a := Find(Input{Column: column, Bottom: c.bottom, LevelsC: []float64{19}, MarkM: footM})
		if a.Enough || (a.Why == Deeper) != c.deeper || a.DepthM < c.least || a.DepthM > c.most {
			t.Errorf("%s: %+v, want a depth from %v to %v m, deeper: %v", c.name, a, c.least, c.most, c.deeper)
		}
	}
}
