package forecast

import (
	"errors"
	"math"
	"testing"
	"time"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/layers"
)

// drop is an invented drop on a day of 2026: 22 C above a metalimnion of 2 m around a depth,
// 8 C below it.
func drop(tb testing.TB, date string, middleM float64) Drop {
	tb.Helper()
	var points []profile.Point
	for z := 0.0; z <= 12; z += 0.5 {
		t := 22 - 7*(math.Tanh(z-middleM)+1)
		points = append(points, profile.Point{DepthM: z, TempC: t, ErrC: 0.1})
	}
	return of(tb, date, points)
}

// flat is a drop of a few temperatures at even steps of 2 m.
func flat(tb testing.TB, date string, temps ...float64) Drop {
	tb.Helper()
	var points []profile.Point
	for i, t := range temps {
		points = append(points, profile.Point{DepthM: 2 * float64(i), TempC: t, ErrC: 0.1})
	}
	return of(tb, date, points)
}

func of(tb testing.TB, date string, points []profile.Point) Drop {
	tb.Helper()
	c, err := profile.NewColumn(points)
	if err != nil {
		tb.Fatal(err)
	}
	return Drop{day(tb, date), layers.Find(c)}
}

func day(tb testing.TB, date string) time.Time {
	tb.Helper()
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		tb.Fatal(err)
	}
	return t
}

func TestRefused(t *testing.T) {
	for _, c := range []struct {
		name, day string
		drops     []Drop
		south     bool
		want      Why
	}{
		{"no drop", "2026-07-20", nil, false, NoDrop},
		{"the day before the last drop", "2026-07-09", []Drop{drop(t, "2026-07-01", 4), drop(t, "2026-07-10", 4)}, false, NotAhead},
		{"a drop of last year alone", "2026-07-20", []Drop{drop(t, "2025-07-10", 4)}, false, OtherSeason},
		{"36 days before", "2026-08-15", []Drop{drop(t, "2026-07-10", 4)}, false, TooOld},
		{"in April", "2026-05-10", []Drop{drop(t, "2026-04-20", 4)}, false, TooEarly},
		{"October", "2026-10-01", []Drop{drop(t, "2026-09-10", 4)}, false, TooLate},
		{"two readings", "2026-07-20", []Drop{flat(t, "2026-07-10", 20, 10)}, false, TooFew},
		{"under ice", "2026-05-20", []Drop{flat(t, "2026-05-10", 0.5, 2.5, 3.5, 4)}, false, UnderIce},
		{"one layer", "2026-07-20", []Drop{flat(t, "2026-07-10", 20, 20, 19.9, 19.8)}, false, OneLayer},
		{"one layer by the last of two", "2026-07-20", []Drop{drop(t, "2026-07-01", 4), flat(t, "2026-07-10", 20, 20, 19.9, 19.8)}, false, OneLayer},
		{"January in the north", "2026-01-20", []Drop{drop(t, "2026-01-10", 4)}, false, TooEarly},
		{"July in the south", "2026-07-20", []Drop{drop(t, "2026-07-10", 4)}, true, TooEarly},
		{"May in the south", "2026-05-01", []Drop{drop(t, "2026-04-10", 4)}, true, TooLate},
	} {
		_, err := Make(Input{Day: day(t, c.day), Drops: c.drops, South: c.south})
		var r Refusal
		if !errors.As(err, &r) || r.Why != c.want {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
			continue
		}
		if want := len(c.drops) == 0; r.Last.IsZero() != want {
			t.Errorf("%s: the last drop is of %v", c.name, r.Last)
		}
	}
}

