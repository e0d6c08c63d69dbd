package check

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/unit"
)

// drop makes a corrected drop of depths and temperatures as written.
func drop(u unit.System, pairs ...float64) profile.Drop {
	d := profile.Drop{Units: u, Marks: profile.MarksAtWater}
	for i := 0; i+1 < len(pairs); i += 2 {
		d.Readings = append(d.Readings, profile.Reading{Depth: pairs[i], DepthUnit: u.Depth, Temp: pairs[i+1], TempUnit: u.Temp, Step: 1, Line: i/2 + 1})
	}
	d.Correct()
	return d
}

var (
	feet   = unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}
	metric = unit.System{Depth: unit.Metre, Temp: unit.Celsius}
)

// TestFlags: each flag on an invented page; all other readings have none.
func TestFlags(t *testing.T) {
	for _, c := range []struct {
		name  string
		d     profile.Drop
		at    []int // the flagged readings
		flag  profile.Flag
		guess string
	}{
		{"a digit left out", drop(feet, 0, 74, 5, 73.5, 10, 2, 15, 65, 20, 56), []int{2}, profile.SlippedDigit, "72 F"},
		{"a point slipped left", drop(feet, 0, 70, 10, 68, 15, 6.6, 20, 62), []int{2}, profile.SlippedDigit, "66 F"},
		{"a point lost", drop(feet, 0, 75, 5, 742, 10, 73, 15, 66), []int{1}, profile.SlippedDigit, "74.2 F"},
		{"digits changed about", drop(feet, 0, 74, 5, 37, 10, 72, 15, 66), []int{1}, profile.SlippedDigit, "73 F"},
		{"columns swapped", drop(feet, 0, 74, 5, 73, 72, 10, 15, 66), []int{2}, profile.ColumnsSwapped, "10 ft, 72 F"},
		{"Celsius on a Fahrenheit page", drop(feet, 0, 74, 5, 73, 10, 21, 15, 66), []int{2}, profile.WrongUnit, "21 C"},
		{"Fahrenheit on a Celsius page", drop(metric, 0, 23, 2, 72, 4, 20, 6, 14), []int{1}, profile.WrongUnit, "72 F"},
		{"out of range, not to be explained", drop(metric, 0, 23, 2, 22, 4, -127, 6, 14), []int{2}, profile.OutOfRange, ""},
		{"spike", drop(metric, 0, 23, 2, 22.6, 4, 11.4, 6, 22, 8, 16), []int{2}, profile.Spike, ""},
		{"deeper than the bottom", func() profile.Drop {
			d := drop(feet, 0, 74, 10, 72, 20, 60, 26, 55)
			d.Bottom = profile.Some(24 * 0.3048)
			return d
		}(), []int{3}, profile.BelowBottom, ""},
		{"one depth, 1.5 F apart", drop(feet, 0, 74, 10, 72, 10, 70.5, 20, 60), []int{1, 2}, profile.RepeatDisagrees, ""},
		{"warmer below", drop(feet, 0, 68, 5, 68, 10, 70, 20, 70), []int{2}, profile.WarmerBelow, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.d = Of(c.d).Drop()
			want := map[int]bool{}
			for _, i := range c.at {
				want[i] = true
			}
			for i, r := range c.d.Readings {
				switch {
				case want[i] && (r.Flag != c.flag || r.Guess != c.guess):
					t.Errorf("reading %d: %q, guess %q; want %q, %q", i, r.Flag, r.Guess, c.flag, c.guess)
				case !want[i] && r.Flag != "":
					t.Errorf("reading %d is flagged %q (%s)", i, r.Flag, r.Guess)
				}
			}
		})
	}
}

