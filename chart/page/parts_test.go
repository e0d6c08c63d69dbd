package page

import (
	"strings"
	"testing"

	"coldseam/chart"
)

// Each name that somebody wrote stands by itself, so that one from right to left turns
// nothing else round, and nothing of a title is lost.
func TestParts(t *testing.T) {
	d := figureOf(t, "water: עין הסלע\nspot: שפך\ndate: 2026-07-18\nunits: ft F\n0 74\n5 73\n15 65\n20 58\n")
	want := "<h1><bdi>עין הסלע</bdi>, <bdi>שפך</bdi>, 2026-07-18, for rainbow trout</h1>"
	if page := written(t, Options{}, d); !strings.Contains(page, want) {
		t.Errorf("no %q", want)
	}
	for _, title := range []string{"A, B, for trout", "B", "", "AA, BA", "x A y A z"} {
		whole := ""
		for _, p := range parts(title, chart.Drop{Water: "A", Spot: "BA"}, chart.Drop{Water: " ", Spot: "B"}) {
			whole += p.Text
			if is := p.Text == "A" || p.Text == "B" || p.Text == "BA"; p.Name && !is {
				t.Errorf("%q: %q is no name", title, p.Text)
			}
		}
		if whole != title {
			t.Errorf("%q came back as %q", title, whole)
		}
	}
}
