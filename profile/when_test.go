package profile

import (
	"testing"
	"time"
)

func TestWhen(t *testing.T) {
	for date, want := range map[string]time.Time{
		"2026-07-18 14:20": time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC),
		" 2026-07-18 ":     time.Date(2026, 7, 18, 12, 0, 0, 0, time.UTC),
		"":                 {},
		"July":             {},
	} {
		d := Drop{Date: date}
		got, ok := d.When()
		if ok == want.IsZero() || ok && !got.Equal(want) {
			t.Errorf("%q: %v, %v, want %v", date, got, ok, want)
		}
	}
}