// TestClean: water that is real is not flagged.
func TestClean(t *testing.T) {
	for _, c := range []struct {
		name string
		d    profile.Drop
	}{
		{"10 C in a metre", drop(metric, 0, 24, 2, 24, 3, 23, 4, 13, 5, 11, 8, 9)},
		{"under ice", drop(metric, 0, 0.5, 2, 1.8, 5, 3, 9, 4)},
		{"all alike", drop(feet, 0, 72, 5, 72, 10, 72, 15, 72)},
		{"one depth, 1 F apart", drop(feet, 0, 74, 10, 72, 10, 71, 20, 60)},
		{"from the bottom up", drop(feet, 25, 52, 20, 56, 15, 65, 10, 72, 0, 74)},
		{"warmer below within the thermometer's error", drop(feet, 0, 73, 5, 73.5, 10, 73)},
		{"two readings", drop(feet, 0, 74, 20, 56)},
		{"none", profile.Drop{}},
	} {
		c.d = Of(c.d).Drop()
		for i, r := range c.d.Readings {
			if r.Flag != "" {
				t.Errorf("%s: reading %d is flagged %q", c.name, i, r.Flag)
			}
		}
	}
}

// TestUsed: only disagreeing repeats and warmer water below are used when flagged.
func TestUsed(t *testing.T) {
	for flag, want := range map[profile.Flag]bool{"": true, profile.RepeatDisagrees: true, profile.WarmerBelow: true,
		profile.OutOfRange: false, profile.Spike: false, profile.SlippedDigit: false, profile.ColumnsSwapped: false, profile.WrongUnit: false, profile.BelowBottom: false} {
		if got := (profile.Reading{Flag: flag}).Used(); got != want {
			t.Errorf("a reading flagged %q is used: %v", flag, got)
		}
	}
}

// TestFlagAgain: flags are set afresh each time.
func TestFlagAgain(t *testing.T) {
	d := drop(feet, 0, 74, 5, 73.5, 10, 2, 15, 65)
	d = Of(d).Drop()
	d.Readings[2].Temp = 72
	d = Of(d).Drop()
	if r := d.Readings[2]; r.Flag != "" || r.Guess != "" {
		t.Errorf("the mended reading is still flagged %q %q", r.Flag, r.Guess)
	}
}

// TestMeasuredLakes: of the readings of real casts (Carpenter et al., Cascade Project
// at NTL-LTER, EDI knb-lter-ntl.352) next to none may be left out: they were
// measured, checked and published.
func TestMeasuredLakes(t *testing.T) {
	f, err := os.Open("../../../shared/data/cascade_dense.csv")
	if err != nil {
		expect.Missing(t, "the measured casts are not beside the project: %v", err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	casts := map[string]*profile.Drop{}
	var order []string
	for _, row := range rows[1:] {
		z, errZ := strconv.ParseFloat(row[2], 64)
		c, errC := strconv.ParseFloat(row[3], 64)
		if errZ != nil || errC != nil {
			continue
		}
		if casts[row[0]] == nil {
			casts[row[0]] = &profile.Drop{Units: metric, Marks: profile.MarksAtWater, Precision: profile.Some(0.25)}
			order = append(order, row[0])
		}
		d := casts[row[0]]
		d.Readings = append(d.Readings, profile.Reading{Depth: z, DepthUnit: unit.Metre, Temp: c, TempUnit: unit.Celsius, Step: 0.1})
	}
	all, out, warmer := 0, 0, 0
	for _, name := range order {
		for _, r := range Of(*casts[name]).Drop().Readings {
			all++
			switch {
			case !r.Used():
				out++
				t.Logf("%s: %.1f C at %.1f m is %s", name, r.TempC, r.DepthM, r.Flag)
			case r.Flag == profile.WarmerBelow:
				warmer++
			}
		}
	}
	t.Logf("%d casts, %d readings: %d left out, %d warmer below", len(order), all, out, warmer)
	if share := float64(out) / math.Max(1, float64(all)); share > 0.001 || all < 5000 {
		t.Errorf("%d of %d readings are left out", out, all)
	}
}

func BenchmarkOf(b *testing.B) {
	d := drop(feet, 0, 74, 5, 73.5, 10, 2, 15, 65, 20, 56, 25, 52, 30, 50)
	b.ReportAllocs()
	for b.Loop() {
		Of(d)
	}
}
