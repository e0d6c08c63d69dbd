package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/expect"
)

// TestExitStatus runs the program as a shell does: 0 done, 1 could not be done, 2 not
// understood. On an error standard output stays empty, but for the lines that batch has
// written by then, and standard error has one line. A drop that is told its book leaves
// the user's own alone. That a probe on a port ends with 0 is TestListen's.
func TestExitStatus(t *testing.T) {
	t.Parallel()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	const page = "units: ft F\nbottom: 30 ft\n0 74\n5 73.5\n10 72\n15 65\n20 56\n25 52\n"
	const season = "water: A\ndate: 2026-07-18\n" + page + "---\nwater: A\ndate: 2026-08-18\n" + page
	const columns = "profile,depth_m,temp_c\na,0,22\na,3,21\na,6,12\na,9,8\n"
	const typed = "1\n30\n74\n52\nstop\n"            // the units, the bottom, two temperatures
	const rehearsed = "\n1 74\n14 66\n29 52\nstop\n" // not waiting for the probe
	folder, home := t.TempDir(), t.TempDir()
	for _, c := range []struct {
		args  string
		stdin string
		want  int
	}{
		{"--version", "", 0}, {"--help", "", 0}, {"plan --help", "", 0}, {"probe --help", "", 0}, {"nothing", "", 2}, {"--nothing", "", 2},
		{"--version > /dev/full", "", 1}, {"--help > /dev/full", "", 1}, {"plan --help > /dev/full", "", 1},
		{"plan", page, 0}, {"plan --json", page, 0}, {"plan --check 14ft", page, 2}, {"plan", "", 2}, {"plan", "0 74 1 2 3 4\n", 2}, {"plan", "0 74\n5 73\n", 2}, {"plan --bottom 9", page, 2}, {"plan --bottom", page, 2}, {"plan --for rainbo", page, 2}, {"plan missing.txt", "", 2},
		{"plan", season + "---\nwater: A\ndate: 2026-09-18\n0 150\n3 151\n6 150\n", 2}, {"plan > /dev/full", page, 1}, {"plan --json > /dev/full", page, 1},
		{"next", page, 0}, {"next --bottom 31ft", "", 0}, {"next --bottom x", page, 2}, {"next missing.txt", "", 2}, {"next > /dev/full", page, 1},
		{"tilt --lake-length 800m --wind 10mph --hours 3 --at upwind", page, 0}, {"tilt --json --lake-length 800m --wind 10mph", page, 0}, {"tilt", page, 2}, {"tilt --lake-length 800m", page, 2}, {"tilt --hours x --lake-length 800m --wind 10mph", page, 2}, {"tilt --at here --lake-length 800m --wind 10mph", page, 2}, {"tilt missing.txt", "", 2}, {"tilt --lake-length 800m --wind 10mph > /dev/full", page, 1},
		{"compare", season, 0}, {"compare --json", season, 0}, {"compare", page, 2}, {"compare missing.txt", "", 2}, {"compare > /dev/full", season, 1},
		{"rig --water-depth 15ft", "", 0}, {"rig", "", 2}, {"rig --water-depth 15", "", 2}, {"rig --water-depth 15ft > /dev/full", "", 1},
		{"fish", "", 0}, {"fish rainbow", "", 0}, {"fish rainbo", "", 2}, {"fish > /dev/full", "", 1}, {"fish rainbow > /dev/full", "", 1},
		{"chart", page, 0}, {"chart -o x.jpg", page, 2}, {"chart -o nowhere/x.svg", page, 1}, {"chart missing.txt", "", 2}, {"chart > /dev/full", page, 1},
		{"season -o s.svg", season, 0}, {"season", page, 2}, {"season -o nowhere/x.svg", season, 1},
		{"export -", page, 0}, {"export", page, 2}, {"export --form wide -", page, 0}, {"export --form wqx -", page, 2}, {"export -o nowhere/x.csv -", page, 1}, {"export missing.txt", "", 2}, {"export - > /dev/full", page, 1},
		{"share", page, 0}, {"share", "", 2}, {"share missing.txt", "", 2}, {"share > /dev/full", page, 1},
		{"batch", columns, 0}, {"batch", "depth,x\n1,2\n", 2}, {"batch missing.csv", "", 2}, {"batch", columns + "b,0,warm\n", 1}, {"batch > /dev/full", columns, 1},
		{"drop --book own", typed, 0}, {"drop --port /dev/nowhere --book own", "", 1}, {"drop --units K --book own", "", 2}, {"drop --book own", "1\n\n", 1}, {"drop --book own/full > /dev/full", typed, 1},
		{"probe list", "", 0}, {"probe list > /dev/full", "", 1}, {"probe list x", "", 2}, {"probe", "", 2},
		{"probe listen --port /dev/nowhere", "", 1}, {"probe listen", "", 2},
		{"probe replay", "20.1\n", 0}, {"probe replay missing.probe", "", 2}, {"probe replay > /dev/full", "20.1\n", 1},
		{"probe rehearse --book own", rehearsed, 0}, {"probe rehearse --book own", "", 1}, {"probe rehearse --speed 1000", "", 2}, {"probe rehearse --book own/full > /dev/full", rehearsed, 1},
		{"completion bash", "", 0}, {"completion tcsh", "", 2}, {"completion fish > /dev/full", "", 1},
	} {
		cmd := exec.Command(program)
		cmd.Dir, cmd.Env = folder, append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1", "HOME="+home, "USERPROFILE="+home, "XDG_DATA_HOME=")
		cmd.Stdin = strings.NewReader(c.stdin)
		var out, errOut bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &errOut
		args, full := strings.CutSuffix(c.args, " > /dev/full")
		cmd.Args = append(cmd.Args, strings.Fields(args)...)
		if full {
			f, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
			if err != nil && !expect.Full() {
				t.Logf("coldseam %s: not tried, since there is no such device here", c.args)
				continue
			} else if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			cmd.Stdout = f
		}
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
		command, _, _ := strings.Cut(c.args, " ")
		if command == "drop" || command == "probe" { // cautions, prompts and findings come before
			said = said[strings.LastIndex(strings.TrimSpace(said), "\n")+1:]
		}
		if got != 0 && (out.Len() > 0 && command != "batch" || strings.Count(said, "\n") != 1 || !strings.HasPrefix(said, "coldseam: ")) {
			t.Errorf("coldseam %s: standard output %q, standard error %q", c.args, &out, said)
		}
		if full && !strings.HasPrefix(said, "coldseam: standard output cannot be written: ") {
			t.Errorf("coldseam %s: %q does not say what happened", c.args, said)
		}
	}
	if own, err := os.ReadDir(home); err != nil || len(own) > 0 {
		t.Errorf("in the user's home there are %v, %v", own, err)
	}
	if saved, err := filepath.Glob(filepath.Join(folder, "own", "*.txt")); err != nil || len(saved) != 2 {
		t.Errorf("in the book there are %q, %v, want a drop and a rehearsal", saved, err)
	}
}
