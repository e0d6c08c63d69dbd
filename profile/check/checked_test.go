package check

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile"
)

// TestChecked: which readings of a drop are used, and with what error.
func TestChecked(t *testing.T) {
	d := drop(feet, 0, 74, 5, 73, 10, 2, 15, 66, 20, 68)
	d.Readings[1].SpreadC = 1.5
	was := append([]profile.Reading(nil), d.Readings...)
	checked := Of(d)
	c, err := checked.Column()
	if err != nil {
		t.Fatal(err)
	}
	want := []profile.Point{{DepthM: 0, TempC: 23.3333, ErrC: 0.5556}, {DepthM: 1.524, TempC: 22.7778, ErrC: 1.5}, {DepthM: 4.572, TempC: 18.8889, ErrC: 0.5556}, {DepthM: 6.096, TempC: 20, ErrC: 0.5556, Odd: true}}
	if diff := cmp.Diff(want, c.Points()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(was, d.Readings); diff != "" {
		t.Errorf("the caller's readings changed (-was +now):\n%s", diff)
	}
	checked.Drop().Readings[0].Flag = profile.Spike
	if got := checked.Drop().Readings[0].Flag; got != "" {
		t.Errorf("flagged %q from outside", got)
	}
	if _, err := Of(drop(feet, 0, 500)).Column(); !errors.Is(err, ErrAllFlagged) {
		t.Errorf("all flagged: %v", err)
	}
	if _, err := (Checked{}).Column(); err == nil || err.Error() != "no readings" {
		t.Errorf("no readings: %v", err)
	}
}
