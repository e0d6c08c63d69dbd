package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// around is a folder with a page, a season and a table of columns, for a program in an
// odd environment. What /dev/full does to each command is TestExitStatus's.
func around(t *testing.T) (dir string) {
	t.Helper()
	dir = t.TempDir()
	const page = "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 72\n15 65\n20 56\n25 52\n"
	for name, text := range map[string]string{
		"page.txt":   page,
		"season.txt": "date: 2026-07-18\n" + page + "---\ndate: 2026-08-18\n" + page,
		"c.csv":      lakeCSV(2, "Alder Kettle"),
		"log.probe":  "1.0,20.1\n2.0,19.2\n3.0,18.3\n",
	} {
		put(t, filepath.Join(dir, name), text)
	}
	return dir
}

// printing are the commands that print something, each once.
var printing = []string{"--help", "plan page.txt", "next page.txt", "tilt --wind 10mph --lake-length 800m page.txt", "rig --water-depth 15ft", "fish rainbow", "compare season.txt", "chart page.txt", "batch c.csv",
	"completion bash", "probe list", `probe replay --page --units "m C" --layout "depth m, temp C" log.probe`}

// statusOf is that of a run, -1 of one that a signal ended.
func statusOf(t *testing.T, err error) int {
	t.Helper()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	if err != nil {
		return exit.ExitCode()
	}
	return 0
}

// oneError reports whether a text is one line of an error.
func oneError(text string) bool {
	return strings.HasPrefix(text, "coldseam: ") && strings.Count(text, "\n") == 1 && strings.HasSuffix(text, "\n")
}

// TestPipeClosed: where nobody reads any more the program is ended by the system's signal,
// without a word, as others are; where there is no such signal, with one line and 1.
func TestPipeClosed(t *testing.T) {
	t.Parallel()
	dir := around(t)
	out, errOut, _ := shell(t, dir, "", "coldseam plan page.txt | head -n 1")
	if strings.Count(out, "\n") != 1 || errOut != "" {
		t.Errorf("head has %q, and there is %q", out, errOut)
	}
	for _, command := range printing {
		r, w, err := os.Pipe()
		if err != nil {
			t.Fatal(err)
		}
		r.Close()
		cmd := exec.Command("sh", "-c", "exec coldseam "+command)
		var said bytes.Buffer
		cmd.Dir, cmd.Stdout, cmd.Stderr = dir, w, &said
		err = cmd.Run()
		w.Close()
		text := strings.TrimPrefix(said.String(), "3 lines read.\n") // replay counts them before it prints
		if got := statusOf(t, err); (got != -1 || text != "") && (got != 1 || !oneError(text)) {
			t.Errorf("%s: status %d, %q", command, got, text)
		}
	}
}

// TestNoHome: without a home folder, or with one whose path is not whole, every command
// works, but for a drop, which has to be told where it is kept; nothing is written to
// where the program happens to be started.
func TestNoHome(t *testing.T) {
	t.Parallel()
	dir := around(t)
	settings := filepath.Join(dir, "a", ".config", "coldseam") // which are not the angler's
	if err := os.MkdirAll(settings, 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join(settings, "settings.toml"), "nonsense")
	commands := append([]string{"chart -o x.svg page.txt", "season -o s.html season.txt", "drop --book book", "probe rehearse"}, printing...)
	for _, env := range []string{"env -i ", "env -i HOME= XDG_CONFIG_HOME= XDG_DATA_HOME= ", "env -i HOME=a XDG_DATA_HOME=b ", "env -i HOME=a XDG_CONFIG_HOME=a/.config ", "env -i HOME=/dev/null "} {
		for _, command := range commands {
			typed := "1\n30\n74\n52\nstop\n"
			if command == "probe rehearse" {
				typed = "\n1 74\n29 52\nstop\n" // what it keeps goes to the folder for such
			}
			_, errOut, err := shell(t, dir, typed, env+`TMPDIR=. "$(command -v coldseam)" `+command)
			if got := statusOf(t, err); got != 0 {
				t.Errorf("%s%s: status %d, %s", env, command, got, errOut)
			}
		}
		out, errOut, err := shell(t, dir, "1\n30\n74\nstop\n", env+`"$(command -v coldseam)" drop`)
		want, says := 2, "--book DIR"
		if strings.Contains(env, "/dev/null") { // there is a home, but no drop can be saved in it
			want, says = 1, "--book"
		}
		if got := statusOf(t, err); got != want || out != "" || !oneError(errOut) || !strings.Contains(errOut, says) {
			t.Errorf("%sdrop: status %d, %q, %q", env, got, out, errOut)
		}
	}
	for _, name := range []string{"a/.local", "b", ".local", ".config", "coldseam"} {
		if exists(filepath.Join(dir, name)) {
			t.Errorf("%s was made where the program was started", name)
		}
	}
	_, errOut, err := shell(t, dir, "", "TMPDIR=/nowhere coldseam probe rehearse")
	if got := statusOf(t, err); got != 1 || !oneError(errOut) || !strings.Contains(errOut, "/nowhere: no folder") {
		t.Errorf("no folder for a rehearsal: status %d, %q", got, errOut)
	}
}

