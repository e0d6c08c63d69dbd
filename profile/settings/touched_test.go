package settings

import (
	"strings"
	"testing"

	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// A bottom that was touched is written as an angler writes one, and read back as it was.
func TestAddTouched(t *testing.T) {
	feet, metres := unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, unit.System{Depth: unit.Metre}
	for _, c := range []struct {
		contact rig.BottomContact
		units   unit.System
		want    string
	}{
		{rig.BottomContact{Kind: rig.LongLeader, DepthM: 17 * 0.3048, S: 95.4}, feet, "rig = \"long-leader\"\ndepth = \"17 ft\"\nafter = \"95 s\"\n"},
		{rig.BottomContact{Kind: rig.Hung, DepthM: 4.75, S: 60}, metres, "rig = \"hung\"\ndepth = \"4.75 m\"\nafter = \"60 s\"\n"},
	} {
		for _, before := range []string{"", "# mine\nrod = \"9 ft\"\n", "[[touched]]\nrig = \"hung\"\ndepth = \"12 ft\"\nafter = \"52 s\"\n"} {
			text, err := AddTouched(before, c.contact, c.units)
			if err != nil || !strings.HasPrefix(text, before) || !strings.HasSuffix(text, "[[touched]]\n"+c.want) {
				t.Errorf("%q, %v", text, err)
			}
			set, err := Parse("settings", []byte(text))
			if err != nil {
				t.Fatal(err)
			}
			last := set.BottomContacts[len(set.BottomContacts)-1]
			if last.Kind != c.contact.Kind || last.DepthM-c.contact.DepthM > 1e-9 || c.contact.DepthM-last.DepthM > 1e-9 || last.S-c.contact.S > 0.5 || c.contact.S-last.S > 0.5 {
				t.Errorf("%v was read back as %v", c.contact, last)
			}
		}
	}
	for _, c := range []rig.BottomContact{{Kind: rig.LongLeader, DepthM: 5, S: 2}, {Kind: rig.LongLeader, DepthM: 5, S: 601}, {Kind: rig.LongLeader, DepthM: 0.5, S: 60}, {Kind: rig.LongLeader, DepthM: 31, S: 60}} {
		if text, err := AddTouched("", c, feet); err == nil || text != "" {
			t.Errorf("%v: %q, %v", c, text, err)
		}
	}
	for m, want := range map[float64]bool{0.9: false, 1: true, 30: true, 30.1: false} {
		if LikelyWater(m) != want {
			t.Errorf("%v m: %v", m, !want)
		}
	}
}
