package plan

import (
	"slices"
	"testing"
	"time"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/forecast"
)

// expectedOf is what is expected some days after a drop of 10 July, and after as many before
// it that were nearly the same, five days apart.
func expectedOf(t *testing.T, d profile.Drop, fish string, days, before int) Expected {
	t.Helper()
	d.Date = "2026-07-10"
	p := planOf(t, d, fish)
	when, _ := d.When()
	day := when.AddDate(0, 0, days)
	var drops []forecast.Drop
	for i := range before + 1 {
		drops = append(drops, forecast.Drop{When: when.AddDate(0, 0, -5*i), Layers: p.Layers})
	}
	f, err := forecast.Make(forecast.Input{Day: day, Drops: drops})
	if err != nil {
		t.Fatal(err)
	}
	in := input(t, d, fish)
	return p.Expect(in, f, day)
}

// The rig is that of the last drop with its layers moved as far as the band's edge is
// expected to move; the edges are those of the forecast.
func TestExpect(t *testing.T) {
	d := feet(0, 73, 5, 72.5, 10, 72, 13, 70, 15, 66, 17, 61, 20, 55, 25, 49, 28, 47)
	d.Bottom = profile.Some(31 * ft)
	e := expectedOf(t, d, "rainbow", 20, 0)
	was := e.Last.Band.Top.Best
	if e.Top == nil || e.Bottom != nil || e.Moved == nil || e.Rig == nil || e.Surface != forecast.Warmer {
		t.Fatalf("%+v", e)
	}
	expect.Near(t, "the band's edge has moved as forecast", e.Moved.Band.Top.Best-was, e.Top.Best-was, 0.05)
	expect.Near(t, "the fly is over the water of the moved band", e.Rig.FlyM, e.Moved.Band.WaterM-ClearanceM, 0.35)
	if e.Rig.LeaderM <= e.Last.Rig.LeaderM {
		t.Errorf("leader %.2f m, for shallower water it was %.2f m", e.Rig.LeaderM, e.Last.Rig.LeaderM)
	}
	if marks := e.Moved.Band.WaterM / ft; marks-float64(int(marks+0.5)) > 1e-6 {
		t.Errorf("the water, %.3f ft, is at no mark of the line", marks)
	}
	bass := expectedOf(t, d, "largemouth", 20, 0)
	if bass.Top != nil || bass.Bottom == nil || bass.Surface != forecast.Colder {
		t.Errorf("largemouth: %v, %v, %q", bass.Top, bass.Bottom, bass.Surface)
	}
	expect.Near(t, "20 days later", e.Day.Sub(time.Date(2026, 7, 10, 12, 0, 0, 0, time.UTC)).Hours()/24, 20, 1e-9)
}

// What to read first are marks of the line, within the water; the level is that of the width.
func TestToRead(t *testing.T) {
	d := feet(0, 73, 10, 72, 15, 66, 20, 55, 28, 47)
	d.Bottom = profile.Some(17.5 * ft)
	p := planOf(t, d, "rainbow")
	for _, c := range []struct {
		e    profile.Estimate
		want []float64
	}{
		{profile.Estimate{Best: 15.2 * ft, Low: 13.9 * ft, High: 16.4 * ft}, []float64{14, 15, 16}},
		{profile.Estimate{Best: 15.2 * ft, Low: 14.9 * ft, High: 15.4 * ft}, []float64{15}},
		{profile.Estimate{Best: 15.2 * ft, Low: 0, High: 22 * ft}, []float64{1, 15, 17}},
	} {
		var got []float64
		for _, z := range p.toRead(c.e) {
			got = append(got, float64(int(z/ft+0.5)))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.e, got, c.want)
		}
	}
	near := feet(0, 73, 3, 73, 6, 72, 9, 72, 11, 72, 12, 71, 13, 70, 14, 66, 15, 57, 16, 54, 18, 52, 20, 51, 24, 49, 28, 47)
	odd := feet(0, 73, 3, 73, 6, 72, 9, 72, 11, 72, 12, 71, 13, 70, 14, 66, 15, 57, 16, 54, 18, 52, 20, 5.1, 24, 49, 28, 47)
	far := feet(0, 73, 14, 68, 28, 47)
	for _, c := range []struct {
		e    Expected
		want Level
	}{{expectedOf(t, near, "rainbow", 3, 8), Good}, {expectedOf(t, near, "rainbow", 3, 0), Fair}, {expectedOf(t, odd, "rainbow", 3, 8), Fair}, {expectedOf(t, far, "rainbow", 30, 0), Poor}} {
		if c.e.Level != c.want {
			t.Errorf("%d drops: %q, want %q", c.e.Drops, c.e.Level, c.want)
		}
	}
}
