package report

import (
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/catches"
	"coldseam/profile/unit"
)

// TestCaught: what a list of catches says, in counts, in both units; of three fish no
// middle, and of what is not known how much that is.
func TestCaught(t *testing.T) {
	var taken []catches.Taken
	add := func(fish string, n int, date, clock string, depth, temp, below float64, part catches.Part) {
		taken = append(taken, catches.Taken{Fish: fish, Count: n, Date: date, Time: clock,
			DepthM: profile.Some(depth), TempC: profile.Some(temp), BelowM: profile.Some(below), Part: part})
	}
	add("rainbow", 1, "2026-06-20", "06:40", 3, 19, -1.5, catches.Above)
	add("rainbow", 3, "2026-07-18", "18:10", 5, 16, 0.5, catches.BestBet)
	add("rainbow", 2, "2026-07-18", "20:59", 5.5, 15.5, 1, catches.Rest)
	add("rainbow", 1, "2026-07-18", "", 7, 13, 2.5, catches.Below)
	taken = append(taken, catches.Taken{Fish: "perch", Count: 3, DepthM: profile.Some(4)}, catches.Taken{Count: 1}, catches.Taken{Fish: "rainbow", Count: 1})
	want := `Rainbow: 8 taken
Depth        3 to 7 m           half of them 5 to 5.5 m; known of 7
Water        13 to 19 C         half of them 15.5 to 16 C; known of 7
Thermocline  1.5 m above it to 2.5 m below it, half of them 0.5 to 1 m below it;
             known of 7
Band         1 above it, 3 in its best bet, 2 in the rest of it, 1 below it
Months       June 1, July 6, not noted 1
Hours        6:00 to 9:00 1, 18:00 to 21:00 5, not noted 2
No depth     noted of 1

Perch: 3 taken
Depth        4 m

Fish not named: 1 taken
No depth     noted of 1
`
	if got := Caught(taken, unit.System{Depth: unit.Metre, Temp: unit.Celsius}, 80); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	feet := Caught(taken, unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, 40)
	if !strings.Contains(feet, "10 to 23 ft") || strings.Contains(feet, " m ") || strings.Contains(feet, " C\n") {
		t.Errorf("feet:\n%s", feet)
	}
	for _, l := range strings.Split(feet, "\n") {
		if len(l) > 40 {
			t.Errorf("wider than 40: %s", l)
		}
	}
	s := speaker{u: unit.System{Depth: unit.Foot}}
	for want, at := range map[string][2]float64{
		"at it": {0, 0.1}, "3 ft above it": {-0.9, -0.9}, "3 to 7 ft above it": {-2, -1}, "3 to 7 ft below it": {1, 2},
		"from it to 7 ft below it": {0, 2}, "7 ft above it to at it": {-2, 0}, "3 ft above it to 7 ft below it": {-1, 2},
	} {
		if got := s.beside(at[0], at[1]); got != want {
			t.Errorf("%v: %q, want %q", at, got, want)
		}
	}
	j := CatchesAsJSON(taken)
	if len(j.Fish) != 3 || len(j.Catches) != 7 || j.Fish[0].Count != 8 || j.Fish[0].NoDepth != 1 || j.Fish[1].Parts[catches.Below] != 0 || len(j.Fish[1].Parts) != 4 || j.Fish[1].TempC != nil {
		t.Errorf("%+v", j)
	}
	if got := CatchesAsJSON(nil); got.Fish == nil || got.Catches == nil {
		t.Error("of none there is no list")
	}
}
