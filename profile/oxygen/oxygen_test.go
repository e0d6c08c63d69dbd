package oxygen

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// summer is a layered column: 20 C down to 4 m, 1.6 C less for each of the next 10 m.
func summer(tb testing.TB, oxygen map[float64]float64) Input {
	tb.Helper()
	var points []profile.Point
	for z := 0.0; z <= 14; z++ {
		p := profile.Point{DepthM: z, TempC: 20 - 1.6*math.Max(0, z-4)}
		if v, ok := oxygen[z]; ok {
			p.Oxygen = profile.Some(v)
		}
		points = append(points, p)
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		tb.Fatal(err)
	}
	return inputOf(c, 5)
}

// By hand: 15, 50 and 90 % of the fall are done at 5.5, 9 and 13 m. The cubic leaves the
// corner at 4 m a little deeper than the straight line: 0.02 m at most.
func TestBelowByHand(t *testing.T) {
	at := func(low, best, high float64) profile.Estimate {
		return profile.Estimate{Low: low, Best: best, High: high}
	}
	for _, x := range []struct {
		name string
		set  func(*Input)
		want profile.Estimate
	}{
		{"5 mg/L", func(*Input) {}, at(.80*5.5, .85*9, 1.07*13)},
		{"6 mg/L", func(in *Input) { in.NeedMgL = 6 }, at(.71*5.5, .79*9, 1.01*13)},
		{"halfway", func(in *Input) { in.NeedMgL = 5.5 }, at(.755*5.5, .82*9, 1.04*13)},
		{"less than was fitted", func(in *Input) { in.NeedMgL = 1 }, at(.92*5.5, .93*9, 1.20*13)},
		{"more than was fitted", func(in *Input) { in.NeedMgL = 9 }, at(.55*5.5, .73*9, .93*13)},
		{"no deeper than the bottom", func(in *Input) { in.NeedMgL, in.Bottom = 3, profile.Some(14.5) }, at(.92*5.5, .93*9, 14.5)},
		{"readings under the bottom", func(in *Input) { in.NeedMgL, in.Bottom = 3, profile.Some(12) }, at(.92*5.5, .93*9, 14)},
		{"black mud", func(in *Input) { in.Bottom, in.AnchorBlack = profile.Some(6), true }, at(.54*6, .77*6, .88*6)},
		{"black mud far below", func(in *Input) { in.Bottom, in.AnchorBlack = profile.Some(15), true }, at(.80*5.5, .85*9, .88*15)},
		{"black mud, bottom unknown", func(in *Input) { in.AnchorBlack = true }, at(.80*5.5, .85*9, 1.07*13)},
	} {
		in := summer(t, nil)
		x.set(&in)
		got, ok := Below(in)
		if diff := cmp.Diff(x.want, got, cmpopts.EquateApprox(0, 0.02)); !ok || diff != "" {
			t.Errorf("%s: %v %s", x.name, ok, diff)
		}
	}
}

// What was measured stands above every guess.
func TestBelowKeepsToOxygen(t *testing.T) {
	for _, x := range []struct {
		name      string
		oxygen    map[float64]float64
		low, high float64
	}{
		{"none", nil, .80 * 5.5, 1.07 * 13},
		{"enough at 3 m", map[float64]float64{3: 9}, .80 * 5.5, 1.07 * 13},
		{"enough at 7 m", map[float64]float64{7: 5}, 7, 1.07 * 13},
		{"too little at 11 m", map[float64]float64{11: 4.9}, .80 * 5.5, 11},
		{"too little at 3 m", map[float64]float64{3: 4}, 3, 3},
		{"enough at 7 m, not at 8", map[float64]float64{7: 6, 8: 1}, 7, 8},
		{"enough under too little", map[float64]float64{3: 4, 7: 9}, 3, 3},
	} {
		e, ok := Below(summer(t, x.oxygen))
		if !ok || math.Abs(e.Low-x.low) > 0.02 || math.Abs(e.High-x.high) > 0.02 {
			t.Errorf("%s: %v %v, want %.2f to %.2f m", x.name, e, ok, x.low, x.high)
		}
	}
}

