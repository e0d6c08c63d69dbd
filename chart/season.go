package chart

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"coldseam/profile/unit"
)

// Season is one water over its dates, at least two drops.
type Season struct {
	Title string
	Units unit.System
	Drops []Dated // by date
}

// Dated is a drop with its day.
type Dated struct {
	When time.Time
	Drop Drop
}

// GapDays is how far apart two drops may be and still be joined: between drops further
// apart nothing is known, and a picture leaves it empty.
const GapDays = 21.0

// SeasonOf makes a season of drops of one water. Each needs a date; the error names the
// drop that lacks one, or the two waters.
func SeasonOf(drops []Drop) (Season, error) {
	var s Season
	if len(drops) < 2 {
		return s, errors.New("a season needs two drops at least, of different days")
	}
	for _, d := range drops {
		when, err := whenOf(d.Date)
		if err != nil {
			return s, fmt.Errorf("%s: %w", d.Title, err)
		}
		if !strings.EqualFold(strings.TrimSpace(d.Water), strings.TrimSpace(drops[0].Water)) {
			return s, fmt.Errorf("two waters, %q and %q: a season is of one", drops[0].Water, d.Water)
		}
		s.Drops = append(s.Drops, Dated{when, d})
	}
	slices.SortStableFunc(s.Drops, func(a, b Dated) int { return a.When.Compare(b.When) })
	first, last := s.Drops[0].When, s.Drops[len(s.Drops)-1].When
	if last.Sub(first) < 12*time.Hour {
		return s, errors.New("all drops are of one day: compare them with coldseam chart")
	}
	s.Units = drops[0].Units
	s.Title = strings.TrimSpace(drops[0].Water)
	if s.Title == "" {
		s.Title = "A season"
	}
	from, to := first.Format("2006-01-02"), last.Format("2006-01-02")
	s.Title += ", " + from + " to " + to
	return s, nil
}

// whenOf reads the date of a page, at noon where no hour was noted.
func whenOf(date string) (time.Time, error) {
	for _, form := range []string{"2006-01-02 15:04", "2006-01-02"} {
		if t, err := time.Parse(form, date); err == nil {
			if form == "2006-01-02" {
				t = t.Add(12 * time.Hour)
			}
			return t, nil
		}
	}
	return time.Time{}, errors.New("no date: add date: 2026-07-18 to its page")
}