// On the limits there is a forecast, and a drop after another of the same day counts.
func TestLimits(t *testing.T) {
	for name, in := range map[string]Input{
		"35 days":           {Day: day(t, "2026-08-14"), Drops: []Drop{drop(t, "2026-07-10", 4)}},
		"the same day":      {Day: day(t, "2026-07-10"), Drops: []Drop{drop(t, "2026-07-10", 4)}},
		"30 April":          {Day: day(t, "2026-05-10"), Drops: []Drop{drop(t, "2026-04-30", 4)}},
		"27 September":      {Day: day(t, "2026-09-27"), Drops: []Drop{drop(t, "2026-09-10", 4)}},
		"south, January":    {Day: day(t, "2026-01-20"), Drops: []Drop{drop(t, "2026-01-10", 4)}, South: true},
		"south, over a new": {Day: day(t, "2027-01-05"), Drops: []Drop{drop(t, "2026-12-20", 4)}, South: true},
	} {
		if _, err := Make(in); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func made(t *testing.T, date string, drops ...Drop) Forecast {
	t.Helper()
	f, err := Make(Input{Day: day(t, date), Drops: drops})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// By hand: one drop of 9 July, ten days before. The thermocline of a single drop is that of
// the mean column, so the change is 0.147 + 0.092 of (195 - 200)/30.
func TestByHand(t *testing.T) {
	f := made(t, "2026-07-19", drop(t, "2026-07-09", 4))
	last := f.last().Layers.Thermocline.Best
	expect.Near(t, "thermocline", f.Thermocline.Best, last+0.147+0.092*(195-200)/30+0.782*(f.meanThermocline()-last), 1e-9)
	expect.Near(t, "mean column of one drop", f.meanThermocline(), last, 0.1)
	e, ok := f.Reaches(19)
	z, _ := isotherm(19).of(f.last().Layers)
	d := (195.0 - 200) / 30
	expect.Near(t, "19 C", e.Best, z+0.152-0.074*d+0.040*d*d, 1e-9)
	if !ok || f.Drops != 1 || f.EarlierYears != 0 || f.DaysAhead != 10 {
		t.Errorf("%v, %d drops, %d years, %g days ahead", ok, f.Drops, f.EarlierYears, f.DaysAhead)
	}
	if _, ok := f.Reaches(23); ok {
		t.Error("23 C was nowhere in the last drop")
	}
	if _, ok := f.Reaches(7); ok {
		t.Error("7 C was nowhere in the last drop")
	}
}

// The doubt grows with the days, with a drop read at few depths, and with a water that has
// jumped before; a steady water is surer than an unknown one.
func TestDoubt(t *testing.T) {
	width := func(e profile.Estimate) float64 { return e.High - e.Low }
	depth := func(f Forecast) float64 { e, _ := f.Reaches(17); return width(e) }
	one := drop(t, "2026-07-10", 4)
	before := 0.0
	for _, date := range []string{"2026-07-11", "2026-07-15", "2026-07-20", "2026-07-30", "2026-08-14"} {
		f := made(t, date, one)
		if w := depth(f); w <= before {
			t.Errorf("%s: the interval of 17 C is %.2f m wide, not wider than the day before", date, w)
		} else {
			before = w
		}
		if near, far := made(t, "2026-07-11", one), f; width(far.Thermocline) < width(near.Thermocline)-1e-9 {
			t.Errorf("%s: the thermocline's interval is narrower than on the next day", date)
		}
	}
	steady := made(t, "2026-07-20", drop(t, "2026-06-10", 3.4), drop(t, "2026-06-20", 3.6), drop(t, "2026-06-30", 3.8), one)
	wild := made(t, "2026-07-20", drop(t, "2026-06-10", 6.4), drop(t, "2026-06-20", 3), drop(t, "2026-06-30", 6), one)
	alone := made(t, "2026-07-20", one)
	few := made(t, "2026-07-20", flat(t, "2026-07-10", 22, 21.9, 15, 8.2, 8))
	for name, pair := range map[string][2]float64{
		"thermocline, steady and alone": {width(steady.Thermocline), width(alone.Thermocline)},
		"thermocline, alone and wild":   {width(alone.Thermocline), width(wild.Thermocline)},
		"17 C, steady and alone":        {depth(steady), depth(alone)},
		"17 C, alone and wild":          {depth(alone), depth(wild)},
		"17 C, dense and few":           {depth(alone), depth(few)},
		"thermocline, dense and few":    {width(alone.Thermocline), width(few.Thermocline)},
	} {
		if pair[0] >= pair[1] {
			t.Errorf("%s: %.2f m and %.2f m", name, pair[0], pair[1])
		}
	}
}

// One odd drop among steady ones moves the forecast less than the whole way.
func TestMeanColumn(t *testing.T) {
	odd := drop(t, "2026-07-10", 6)
	alone := made(t, "2026-07-20", odd)
	among := made(t, "2026-07-20", drop(t, "2026-06-29", 3.8), drop(t, "2026-07-03", 3.9), drop(t, "2026-07-07", 4), odd)
	if among.Thermocline.Best > alone.Thermocline.Best-1 {
		t.Errorf("after steady drops near 4 m one at 6 m gives %.2f m, alone %.2f m", among.Thermocline.Best, alone.Thermocline.Best)
	}
}

// Earlier years draw the forecast to what they had, the more the further ahead; the south's
// are counted by its own seasons.
func TestEarlierYears(t *testing.T) {
	one := drop(t, "2026-07-10", 4)
	deep := []Drop{drop(t, "2024-07-22", 7), drop(t, "2025-07-18", 7), drop(t, "2025-09-20", 9), one}
	f, alone := made(t, "2026-07-20", deep...), made(t, "2026-07-20", one)
	if f.EarlierYears != 2 {
		t.Errorf("%d earlier years", f.EarlierYears)
	}
	// 0.08 of the way to the middle of two years: drops of 22 and 18 July, at their days
	typical := (deep[0].Layers.Thermocline.Best - 0.02*2 + deep[1].Layers.Thermocline.Best + 0.02*2) / 2
	// 2024 is a leap year: its 22 July is day 204, the 20 July of 2026 day 201
	typical -= 0.02 / 2
	expect.Near(t, "with earlier years", f.Thermocline.Best, alone.Thermocline.Best+0.08*(typical-alone.Thermocline.Best), 1e-9)

	south := func(drops ...Drop) Forecast {
		f, err := Make(Input{Day: day(t, "2027-01-08"), Drops: drops, South: true})
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	if f := south(drop(t, "2026-01-09", 7), drop(t, "2026-12-29", 4)); f.EarlierYears != 1 || f.Drops != 1 {
		t.Errorf("south: %d earlier years, %d drops", f.EarlierYears, f.Drops)
	}
	north, mirrored := made(t, "2026-07-09", drop(t, "2026-06-29", 4)), south(drop(t, "2026-12-29", 4))
	expect.Near(t, "half a year apart", mirrored.Thermocline.Best, north.Thermocline.Best, 0.01)
}

func TestSurface(t *testing.T) {
	f := made(t, "2026-07-20", drop(t, "2026-07-10", 4))
	for c, want := range map[float64]Surface{15: Warmer, 22: Unknown, 30: Colder} {
		if got := f.Surface(c); got != want {
			t.Errorf("%g C: %q, want %q (%v)", c, got, want, f.MixedC)
		}
	}
}

// Depths are never above the surface, and the order of the drops does not count.
func TestShallow(t *testing.T) {
	a, b := drop(t, "2026-07-10", 1.2), drop(t, "2026-06-28", 1.1)
	f, g := made(t, "2026-08-10", a, b), made(t, "2026-08-10", b, a)
	if f.Thermocline != g.Thermocline || f.MixedC != g.MixedC {
		t.Errorf("%v and %v by the order of drops", f.Thermocline, g.Thermocline)
	}
	e, ok := f.Reaches(20.5)
	if !ok || e.Low != 0 {
		t.Errorf("20.5 C: %v, %v: its interval begins at the surface", e, ok)
	}
	for name, e := range map[string]profile.Estimate{"thermocline": f.Thermocline, "20.5 C": e} {
		if e.Low < 0 || e.Low > e.Best || e.Best > e.High {
			t.Errorf("%s: %v", name, e)
		}
	}
}
