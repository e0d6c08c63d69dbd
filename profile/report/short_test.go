package report

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"coldseam/profile/demo"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
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
			text := string(data)
			if !strings.Contains(text, "wind:") && !strings.Contains(text, "sky:") {
				text = "wind: 18 mph\nsky: thunder far off\n" + text // the longest answer
			}
			b := Short(demo.PlanFor(t, text, f.Key), nil)
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

// TestCorrected: what the ice check and the line's angle did is said with an example.
func TestCorrected(t *testing.T) {
	p := demo.PlanFor(t, "units: ft F\nthermometer: reads 32.5 F in ice water\nline angle: 20\nbottom: 31 ft\n0 73.9\n10 72\n15 65\n20 56\n29 51\n", "rainbow")
	got := strings.Join(AsRead(p, nil), "\n")
	for _, want := range []string{"73.9 F typed, 73.4 used", "the line's angle, as noted: 29 ft typed, 27.8"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if got := AsRead(demo.PlanFor(t, july, "rainbow"), nil); len(got) != 1 {
		t.Errorf("nothing was corrected: %q", got)
	}
}

// TestMetricAlone: a metric plan has no feet, inches or degrees Fahrenheit in it.
func TestMetricAlone(t *testing.T) {
	imperial := regexp.MustCompile(`\d (ft|in|F|mph)\b|inches|feet`)
	for _, f := range fish.All() {
		for _, page := range []string{
			"units: m C\nbottom: 12 m\nwind: 8 m/s\nsky: thunder\n0 24\n3 23.5\n4 21\n5 17\n6 14\n8 11\n11 10\n",
			"units: m C\n0 0.4\n2 1.8\n5 3\n9 3.9\n", "units: m C\nbottom: 45 m\n0 21\n5 21\n10 20\n15 16\n20 9\n30 6\n44 5\n",
		} {
			p := demo.PlanFor(t, page, f.Key)
			for _, text := range append(strings.Split(Short(p, nil).Text(80), "\n"), all(p)) {
				for _, known := range []string{"12 ft to 3X", "9 ft to 3X", "0.020 in nylon"} { // names of what is in the box
					text = strings.ReplaceAll(text, known, "")
				}
				if bad := imperial.FindString(text); bad != "" {
					t.Errorf("%s: %q in %s", f.Key, bad, text)
				}
			}
		}
	}
}

// TestSentence: the numbers of the table in one sentence, and where there is no water to
// fish, why.
func TestSentence(t *testing.T) {
	b := Short(demo.PlanFor(t, july, "rainbow"), nil)
	want := "Fish 15 to 29 ft; fly 16 ft down; cast over 17 ft; leader 21.5 ft; thermocline 13 to 16 ft."
	if got := b.Sentence(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	b = Short(demo.PlanFor(t, "units: ft F\n0 80\n10 79.8\n20 79.5\n", "rainbow"), nil)
	if got := b.Sentence(); b.NoWater == "" || got != strings.TrimSuffix(b.NoWater, ".")+"." {
		t.Errorf("%q", got)
	}
	if got := (Brief{}).Sentence(); got != "" {
		t.Errorf("of nothing: %q", got)
	}
}

// TestOddest: a flagged reading is told before notes, never more than there is room for, and
// what is not told is counted.
func TestOddest(t *testing.T) {
	p := demo.PlanFor(t, strings.Replace(july, "17 61", "17 610", 1), "rainbow")
	var notes []notebook.Note
	for line := range 4 {
		notes = append(notes, notebook.Note{Line: line + 1, Text: "kept as a note"})
	}
	text := Short(p, notes).Text(80)
	if !strings.Contains(text, "610 F at 17 ft looks like a slipped digit") || !strings.Contains(text, "\n4 notes on how the page was read: --full.\n") || strings.Contains(text, "kept as a note") {
		t.Errorf("flagged, and four notes:\n%s", text)
	}
	if text = Short(demo.PlanFor(t, july, "rainbow"), notes[:2]).Text(80); !strings.Contains(text, "Line 2: kept as a note.") || strings.Contains(text, "--full") {
		t.Errorf("two notes:\n%s", text)
	}
}

// TestOneFlyDepth: all that is said of the fly's depth is the depth of the table.
func TestOneFlyDepth(t *testing.T) {
	said := regexp.MustCompile(`(?:hang the fly|mg/L at|at the fly's depth,) ([0-9.]+ (?:ft|m))`)
	pages, _ := filepath.Glob("../../testdata/*.txt")
	found := 0
	for _, page := range pages {
		data, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range fish.All() {
			p := demo.PlanFor(t, string(data), f.Key)
			if !p.Band.Found {
				continue
			}
			_, changes := Reasons(p)
			for _, text := range slices.Concat(Confirm(p), changes) {
				for _, m := range said.FindAllStringSubmatch(text, -1) {
					if found++; m[1] != speak(p).u.Length(p.FlyM()) {
						t.Errorf("%s for %s: %q, and the fly is %s down", page, f.Key, m[0], speak(p).u.Length(p.FlyM()))
					}
				}
			}
		}
	}
	if found < 50 {
		t.Errorf("only %d depths were looked at", found)
	}
}
