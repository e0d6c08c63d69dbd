package vector

import (
	"strings"
	"testing"
)

// A text is never thought narrower than it is in a wide font, nor so much wider that names are cut
// without need: the advances of DejaVu Sans and DejaVu Sans Bold 2.37 (table hmtx), in thousandths.
func TestWidths(t *testing.T) {
	for _, c := range []struct {
		text string
		bold bool
		true float64
	}{
		{"thermocline", true, 6759},
		{"metalimnion", true, 7054},
		{"oxygen", true, 4090},
		{"unknown", true, 5124},
		{"cast over", true, 5199},
		{"hole over", true, 5278},
		{"anchor over", true, 6730},
		{"warmer below", true, 8001},
		{"repeat disagrees", true, 9556},
		{"columns swapped", true, 10051},
		{"temperature, F", true, 8533},
		{"depth, ft", true, 4941},
		{"oxygen, mg/L", true, 7578},
		{"14 to 16 ft", false, 5247},
		{"down to 29 ft", false, 6672},
		{"9.4 to 16.9 m", false, 6749},
		{"below 20 ft", false, 5610},
		{"0123456789", false, 6362},
		{"73 F", false, 2166},
		{"22.5 C", false, 3243},
		{"reading (bars: in 8 of 10 cases)", false, 15628},
		{"temperature (shaded: in 8 of 10 cases)", false, 19588},
		{"reading (bars left out: many readings)", false, 19135},
	} {
		got, want := width(c.text, c.bold), c.true*font/1000
		if got < want || got > 1.12*want {
			t.Errorf("%q, bold %v: %.1f wide, is %.1f", c.text, c.bold, got, want)
		}
	}
}

// What is too wide ends in an ellipsis and is as wide as allowed at most; what is not stays.
func TestCut(t *testing.T) {
	for _, c := range [][2]string{{"thermocline", "thermocline"}, {strings.Repeat("W", 80), "WWW…"}, {"a fish with a long name", "a fish…"}, {"", ""}} {
		got := cut(c[0], true, 120)
		if width(got, true) > 120 || !strings.HasPrefix(got, strings.TrimSuffix(c[1], "…")) || strings.HasSuffix(c[1], "…") != strings.HasSuffix(got, "…") {
			t.Errorf("%q became %q", c[0], got)
		}
	}
	if got := cut("thermocline", true, 1); got != "" {
		t.Errorf("%q in no room", got)
	}
}

// A unit stays with its number.
func TestWrap(t *testing.T) {
	if got := wrap("down to 29 ft", false, width("down to 29", false)); strings.Join(got, "|") != "down to|29 ft" {
		t.Errorf("%q", got)
	}
}
