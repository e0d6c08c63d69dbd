package plan_test

import (
	"testing"
	"time"

	"coldseam/profile/demo"
	"coldseam/profile/light"
	"coldseam/profile/plan"
)

const cold = "units: ft F\nbottom: 20 ft\n"

// Lakes of the south freeze half a year later: a top of 35 F is ice likely in January in
// the north and in July in the south.
func TestWinterOfTheSouth(t *testing.T) {
	const readings = "0 35\n5 35.2\n10 35.4\n"
	for page, want := range map[string]bool{
		"date: 2027-01-24\n": true, "date: 2026-07-24\n": false, "": false,
		"date: 2027-01-24\nlatitude: 46 N\n": true, "date: 2026-07-24\nlatitude: 46 N\n": false,
		"date: 2027-01-24\nlatitude: 45 S\n": false, "date: 2026-07-24\nlatitude: 45 S\n": true, "date: 2026-10-01\nlatitude: 45 S\n": false,
	} {
		p := demo.Plan(t, page+cold+readings)
		if got := p.UnderIce(); got != want {
			t.Errorf("%q: ice %v, want %v", page, got, want)
		}
	}
}

// Where place, clock and zone are known, the sun's height decides what the hour means: at
// 65 degrees north 21 h in June is no dusk, and at 46 degrees in December 15 h is low sun.
func TestSunWinsOverTheHour(t *testing.T) {
	const readings = "units: ft F\nbottom: 31 ft\n0 74\n5 73.5\n10 72.8\n13 70.6\n15 66.9\n17 62.4\n20 58\n25 53\n29 51\n"
	for _, c := range []struct {
		name, page string
		zone       *time.Location
		want       light.Reason
	}{
		{"by the hour alone", "date: 2026-06-21 19:30\n", nil, light.LowSun},
		{"far north in June", "date: 2026-06-21 19:30\nlatitude: 65 N\nlongitude: 25 E\n", time.FixedZone("EEST", 3*3600), light.NoEffect},
		{"the zone is not known", "date: 2026-06-21 19:30\nlatitude: 65 N\nlongitude: 25 E\n", nil, light.LowSun},
		{"the longitude is not known", "date: 2026-06-21 19:30\nlatitude: 65 N\n", time.UTC, light.LowSun},
		{"an afternoon in December", "date: 2026-12-12 15:00\nlatitude: 46 N\nlongitude: 89 W\n", time.FixedZone("CST", -6*3600), light.LowSun},
		{"no hour", "date: 2026-12-12\nlatitude: 46 N\nlongitude: 89 W\n", time.FixedZone("CST", -6*3600), ""},
	} {
		in := demo.Input(t, c.page+readings, "rainbow")
		in.Zone = c.zone
		p, err := plan.Make(in)
		if err != nil {
			t.Fatal(err)
		}
		got := p.Band.Shift.Why
		if got == "" {
			got = p.Band.Unmoved.Why
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
