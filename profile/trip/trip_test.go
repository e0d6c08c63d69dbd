package trip

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/layers"
	"coldseam/profile/rig"
)

const ft = 0.3048

func on(text string) time.Time {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		panic(err)
	}
	return t
}

// column is a summer column whose thermocline lies about a depth, m.
func column(t *testing.T, thermoclineM float64) layers.Layers {
	t.Helper()
	var points []profile.Point
	for z := 0.0; z <= 10; z += 0.5 {
		points = append(points, profile.Point{DepthM: z, TempC: 16 - 7*math.Tanh(z-thermoclineM), ErrC: 0.1})
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	return layers.Find(c, layers.WithoutIntervals)
}

func oneLayer(t *testing.T) layers.Layers { return column(t, 40) }

func drop(t *testing.T, day string, thermoclineM float64) Drop {
	return Drop{When: on(day), Layers: column(t, thermoclineM), Edge: profile.Some(thermoclineM), WaterM: profile.Some(thermoclineM + 2*ft)}
}

func expectFor(t *testing.T, in Input) Expectation {
	t.Helper()
	e, err := Expect(in)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// What an expectation comes from, the best of what there is.
func TestSources(t *testing.T) {
	some := profile.Some
	old := []Drop{drop(t, "2024-07-25", 4), drop(t, "2024-08-05", 4.4), drop(t, "2025-08-02", 5)}
	mixed := Drop{When: on("2025-07-30"), Layers: oneLayer(t), WaterM: some(3)}
	iced := Drop{When: on("2025-02-01"), Layers: oneLayer(t), Ice: true}
	for _, c := range []struct {
		name  string
		in    Input
		state State
		from  Source
	}{
		{"this season", Input{Day: on("2026-08-01"), Drops: append(old, drop(t, "2026-07-20", 4.5))}, Layered, Season},
		{"other years", Input{Day: on("2026-08-01"), Drops: old}, Layered, Years},
		{"a drop too old", Input{Day: on("2026-08-01"), Drops: []Drop{drop(t, "2026-06-01", 3)}, Deepest: some(12)}, Layered, Lakes},
		{"a drop of a later day", Input{Day: on("2026-08-01"), Drops: []Drop{drop(t, "2026-08-05", 3)}, Deepest: some(12)}, Layered, Lakes},
		{"one layer in most years", Input{Day: on("2026-08-01"), Drops: []Drop{mixed, drop(t, "2024-08-01", 4), {When: on("2023-08-01"), Layers: oneLayer(t)}}}, OneLayer, Years},
		{"as often as not", Input{Day: on("2026-08-01"), Drops: []Drop{mixed, drop(t, "2024-08-01", 4)}}, Unsure, Years},
		{"one layer last week", Input{Day: on("2026-10-10"), Drops: []Drop{{When: on("2026-10-03"), Layers: oneLayer(t)}}}, OneLayer, Years},
		{"ice in other years", Input{Day: on("2026-01-25"), Drops: []Drop{iced}}, Iced, Years},
		{"over the turn of the year", Input{Day: on("2027-01-05"), Drops: []Drop{{When: on("2025-12-28"), Layers: oneLayer(t), Ice: true}}}, Iced, Years},
		{"winter alone", Input{Day: on("2026-01-25")}, Iced, Month},
		{"winter in the south", Input{Day: on("2026-07-25"), Latitude: some(-45)}, Iced, Month},
		{"summer in the south", Input{Day: on("2026-01-25"), Latitude: some(-45), Deepest: some(12)}, Layered, Lakes},
		{"no winter near the equator", Input{Day: on("2026-01-25"), Latitude: some(20), Deepest: some(12)}, Unsure, Month},
		{"a deep lake", Input{Day: on("2026-07-01"), Deepest: some(12)}, Layered, Lakes},
		{"a shallow lake", Input{Day: on("2026-07-01"), Deepest: some(3)}, Unsure, Lakes},
		{"a length", Input{Day: on("2026-07-01"), Length: some(800)}, Layered, Length},
		{"May", Input{Day: on("2026-05-20"), Deepest: some(12)}, Unsure, Month},
		{"October", Input{Day: on("2026-10-20"), Length: some(800)}, Unsure, Month},
	} {
		e := expectFor(t, c.in)
		if e.State != c.state || e.From != c.from {
			t.Errorf("%s: %s from %s, want %s from %s", c.name, e.State, e.From, c.state, c.from)
		}
		if (e.Thermocline != nil) != (c.state == Layered) || (e.Water != nil) == (c.state == Iced) {
			t.Errorf("%s: %+v", c.name, e)
		}
	}
	for _, length := range []float64{49, 20001} {
		var unknown Unknown
		if _, err := Expect(Input{Day: on("2026-07-01"), Length: some(length)}); !errors.As(err, &unknown) || !unknown.Length || err.Error() == "" {
			t.Errorf("a lake of %v m: %v", length, err)
		}
	}
	for name, in := range map[string]Input{"nothing": {Day: on("2026-07-01")}, "clarity alone": {Day: on("2026-07-01"), Secchi: some(3)}} {
		if _, err := Expect(in); !errors.As(err, new(Unknown)) || err.Error() == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Each year counts once, however many drops it has; two years are surer than one.
func TestYears(t *testing.T) {
	in := Input{Day: on("2026-08-01"), LimitC: profile.Some(19), ClearanceM: ft,
		Drops: []Drop{drop(t, "2024-07-25", 4), drop(t, "2024-08-05", 4), drop(t, "2025-08-02", 6), drop(t, "2025-06-02", 2)}}
	e := expectFor(t, in)
	expect.Near(t, "thermocline", e.Thermocline.Best, (column(t, 4).Thermocline.Best+column(t, 6).Thermocline.Best)/2, 1e-9)
	expect.Near(t, "its high end", e.Thermocline.High, e.Thermocline.Best*math.Exp(0.40), 1e-9)
	expect.Near(t, "edge", e.Edge.Best, 5, 1e-9)
	expect.Near(t, "its low end", e.Edge.Low, 5*math.Exp(-0.27), 1e-9)
	expect.Near(t, "water, a foot into the band and one over the bottom", e.Water.Best, 5+2*ft, 1e-9)
	if e.Drops != 3 || e.Years != 2 || !e.Last.Equal(on("2025-08-02")) || e.WaterTaken {
		t.Errorf("%+v", e)
	}
	in.Drops = in.Drops[:2]
	if e = expectFor(t, in); e.Thermocline.High/e.Thermocline.Best < 1.55 {
		t.Errorf("one year is as sure as two: %+v", e.Thermocline)
	}
	in.LimitC = profile.Optional{} // a fish of warm water
	if e = expectFor(t, in); e.Edge != nil || e.Water == nil || math.Abs(e.Water.Best-4-2*ft) > 1e-9 {
		t.Errorf("the water of its plans: %+v", e)
	}
}

// A lake of 12 m about 19 July: 1.6828 times 12 to the power 0.4196 is 4.77 m, of which the
// thermocline is 0.601, 1.064 and 1.616; 19 C 0.627, 1.109 and 1.73.
func TestLakeOfTwelveMetres(t *testing.T) {
	in := Input{Day: on("2026-07-19"), Deepest: profile.Some(12), LimitC: profile.Some(19), ClearanceM: ft}
	e := expectFor(t, in)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"low", e.Thermocline.Low, 2.869}, {"best", e.Thermocline.Best, 5.079}, {"high", e.Thermocline.High, 7.714},
		{"edge low", e.Edge.Low, 2.993}, {"edge", e.Edge.Best, 5.294}, {"edge high", e.Edge.High, 8.258}, {"water", e.Water.Best, 5.294 + 2*ft},
	} {
		expect.Near(t, c.what, c.got, c.want, 0.005)
	}
	deep, deeper := in, in
	deep.Deepest, deeper.Deepest = profile.Some(60), profile.Some(300)
	expect.Near(t, "deeper than was measured", expectFor(t, deeper).Thermocline.Best, expectFor(t, deep).Thermocline.Best, 1e-9)
	shallow := in
	shallow.Deepest = profile.Some(6)
	if e := expectFor(t, shallow); !e.EdgeUnsure || e.TooWarm || e.Edge.High != 6 {
		t.Errorf("an edge that may lie below the lake: %+v", e)
	}
	later := in
	later.Day = on("2026-08-18") // 30 days: exp 0.14442
	expect.Near(t, "a month later", expectFor(t, later).Thermocline.Best/e.Thermocline.Best, math.Exp(0.14442), 1e-9)
	in.Length, in.Secchi = profile.Some(800), profile.Some(2.7) // 4.4 m times the root of 0.6 is 3.41 m
	expect.Near(t, "with the length", expectFor(t, in).Thermocline.Best, 1.064*math.Sqrt(4.773*3.408), 0.005)
	in.Deepest = profile.Some(5)
	in.Day = on("2026-09-20")
	if e = expectFor(t, in); e.Thermocline.High > 5 || e.Water != nil && e.Water.High > 5 {
		t.Errorf("deeper than the lake: %+v", e)
	}
	in = Input{Day: on("2026-09-20"), Deepest: profile.Some(5), LimitC: profile.Some(13), ClearanceM: ft}
	if e = expectFor(t, in); !e.TooWarm || e.Water != nil {
		t.Errorf("13 C in a shallow lake in September: %+v", e)
	}
}

func TestEdgeShares(t *testing.T) {
	for c, want := range map[float64]float64{5: 1.326, 13: 1.326, 14.5: 1.277, 19: 1.109, 20: 1.0675, 24: 0.862, 30: 0.862} {
		_, mid, _ := edgeShares(c)
		expect.Near(t, "share", mid, want, 1e-9)
	}
}

// The first to say something wins, but for the deepest water.
func TestLearn(t *testing.T) {
	var in Input
	in.Learn(profile.Drop{Secchi: profile.Some(3), Deepest: profile.Some(9)})
	in.Learn(profile.Drop{Secchi: profile.Some(4), Bottom: profile.Some(10), LakeLength: profile.Some(800), Latitude: profile.Some(46)})
	in.Learn(profile.Drop{Bottom: profile.Some(5), Latitude: profile.Some(-46)})
	if in.Secchi.Value != 3 || in.Deepest.Value != 10 || in.Length.Value != 800 || in.Latitude.Value != 46 {
		t.Errorf("%+v", in)
	}
}

func tackle() Tackle { return Tackle{Tackle: rig.DefaultTackle(), StepM: rig.StepFtM} }

// Line for the deepest reading and 5 ft more; rope of 5 to 7 times the depth; a leader for
// each of four depths.
func TestPack(t *testing.T) {
	in := Input{Day: on("2026-07-19"), Deepest: profile.Some(38 * ft), ClearanceM: ft}
	water := profile.Estimate{Best: 16 * ft, Low: 12.2 * ft, High: 20.6 * ft}
	e := Expectation{State: Layered, Thermocline: &profile.Estimate{Best: 14.4 * ft, Low: 10 * ft, High: 18 * ft}, Water: &water}
	k := Pack(e, in, tackle(), true, ft)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"deepest reading", k.DeepestM, 38*ft - 0.3}, {"line", k.LineM / ft, 45}, {"anchor", k.AnchorM / ft, 21}, {"rope", k.RopeLowM / ft, 110}, {"rope", k.RopeHighM / ft, 150},
		{"read", k.ReadM.Value / ft, 14}, {"first", k.Ties[0].WaterM / ft, 12}, {"last", k.Ties[3].WaterM / ft, 21}, {"fly", k.Ties[0].FlyM / ft, 11},
	} {
		expect.Near(t, c.what, c.got, c.want, 1e-9)
	}
	if len(k.Ties) != 4 || k.Ties[0].Rig.Kind != rig.Hung || k.Ties[3].Rig.Kind != rig.LongLeader {
		t.Errorf("%+v", k.Ties)
	}
	capped := tackle()
	capped.Rules = rig.Rules{Water: "x", MaxLeaderM: 18 * ft}
	for _, tie := range Pack(e, in, capped, true, ft).Ties {
		if !tie.Rig.Reachable || tie.Rig.LeaderM > 18*ft+1e-9 {
			t.Errorf("%v m with a capped leader: %+v", tie.WaterM, tie.Rig)
		}
	}
	open := tackle()
	open.Suspended = true
	if k = Pack(e, in, open, true, ft); k.AnchorM != 0 || k.RopeHighM != 0 || len(k.Ties) != 4 {
		t.Errorf("open water: %+v", k)
	}
	in.Deepest = profile.Optional{}
	if k = Pack(e, in, tackle(), false, 0.25); math.Abs(k.DeepestM-36*ft) > 1e-9 || k.LineM != 13 || k.RopeLowM != 35 {
		t.Errorf("of unknown depth, twice the thermocline's: %+v", k)
	}
	if k = Pack(Expectation{State: Iced}, in, tackle(), true, ft); len(k.Ties) != 0 || k.AnchorM != 0 || k.ReadM.Known || math.Abs(k.DeepestM-60*ft) > 1e-9 {
		t.Errorf("ice: %+v", k)
	}
}

