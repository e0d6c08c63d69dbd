package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// TestExitStatus runs the program as a shell does: 0 done, 1 could not be done, 2 not
// understood. On an error standard output stays empty and standard error has one line.
func TestExitStatus(t *testing.T) {
	t.Parallel()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	const page = "units: ft F\nbottom: 30 ft\n0 74\n5 73.5\n10 72\n15 65\n20 56\n25 52\n"
	const columns = "profile,depth_m,temp_c\na,0,22\na,3,21\na,6,12\na,9,8\n"
	folder := t.TempDir()
	for _, c := range []struct {
		args  string
		stdin string
		want  int
	}{
		{"--version", "", 0}, {"--help", "", 0}, {"plan --help", "", 0}, {"probe --help", "", 0}, {"nothing", "", 2}, {"--nothing", "", 2},
		{"plan", page, 0}, {"plan --json", page, 0}, {"plan --check 14ft", page, 2}, {"plan", "", 2}, {"plan", "0 74 1 2 3 4\n", 2}, {"plan", "0 74\n5 73\n", 2}, {"plan --bottom 9", page, 2}, {"plan --bottom", page, 2}, {"plan --for rainbo", page, 2}, {"plan missing.txt", "", 2},
		{"next", page, 0}, {"next --bottom 31ft", "", 0}, {"next --bottom x", page, 2}, {"next missing.txt", "", 2},
		{"rig --water-depth 15ft", "", 0}, {"rig", "", 2}, {"rig --water-depth 15", "", 2},
		{"fish", "", 0}, {"fish rainbow", "", 0}, {"fish rainbo", "", 2},
		{"chart", page, 0}, {"chart -o x.jpg", page, 2}, {"chart -o nowhere/x.svg", page, 1}, {"chart missing.txt", "", 2},
		{"season", page, 2}, {"season -o nowhere/x.svg", "water: A\ndate: 2026-07-18\n" + page + "---\nwater: A\ndate: 2026-08-18\n" + page, 1},
		{"batch", columns, 0}, {"batch", "depth,x\n1,2\n", 2}, {"batch missing.csv", "", 2},
		{"drop --port /dev/nowhere --book " + folder, "", 1}, {"drop --units K --book " + folder, "", 2},
		{"probe list", "", 0}, {"probe replay missing.probe", "", 2},
		{"completion bash", "", 0}, {"completion tcsh", "", 2},
	} {
		cmd := exec.Command(program, strings.Fields(c.args)...)
		cmd.Dir, cmd.Env = folder, append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1")
		cmd.Stdin = strings.NewReader(c.stdin)
		var out, errOut bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &errOut
		got := 0
		if err := cmd.Run(); err != nil {
			var exit *exec.ExitError
			if !errors.As(err, &exit) {
				t.Fatal(err)
			}
			got = exit.ExitCode()
		}
		if got != c.want {
			t.Errorf("coldseam %s: status %d, want %d: %s", c.args, got, c.want, &errOut)
		}
		said := errOut.String()
		if strings.HasPrefix(c.args, "drop ") { // cautions and prompts come before
			said = said[strings.LastIndex(strings.TrimSpace(said), "\n")+1:]
		}
		if got != 0 && (out.Len() > 0 || strings.Count(said, "\n") != 1 || !strings.HasPrefix(said, "coldseam: ")) {
			t.Errorf("coldseam %s: standard output %q, standard error %q", c.args, &out, said)
		}
	}
}

// TestHelpFits: no help is wider than a terminal of 80 columns, and what the program says
// of itself is not broken again.
func TestHelpFits(t *testing.T) {
	helps := []string{"", "plan", "drop", "next", "rig", "fish", "chart", "season", "batch", "completion", "probe", "probe list", "probe listen", "probe replay", "probe rehearse"}
	for _, command := range helps {
		_, out, _ := runWith(t, "", append(strings.Fields(command), "--help")...)
		if len(out) < 100 {
			t.Errorf("%s: no help: %q", command, out)
		}
		for _, line := range strings.Split(out, "\n") {
			if n := len([]rune(line)); n > 80 {
				t.Errorf("%s --help: %d columns: %s", command, n, line)
			}
		}
		if command == "" && !strings.Contains(out, about) {
			t.Errorf("its own words were broken again:\n%s", out)
		}
	}
}
