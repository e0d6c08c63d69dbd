package plan

import (
	"slices"
	"testing"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/forecast"
)

// at is the plan of a drop at a time.
func at(t *testing.T, when string, fish string, d profile.Drop) Dated {
	t.Helper()
	d.Date = when
	is, ok := d.When()
	if !ok {
		t.Fatal(when)
	}
	return Dated{is, planOf(t, d, fish)}
}

func TestSeasonOf(t *testing.T) {
	june := feet(0, 68, 5, 67, 8, 66, 10, 62, 12, 57, 15, 52, 20, 47, 28, 45)
	july := feet(0, 73, 5, 72.5, 10, 72, 13, 70, 15, 66, 17, 61, 20, 55, 25, 49, 28, 47)
	all := []Dated{
		at(t, "2024-07-14", "rainbow", june), at(t, "2024-07-20", "rainbow", june), at(t, "2025-07-13", "rainbow", july), at(t, "2025-07-30", "rainbow", july),
		at(t, "2026-06-12", "rainbow", june), at(t, "2026-07-21 09:00", "rainbow", june), at(t, "2026-07-21 18:00", "rainbow", july),
	}
	s := SeasonOf(all, false)
	if len(s.Drops) != 3 || s.Before.Drop.Date != "2026-06-12" || s.Last.Drop.Date != "2026-07-21 18:00" {
		t.Fatalf("%d drops, before %v", len(s.Drops), s.Before)
	}
	expect.Near(t, "days before", s.DaysBefore, 39.25, 1e-9)
	// 2024 is a leap year: its 14 and 20 July are 7 and 1 days before 21 July at 18:00; of 2025
	// the 13 July is 8.25 days before it, and the 30 July 9 days after
	if !slices.Equal(s.Years, []int{2024}) {
		t.Errorf("years %v", s.Years)
	}
	a, b := *all[6].Plan.Layers.Thermocline, *all[4].Plan.Layers.Thermocline
	expect.Near(t, "thermocline's change", s.Thermocline.By, a.Best-b.Best, 1e-9)
	expect.Near(t, "typical", s.Typical.Was.Best, b.Best, 1e-9)
	if !s.Thermocline.Shown || !s.Edge.Shown || s.Oxygen.Now != nil {
		t.Errorf("%+v %+v %+v", s.Thermocline, s.Edge, s.Oxygen)
	}
	if s.NoTurn != forecast.NotYet || s.Thermos != 3 || !s.SinkingOK {
		t.Errorf("%q, %d, %v", s.NoTurn, s.Thermos, s.SinkingOK)
	}
	// in the south the season goes over the turn of the year, and July is winter
	south := SeasonOf([]Dated{at(t, "2026-12-10", "rainbow", june), at(t, "2027-01-10", "rainbow", july)}, true)
	if len(south.Drops) != 2 {
		t.Errorf("%d drops of the southern season", len(south.Drops))
	}
}

// A difference is shown where it is more than the doubt about both: half widths of 0.3 and
// 0.4 m make 0.5 m.
func TestDifference(t *testing.T) {
	for by, want := range map[float64]bool{0.49: false, 0.51: true, -0.51: true, -0.49: false} {
		now, was := profile.Estimate{Best: 4 + by, Low: 3.7 + by, High: 4.3 + by}, profile.Estimate{Best: 4, Low: 3.6, High: 4.4}
		if d := difference(&now, &was); d.Shown != want {
			t.Errorf("%g m: %v", by, d.Shown)
		}
	}
	if d := difference(nil, &profile.Estimate{}); d.Shown || d.By != 0 {
		t.Errorf("%+v", d)
	}
}

// By hand: 6 mg/L at 10 ft and 3 at 15 ft, straight between: 5 mg/L at 11.67 ft.
func TestOxygenEnds(t *testing.T) {
	d := withOxygen(feet(0, 73, 5, 73, 10, 72, 15, 66, 20, 55), 8, 8, 6, 3, 1)
	p := planOf(t, d, "rainbow")
	e := p.oxygenEndsM()
	if e == nil {
		t.Fatal("oxygen ends nowhere")
	}
	expect.Near(t, "oxygen", e.Best/ft, 10+5*(6-p.Fish.OxygenMgL.Value)/3, 1e-3)
	expect.Near(t, "low", e.Low/ft, 10, 1e-3)
	expect.Near(t, "high", e.High/ft, 15, 1e-3)
	for name, v := range map[string][]float64{"not measured": nil, "enough to the bottom": {9, 9, 9, 9, 9}, "one reading": {9}} {
		p := planOf(t, withOxygen(feet(0, 73, 5, 73, 10, 72, 15, 66, 20, 55), v...), "rainbow")
		if e := p.oxygenEndsM(); e != nil {
			t.Errorf("%s: %v", name, e)
		}
	}
}

// The last drop is compared with one at its own spot, unless that is more than a week older
// than one at another.
func TestBeforeAtTheSpot(t *testing.T) {
	at := func(date, spot string) Dated {
		d := at(t, date, "rainbow", feet(0, 73, 5, 72.5, 10, 72, 15, 66, 20, 55, 28, 47))
		d.Plan.Drop.Spot = spot
		return d
	}
	for _, c := range []struct {
		dates     []Dated
		want      string
		elsewhere bool
	}{
		{[]Dated{at("2026-07-18 07:00", "reed point"), at("2026-07-18 10:00", "inlet"), at("2026-08-01", "Reed point")}, "2026-07-18 07:00", false},
		{[]Dated{at("2026-07-08", "reed point"), at("2026-07-18 10:00", "inlet"), at("2026-08-01", "reed point")}, "2026-07-18 10:00", true},
		{[]Dated{at("2026-07-12", "reed point"), at("2026-07-14", "reed point"), at("2026-07-18 10:00", "inlet"), at("2026-08-01", "reed point")}, "2026-07-14", false},
		{[]Dated{at("2026-07-12", ""), at("2026-07-14", ""), at("2026-08-01", "")}, "2026-07-14", false},
	} {
		if s := SeasonOf(c.dates, false); s.Before.Drop.Date != c.want || s.Elsewhere != c.elsewhere {
			t.Errorf("compared with %s, elsewhere %v; want %s, %v", s.Before.Drop.Date, s.Elsewhere, c.want, c.elsewhere)
		}
	}
}
