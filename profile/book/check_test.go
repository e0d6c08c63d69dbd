package book

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"coldseam/profile/notebook"
)

// TestCheck: each file that somebody should look at is named, once for each trouble, in
// the order of names; what is well is not.
func TestCheck(t *testing.T) {
	b := open(t, System{})
	for name, text := range map[string]string{
		"a.txt": "water: Alder Kettle\ndate: 2026-07-18\nunits: ft F\n0 74\n5 73\n10 66\n", "a.probe": "+1.000 18.3\n",
		"b.txt":      "water: alder kettle\ndate: 2026-07-18\nunits: ft F\n0 74\n10 66\n5 73\n",
		"bad.txt":    "units: bananas\n0 74\n",
		"c.txt":      "units: ft F\n0 74\n5 73\n",
		"d.txt":      "date: 2026-07-19\nunits: ft F\n0 74\n5 73\n10 2\n15 66\n20 58\n",
		"e.txt":      "date: 2026-07-01\nunits: ft F\n0 74\n5 73\n---\ndate: 2026-07-02\nunits: ft F\n0 74\n5 72\n",
		"f.txt":      "water: Sedge Mere\ndate: 2026-07-03\n",
		"g.txt":      "date: 2026-07-04\nunits: ft F\n0 74\n5 73\n# not ended: coldseam drop goes on with it\n",
		"h.txt.part": "date", "i.edited": "0 74", "j.probe": "+1.000 18.3\n", "k.jpg": "",
		"today.txt": "date: 2026-07-18 23:59\nunits: ft F\n0 74\n5 73\n",
	} {
		edit(t, filepath.Join(b.Dir, name), text)
	}
	got, err := b.Check(time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC), notebook.Options{Unread: true})
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, f := range got.Findings {
		said = append(said, fmt.Sprintf("%s:%d %s %s%s", f.File, f.Line, f.Trouble, f.Other, f.Date))
	}
	want := []string{
		"b.txt:0 same drop twice a.txt2026-07-18", "bad.txt:1 cannot be read ", "c.txt:0 no date ", "d.txt:0 date to come 2026-07-19", "d.txt:5 odd reading 2026-07-19",
		"e.txt:0 several drops ", "f.txt:0 no readings ", "g.txt:0 not ended ", "h.txt.part:0 left by a save ", "i.edited:0 changed by hand ", "j.probe:0 record without a page ",
	}
	if !slices.Equal(said, want) || got.Drops != 9 || got.Pages != 9 || got.Damaged != 1 {
		t.Errorf("%d drops, %d pages, %d damaged:\n%q, want\n%q", got.Drops, got.Pages, got.Damaged, said, want)
	}
	if got, err := At(filepath.Join(b.Dir, "none"), System{}).Check(time.Now(), notebook.Options{}); err != nil || got.Pages != 0 || got.Findings != nil {
		t.Errorf("a folder that is not there: %+v, %v", got, err)
	}
	if _, err := At(filepath.Join(b.Dir, "a.txt"), System{}).Check(time.Now(), notebook.Options{}); err == nil {
		t.Error("a file was taken for a book")
	}
	if _, err := os.Stat(filepath.Join(b.Dir, "h.txt.part")); err != nil {
		t.Errorf("a check changed something: %v", err)
	}
}
