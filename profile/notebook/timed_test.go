package notebook

import "testing"

// What an angler writes below the readings does not change what the page is for, and a
// line of units alone is one.
func TestLinesOfFewWords(t *testing.T) {
	for _, c := range []struct{ page, fish, units, wind string }{
		{"units: ft F\n0 74\n5 73\n10 60\n18:40 - perch, 5 m\n", "", "ft F", ""},
		{"units: ft F\n0 74\n5 73\n10 60\n6:40 pm perch\n", "", "ft F", ""},
		{"units: ft F\n0 74\n5 73\n10 60\nperch\n", "perch", "ft F", ""},
		{"Alder Kettle, 6:40 am, perch\nunits: ft F\n0 74\n5 73\n10 60\n", "perch", "ft F", ""},
		{"ft F\n0 22\n5 21\n10 20\n", "", "ft F", ""},
		{"m, C\n0 22\n5 21\n10 20\n", "", "m C", ""},
		{"wind S, 12 mph\nft F\n0 74\n5 73\n10 60\n", "", "ft F", "12 mph from S"},
		{"wind from the NW, 10-15 mph\nft F\n0 74\n5 73\n10 60\n", "", "ft F", "15 mph from NW"},
	} {
		sheets, err := Read([]byte(c.page), Options{})
		if err != nil || len(sheets) != 1 {
			t.Errorf("%q: %d drops, %v", c.page, len(sheets), err)
			continue
		}
		d := sheets[0].Drop
		if got := getWind(&d); d.For != c.fish || d.Units.String() != c.units || got != c.wind || len(d.Readings) != 3 {
			t.Errorf("%q: for %q, units %q, wind %q, %d readings", c.page, d.For, d.Units.String(), got, len(d.Readings))
		}
	}
}

// The title of a second drop is one with its date, its units and its bottom between it and
// the readings too; a note among readings is none.
func TestTitleOfASecondDrop(t *testing.T) {
	const first = "Marl Hole, north bay\n2026-06-01 12h47\nm C\n0.5 15\n2 14\n4 10\n9 7\n"
	for _, c := range []struct{ between, spot string }{
		{"---\n\nMarl Hole, south bay\n2026-06-14 17h50\nm C\nfond 14 m\nfor walleye\n", "south bay"},
		{"---\nMarl Hole, south bay\n2026-06-14 17h50\n", "south bay"},
		{"\nMarl Hole, south bay\ndate: 2026-06-14\n", "south bay"},
		{"\nMarl Hole, south bay\n", "south bay"},
		{"---\nlots of swallows about\n2026-06-14 17h50\n", ""},
	} {
		sheets, err := Read([]byte(first+c.between+"0.5 16\n2 15\n4 11\n9 7\n"), Options{})
		if err != nil || len(sheets) != 2 {
			t.Errorf("%q: %d drops, %v", c.between, len(sheets), err)
			continue
		}
		if d := sheets[1].Drop; d.Spot != c.spot || d.Water != "Marl Hole" || len(d.Readings) != 4 || sheets[0].Drop.Spot != "north bay" {
			t.Errorf("%q: water %q, spot %q, %d readings", c.between, d.Water, d.Spot, len(d.Readings))
		}
	}
}
