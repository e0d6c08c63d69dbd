package chart

import (
	"math"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/demo"
)

// The figure carries the plan's own numbers, all of them finite.
func TestOf(t *testing.T) {
	for _, page := range []string{
		demo.Page(t, "alder-kettle-july"), "units: ft F\n0 70\n", "units: ft F\n0 74\n5 73\n10 720\n15 65\n300 50\n20 58\n", "units: m C\n0 0.5\n2 2\n5 3.8\n", "units: ft F\n0 80\n10 79.8\n",
	} {
		p := demo.Plan(t, page)
		d := Of(p)
		if d.Title == "" || len(d.Answer) == 0 || len(d.Readings) != len(p.Drop.Readings) {
			t.Errorf("%q: %+v", page, d)
		}
		numbers := []float64{d.DeepestM}
		for i, r := range d.Readings {
			numbers = append(numbers, r.DepthM, r.TempC, r.ErrM, r.ErrC, r.Oxygen.Value)
			if i > 0 && r.DepthM < d.Readings[i-1].DepthM {
				t.Errorf("%q: readings are not in order", page)
			}
		}
		for i, q := range d.Curve {
			numbers = append(numbers, q.DepthM, q.TempC, q.LowC, q.HighC, q.RisePerM)
			if q.LowC > q.TempC+1e-9 || q.HighC < q.TempC-1e-9 || i > 0 && q.DepthM <= d.Curve[i-1].DepthM {
				t.Errorf("%q: curve %+v", page, q)
			}
			if want := p.Layers.Curve.At(q.DepthM); math.Abs(want-q.TempC) > 1e-9 {
				t.Errorf("%q: %v C at %v m, the plan has %v", page, q.TempC, q.DepthM, want)
			}
		}
		for _, z := range d.Zones {
			numbers = append(numbers, z.TopM, z.BottomM)
		}
		for _, m := range d.Marks {
			numbers = append(numbers, m.At.Low, m.At.Best, m.At.High)
		}
		for _, v := range numbers {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%q: a number that is none", page)
			}
		}
		if d.DeepestM > 100 {
			t.Errorf("%q: goes down to %v m", page, d.DeepestM)
		}
	}
}

func TestSeasonOf(t *testing.T) {
	drop := func(date string) Drop {
		return Of(demo.Plan(t, "water: Alder Kettle\ndate: "+date+"\nunits: ft F\n0 74\n5 73\n10 70\n15 62\n20 55\n"))
	}
	a, b := drop("2026-07-18 14:20"), drop("2026-05-02")
	b.Water = "alder kettle "
	s, err := SeasonOf([]Drop{a, b})
	if err != nil || len(s.Drops) != 2 || s.Drops[0].Drop.Date != "2026-05-02" || s.Title != "Alder Kettle, 2026-05-02 to 2026-07-18, for rainbow trout" {
		t.Errorf("%q, %v", s.Title, err)
	}
	for i := range s.Drops {
		d := &s.Drops[i].Drop
		d.Spot, d.Bottom = "reed point", profile.Optional{Value: 31 * 0.3048, Known: true}
	}
	if got := titleOf(s, "2026"); got != "Alder Kettle, reed point (bottom 31 ft), 2026, for rainbow trout" {
		t.Errorf("%q", got)
	}
	s.Drops[0].Drop.Spot, s.Drops[0].Drop.Fish, s.Drops[0].Drop.Bottom = "inlet", "perch", profile.Optional{}
	if got := titleOf(s, "2026"); got != "Alder Kettle, 2026" { // what differs is of no drop's heading
		t.Errorf("%q", got)
	}
	undated := a
	undated.Date = ""
	for _, c := range []struct {
		waters [2]string
		drops  []Drop
		want   string
	}{
		{[2]string{"A"}, []Drop{a}, "two drops"},
		{[2]string{"A", "B"}, []Drop{a, b}, "two waters"},
		{[2]string{"A", "A"}, []Drop{a, undated}, "no date"},
		{[2]string{"A", "A"}, []Drop{a, drop("2026-07-18 18:00")}, "one day"},
	} {
		for i := range c.drops {
			c.drops[i].Water = c.waters[i]
		}
		if _, err := SeasonOf(c.drops); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v: %v, want %q", c.waters, err, c.want)
		}
	}
}
