package forecast

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/layers"
)

// at is a drop of which only the thermocline matters.
func at(t *testing.T, date string, best, half float64) Drop {
	t.Helper()
	return Drop{day(t, date), layers.Layers{Thermocline: &profile.Estimate{Best: best, Low: best - half, High: best + half}}}
}

// By hand: depths 3, 3.5 and 4.6 m at 0, 14 and 28 days. The slope is (4.6 - 3)/28, what is
// left -0.1, 0.2, -0.1 m, so the variance 0.06 with one degree of freedom, whose 90 % quantile
// of Student's t is 3.0777 (a table's).
func TestSinking(t *testing.T) {
	drops := []Drop{at(t, "2026-06-15", 3.5, 0), at(t, "2026-06-01", 3, 0), at(t, "2026-06-29", 4.6, 0)}
	e, n, days, ok := Sinking(drops)
	if !ok || n != 3 || days != 28 {
		t.Fatalf("%v, %d drops, %g days", ok, n, days)
	}
	expect.Near(t, "slope", e.Best, 1.6/28, 1e-9)
	expect.Near(t, "half", e.High-e.Best, 3.0777*math.Sqrt(0.06/392), 1e-5)
	expect.Near(t, "other half", e.Best-e.Low, e.High-e.Best, 1e-12)
	// on a straight line the drops' own doubt is left
	e, _, _, _ = Sinking([]Drop{at(t, "2026-06-01", 3, 0.5), at(t, "2026-06-15", 3.5, 0.5), at(t, "2026-06-29", 4, 0.5)})
	expect.Near(t, "half of a straight line", e.High-e.Best, 3.0777*0.5/1.2816/math.Sqrt(392), 1e-4)
	for name, drops := range map[string][]Drop{
		"two drops":           {at(t, "2026-06-01", 3, 0), at(t, "2026-06-29", 4, 0)},
		"20 days":             {at(t, "2026-06-01", 3, 0), at(t, "2026-06-15", 3, 0), at(t, "2026-06-21", 4, 0)},
		"two with a plane":    {at(t, "2026-06-01", 3, 0), {When: day(t, "2026-06-10")}, at(t, "2026-06-29", 4, 0)},
		"none":                nil,
		"the last without it": {at(t, "2026-06-01", 3, 0), at(t, "2026-06-15", 3, 0), {When: day(t, "2026-07-30")}},
	} {
		if _, _, _, ok := Sinking(drops); ok {
			t.Errorf("%s: a rate", name)
		}
	}
	if _, _, _, ok := Sinking([]Drop{at(t, "2026-06-01", 3, 0), at(t, "2026-06-15", 3, 0), at(t, "2026-06-22", 4, 0)}); !ok {
		t.Error("no rate of three drops over 21 days")
	}
}

// Autumns of measured lakes: the last layered drop and the first of one layer hold the
// turnover between them, and of lakes not read later only the first is known. The range said
// after each drop from August on has to overlap that in nine of ten autumns, each counted
// once.
func TestTurnover(t *testing.T) {
	type autumn struct {
		layered  []Drop
		deepest  float64
		lastDay  float64 // layered
		firstDay float64 // one layer; +Inf: not seen
	}
	autumns := map[string]*autumn{}
	for _, d := range lakes(t) {
		_, yearDay := place(d.dense.When, false)
		key := d.lake + d.dense.When.Format("2006")
		if autumns[key] == nil {
			autumns[key] = &autumn{firstDay: math.Inf(1)}
		}
		a := autumns[key]
		switch l := d.dense.Layers; {
		case l.Thermocline != nil && yearDay >= fromDay:
			a.layered, a.lastDay, a.deepest = append(a.layered, d.dense), yearDay, math.Max(a.deepest, l.Curve.Bottom())
		case l.Thermocline == nil && yearDay > 240:
			a.firstDay = math.Min(a.firstDay, yearDay)
		}
	}
	held, n, closed := 0.0, 0.0, 0
	for name, a := range autumns {
		if len(a.layered) == 0 || a.lastDay < 275 && math.IsInf(a.firstDay, 1) {
			continue
		}
		in := 0.0
		for _, d := range a.layered {
			from, to, why := Turnover(d, a.deepest, false)
			_, first := place(from, false)
			_, last := place(to, false)
			if why == "" && first <= a.firstDay && last >= a.lastDay {
				in++
			}
		}
		held, n = held+in/float64(len(a.layered)), n+1
		if !math.IsInf(a.firstDay, 1) {
			closed++
		}
		t.Logf("%s: layered on day %.0f, one layer on %.0f: %.0f of %d", name, a.lastDay, a.firstDay, in, len(a.layered))
	}
	t.Logf("%.2f of %.0f autumns, %d of them with both sides", held/n, n, closed)
	if n < 15 || held/n < 0.90 {
		t.Errorf("the range holds in %.2f of %.0f autumns", held/n, n)
	}
}

func TestTurnoverRefused(t *testing.T) {
	d := drop(t, "2026-08-20", 5)
	for _, c := range []struct {
		name    string
		d       Drop
		deepest float64
		south   bool
		want    WhyNot
	}{
		{"August", d, 12, false, ""},
		{"15 m", d, 15, false, ""},
		{"16 m", d, 16, false, TooDeep},
		{"July", drop(t, "2026-07-30", 5), 12, false, NotYet},
		{"August in the south", d, 12, true, NotYet},
		{"March in the south", drop(t, "2026-03-01", 5), 12, true, ""},
		{"two depths", flat(t, "2026-08-20", 20, 10), 12, false, NotRead},
		{"ice", flat(t, "2026-12-20", 0.5, 2.5, 3.5, 4), 12, false, IcedOver},
		{"one layer", flat(t, "2026-10-20", 12, 12, 11.9), 12, false, OneAlready},
	} {
		from, to, why := Turnover(c.d, c.deepest, c.south)
		if why != c.want || why == "" && to.Sub(from).Hours() < 24*leastRange-24 {
			t.Errorf("%s: %v to %v, %q", c.name, from, to, why)
		}
	}
	// 14 C of difference (22 and 8 C) on 20 August: 14/0.45 - 5 days is before the first day
	// that was seen, 14/0.17 = 82 days is 10 November
	from, to, _ := Turnover(d, 12, false)
	if got := from.Format("01-02") + " " + to.Format("01-02"); got != "09-29 11-10" {
		t.Errorf("%s", got)
	}
}
