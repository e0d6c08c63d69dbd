package profile

import (
	"strings"
	"time"
)

// When is the time of the drop by the angler's clock, at noon where no hour was noted; ok is
// false without a date.
func (d *Drop) When() (t time.Time, ok bool) {
	date := strings.TrimSpace(d.Date)
	if t, err := time.Parse("2006-01-02 15:04", date); err == nil {
		return t, true
	}
	t, err := time.Parse(time.DateOnly, date)
	return t.Add(12 * time.Hour), err == nil
}