// However odd the water, depths are whole marks in order, and no length is below nothing.
func TestPackAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(0, 20).Draw(t, "low")
		w := profile.Estimate{Low: low, Best: low, High: low + rapid.Float64Range(0, 30).Draw(t, "wide")}
		in := Input{ClearanceM: ft}
		if rapid.Bool().Draw(t, "known") {
			in.Deepest = profile.Some(rapid.Float64Range(0, 60).Draw(t, "deepest"))
		}
		k := Pack(Expectation{State: OneLayer, Water: &w}, in, tackle(), true, ft)
		last := 0.0
		for _, tie := range k.Ties {
			if tie.WaterM <= last || math.Abs(tie.WaterM/ft-math.Round(tie.WaterM/ft)) > 1e-9 || tie.FlyM < 0 {
				t.Fatalf("%+v", k.Ties)
			}
			last = tie.WaterM
		}
		if len(k.Ties) == 0 || len(k.Ties) > 4 || !(k.LineM > k.DeepestM && k.DeepestM >= 0 && k.RopeLowM <= k.RopeHighM) {
			t.Fatalf("%+v", k)
		}
	})
}

// A limit that the top may have cooled to by then still has its depth, with the doubt; one
// far colder has it without.
func TestMaybeFromTheTop(t *testing.T) {
	d := drop(t, "2026-07-20", 4.5)
	top := d.Layers.Curve.At(d.Layers.Curve.Top())
	for limit, want := range map[float64]bool{top - 1: true, top - 8: false} {
		e := expectFor(t, Input{Day: on("2026-08-01"), Drops: []Drop{d}, LimitC: profile.Some(limit)})
		if e.Edge == nil || e.MaybeTop != want || e.Water == nil || e.WaterTaken {
			t.Errorf("%v C of %v on top: %+v, from the top perhaps %v, want %v", limit, top, e.Edge, e.MaybeTop, want)
		}
	}
}
