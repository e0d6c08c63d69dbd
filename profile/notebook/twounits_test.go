package notebook

import (
	"strings"
	"testing"

	"coldseam/profile/unit"
)

// Each drop of a page may have units of its own, parted by a rule, a date or the units
// themselves; what order their numbers stand in is looked at drop by drop.
func TestUnitsOfEachDrop(t *testing.T) {
	const feet, metres = "0 74\n5 73.5\n10 72\n15 65\n20 56\n25 52\n", "0 23\n2 22.5\n4 18\n6 13\n8 11\n"
	for name, page := range map[string]string{
		"a rule":            "units: ft F\nbottom: 30\n" + feet + "---\nunits: m C\nbottom: 9\n" + metres,
		"a date":            "units: ft F\nbottom: 30\n" + feet + "\nunits: m C\ndate: 2026-07-19\nbottom: 9\n" + metres,
		"a blank line":      "units: ft F\nbottom: 30\n" + feet + "\nunits: m C\nbottom: 9\n" + metres,
		"the units alone":   "units: ft F\nbottom: 30\n" + feet + "units: m C\nbottom: 9\n" + metres,
		"temperature first": "units: ft F\nbottom: 30\n" + swapped(feet) + "---\nunits: m C\nbottom: 9\n" + swapped(metres),
	} {
		sheets, err := Read([]byte(page), Options{Name: "p"})
		if err != nil || len(sheets) != 2 {
			t.Errorf("%s: %d drops, %v", name, len(sheets), err)
			continue
		}
		for i, want := range []struct {
			u        unit.System
			bottomM  float64
			readings string
		}{
			{unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, 9.144, "0 ft: 74 F, 5 ft: 73.5 F, 10 ft: 72 F, 15 ft: 65 F, 20 ft: 56 F, 25 ft: 52 F\n"},
			{unit.System{Depth: unit.Metre, Temp: unit.Celsius}, 9, "0 m: 23 C, 2 m: 22.5 C, 4 m: 18 C, 6 m: 13 C, 8 m: 11 C\n"},
		} {
			if d := sheets[i].Drop; d.Units != want.u || d.Bottom.Value != want.bottomM || !strings.HasPrefix(everything(sheets[i:i+1], nil), want.readings) {
				t.Errorf("%s, drop %d: %v, bottom %v\n%s", name, i+1, d.Units, d.Bottom.Value, everything(sheets[i:i+1], nil))
			}
		}
	}
	if sheets, err := Read([]byte("units: ft F\n0 74\n5 73\nunits: ft F\n10 72\n15 60\n"), Options{Name: "p"}); err != nil || len(sheets) != 1 {
		t.Errorf("the same units again: %d drops, %v", len(sheets), err)
	}
}

// swapped writes each reading with its temperature first.
func swapped(page string) string {
	var b strings.Builder
	for _, l := range strings.Split(strings.TrimSpace(page), "\n") {
		depth, temp, _ := strings.Cut(l, " ")
		b.WriteString(temp + " " + depth + "\n")
	}
	return b.String()
}
