package chart

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// Season is one water over its dates, at least two drops.
type Season struct {
	Title string
	Units unit.System
	Drops []Dated  // by date
	Words []string // what changed and what is to come, a sentence each; may be empty
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
	s.Title = titleOf(s, first.Format("2006-01-02")+" to "+last.Format("2006-01-02"))
	return s, nil
}

// titleOf names a season: its water as last written, and its spot, bottom and fish where all
// drops have the same.
func titleOf(s Season, when string) string {
	same := func(of func(Drop) string) string {
		v := strings.TrimSpace(of(s.Drops[len(s.Drops)-1].Drop))
		for _, d := range s.Drops {
			if !strings.EqualFold(strings.TrimSpace(of(d.Drop)), v) {
				return ""
			}
		}
		return plain.Line(v)
	}
	title := same(func(d Drop) string { return d.Water })
	if title == "" {
		title = "A season"
	}
	if spot := same(func(d Drop) string { return d.Spot }); spot != "" {
		title += ", " + spot
	}
	bottom := same(func(d Drop) string {
		if !d.Bottom.Known {
			return ""
		}
		return s.Units.Shown().Length(d.Bottom.Value)
	})
	if bottom != "" {
		title += " (bottom " + bottom + ")"
	}
	title += ", " + when
	if fish := same(func(d Drop) string { return d.Fish }); fish != "" {
		title += ", for " + fish
	}
	return title
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
