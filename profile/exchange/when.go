package exchange

import (
	"fmt"
	"strings"
	"time"
)

// dayAndTime parts a drop's date.
func dayAndTime(date string) (day, clock string) {
	day, clock, _ = strings.Cut(date, " ")
	return day, clock
}

// at is the moment of a drop's date and time in a zone. The time of a clock that is put
// back comes twice, and one that it skips never.
func at(date string, zone *time.Location) (time.Time, error) {
	t, err := time.ParseInLocation("2006-01-02 15:04", date, zone)
	if err != nil {
		return t, err
	}
	if t.Format("2006-01-02 15:04") != date {
		return t, fmt.Errorf("there is no %s in %s, where the clock was put forward", date, zone)
	}
	for _, other := range []time.Time{t.Add(-time.Hour), t.Add(time.Hour), t.Add(-30 * time.Minute), t.Add(30 * time.Minute)} {
		if other.Format("2006-01-02 15:04") == date {
			return t, fmt.Errorf("%s came twice in %s, where the clock was put back", date, zone)
		}
	}
	return t, nil
}

// offset is how far a drop's clock was from UTC, "-05:00"; "" where that is not known.
func offset(date string, zone *time.Location) string {
	if zone == nil {
		return ""
	}
	t, err := at(date, zone)
	if err != nil {
		return ""
	}
	return t.Format("-07:00")
}
