package book

import (
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/notebook"
)

// TestEntries: drops come by date, several of a page each by itself, and a damaged page
// does not hide the others.
func TestEntries(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"b.txt": "water: Sedge Mere\ndate: 2026-06-02\nunits: ft F\n0 70\n5 69\n# not ended: coldseam drop goes on with it\n",
		"a.txt": "water: Alder Kettle\ndate: 2026-07-18 14:20\nunits: ft F\n0 74\n5 73\n---\nwater: Alder Kettle\ndate: 2025-07-01\nunits: ft F\n0 71\n5 70\n",
		"c.txt": "units: bananas\n0 70\n", "d.txt": "units: ft F\n0 60\n", "e.log": "0 70\n",
	} {
		edit(t, filepath.Join(dir, name), text)
	}
	got, err := At(dir, System{}).Entries(notebook.Options{})
	if err != nil || len(got) != 5 {
		t.Fatalf("%d entries, %v", len(got), err)
	}
	for i, want := range []string{"", "2025-07-01", "2026-06-02", "2026-07-18 14:20"} {
		if e := got[i]; e.Number != i+1 || e.Drop.Date != want || e.Err != nil || e.Unended != (want == "2026-06-02") {
			t.Errorf("entry %d: %+v", i, e)
		}
	}
	if e := got[4]; e.Number != 0 || e.Err == nil || !strings.Contains(e.Err.Error(), "bananas") || filepath.Base(e.Path) != "c.txt" {
		t.Errorf("the damaged page: %+v", e)
	}
	if got, err := At(filepath.Join(dir, "none"), System{}).Entries(notebook.Options{}); err != nil || got != nil {
		t.Errorf("a folder that is not there: %v, %v", got, err)
	}
}
