package tilt

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// column is the layers of pairs of depth, m, and temperature, C.
func column(t interface{ Fatal(...any) }, pairs ...float64) layers.Layers {
	var points []profile.Point
	for i := 0; i+1 < len(pairs); i += 2 {
		points = append(points, profile.Point{DepthM: pairs[i], TempC: pairs[i+1], ErrC: 0.1, ErrM: 0.05})
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	return layers.Find(c)
}

// july is a lake of 12 m in July.
func july(t interface{ Fatal(...any) }) Input {
	return Input{
		Layers: column(t, 0, 22, 2, 22, 3, 21.9, 4, 20.5, 5, 15, 6, 11, 8, 9.5, 12, 9), BottomM: 12, BottomKnown: true,
		Length: profile.Some(1000), Wind: profile.Some(6), Want: Cooler,
	}
}

func found(t interface{ Fatal(...any) }, in Input) Tilt {
	got, no := Find(in)
	if no != "" {
		t.Fatal(no)
	}
	return got
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		want   Refusal
		change func(*Input)
	}{
		{NotLayered, func(in *Input) { in.Layers = column(t, 0, 15, 3, 15, 6, 14.9) }},
		{NotLayered, func(in *Input) { in.Layers = column(t, 0, 1, 3, 3, 6, 4) }},
		{NotLayered, func(in *Input) { in.Layers = column(t, 0, 20) }},
		{NotLayered, func(in *Input) { in.Layers = layers.Layers{} }},
		{NoLength, func(in *Input) { in.Length = profile.Optional{} }},
		{NoLength, func(in *Input) { in.Length = profile.Some(0) }},
		{NoWind, func(in *Input) { in.Wind = profile.Optional{} }},
		{ThinLayer, func(in *Input) { in.BottomM = in.Layers.Thermocline.Best + 0.9 }},
	} {
		in := july(t)
		c.change(&in)
		if got, no := Find(in); no != c.want || got != (Tilt{}) {
			t.Errorf("%q, want %q", no, c.want)
		}
	}
}

// The lake of July by hand: the middle figures are those of the closed forms with the
// layers that the readings have, and their range holds them.
func TestFind(t *testing.T) {
	in := july(t)
	got := found(t, in)
	if z := got.Thermocline.Best; got.Layers.UpperM != z || math.Abs(got.Layers.LowerM-(12-z)*2/3) > 1e-9 {
		t.Errorf("%+v", got.Layers)
	}
	if got.Layers.Above < 997.7 || got.Layers.Above > 998.0 || got.Layers.Below < 999.4 || got.Layers.Below > 999.8 {
		t.Errorf("densities %+v", got.Layers)
	}
	near(t, "end", got.End.Best, got.Layers.EndM(Stress(6, 1.3e-3), 1000), 1e-12)
	near(t, "period", got.Period.Best, got.Layers.PeriodS(1000), 1e-12)
	if got.Rise != StaysDown || got.Choice != (Choice{UpwindEnd, Shallower}) {
		t.Errorf("%s, %v", got.Rise, got.Choice)
	}
	inOrder(t, got)
}

func inOrder(t interface{ Errorf(string, ...any) }, got Tilt) {
	for name, e := range map[string]profile.Estimate{"period": got.Period, "W": got.Wedderburn, "share": got.Share, "steady": got.Steady, "end": got.End, "up": got.Up, "down": got.Down} {
		if !(e.Low <= e.Best+1e-9 && e.Best <= e.High+1e-9 && e.Low >= 0) {
			t.Errorf("%s: %+v", name, e)
		}
	}
	if got.Up.Best > got.Down.Best {
		t.Errorf("the thermocline is at %v upwind and %v downwind", got.Up, got.Down)
	}
}

// Where the bottom is not known the lake may be deep, and rocks faster.
func TestBottomNotKnown(t *testing.T) {
	in := july(t)
	known := found(t, in)
	in.BottomKnown = false
	if got := found(t, in); got.Period.Low >= known.Period.Low || got.Period.Best != known.Period.Best || got.Period.High != known.Period.High {
		t.Errorf("%+v, known %+v", got.Period, known.Period)
	}
}

// From where the drop was taken the other end is twice the displacement away; where that
// is not known both ends may be where it was read.
func TestPlaces(t *testing.T) {
	in := july(t)
	z := in.Layers.Thermocline.Best
	for _, c := range []struct {
		at       Place
		up, down float64
	}{{Upwind, 0, 2}, {Middle, 1, 1}, {Downwind, 2, 0}, {AnyPlace, 1, 1}} {
		in.At = c.at
		got := found(t, in)
		near(t, string(c.at)+", upwind", got.Up.Best, z-c.up*got.End.Best, 1e-9)
		near(t, string(c.at)+", downwind", got.Down.Best, z+c.down*got.End.Best, 1e-9)
		inOrder(t, got)
		if c.at == AnyPlace && (got.Up.High < z-1e-9 || got.Down.Low > z+1e-9 || got.Up.Low > z-2*got.End.Best || got.Down.High < z+2*got.End.Best) {
			t.Errorf("upwind %+v, downwind %+v, read %v", got.Up, got.Down, z)
		}
		if c.at == Upwind && got.Up != got.Thermocline {
			t.Errorf("upwind %+v, read %+v", got.Up, got.Thermocline)
		}
	}
}

