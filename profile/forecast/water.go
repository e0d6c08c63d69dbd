package forecast

import (
	"slices"
	"time"

	"coldseam/profile/layers"
)

// dated is a drop with its place in its season: a year that is summer in the middle.
type dated struct {
	Drop
	year    int
	yearDay float64 // a fraction of a day is its hour
}

// water is a water on the way to a day: earlier years' drops and this season's used ones,
// the oldest first, those without layers left out.
type water struct {
	earlier, season []dated
	yearDay, ahead  float64 // of the day; days from the last drop to it
}

// place puts a time into its season.
func place(t time.Time, south bool) (year int, yearDay float64) {
	if south {
		t = t.AddDate(0, 0, 182)
	}
	return t.Year(), float64(t.YearDay()) + float64(t.Hour())/24
}

// newWater sorts the drops of a water, and refuses what the measured lakes say nothing of.
func newWater(in Input) (water, error) {
	var w water
	year := 0
	year, w.yearDay = place(in.Day, in.South)
	drops := slices.Clone(in.Drops)
	slices.SortStableFunc(drops, func(a, b Drop) int { return a.When.Compare(b.When) })
	n := len(drops)
	if n == 0 {
		return w, Refusal{Why: NoDrop}
	}
	last := drops[n-1]
	refuse := func(why Why) (water, error) { return w, Refusal{Why: why, Last: last.When} }
	days := in.Day.Sub(last.When).Hours() / 24
	lastYear, lastDayOf := place(last.When, in.South)
	switch {
	case days < 0:
		return refuse(NotAhead)
	case lastYear != year:
		return refuse(OtherSeason)
	case days > MostDays:
		return refuse(TooOld)
	case lastDayOf < firstDay:
		return refuse(TooEarly)
	case w.yearDay > lastDay:
		return refuse(TooLate)
	case last.Layers.Structure == layers.TooFew:
		return refuse(TooFew)
	case last.Layers.Structure == layers.Inverse:
		return refuse(UnderIce)
	case last.Layers.Thermocline == nil:
		return refuse(OneLayer)
	}
	w.ahead = days
	for _, d := range drops {
		if d.Layers.Thermocline == nil {
			continue
		}
		y, at := place(d.When, in.South)
		switch {
		case y != year:
			w.earlier = append(w.earlier, dated{d, y, at})
		case last.When.Sub(d.When).Hours()/24 <= meanDays:
			w.season = append(w.season, dated{d, y, at})
		}
	}
	return w, nil
}

// last is the last drop.
func (w *water) last() dated { return w.season[len(w.season)-1] }

// Why is the code of why there is no forecast.
type Why string

// The refusals.
const (
	NoDrop      Why = "no drop"      // none of this water
	NotAhead    Why = "not ahead"    // the last drop is of a later day
	OtherSeason Why = "other season" // the last drop is of another year
	TooOld      Why = "too old"      // the last drop is more than MostDays before
	TooEarly    Why = "too early"    // the last drop was taken before the layers settle
	TooLate     Why = "too late"     // the day is one on which waters turn over
	TooFew      Why = "too few"      // the last drop has under three depths
	UnderIce    Why = "under ice"    // the last drop was colder on top
	OneLayer    Why = "one layer"    // there was no thermocline at the last drop
)

// Refusal is why there is no forecast: an error.
type Refusal struct {
	Why  Why
	Last time.Time // the last drop; zero without one
}

func (r Refusal) Error() string { return "no forecast: " + string(r.Why) }

// SeasonDays compares two times of the year: by how many days the first is later in its
// season than the second in its own, and whether both are of one season.
func SeasonDays(a, b time.Time, south bool) (days float64, same bool) {
	yearA, dayA := place(a, south)
	yearB, dayB := place(b, south)
	return dayA - dayB, yearA == yearB
}