// Where no depth can be named, none is.
func TestNoDepth(t *testing.T) {
	column := func(temps ...float64) Input {
		var points []profile.Point
		for i, c := range temps {
			points = append(points, profile.Point{DepthM: 2 * float64(i), TempC: c})
		}
		c, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		return inputOf(c, 5)
	}
	for _, x := range []struct {
		name string
		in   Input
		want bool
	}{
		{"nothing", Input{NeedMgL: 5}, false},
		{"one temperature", column(15, 15, 15, 15), false},
		{"a fall of 1.4 C", column(15, 14.6, 14.2, 13.6), false},
		{"a fall of 1.5 C, nowhere steep", column(15, 14.5, 14, 13.5), true},
		{"a skin of 2 C", column(17, 15, 15, 15), false},
		{"under ice", column(0.2, 1.5, 3, 3.9), false},
		{"two readings", column(20, 8), false},
		{"a lake", column(20, 20, 12, 8), true},
	} {
		if e, ok := Below(x.in); ok != x.want {
			t.Errorf("%s: %v %v", x.name, e, ok)
		}
		for _, need := range []float64{0, -1, math.NaN()} {
			in := x.in
			in.NeedMgL = need
			if e, ok := Below(in); ok {
				t.Errorf("%s, need %v: %v", x.name, need, e)
			}
		}
		for _, bottom := range []float64{0, -3, math.NaN(), math.Inf(1)} {
			in := x.in
			in.Bottom, in.AnchorBlack = profile.Some(bottom), true
			if e, ok := Below(in); ok != x.want || ok && !ordered(e) {
				t.Errorf("%s, mud at %v m: %v %v", x.name, bottom, e, ok)
			}
		}
		in := x.in
		in.Bottom, in.AnchorBlack = profile.Some(7), true
		if e, ok := Below(in); !ok || e.High > 7 {
			t.Errorf("%s, black mud at 7 m: %v %v", x.name, e, ok)
		}
	}
}

func ordered(e profile.Estimate) bool {
	return 0 <= e.Low && e.Low <= e.Best && e.Best <= e.High && !math.IsInf(e.High, 0)
}

// anyColumn draws one, some of it with oxygen.
func anyColumn(t *rapid.T) profile.Column {
	var points []profile.Point
	z, temp := rapid.Float64Range(0, 2).Draw(t, "first"), rapid.Float64Range(0, 30).Draw(t, "surface")
	for range rapid.IntRange(1, 20).Draw(t, "n") {
		p := profile.Point{DepthM: z, TempC: temp, ErrC: 0.1}
		if rapid.IntRange(0, 3).Draw(t, "oxygen") == 0 {
			p.Oxygen = profile.Some(rapid.Float64Range(0, 14).Draw(t, "mg/L"))
		}
		points = append(points, p)
		z += rapid.Float64Range(0.1, 4).Draw(t, "step")
		temp = math.Max(0, temp-rapid.Float64Range(-0.5, 5).Draw(t, "fall"))
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Of any column: in order and finite; no deeper for a greater need, nor over black mud;
// the same from layers with and without intervals.
func TestBelowOfAnyColumn(t *testing.T) {
	shallower := func(a, b profile.Estimate, slack float64) bool {
		return a.Low <= b.Low+slack && a.Best <= b.Best+slack && a.High <= b.High+slack
	}
	rapid.Check(t, func(t *rapid.T) {
		c := anyColumn(t)
		in := inputOf(c, rapid.Float64Range(0.1, 10).Draw(t, "need"))
		if rapid.Bool().Draw(t, "bottom known") {
			in.Bottom = profile.Some(rapid.Float64Range(0.1, 60).Draw(t, "bottom"))
		}
		e, ok := Below(in)
		if ok && !ordered(e) {
			t.Fatalf("%v", e)
		}
		more := in
		more.NeedMgL += 1
		if f, fok := Below(more); fok != ok || !shallower(f, e, 1e-9) {
			t.Fatalf("%v for more, %v for less", f, e)
		}
		black := in
		black.AnchorBlack = true
		f, fok := Below(black)
		if ok && !fok || fok && !ordered(f) || ok && !shallower(f, e, 0) {
			t.Fatalf("%v over black mud, %v without", f, e)
		}
		in.Layers = layers.Find(c)
		if f, fok := Below(in); fok != ok || f != e {
			t.Fatalf("%v with intervals, %v without", f, e)
		}
	})
}

// The tables keep the order of the chances, and a greater need is met no deeper.
func TestTables(t *testing.T) {
	for _, table := range [][5][3]float64{ofFall, ofMud} {
		for i, line := range table {
			for j, v := range line {
				if j > 0 && v <= line[j-1] || i > 0 && v >= table[i-1][j] {
					t.Errorf("%v mg/L: %v", needs[i], line)
				}
			}
		}
	}
}
