package report

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"coldseam/profile"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
	"coldseam/profile/sun"
	"coldseam/profile/unit"
)

// The day's light in each form: by the clock, by the sundial, and where the sun does not
// cross the horizon.
func TestSunTimes(t *testing.T) {
	zone := time.FixedZone("CDT", -5*3600)
	east := profile.Some(-89.3)
	day := func(m time.Month, d int) time.Time { return time.Date(2026, m, d, 0, 0, 0, 0, time.UTC) }
	const sundial = "; by the sundial, where noon is 12:00: for clock times note the longitude, and in the settings the time zone."
	for _, c := range []struct {
		name      string
		day       time.Time
		latitude  float64
		longitude profile.Optional
		zone      *time.Location
		want      string
	}{
		// by PyEphem: 8.107, 7.502, 7.707 and 8.309 hours from 17:57:12 UTC (package sun, testdata)
		{"by the clock", day(7, 21), 46.1, east, zone, "Sunrise 05:27, sunset 20:40, light from 04:51 to 21:16, the sun up for 15 h 13 min (CDT)."},
		{"no zone", day(7, 21), 46.1, east, nil, "Sunrise 04:23, sunset 19:36, light from 03:47 to 20:12, the sun up for 15 h 13 min" + sundial},
		{"no longitude", day(7, 21), 46.1, profile.Optional{}, zone, "Sunrise 04:23, sunset 19:36, light from 03:47 to 20:12, the sun up for 15 h 13 min" + sundial},
		{"a zone of another place", day(7, 21), 46.1, profile.Some(170.5), zone, "Sunrise 04:23, sunset 19:37, light from 03:46 to 20:13, the sun up for 15 h 14 min" + sundial},
		{"light all night", day(6, 21), 62, profile.Optional{}, nil, "Sunrise 02:08, sunset 21:52, light all night, the sun up for 19 h 45 min" + sundial},
		{"up all day", day(6, 21), 70, east, zone, "The sun does not set."},
		{"down all day", day(12, 21), 70, profile.Optional{}, nil, "The sun does not rise, light from 09:56 to 14:04" + sundial},
		{"dark all day", day(12, 21), 85, profile.Optional{}, nil, "The sun does not rise, and no light."},
	} {
		if got := sunTimes(sun.Look(c.day, c.latitude, c.longitude, profile.Optional{}, c.zone)); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

func TestEvening(t *testing.T) {
	day := time.Date(2026, 7, 18, 0, 0, 0, 0, time.UTC)
	for units, want := range map[string]string{
		"ft F": "Under a clear sky the light that reaches 24 ft at noon reaches 9 to 13 ft an hour before sunset: fish may come up then (common practice).",
		"m C":  "Under a clear sky the light that reaches 7.4 m at noon reaches 2.8 to 4 m an hour before sunset: fish may come up then (common practice).",
	} {
		u, err := unit.ParseSystem(units)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(evening(sun.Look(day, 46.1, profile.Optional{}, profile.Some(2.7432), nil), u), "\n"); got != want {
			t.Errorf("%s:\n%s\nwant\n%s", units, got, want)
		}
	}
	short := time.Date(2026, 12, 21, 0, 0, 0, 0, time.UTC)
	for _, o := range []sun.Outlook{sun.Look(day, 46.1, profile.Optional{}, profile.Optional{}, nil), sun.Look(short, 66, profile.Optional{}, profile.Some(3), nil), sun.Look(day, 75, profile.Optional{}, profile.Some(3), nil)} {
		if got := evening(o, unit.System{}); got != nil {
			t.Errorf("%+v: %s", o, got)
		}
	}
}

// A page's latitude is enough; without one nothing is said, and under ice nothing of light
// in open water.
func TestSunOfPlan(t *testing.T) {
	july, january := demo.Page(t, "alder-kettle-july"), demo.Page(t, "alder-kettle-january")
	for _, c := range []struct {
		page  string
		lines int
	}{{july, 0}, {"latitude: 46.1 N\n" + july, 2}, {"latitude: 46.1 N\nsecchi: 9 ft\n" + january, 1}, {"latitude: 46.1 N\nunits: ft F\n0 60\n", 0}} {
		p, err := demo.Try(t, c.page, "rainbow")
		if err != nil {
			t.Fatal(err)
		}
		if got := Sun(p); len(got) != c.lines {
			t.Errorf("%.40q: %q, want %d lines", c.page, got, c.lines)
		}
	}
	p := demo.Plan(t, july)
	if JSON(p, nil).Sun != nil {
		t.Error("a sun without a place")
	}
	p = demo.Plan(t, "latitude: 46.1 N\n"+july)
	data, _ := json.Marshal(JSON(p, nil).Sun)
	for _, want := range []string{`"sun":"crosses"`, `"sunset":{"solar_h":19.6`, `"noon":{"solar_h":12}`, `"length_h":15.3`, `"noon_light_m":7.431`, `"evening_light_m":{"best":`} {
		if !strings.Contains(string(data), want) {
			t.Errorf("%s lacks %s", data, want)
		}
	}
	in := demo.Input(t, "latitude: 46.1 N\nlongitude: 89.3 W\n"+july, "rainbow")
	in.Zone = time.FixedZone("CDT", -5*3600)
	p, err := plan.Make(in)
	if err != nil {
		t.Fatal(err)
	}
	if got := JSON(p, nil).Sun.Sunset.At; got != "2026-07-18T20:42:29-05:00" {
		t.Errorf("sunset %s", got)
	}
}
