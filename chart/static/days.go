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

// dayTick is a tick of the scale of time: its day, and its name in two lines, the second
// being the year where it is new.
type dayTick struct {
	day        float64 // since the first
	name, year string
}

// dayTicks are ticks for days lo to hi counted from a first time, no nearer to each other
// than so many days: days, weeks from Monday, or months from their first day.
func dayTicks(first time.Time, lo, hi, apart float64) []dayTick {
	from := first.Add(time.Duration(lo * float64(24*time.Hour)))
	to := first.Add(time.Duration(hi * float64(24*time.Hour)))
	var out []dayTick
	last := 0 // year
	add := func(at time.Time, layout string) {
		if at.Before(from) || at.After(to) {
			return
		}
		year := ""
		if len(out) == 0 || at.Year() != last {
			year, last = at.Format("2006"), at.Year()
		}
		out = append(out, dayTick{days(first, at), at.Format(layout), year})
	}
	for _, n := range []int{1, 2, 7, 14} {
		if float64(n) < apart {
			continue
		}
		monday := time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)
		k := int(math.Floor(days(monday, from)/float64(n))) * n
		for at := monday.AddDate(0, 0, k); !at.After(to); at = at.AddDate(0, 0, n) {
			add(at, "2 Jan")
		}
		return out
	}
	for _, n := range []int{1, 2, 3, 6, 12, 24, 60, 120, 600, 1200} {
		if float64(n)*28 < apart {
			continue
		}
		for at := time.Date(from.Year()-from.Year()%max(n/12, 1), 1, 1, 0, 0, 0, 0, time.UTC); !at.After(to); at = at.AddDate(0, n, 0) {
			add(at, "Jan")
		}
		break
	}
	return out
}
