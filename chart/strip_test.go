package chart

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile/demo"
)

const summer = "units: ft F\nbottom: 30 ft\n0 74\n5 73.5\n10 2\n15 65\n20 56\n25 52\n"

func TestStrip(t *testing.T) {
	p := demo.Plan(t, summer)
	got := Strip(Of(p), 80, 40)
	for _, want := range []string{
		"\n    0    74.0    |                                       o|\n", // the warmest stands at the right end
		"\n   25    52.0 ?= |o                                       |\n", // the coldest at the left, in the band, its oxygen unknown
		"\n   10    2.0! ", // not used, but in sight, at its own depth
		"BOTTOM",
		"! not used",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// TestStripFits: whatever was read, the strip is no wider and no longer than the terminal, and
// the rows go down.
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
		p, err := demo.Try(t, b.String(), "rainbow")
		if err != nil {
			return
		}
		cols, rows := rapid.IntRange(40, 100).Draw(t, "cols"), rapid.IntRange(24, 40).Draw(t, "rows")
		lines := strings.Split(strings.TrimRight(Strip(Of(p), cols, rows), "\n"), "\n")
		if len(lines) > rows {
			t.Fatalf("%d lines, want %d at most:\n%s", len(lines), rows, strings.Join(lines, "\n"))
		}
		last := -1.0
		for _, l := range lines {
			if n := len([]rune(l)); n > cols {
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

// Every reading shows with its own depth and number, and so do the bottom and every
// layer's name, in any unit and at any depth: nothing falls between two rows, and
// nothing that has no room beside a row is dropped.
func TestStripLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom([]string{"ft F", "m C", "ft C", "m F"}).Draw(t, "units")
		var b strings.Builder
		fmt.Fprintf(&b, "units: %s\n", u)
		n := rapid.IntRange(1, 12).Draw(t, "n")
		tenths := rapid.IntRange(0, 30).Draw(t, "first")
		for range n {
			fmt.Fprintf(&b, "%.1f: %.1f\n", float64(tenths)/10, float64(rapid.IntRange(410, 800).Draw(t, "temp"))/10)
			tenths += rapid.IntRange(1, 90).Draw(t, "step")
		}
		bottom := float64(tenths+rapid.IntRange(0, 400).Draw(t, "under")) / 10
		fmt.Fprintf(&b, "bottom: %.1f %s\n", bottom, u[:strings.Index(u, " ")])
		page := b.String()
		if strings.HasSuffix(u, "C") { // the same water
			page = regexp.MustCompile(`: (\d+\.\d)\n`).ReplaceAllStringFunc(page, func(s string) string {
				f, _ := strconv.ParseFloat(s[2:len(s)-1], 64)
				return fmt.Sprintf(": %.1f\n", (f-32)*5/9)
			})
		}
		p, err := demo.Try(t, page, "rainbow")
		if err != nil {
			return
		}
		got := Strip(Of(p), 80, 40)
		shown := p.Drop.Units.Shown()
		for _, r := range p.Drop.Readings {
			mark := ""
			if !r.Used() {
				mark = "!"
			}
			want := regexp.MustCompile(fmt.Sprintf(`(?m)^ *%g +%.1f%s`, math.Round(shown.Depth.From(r.DepthM)*10)/10, shown.Temp.FromC(r.TempC), mark))
			row := want.FindString(got)
			if row == "" || r.Used() && !regexp.MustCompile(want.String()+`.*\|.*o.*\|`).MatchString(got) {
				t.Fatalf("the reading of %.1f at %g is missing from\n%s\n%s", shown.Temp.FromC(r.TempC), shown.Depth.From(r.DepthM), page, got)
			}
		}
		if !regexp.MustCompile(fmt.Sprintf(`(?m)^ *%g .*(\n {13}.*)*BOTTOM`, bottom)).MatchString(got) {
			t.Fatalf("the bottom at %g is missing from\n%s\n%s", bottom, page, got)
		}
		if start := p.FlyM(); p.Band.Found && !regexp.MustCompile(`(?m)^ *`+shown.Mark(start)+`(\.\d+)? .*(\n {13}.*)*fly`).MatchString(got) {
			t.Fatalf("the fly at %s is missing from\n%s\n%s", shown.Length(start), page, got)
		}
		if p.Layers.Thermocline != nil && !strings.Contains(got, "thermocline") {
			t.Fatalf("the thermocline is missing from\n%s", got)
		}
	})
}

// More readings than rows of their own: each is a dot still, the deepest and the bottom
// have their rows, and the strip says that it does not print every number.
func TestStripCrowded(t *testing.T) {
	page := "units: ft F\nbottom: 81 ft\n"
	for z := range 80 {
		page += fmt.Sprintf("%d %.1f\n", z, 75-float64(z)/4)
	}
	p := demo.Plan(t, page)
	got := Strip(Of(p), 80, 40)
	for _, want := range []string{"\n   79    55.2 ", "BOTTOM", "80 readings, not every one printed"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if n := strings.Count(got, "\n"); n > 35 {
		t.Errorf("%d rows", n)
	}
}

// A reading far below anything plausible is in sight, and does not press the rest
// together.
func TestStripAbsurdDepth(t *testing.T) {
	p := demo.Plan(t, strings.Replace(summer, "10 2\n", "300 51\n", 1))
	if got := Strip(Of(p), 80, 40); !strings.Contains(got, "\n  300   51.0! ") || !strings.Contains(got, "\n   15    65.0 ") || !strings.Contains(got, "not to scale") {
		t.Errorf("got\n%s", got)
	}
}

func TestStripOfDemos(t *testing.T) {
	for _, page := range demo.Pages(t) {
		data, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		p := demo.Plan(t, string(data))
		if s := Strip(Of(p), 80, 40); !strings.Contains(s, "o reading") || s != Strip(Of(p), 80, 40) {
			t.Errorf("%s:\n%s", page, s)
		}
	}
}

func BenchmarkStrip(b *testing.B) {
	p := demo.Plan(b, summer)
	b.ReportAllocs()
	for b.Loop() {
		Strip(Of(p), 80, 40)
	}
}

// At a bottom that lies halfway between two rows, and at every other, the deepest reading and
// the bottom are in the strip of the smallest usual terminal.
func TestStripBottom(t *testing.T) {
	for bottom := 21; bottom <= 60; bottom++ {
		got := Strip(Of(demo.Plan(t, fmt.Sprintf("units: ft F\nbottom: %d ft\n0 74\n5 73\n10 70\n15 62\n20 55\n%d 50\n", bottom, bottom))), 80, 24)
		if !regexp.MustCompile(fmt.Sprintf(`(?m)^ +%d +50\.0 .*\|o.*BOTTOM`, bottom)).MatchString(got) {
			t.Errorf("bottom %d:\n%s", bottom, got)
		}
	}
}

// Depths that are far apart leave those that are close their own rows.
func TestStripDeep(t *testing.T) {
	got := Strip(Of(demo.Plan(t, "units: ft F\nbottom: 900 ft\n0 74\n5 73\n10 70\n15 62\n20 55\n100 41\n300 40\n900 39.2\n")), 80, 24)
	for _, depth := range []string{"0 ", "5 ", "10", "15", "20", "100", "300", "900"} {
		if !regexp.MustCompile(`(?m)^ +` + depth + ` +\d+\.\d .*\|.*o.*\|`).MatchString(got) {
			t.Errorf("no row of %s ft in\n%s", depth, got)
		}
	}
}
