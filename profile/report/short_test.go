package report

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"coldseam/profile/demo"
	"coldseam/profile/fish"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

const july = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\n0 74\n5 73.5\n10 72\n13 70\n15 65\n17 61\n20 56\n25 52\n29 51\n"

// TestShortFits: the answer at a glance fits a screen of 80 by 24 with the closing line
// and the prompt, for every demo page and fish, and no line is wider than the terminal.
func TestShortFits(t *testing.T) {
	pages, _ := filepath.Glob("../../testdata/*.txt")
	if len(pages) < 4 {
		t.Fatal("no demo pages")
	}
	for _, page := range pages {
		data, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range fish.All() {
			b := Short(demo.PlanFor(t, string(data), f.Key), nil)
			for _, width := range []int{40, 60, 80, 100} {
				text := b.Text(width)
				for _, line := range strings.Split(text, "\n") {
					if utf8.RuneCountInString(line) > width || strings.TrimRight(line, " ") != line {
						t.Errorf("%s for %s: %d columns: %q", page, f.Key, width, line)
					}
				}
				if n := strings.Count(text, "\n"); width == 80 && n > 22 {
					t.Errorf("%s for %s: %d lines\n%s", page, f.Key, n, text)
				}
				for _, bad := range []string{"NaN", "Inf", "%!", "..", " 0 ft down", " 0 m down"} {
					if strings.Contains(text, bad) {
						t.Errorf("%s for %s: %q in\n%s", page, f.Key, bad, text)
					}
				}
			}
		}
	}
}

// TestShortRows: every number of the table is the plan's.
func TestShortRows(t *testing.T) {
	p := demo.PlanFor(t, july, "rainbow")
	s := speak(p)
	b := Short(p, nil)
	for label, want := range map[string]string{
		"Fly":         s.u.Length(p.Rig.FlyM) + " down",
		"Cast over":   s.u.Length(p.Band.WaterM),
		"Leader":      s.u.Piece(p.Rig.LeaderM),
		"Sink time":   seconds(p.Rig.SinkTime.Best) + " s",
		"Thermocline": s.u.Span(p.Layers.Thermocline.Low, p.Layers.Thermocline.High),
	} {
		i := slices.IndexFunc(b.Rows, func(r Row) bool { return r.Label == label })
		if i < 0 || b.Rows[i].Value != want {
			t.Errorf("%s: %+v, want %s", label, b.Rows, want)
		}
	}
}

// TestToday: every caution that can hurt somebody today has its line; what only asks for
// care later has none.
func TestToday(t *testing.T) {
	p := demo.PlanFor(t, july, "rainbow")
	p.Fish.CanVent = false
	s := speak(p)
	for c, want := range map[plan.Caution]string{
		plan.Warm70: "No catch and release", plan.Warm68: "land fish fast", plan.Thunder: "off the water now", plan.Wind: "Come in",
		plan.Pressure: "may not survive release", plan.Ice: "never go alone", plan.Cold: "Wear the life jacket",
		plan.Warm65: "", plan.Anchors: "", plan.Rules: "",
	} {
		if got := s.today(c); (got == "") != (want == "") || !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q", c, got, want)
		}
	}
	s.p.Fish.CanVent = true
	if got := s.today(plan.Pressure); got != "" {
		t.Errorf("a fish that can let gas out: %q", got)
	}
	s.p.Rules = rig.Rules{Water: "Alder Kettle", MaxFlies: 1}
	if got := s.today(plan.Rules); !strings.Contains(got, "one fly at most") {
		t.Errorf("noted rules: %q", got)
	}
}
