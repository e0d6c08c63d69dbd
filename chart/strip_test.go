package chart

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// planOf makes the plan of a page for rainbow trout with the default settings.
func planOf(t testingT, page string) (plan.Plan, bool) {
	sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "page"})
	if err != nil {
		t.Fatal(err)
	}
	f, err := fish.Find("rainbow")
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(plan.Input{Drop: sheets[0].Drop, Fish: f, Stock: rig.DefaultStock(), ClearanceM: plan.ClearanceM, LongestM: rig.LongestM, RodM: rig.RodM})
	return p, err == nil
}

// testingT is what tests, properties and benchmarks have in common.
type testingT interface {
	Fatal(...any)
}

const summer = "units: ft F\nbottom: 30 ft\n0 74\n5 73.5\n10 2\n15 65\n20 56\n25 52\n"

func TestStrip(t *testing.T) {
	p, _ := planOf(t, summer)
	got := Strip(p)
	for _, want := range []string{
		"\n    0    74.0    |                                       o|\n", // the warmest stands at the right end
		"\n   25    52.0 #  |o                                       |\n", // the coldest at the left, in the band
		"\n   10    2.0! ", // not used, but in sight, at its own depth
		"BOTTOM",
		"! not used",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// TestStripFits: whatever was read, the strip is no wider than 80 columns and no
// longer than 40 rows, and the rows go down.
func TestStripFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		depthUnit := rapid.SampledFrom([]string{"ft", "m"}).Draw(t, "unit")
		var b strings.Builder
		fmt.Fprintf(&b, "units: %s C\n", depthUnit)
		z := 0.0
		for range rapid.IntRange(1, 30).Draw(t, "n") {
			fmt.Fprintf(&b, "%.1f: %.1f\n", z, rapid.Float64Range(0, 30).Draw(t, "temp"))
			z += rapid.Float64Range(0.2, 9).Draw(t, "step")
		}
		p, ok := planOf(t, b.String())
		if !ok {
			return
		}
		lines := strings.Split(strings.TrimRight(Strip(p), "\n"), "\n")
		if len(lines) > 40 {
			t.Fatalf("%d rows", len(lines))
		}
		last := -1.0
		for _, l := range lines {
			if n := len([]rune(l)); n > 80 {
				t.Fatalf("%d columns: %s", n, l)
			}
			var d float64
			if n, _ := fmt.Sscanf(l, "%f", &d); n == 1 && strings.Contains(l, "|") {
				if d < last {
					t.Fatalf("the depth goes up from %v to %v in\n%s", last, d, strings.Join(lines, "\n"))
				}
				last = d
			}
		}
	})
}

func TestStripOfDemos(t *testing.T) {
	pages, _ := filepath.Glob("../testdata/*.txt")
	for _, page := range pages {
		data, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		p, ok := planOf(t, string(data))
		if !ok {
			t.Fatalf("%s gave no plan", page)
		}
		if s := Strip(p); !strings.Contains(s, "o reading") || s != Strip(p) {
			t.Errorf("%s:\n%s", page, s)
		}
	}
}

func BenchmarkStrip(b *testing.B) {
	p, _ := planOf(b, summer)
	b.ReportAllocs()
	for b.Loop() {
		Strip(p)
	}
}