// TestTerminalNonsense: what the environment says of the terminal changes no byte.
func TestTerminalNonsense(t *testing.T) {
	t.Parallel()
	dir := around(t)
	const commands = "coldseam plan page.txt; coldseam chart page.txt; coldseam fish; coldseam drop --help; coldseam plan missing.txt"
	want, wantErr, _ := shell(t, dir, "", "unset COLUMNS LINES TERM; "+commands)
	if len(want) < 5000 || !oneError(wantErr) {
		t.Fatalf("%s%s", want, wantErr)
	}
	for i, n := range []string{"0", "-5", "1", "99999999999", "x", "''"} {
		set := "export NO_COLOR=1 COLUMNS=" + n + " LINES=" + n + " TERM=" + []string{"dumb", "''", "nonsense"}[i%3] + "; "
		if out, errOut, _ := shell(t, dir, "", set+commands); out != want || errOut != wantErr {
			t.Errorf("%s other output: %s%s", set, out, errOut)
		}
	}
}

// TestStreamsClosed: a stream that is closed is as one that leads nowhere. The system's
// part of a Go program opens such a one before the program begins, so that no file of
// the user's gets its number; that standard output was closed cannot be told from a
// parent that wants none, and is no error.
func TestStreamsClosed(t *testing.T) {
	t.Parallel()
	dir := around(t)
	for _, c := range []struct {
		line, stdin string
		want        int
		out         bool // something is printed
		errors      string
	}{
		{"plan <&-", "", 2, false, "coldseam: standard input: has no readings"},
		{"next <&-", "", 0, true, ""},
		{"rig --water-depth 15ft <&-", "", 0, true, ""},
		{"fish rainbow <&-", "", 0, true, ""},
		{"chart <&-", "", 2, false, "coldseam: standard input: has no readings"},
		{"season -o x.svg <&-", "", 2, false, "coldseam: no drop with a date and a reading is in the book"},
		{"batch <&-", "", 2, false, "coldseam: standard input: is empty"},
		{"completion zsh <&-", "", 0, true, ""},
		{"probe replay <&-", "", 0, false, "0 lines read."},
		{"drop --book book <&-", "", 2, false, "coldseam: the units were not given"},
		{"probe rehearse --book book <&-", "", 1, false, "coldseam: no reading was taken"},
		{"plan page.txt >&-", "", 0, false, ""},
		{"plan missing.txt >&-", "", 2, false, "coldseam: missing.txt"},
		{"batch c.csv >&-", "", 0, false, ""},
		{"chart -o closed.svg page.txt >&-", "", 0, false, "Wrote closed.svg"},
		{"chart -o open.svg page.txt", "", 0, false, "Wrote open.svg"},
		{"plan page.txt 2>&-", "", 0, true, ""},
		{"plan missing.txt 2>&-", "", 2, false, ""},
		{"plan missing.txt 2>/dev/full", "", 2, false, ""},
		{"drop --book quiet 2>&-", "1\n30\n74\n52\nstop\n", 0, true, ""},
		{"plan page.txt <&- >&- 2>&-", "", 0, false, ""},
	} {
		if strings.Contains(c.line, "/dev/full") && !exists("/dev/full") {
			continue
		}
		out, errOut, err := shell(t, dir, c.stdin, "coldseam "+c.line)
		lines := strings.Split(strings.TrimSpace(errOut), "\n")
		if got := statusOf(t, err); got != c.want || (out != "") != c.out || !strings.HasPrefix(lines[len(lines)-1], c.errors) || (errOut == "") != (c.errors == "") {
			t.Errorf("coldseam %s: status %d, %q, %q", c.line, got, out, errOut)
		}
	}
	if page := get(t, filepath.Join(dir, "page.txt")); !strings.HasPrefix(page, "units: ft F\nbottom: 31 ft\n0 74\n") || strings.Contains(page, "Fish should") {
		t.Errorf("the page was written to: %s", page)
	}
	if get(t, filepath.Join(dir, "closed.svg")) != get(t, filepath.Join(dir, "open.svg")) {
		t.Error("with standard output closed the picture is another")
	}
	if pageIn(t, filepath.Join(dir, "quiet")) == "" {
		t.Error("no drop was saved")
	}
}
