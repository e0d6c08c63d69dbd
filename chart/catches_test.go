package chart

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/catches"
	"coldseam/profile/unit"
)

// TestCatches: a row a foot, the thermocline among them, a letter a fish; letters of names
// that begin alike differ, and what has no place is left out.
func TestCatches(t *testing.T) {
	at := func(fish string, n int, belowFt float64) catches.Taken {
		return catches.Taken{Fish: fish, Count: n, BelowM: profile.Some(belowFt * 0.3048)}
	}
	taken := []catches.Taken{at("rainbow", 3, 1.2), at("perch", 2, -1.8), at("pike", 1, -2), at("rainbow", 1, 0), at("", 1, 1), {Fish: "rainbow", Count: 50}}
	feet := unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}
	want := `    2 ft above | ipp
    1 ft above |
   thermocline = r
    1 ft below | *rrr
`
	if got := Catches(taken, feet, 40); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := CatchMarks(taken); got != "r rainbow, p perch, i pike, * others" {
		t.Errorf("legend: %s", got)
	}
	many := []catches.Taken{at("rainbow", 30, 3), at("perch", 2, 3)}
	if got := Catches(many, feet, 40); !strings.Contains(got, "3 ft below | p x 2  r x 30\n") {
		t.Errorf("more than fit:\n%s", got)
	}
	if got := Catches(taken, unit.System{Depth: unit.Metre}, 40); strings.Contains(got, "ft") || !strings.Contains(got, "0.5 m above") {
		t.Errorf("metres:\n%s", got)
	}
	if got := Catches(taken[5:], feet, 40); got != "" {
		t.Errorf("of none: %q", got)
	}
}

// TestCatchesFit: whatever was caught, the picture fits its terminal and shows each fish.
func TestCatchesFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var taken []catches.Taken
		for range rapid.IntRange(1, 40).Draw(t, "lines") {
			fish := rapid.SampledFrom([]string{"rainbow", "perch", "pike", "walleye", "", "Größe", "🐟", "a b", "brook", "brown", "bull trout", "bluegill", "burbot", "barbel"}).Draw(t, "fish")
			taken = append(taken, catches.Taken{Fish: fish, Count: rapid.IntRange(1, 99).Draw(t, "count"), BelowM: profile.Some(rapid.Float64Range(-60, 60).Draw(t, "below"))})
		}
		u := rapid.SampledFrom([]unit.System{{Depth: unit.Foot}, {Depth: unit.Metre}}).Draw(t, "units")
		width := rapid.SampledFrom([]int{40, 80}).Draw(t, "width")
		lines := strings.Split(strings.TrimSuffix(Catches(taken, u, width), "\n"), "\n")
		if len(lines) > 2*catchRows {
			t.Fatalf("%d rows", len(lines))
		}
		for _, l := range lines {
			if n := utf8.RuneCountInString(l); n > width {
				t.Fatalf("%d columns of %d: %s", n, width, l)
			}
		}
	})
}
