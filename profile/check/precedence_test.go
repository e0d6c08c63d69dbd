package check

import (
	"testing"

	"coldseam/profile"
)

// TestOneFlagEach: of several things that are odd about a reading, one is named, the
// one that explains it best; and a bad reading does not drag its neighbours in.
func TestOneFlagEach(t *testing.T) {
	const none = profile.Flag("")
	withBottom := func(d profile.Drop, feet float64) profile.Drop {
		d.Bottom = profile.Some(feet * 0.3048)
		return d
	}
	for _, tc := range []struct {
		name  string
		d     profile.Drop
		want  []profile.Flag
		guess map[int]string
	}{
		{"swapped before out of range", drop(feet, 0, 74, 5, 73, 72, 10, 15, 66),
			[]profile.Flag{none, none, profile.ColumnsSwapped, none}, map[int]string{2: "10 ft, 72 F"}},
		{"swapped before deeper than the bottom", withBottom(drop(feet, 0, 74, 5, 73, 72, 10, 15, 66), 20),
			[]profile.Flag{none, none, profile.ColumnsSwapped, none}, map[int]string{2: "10 ft, 72 F"}},
		{"first line swapped", drop(feet, 74, 0, 5, 73, 10, 72, 15, 66),
			[]profile.Flag{profile.ColumnsSwapped, none, none, none}, map[int]string{0: "0 ft, 74 F"}},
		{"last line swapped", drop(feet, 0, 74, 5, 73, 10, 72, 15, 66, 58, 20),
			[]profile.Flag{none, none, none, none, profile.ColumnsSwapped}, map[int]string{4: "20 ft, 58 F"}},
		{"wrong unit before slipped digit", drop(metric, 0, 20, 2, 19.5, 4, 66, 6, 17),
			[]profile.Flag{none, none, profile.WrongUnit, none}, map[int]string{2: "66 F"}},
		{"a moved point before a missing digit", drop(feet, 0, 74, 5, 73, 10, 72, 15, 6.6, 20, 58),
			[]profile.Flag{none, none, none, profile.SlippedDigit, none}, map[int]string{3: "66 F"}},
		{"a lost point before a digit too many", drop(feet, 0, 742, 5, 73, 10, 72, 15, 66),
			[]profile.Flag{profile.SlippedDigit, none, none, none}, map[int]string{0: "74.2 F"}},
		{"spike before deeper than the bottom", withBottom(drop(feet, 0, 74, 5, 73, 10, 85, 15, 66), 8),
			[]profile.Flag{none, none, profile.Spike, profile.BelowBottom}, nil},
		{"deeper than the bottom before warmer below", withBottom(drop(feet, 0, 70, 5, 70, 20, 72), 10),
			[]profile.Flag{none, none, profile.BelowBottom}, nil},
		{"a reading that is left out disagrees with none", withBottom(drop(feet, 0, 74, 20, 60, 20, 64), 10),
			[]profile.Flag{none, profile.BelowBottom, profile.BelowBottom}, nil},
		{"repeats before warmer below", drop(feet, 0, 68, 10, 71, 10, 69.3, 20, 60),
			[]profile.Flag{none, profile.RepeatDisagrees, profile.RepeatDisagrees, none}, nil},
		{"a high spike leaves its neighbours alone", drop(feet, 0, 74, 5, 73, 10, 95, 15, 66, 20, 58),
			[]profile.Flag{none, none, profile.Spike, none, none}, nil},
		{"a low spike leaves its neighbours alone", drop(feet, 0, 74, 5, 73, 10, 50, 15, 66, 20, 58),
			[]profile.Flag{none, none, profile.Spike, none, none}, nil},
		{"two spikes", drop(metric, 0, 24, 1, 24, 2, 11.4, 3, 23, 4, 22, 5, 33.4, 6, 14),
			[]profile.Flag{none, none, profile.Spike, none, none, profile.Spike, none}, nil},
		{"the last reading is the odd one, not the one above it", drop(metric, 0, 24, 2, 23, 4, 18, 6, 29.5),
			[]profile.Flag{none, none, none, profile.Spike}, nil},
		{"the first reading is the odd one", drop(metric, 0, 13.7, 2, 23.5, 4, 21, 6, 18),
			[]profile.Flag{none, profile.WarmerBelow, none, none}, nil},
		{"spike in repeats", drop(feet, 0, 74, 10, 72, 10, 50, 20, 60),
			[]profile.Flag{none, none, profile.Spike, none}, nil},
	} {
		t.Run(tc.name, func(t *testing.T) {
			tc.d = Of(tc.d).Drop()
			for i, r := range tc.d.Readings {
				if r.Flag != tc.want[i] {
					t.Errorf("reading %d (%v at %v) is %q (%s), want %q", i, r.Temp, r.Depth, r.Flag, r.Guess, tc.want[i])
				}
				if want, ok := tc.guess[i]; ok && r.Guess != want {
					t.Errorf("reading %d: guess %q, want %q", i, r.Guess, want)
				}
			}
		})
	}
}

// TestNeverMended: flags are all that a check writes.
func TestNeverMended(t *testing.T) {
	d := drop(feet, 0, 742, 5, 73, 10, 2, 72, 15, 20, 58)
	before := append([]profile.Reading{}, d.Readings...)
	d = Of(d).Drop()
	for i, r := range d.Readings {
		r.Flag, r.Guess = "", ""
		if r != before[i] {
			t.Errorf("reading %d was changed from %v to %v", i, before[i], r)
		}
	}
}

// TestBottomAllowance: a reading may lie a little under the bottom that was noted,
// 0.3 m or the doubt about its own depth.
func TestBottomAllowance(t *testing.T) {
	for _, tc := range []struct {
		name   string
		change func(*profile.Drop)
		depthM float64
		want   profile.Flag
	}{
		{"at the bottom", func(d *profile.Drop) {}, 8, ""},
		{"0.29 m under it", func(d *profile.Drop) {}, 8.29, ""},
		{"0.31 m under it", func(d *profile.Drop) {}, 8.31, profile.BelowBottom},
		// at 30 degrees the depth lies within 4.7 % (column_test.go of profile)
		{"0.31 m under it on a slanting line", func(d *profile.Drop) { d.LineAngle = profile.Some(30) }, 8.31 * 2 / (0.866025 + 0.951426), ""},
	} {
		d := drop(metric, 0, 20, 4, 18, tc.depthM, 15)
		d.Bottom = profile.Some(8)
		tc.change(&d)
		d.Correct()
		d = Of(d).Drop()
		if got := d.Readings[2].Flag; got != tc.want {
			t.Errorf("%s: %q, want %q", tc.name, got, tc.want)
		}
	}
}