// A wind of less than a quarter of the period has not set it up fully, one of hours that
// nobody knows is taken as steady.
func TestHours(t *testing.T) {
	in := july(t)
	steady := found(t, in)
	quarter := steady.Period.Best / 3600 / 4
	for _, c := range []struct{ hours, share float64 }{{0, 0}, {quarter / 2, 0.5}, {quarter, 1}, {100, 1}} {
		in.Blown = profile.Some(c.hours * 3600)
		got := found(t, in)
		if math.Abs(got.End.Best-c.share*steady.End.Best) > 1e-9 || got.Steady != steady.Steady {
			t.Errorf("after %v h %+v, steady %+v", c.hours, got.End, steady.End)
		}
		inOrder(t, got)
	}
	if steady.Share != profile.Exactly(1) || steady.BlownKnown {
		t.Errorf("%+v", steady.Share)
	}
}

func TestRise(t *testing.T) {
	for _, c := range []struct {
		wind, length, hours float64
		want                Rise
	}{{0, 1000, 9, StaysDown}, {3, 500, 9, StaysDown}, {6, 4000, 40, MayRise}, {9, 4000, 40, Rises}, {16, 5000, 40, Rises}, {16, 5000, 0.1, MayRise}} {
		in := july(t)
		in.Wind, in.Length, in.Blown = profile.Some(c.wind), profile.Some(c.length), profile.Some(c.hours*3600)
		got := found(t, in)
		if got.Rise != c.want {
			t.Errorf("%v m/s on %v m: %s, W %+v, want %s", c.wind, c.length, got.Rise, got.Wedderburn, c.want)
		}
		if got.End.High > got.Layers.UpperM {
			t.Errorf("the ends are %+v away in a warm layer of %v m", got.End, got.Layers.UpperM)
		}
	}
}

func TestChoice(t *testing.T) {
	for _, c := range []struct {
		wind float64
		want Want
		is   Choice
	}{
		{6, Cooler, Choice{UpwindEnd, Shallower}}, {6, Warmer, Choice{DownwindEnd, Thicker}},
		{6, Anyhow, Choice{EitherEnd, NoMatter}}, {6, Nowhere, Choice{EitherEnd, NoGood}},
		{0, Cooler, Choice{EitherEnd, Calm}}, {2, Cooler, Choice{EitherEnd, Small}}, {2, Warmer, Choice{EitherEnd, Small}},
	} {
		in := july(t)
		in.Wind, in.Want = profile.Some(c.wind), c.want
		if got := found(t, in); got.Choice != c.is {
			t.Errorf("%v m/s, %s: %v, want %v (%+v)", c.wind, c.want, got.Choice, c.is, got.End)
		}
	}
}

func TestTo(t *testing.T) {
	for from, want := range map[string]string{"SW": "NE", "N": "S", "ENE": "WSW", "SSE": "NNW", "": ""} {
		if got := To(from); got != want {
			t.Errorf("%s: %s, want %s", from, got, want)
		}
	}
}

// More wind, a longer water and more hours never tilt it less; a longer water never rocks
// faster; a greater fall of temperature never tilts more nor rocks slower; and every range
// is in order.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		at, top, bottom := draw("thermocline", 2, 8), draw("top", 16, 26), draw("bottom", 4, 12)
		lake := func(bottomC float64) layers.Layers {
			return column(t, 0, top, at-0.5, top, at+0.5, bottomC, at+2, bottomC, at+8, bottomC)
		}
		in := Input{
			Layers: lake(bottom), BottomM: at + 8 + draw("more depth", 0, 30), BottomKnown: rapid.Bool().Draw(t, "bottom known"),
			Length: profile.Some(draw("length", 50, 20000)), Wind: profile.Some(draw("wind", 0, 20)),
			At: rapid.SampledFrom([]Place{AnyPlace, Upwind, Middle, Downwind}).Draw(t, "place"), Want: Cooler,
		}
		if rapid.Bool().Draw(t, "hours known") {
			in.Blown = profile.Some(draw("s", 0, 2e5))
		}
		got := found(t, in)
		inOrder(t, got)
		never := func(what string, less, more profile.Estimate) {
			const slack = 1e-9
			if less.Best > more.Best+slack || less.Low > more.Low+slack {
				t.Fatalf("%s: %+v, then %+v", what, less, more)
			}
		}
		windier, longer := in, in
		windier.Wind.Value += draw("more wind", 0, 5)
		longer.Length.Value *= draw("times longer", 1, 3)
		never("more wind", got.End, found(t, windier).End)
		never("longer", got.Steady, found(t, longer).Steady)
		never("longer, period", got.Period, found(t, longer).Period)
		if in.Blown.Known {
			later := in
			later.Blown.Value += draw("more s", 0, 1e5)
			never("more hours", got.End, found(t, later).End)
		}
		warm := in
		warm.Layers = lake(bottom + draw("warmer below", 0, top-bottom-3))
		if l := warm.Layers; l.Structure == layers.Layered && math.Abs(l.Thermocline.Best-at) < 1e-6 && math.Abs(in.Layers.Thermocline.Best-at) < 1e-6 {
			soft := found(t, warm)
			if soft.Steady.Best < got.Steady.Best-1e-9 || soft.Period.Best < got.Period.Best-1e-9 {
				t.Fatalf("warmer below: %+v %+v, then %+v %+v", got.Steady, got.Period, soft.Steady, soft.Period)
			}
		}
	})
}
