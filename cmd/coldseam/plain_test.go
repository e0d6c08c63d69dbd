package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"coldseam/profile/notebook"
)

// hostile holds a colour (ESC and its one-byte form), a bell, a turn of direction, line
// ends of four kinds, a tag and bytes that are no UTF-8.
const hostile = "a\x1b[31mb\u009b2Jc\x07d\u202ee\u2066f\ng\rh\u2028i\u0085j\U000e0041k\xffl"

// onlyPlain fails where output holds anything but graphic characters and line ends.
func onlyPlain(t *testing.T, what, out string) {
	t.Helper()
	for _, r := range strings.ToValidUTF8(out, "\x00") {
		if r != '\n' && !unicode.IsGraphic(r) {
			t.Errorf("%s: %U is printed in %.200q", what, r, out)
			return
		}
	}
}

// TestHostileText: no argument, flag, name of a file, page or settings, of any command,
// sends what a terminal could act on; an error stays one line that begins with the
// program's name.
func TestHostileText(t *testing.T) {
	noSettings(t)
	dir := t.TempDir()
	t.Chdir(dir)
	name := strings.ToValidUTF8(hostile, "")
	good := "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 72\n15 65\n20 56\n25 52\n"
	for file, text := range map[string]string{
		name + ".txt":   good,
		"hostile.txt":   "water: A\u2028x\u202eB\nnote: \u2067x\n" + good,
		"refused.txt":   good + "11 " + strings.ReplaceAll(hostile, "\n", " ") + "\n",
		name + ".csv":   "profile,depth_m,temp_c\n" + "A\x1b\u202e,0,20\nA\x1b\u202e,x\u202e,20\n",
		"table.csv":     "lake,depth_ft,temp_f,\u202eph\x1b\nA\x1b\u202e,0,70,7\n",
		"\u202etwo.csv": "lake,depth_ft,temp_f,\u202eph\x1b\nA\u202eB,0,70,7\nA\u202eB,x\u202e,70,7\n",
		"head.csv":      "profile,depth_m,\u202etemp\x1b\n",
		"hostile.toml":  "for = \"\u202erainbow\\u001b\"\n",
	} {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Skipf("a file cannot have such a name here: %v", err)
		}
	}
	var tries [][]string
	for _, command := range []string{"plan", "drop", "probe", "next", "tilt", "compare", "rig", "fish", "chart", "season", "export", "share", "batch", "completion", hostile} {
		tries = append(tries, []string{command, hostile}, []string{command, "--" + hostile}, []string{command, "--" + hostile + "=1"},
			[]string{command, "--json", hostile}, []string{command, "-o", hostile, hostile}, []string{command, "--", name + ".txt"})
		for _, part := range []string{"list", "listen", "replay", "rehearse"} {
			tries = append(tries, []string{command, part, hostile}, []string{command, part, "--port", hostile}, []string{command, part, "--layout", hostile},
				[]string{command, part, "--fault", hostile}, []string{command, part, "--lake", hostile})
		}
	}
	for _, key := range notebook.Keys() {
		tries = append(tries, []string{"plan", "--" + flagName(key), hostile, name + ".txt"}, []string{"drop", "--" + flagName(key), hostile})
	}
	for _, flag := range []string{"form", "time-zone", "project", "site", "water", "book"} {
		tries = append(tries, []string{"export", "--form=wqx", "--" + flag, hostile, name + ".txt"})
	}
	for _, flag := range []string{"water-depth", "fly-depth", "fly-weight", "fly-material", "retrieve", "water-temp", "kind", "shot", "units", "wind", "drift"} {
		tries = append(tries, []string{"rig", "--water-depth=15ft", "--" + flag, hostile}, []string{"rig", "--" + flag, hostile})
	}
	for _, file := range []string{name + ".txt", "hostile.txt", "refused.txt", name + ".csv", "head.csv", "table.csv", "\u202etwo.csv"} {
		tries = append(tries, []string{"plan", file}, []string{"plan", "--json", file}, []string{"next", file}, []string{"compare", file, file}, []string{"compare", "--json", file, file}, []string{"tilt", "--wind", "10 mph", "--lake-length", "800 m", file}, []string{"tilt", "--json", "--wind", "10 mph", "--lake-length", "800 m", file}, []string{"chart", file}, []string{"batch", file},
			[]string{"export", file}, []string{"export", "--json", file}, []string{"export", "--form", "wide", file}, []string{"export", "-o", name + "/x.csv", file}, []string{"export", "--water", hostile, file}, []string{"share", "--with-spot", file},
			[]string{"chart", "-o", name + ".svg", file}, []string{"chart", "-o", name + "/x.svg", file}, []string{"probe", "replay", file}, []string{"probe", "replay", "--page", file},
			[]string{"plan", "--check", hostile, file}, []string{"plan", file, "--size", hostile}, []string{"chart", file, "-o", "x.svg", "--size", hostile})
	}
	for _, args := range tries {
		status, out, errOut := runWith(t, hostile+"\n", args...)
		onlyPlain(t, strings.Join(args, " "), out)
		onlyPlain(t, strings.Join(args, " "), errOut)
		lines := strings.SplitAfter(errOut, "\n")
		last := strings.Join(lines[max(0, len(lines)-2):], "")
		if status != 0 && (!strings.HasPrefix(last, "coldseam: ") || len(lines) != 2 && args[0] != "drop" && args[0] != "probe") {
			t.Errorf("%q: status %d and not one line: %q", args, status, errOut)
		}
		if status != 0 && out != "" && args[0] != "batch" && args[0] != "probe" {
			t.Errorf("%q: status %d and output %q", args, status, out)
		}
		if len(errOut) > 2500 {
			t.Errorf("%q: %d bytes of errors", args, len(errOut))
		}
	}
	// scripts read the name as it was
	_, out, errOut := runWith(t, "", "plan", "--json", "hostile.txt")
	var plan struct{ Water string }
	if err := json.Unmarshal([]byte(out), &plan); err != nil || plan.Water != "A\u2028x\u202eB" {
		t.Errorf("%v: %q %s", err, out[:min(len(out), 300)], errOut)
	}
	// the settings' words, and a drop's
	config := filepath.Join(dir, "config", "coldseam")
	if err := os.MkdirAll(config, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename("hostile.toml", filepath.Join(config, "settings.toml")); err != nil {
		t.Fatal(err)
	}
	t.Setenv("XDG_CONFIG_HOME", filepath.Join(dir, "config"))
	_, out, errOut = runWith(t, "", "plan", name+".txt")
	onlyPlain(t, "settings", out+errOut)
}
