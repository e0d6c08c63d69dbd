package sun

import (
	"fmt"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/expect"
)

func date(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 0, 0, 0, 0, time.UTC) }

// The U.S. Naval Observatory's "Rise and Set for the Sun for 2007" for Atlanta, W084 25,
// N33 46, Eastern Standard Time, to the minute (the table that PyEphem's tests hold).
func TestNavalObservatory(t *testing.T) {
	for _, c := range []struct {
		month     time.Month
		day       int
		rise, set string
	}{
		{1, 1, "07:43", "17:40"}, {1, 31, "07:35", "18:07"}, {2, 15, "07:22", "18:22"}, {3, 1, "07:07", "18:34"}, {3, 21, "06:40", "18:50"},
		{4, 15, "06:07", "19:09"}, {5, 10, "05:41", "19:28"}, {6, 11, "05:26", "19:48"}, {6, 21, "05:27", "19:51"}, {7, 2, "05:31", "19:52"},
		{7, 18, "05:40", "19:48"}, {8, 13, "05:58", "19:27"}, {9, 23, "06:26", "18:33"}, {10, 31, "06:56", "17:46"}, {11, 3, "06:58", "17:44"},
		{12, 6, "07:28", "17:29"}, {12, 21, "07:38", "17:33"}, {12, 31, "07:42", "17:39"},
	} {
		d := On(date(2007, c.month, c.day), 33+46.0/60, profile.Some(-(84 + 25.0/60)))
		for what, e := range map[string]struct {
			got  time.Time
			want string
		}{"rise": {d.Sunrise.At, c.rise}, "set": {d.Sunset.At, c.set}} {
			got := e.got.Add(-5 * time.Hour)
			want, _ := time.Parse("2006-01-02 15:04", fmt.Sprintf("2007-%02d-%02d %s", c.month, c.day, e.want))
			if off := got.Sub(want); off.Abs() > 45*time.Second { // it is rounded to the minute
				t.Errorf("%s on %d/%d: %s, want %s", what, c.month, c.day, got, e.want)
			}
		}
	}
}

// The Observatory's page for Atlanta (33.8, -84.4) on 6 September 2009, Eastern Daylight
// Time, as PyEphem's handbook quotes it: twilight 6:50, sunrise 7:15, transit 1:36, sunset
// 7:56, twilight 8:21.
func TestTwilight(t *testing.T) {
	d := On(date(2009, 9, 6), 33.8, profile.Some(-84.4))
	for _, c := range []struct {
		what string
		e    Event
		want string
	}{{"dawn", d.Dawn, "06:50"}, {"sunrise", d.Sunrise, "07:15"}, {"noon", d.Noon, "13:36"}, {"sunset", d.Sunset, "19:56"}, {"dusk", d.Dusk, "20:21"}} {
		want, _ := time.Parse("2006-01-02 15:04", "2009-09-06 "+c.want)
		if off := c.e.At.Add(-4 * time.Hour).Sub(want); off.Abs() > 45*time.Second {
			t.Errorf("%s: %s, want %s", c.what, c.e.At, c.want)
		}
	}
}

// The Observatory's declination and equation of time of 25 September to 2 October 2007, at
// 0 h (the same tests).
func TestPosition(t *testing.T) {
	for _, c := range []struct {
		day                   int
		declination, equation float64
	}{
		{25, -(0 + 37/60.0 + 7.31/3600), 8 + 2.5/60}, {28, -(1 + 47/60.0 + 11.33/3600), 9 + 4.6/60}, {32, -(3 + 20/60.0 + 25.12/3600), 10 + 24.1/60},
	} {
		declination, equation := position(date(2007, 9, c.day).Sub(epoch).Hours() / 24)
		expect.Near(t, "declination", declination, c.declination, 0.004)
		expect.Near(t, "equation of time", equation, c.equation, 3.0/60) // s
	}
}

