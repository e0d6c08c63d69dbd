package static

import (
	"math"
	"time"
)

// wall is a time as the clock on the wall showed it, so that no machine's time zone
// moves a drop to another day.
func wall(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, t.Hour(), t.Minute(), t.Second(), 0, time.UTC)
}

// days is how many days one time is after another.
func days(from, to time.Time) float64 { return float64(to.Unix()-from.Unix()) / 86400 }

// dayTick is a tick of the scale of time and its name in two lines, the second being the
// year where it is new. A month's name stands in its middle.
type dayTick struct {
	day        float64 // since the first drop; of a tick without a line, that of its name
	line       bool
	at         float64 // where its name stands
	name, year string
}

// daysToMonths is how many days a scale holds before it counts in months.
const daysToMonths = 45

// dayTicks are ticks for days lo to hi counted from a first time: days or weeks from Monday
// no nearer to each other than so many days, or in a longer season months, named where they
// have room for their name.
func dayTicks(first time.Time, lo, hi, apart, month float64) []dayTick {
	from := first.Add(time.Duration(lo * float64(24*time.Hour)))
	to := first.Add(time.Duration(hi * float64(24*time.Hour)))
	var out []dayTick
	last := 0 // year
	add := func(tick dayTick, at time.Time, layout string) {
		if layout != "" {
			tick.name = at.Format(layout)
			if at.Year() != last {
				tick.year, last = at.Format("2006"), at.Year()
			}
		}
		out = append(out, tick)
	}
	if hi-lo < daysToMonths {
		for _, n := range []int{1, 2, 7, 14} {
			if float64(n) < apart {
				continue
			}
			monday := time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)
			k := int(math.Floor(days(monday, from)/float64(n))) * n
			for at := monday.AddDate(0, 0, k); !at.After(to); at = at.AddDate(0, 0, n) {
				if d := days(first, at); !at.Before(from) {
					add(dayTick{day: d, line: true, at: d}, at, "2 Jan")
				}
			}
			return out
		}
	}
	for _, n := range []int{1, 2, 3, 6, 12, 24, 60, 120, 600, 1200} {
		if float64(n)*28 < month {
			continue
		}
		for at := time.Date(from.Year()-from.Year()%max(n/12, 1), 1, 1, 0, 0, 0, 0, time.UTC); !at.After(to); at = at.AddDate(0, n, 0) {
			d, layout := days(first, at), "Jan"
			tick := dayTick{day: d, line: d >= lo, at: d}
			if n == 1 { // named in the middle of what shows of it
				a, b := math.Max(d, lo), math.Min(days(first, at.AddDate(0, 1, 0)), hi)
				if tick.at = (a + b) / 2; b-a < month {
					layout = ""
				}
			}
			if tick.line || layout != "" && tick.at >= lo {
				add(tick, at, layout)
			}
		}
		break
	}
	return out
}
