package page

import (
	"strings"
	"testing"

	"coldseam/chart"
	"coldseam/profile/demo"
)

// figureOf is the figure of a page of text.
func figureOf(t testing.TB, page string) chart.Drop {
	t.Helper()
	return chart.Of(demo.Plan(t, page))
}

// lake is the figure of a demo page.
func lake(t testing.TB, name string) chart.Drop {
	t.Helper()
	return figureOf(t, demo.Page(t, name))
}

// three are three drops of one water over a year, the last in its own units.
func three(t testing.TB) []chart.Drop {
	spring := figureOf(t, "water: Alder Kettle\ndate: 2026-05-09\nunits: ft F\nbottom: 31 ft\n0 55\n5 54.6\n10 53.9\n15 50.1\n20 47.4\n25 46.2\n29 46\n")
	return []chart.Drop{spring, lake(t, "alder-kettle-july"), lake(t, "alder-kettle-january")}
}

// odd has a flagged reading, ones that were left out, and one deeper than the picture.
const odd = "units: ft F\nbottom: 30 ft\n0 74\n5 73\n8 73.9\n10 720\n15 65\n20 56\n25 52\n300 50\n"

func written(t testing.TB, o Options, drops ...chart.Drop) string {
	t.Helper()
	var b strings.Builder
	if err := Write(&b, o, drops); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
