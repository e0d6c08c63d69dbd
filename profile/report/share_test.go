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
)

func TestShare(t *testing.T) {
	got := Share(demo.PlanFor(t, "water: Alder Kettle\n"+july, "rainbow"), false)
	want := `Alder Kettle, 2026-07-18, for rainbow trout
WARM WATER, 74 F on top: fish are likely to die if released.
Fish 15 to 29 ft; fly 16 ft down; cast over 17 ft; thermocline 13 to 16 ft.
Rig: floating line, long leader; leader 21.5 ft.
Confidence: depth good, oxygen unknown; oxygen is unknown in all of the band.
`
	if got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	if got := Share(demo.PlanFor(t, "units: m C\n0 24\n3 20\n6 12\n", "rainbow"), false); !strings.HasPrefix(got, "For rainbow trout, date not noted\n") {
		t.Error(got)
	}
	long := strings.Repeat("Alder ", 20)
	for spot, want := range map[bool]string{
		false: "Alder Alder Alder Alder Alder Alder Alde..., for rainbow trout, date not noted\n",
		true:  "Alder Alder Alder Alder Alder Alder Alde..., the inlet, for rainbow trout, date not noted\n",
	} {
		p := demo.PlanFor(t, "water: "+long+"\nspot: the inlet\nunits: m C\n0 24\n3 20\n6 12\n", "rainbow")
		if got := Share(p, spot); !strings.HasPrefix(got, want) {
			t.Errorf("spot %v: %s", spot, got)
		}
	}
	b := Brief{
		Title: "Marl Hole", Warnings: []string{"ICE: test it as you go. More."}, NoWater: "No water. Go home.",
		Rows: []Row{
			{"Fish", "11 to 26 ft", "61 F or less"}, {"Fly", "12 ft down", ""}, {"Hole over", "13 ft", ""}, {"Rig", "jig", "x"},
			{"Leader", "15 ft", ""}, {"Sink time", "9 s", ""}, {"Thermocline", "none", "one layer"},
		},
		Confidence: "Confidence: depth good, oxygen unknown; it was not measured.", Read: []string{"odd"}, Safety: []string{"Local rules."},
	}
	want = "Marl Hole\nICE: test it as you go.\nNo water.\nFish 11 to 26 ft; fly 12 ft down; hole over 13 ft.\nRig: jig; leader 15 ft.\nConfidence: depth good, oxygen unknown; it was not measured.\n"
	if got = b.share(); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// A message is short, in most cases of 320 letters, and in ASCII.
func TestShareFits(t *testing.T) {
	pages, _ := filepath.Glob("../../testdata/*.txt")
	for _, page := range pages {
		data, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range fish.All() {
			p := demo.PlanFor(t, string(data), f.Key)
			b, text := Short(p, nil), Share(p, false)
			lines, letters := strings.Count(text, "\n"), utf8.RuneCountInString(text)
			if most := 4 + len(b.Warnings); lines > most || len(b.Warnings) < 2 && letters > 370 {
				t.Errorf("%s for %s: %d lines, %d letters\n%s", page, f.Key, lines, letters, text)
			}
			if strings.ContainsFunc(text, func(r rune) bool { return r > '~' }) || slices.Contains(strings.Split(text, "\n"), "") && !strings.HasSuffix(text, "\n") {
				t.Errorf("%s for %s: %q", page, f.Key, text)
			}
		}
	}
}
