package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestDropAgain: what holds for a water and a boat is taken over from the last drop of it and
// said; a day's own facts are not, a flag wins, and the bottom comes with the spot alone.
func TestDropAgain(t *testing.T) {
	noSettings(t)
	saved := func(t *testing.T) string {
		dir := t.TempDir()
		for name, text := range map[string]string{
			"a.txt": "water: Alder Kettle\nspot: north bay\ndate: 2026-07-01\nunits: ft F\nbottom: 31 ft\ndeepest: 40 ft\nsecchi: 9 ft\nwind: SW 8 mph\nsky: clear\nline angle: 10\nmarks at: water\nthermometer: reads 32.5 F in ice water\nfor: brook trout\nnote: mist\n0 74\n5 73\n10 66\n",
			"b.txt": "water: Sedge Mere\ndate: 2026-07-02\nunits: m C\nbottom: 6 m\n0 20\n2 19\n4 15\n",
		} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		return dir
	}
	newPage := func(t *testing.T, dir string) string {
		files, _ := filepath.Glob(filepath.Join(dir, "2026-*.txt"))
		if len(files) != 1 {
			t.Fatalf("%d new pages", len(files))
		}
		data, _ := os.ReadFile(files[0])
		return string(data)
	}
	for _, c := range []struct {
		name         string
		args         []string
		said         string
		has, without []string
	}{
		{"the last drop", nil, "Taken over from drop 2 (Sedge Mere, 2026-07-02): water Sedge Mere, units m C.", []string{"water: Sedge Mere", "units: m C", "bottom: 6 m"}, []string{"for:"}},
		{"of a water", []string{"--water", "alder kettle"}, "Taken over from drop 1 (Alder Kettle, north bay, 2026-07-01): spot north bay, for brook trout, units ft F, deepest 40 ft, marks at water, thermometer",
			[]string{"water: alder kettle", "spot: north bay", "bottom: 31 ft", "for: brook trout", "deepest: 40 ft", "marks at: water", "thermometer: "}, []string{"secchi:", "wind:", "sky:", "line angle:", "note:", "2026-07-01"}},
		{"at its spot", []string{"--water", "Alder Kettle", "--spot", "North Bay", "--for", "perch"}, "The bottom is taken to be at 31 ft, as in drop 1: check it", []string{"bottom: 31 ft", "for: perch"}, []string{"brook"}},
		{"at another", []string{"--water", "Alder Kettle", "--spot", "dam"}, "Taken over", []string{"spot: dam"}, []string{"bottom:", "north bay"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := saved(t)
			typed := "skip\n0 20 C\nstop\n"
			status, _, errOut := dropWith(t, dir, typed, append([]string{"--again"}, c.args...)...)
			said := strings.Join(strings.Fields(errOut), " ")
			if status != 0 || !strings.Contains(said, c.said) {
				t.Fatalf("status %d: %s", status, errOut)
			}
			page := newPage(t, dir)
			for _, s := range c.has {
				if !strings.Contains(page, s) {
					t.Errorf("%q is missing:\n%s", s, page)
				}
			}
			for _, s := range c.without {
				if strings.Contains(page, s) {
					t.Errorf("%q was taken over:\n%s", s, page)
				}
			}
		})
	}
	status, out, errOut := dropWith(t, t.TempDir(), "", "--again")
	if status != 2 || out != "" || !oneError(errOut) || !strings.Contains(errOut, "--again: there is no drop of this water") {
		t.Errorf("status %d, %q", status, errOut)
	}
}
