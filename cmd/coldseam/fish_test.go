package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"coldseam/profile/fish"
)

// withFishSettings makes a text the settings of this test.
func withFishSettings(t *testing.T, text string) {
	t.Helper()
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	if err := os.MkdirAll(filepath.Join(dir, "coldseam"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "coldseam", "settings.toml"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func fishRun(t *testing.T, args ...string) string {
	t.Helper()
	status, out, errOut := runWith(t, "", append([]string{"fish"}, args...)...)
	if status != 0 || errOut != "" {
		t.Fatalf("%v: status %d, %s", args, status, errOut)
	}
	return out
}

// TestFishNarrow: the table and each fish are within 80 columns on either scale and on
// both.
func TestFishNarrow(t *testing.T) {
	noSettings(t)
	for _, units := range [][]string{nil, {"--units", "m C"}, {"--units=ft F"}} {
		calls := [][]string{units}
		for _, f := range fish.All() {
			calls = append(calls, append(strings.Fields(f.Key), units...)) // flags may follow
		}
		for _, args := range calls {
			for _, line := range strings.Split(fishRun(t, args...), "\n") {
				if n := utf8.RuneCountInString(line); n > 80 {
					t.Errorf("%v: %d columns: %s", args, n, line)
				}
			}
		}
	}
}

func TestFishUnits(t *testing.T) {
	noSettings(t)
	before := fishRun(t, "--units", "F", "lake", "trout")
	if after := fishRun(t, "lake", "trout", "--units", "F"); after != before || !strings.Contains(after, "comfortable up to   54 F ") { // 12 C
		t.Errorf("%s\n%s", before, after)
	}
	if out := fishRun(t, "Lake-Trout"); !strings.Contains(out, "12 C (54 F)") {
		t.Errorf("no unit stated:\n%s", out)
	}
	withFishSettings(t, "units = \"ft F\"\n")
	if out := fishRun(t, "lakers"); out != before {
		t.Errorf("units of the settings:\n%s", out)
	}
	if out := fishRun(t, "lakers", "--units", "C"); !strings.Contains(out, "comfortable up to   12 C ") {
		t.Errorf("the flag wins:\n%s", out)
	}
}

func TestFishUnknown(t *testing.T) {
	noSettings(t)
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"wlaleye"}, `did you mean walleye?`},
		{[]string{"wlaleye", "--json"}, `did you mean walleye?`},
		{[]string{"white", "fish"}, "did you mean lake whitefish or mountain whitefish?"},
		{[]string{"unicorn"}, "'coldseam fish' lists them"},
		{[]string{"pike", "--units", "leagues"}, "--units: "},
	} {
		status, out, errOut := runWith(t, "", append([]string{"fish"}, c.args...)...)
		if status != 2 || out != "" || strings.Count(errOut, "\n") != 1 || !strings.Contains(errOut, c.want) {
			t.Errorf("%v: status %d, %q, %q", c.args, status, out, errOut)
		}
	}
}

// TestFishOfSettings: an own fish stands in the table, is found by its names, and a
// wrong one is refused by its line.
func TestFishOfSettings(t *testing.T) {
	withFishSettings(t, `units = "ft F"
[[fish]]
name = "rainbow"
comfort = "55 to 62 F"
alias = "slab"
source = "my own notes"
[[fish]]
name = "pond special"
like = "walleye"
`)
	table := fishRun(t)
	for _, want := range []string{"\nrainbow            coldwater     55 to 62 ", "\npond special       coolwater     64 to 73 "} {
		if strings.Count(table, want) != 1 {
			t.Errorf("want %q once in\n%s", want, table)
		}
	}
	if out := fishRun(t, "slabs"); !strings.Contains(out, "comfortable up to   62 F      my own notes") || !strings.Contains(out, "Oncorhynchus mykiss") {
		t.Error(out)
	}
	var one map[string]any
	if err := json.Unmarshal([]byte(fishRun(t, "--json", "slab")), &one); err != nil || one["key"] != "rainbow" || one["comfort_high_c"] != 16.667 { // 62 F
		t.Errorf("%v, %v", one, err)
	}
	withFishSettings(t, "[[fish]]\nname = \"rainbow\"\nuse_up_to = \"50 F\"\n")
	status, out, errOut := runWith(t, "", "fish")
	if status != 2 || out != "" || !strings.Contains(errOut, "settings.toml:3: use_up_to: ") {
		t.Errorf("status %d, %q, %q", status, out, errOut)
	}
}

func TestFishAsJSON(t *testing.T) {
	noSettings(t)
	var list []map[string]any
	text := fishRun(t, "--json")
	if err := json.Unmarshal([]byte(text), &list); err != nil || len(list) != len(fish.All()) || strings.Count(text, "\n") != 1 {
		t.Fatalf("%d fishes, %v: %s", len(list), err, text)
	}
	for i, f := range fish.All() {
		var one map[string]any
		if err := json.Unmarshal([]byte(fishRun(t, f.Key, "--json", "--units", "ft F")), &one); err != nil {
			t.Fatal(err)
		}
		if list[i]["key"] != f.Key || one["key"] != f.Key || one["comfort_high_c"] != list[i]["comfort_high_c"] {
			t.Errorf("%s: %v, %v", f.Key, list[i]["key"], one["key"])
		}
	}
	if !strings.Contains(text, "McMahon & Zale") {
		t.Error("an ampersand is escaped")
	}
}