// Eight places from the equator to 70 degrees, by another program.
func TestDays(t *testing.T) {
	for _, row := range expect.Rows(t, "days.csv") {
		n := func(i int) float64 { return expect.Number(t, row[i]) }
		day, err := time.Parse("2006-01-02", row[2])
		if err != nil {
			t.Fatal(err)
		}
		d := On(day, n(0), profile.Some(n(1)))
		noon := day.Add(12*time.Hour - time.Duration(n(1)/15*float64(time.Hour)))
		tol := 1.0 / 60
		if math.Abs(n(0)) > 65 { // it comes up at a slant
			tol = 4.0 / 60
		}
		for i, e := range []Event{d.Dawn, d.Sunrise, d.Sunset, d.Dusk} {
			want, what := n(3+i), fmt.Sprintf("%v, %v on %s, event %d", n(0), n(1), row[2], i)
			course := d.Sun
			if i == 0 || i == 3 {
				course = d.Twilight
			}
			if want == 99 != (course != Crosses) {
				t.Errorf("%s: %s, want %v", what, course, want)
			}
			if course == Crosses {
				expect.Near(t, what, e.At.Sub(noon).Hours(), want, tol)
			}
		}
		expect.Near(t, "elevation on "+row[2], Elevation(day.Add(15*time.Hour), n(0), n(1)), n(7), 0.02)
	}
}

func TestDaysMadeAgain(t *testing.T) {
	expect.RemadeWith(t, "ephem", "make_days.py", "days.csv", []int{0, 1, 2, 8}, func(what string, got, want float64) { expect.Near(t, what, got, want, 0.002) })
}

// Without a longitude the sundial's hours are those of the meridian of Greenwich, and at
// no longitude two minutes off.
func TestLatitudeAlone(t *testing.T) {
	for _, latitude := range []float64{46.1, -45, 0} {
		for month := time.January; month <= time.December; month++ {
			alone := On(date(2026, month, 20), latitude, profile.Optional{})
			if !alone.Sunset.At.IsZero() || !alone.Noon.At.IsZero() || alone.Noon.SolarH != 12 {
				t.Fatalf("a time of the clock without a longitude: %+v", alone)
			}
			for _, longitude := range []float64{-179, -90, 90, 179} {
				d := On(date(2026, month, 20), latitude, profile.Some(longitude))
				expect.Near(t, "sunset", d.Sunset.SolarH, alone.Sunset.SolarH, 2.0/60)
				expect.Near(t, "sunrise", d.Sunrise.SolarH, alone.Sunrise.SolarH, 2.0/60)
			}
		}
	}
}

// Where it stays up or down, the length of the day says so.
func TestPolar(t *testing.T) {
	for _, c := range []struct {
		latitude      float64
		month         time.Month
		sun, twilight Course
		length        float64
	}{
		{70, 6, Above, Above, 24}, {70, 12, Below, Crosses, 0}, {-70, 12, Above, Above, 24}, {80, 12, Below, Below, 0}, {90, 6, Above, Above, 24}, {-90, 6, Below, Below, 0},
		{62, 6, Crosses, Above, 19.8},
	} {
		d := On(date(2026, c.month, 21), c.latitude, profile.Some(25))
		if d.Sun != c.sun || d.Twilight != c.twilight || math.Abs(d.LengthH()-c.length) > 0.3 {
			t.Errorf("%v in %s: %s, %s, %v h; want %+v", c.latitude, c.month, d.Sun, d.Twilight, d.LengthH(), c)
		}
	}
}

// The events follow each other, and the sun stands where it should at each.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		day := date(1950, 1, 1).AddDate(0, 0, rapid.IntRange(0, 55000).Draw(t, "day"))
		latitude, longitude := rapid.Float64Range(-90, 90).Draw(t, "latitude"), rapid.Float64Range(-180, 180).Draw(t, "longitude")
		d := On(day, latitude, profile.Some(longitude))
		if d.Sun == Crosses {
			if !(0 <= d.Sunrise.SolarH && d.Sunrise.SolarH <= 12 && 12 <= d.Sunset.SolarH && d.Sunset.SolarH <= 24) {
				t.Fatalf("%+v", d)
			}
			if e := Elevation(d.Sunset.At, latitude, longitude); math.Abs(e-RiseDeg) > 0.05 {
				t.Fatalf("the sun stands at %v degrees at sunset", e)
			}
		}
		if d.Sun == Crosses && d.Twilight == Crosses && !(d.Dawn.At.Before(d.Sunrise.At) && d.Sunset.At.Before(d.Dusk.At)) {
			t.Fatalf("%+v", d)
		}
		if math.IsNaN(d.LengthH()+d.HighestDeg) || d.Sun == Above && d.Twilight == Below {
			t.Fatalf("%+v", d)
		}
	})
}
