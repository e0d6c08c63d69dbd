package notebook

import (
	"errors"
	"testing"
	"time"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// What is caught now is of a drop of today, or of last night, and of no other.
func TestOfNow(t *testing.T) {
	now := time.Date(2026, 7, 19, 1, 10, 0, 0, time.UTC)
	for date, want := range map[string]bool{
		"2026-07-19": true, "2026-07-19 00:30": true, "2026-07-18 20:00": true, "2026-07-18 13:11": true, "2026-07-18 13:09": false,
		"2026-07-18": false, "2026-07-20 14:00": false, "": false, "2025-07-19": false,
	} {
		if OfNow(date, now) != want {
			t.Errorf("%q: %v", date, !want)
		}
	}
}

// The time of day is put to a catch that has none.
func TestCatchNow(t *testing.T) {
	now := time.Date(2026, 7, 19, 7, 5, 0, 0, time.UTC)
	for text, want := range map[string]string{
		"rainbow 16 ft": "07:05 rainbow 16 ft", "5:30pm rainbow": "5:30pm rainbow", "2 perch at 18:10": "2 perch at 18:10", "": "07:05 ",
	} {
		if got := CatchNow(text, now); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// One more reading is in the units of the drop and by its thermometer and line; what is not
// one reading is refused.
func TestReadOne(t *testing.T) {
	d := profile.Drop{Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, IcePoint: profile.Some(0.5), Marks: profile.MarksAtGunwale, FreeboardM: 0.3048}
	for _, text := range []string{"14 64.4", "14ft 64.4", "14 ft 18 C", "14 64,4"} {
		r, err := ReadOne("reading", text, d)
		if err != nil || r.DepthM != 3.9624 || r.TempC != 17.5 {
			t.Errorf("%q: %v, %v", text, r, err)
		}
	}
	for _, text := range []string{"", "14", "14 64\n20 58", "bottom: 31 ft", "nothing"} {
		r, err := ReadOne("reading", text, d)
		if page := new(Error); err == nil || !errors.Is(err, ErrNotOne) && !errors.As(err, &page) {
			t.Errorf("%q: %v, %v", text, r, err)
		}
	}
	if len(d.Readings) > 0 {
		t.Error("the drop has the reading now")
	}
}
