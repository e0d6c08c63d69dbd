package page

import (
	"os"
	"strings"
	"testing"

	"coldseam/chart/figure"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// figureOf is the figure of a page of text, for rainbow trout.
func figureOf(t testing.TB, page string) figure.Drop {
	t.Helper()
	sheets, err := notebook.Read([]byte(page), notebook.Options{})
	if err != nil {
		t.Fatal(err)
	}
	f, err := fish.Find("rainbow")
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(plan.Input{Drop: sheets[0].Drop, Fish: f, Stock: rig.DefaultStock(), ClearanceM: plan.ClearanceM, LongestM: rig.LongestM, RodM: rig.RodM})
	if err != nil {
		t.Fatal(err)
	}
	return figure.Of(p)
}

func demo(t testing.TB, name string) figure.Drop {
	t.Helper()
	b, err := os.ReadFile("../../testdata/" + name + ".txt")
	if err != nil {
		t.Fatal(err)
	}
	return figureOf(t, string(b))
}

// three are three drops of one water over a year, the last in its own units.
func three(t testing.TB) []figure.Drop {
	spring := figureOf(t, "water: Alder Kettle\ndate: 2026-05-09\nunits: ft F\nbottom: 31 ft\n0 55\n5 54.6\n10 53.9\n15 50.1\n20 47.4\n25 46.2\n29 46\n")
	return []figure.Drop{spring, demo(t, "alder-kettle-july"), demo(t, "alder-kettle-january")}
}

// odd has a flagged reading, ones that were left out, and one deeper than the picture.
const odd = "units: ft F\nbottom: 30 ft\n0 74\n5 73\n8 73.9\n10 720\n15 65\n20 56\n25 52\n300 50\n"

func written(t testing.TB, o Options, drops ...figure.Drop) string {
	t.Helper()
	var b strings.Builder
	if err := Write(&b, o, drops); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
