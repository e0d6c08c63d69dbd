package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/creack/pty"

	"coldseam/profile/expect"
)

// onTerminal runs the program at a terminal of a size, and gives what it shows.
func onTerminal(t *testing.T, columns, rows int, typed string, args ...string) string {
	t.Helper()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(program, args...)
	cmd.Env = append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1")
	terminal, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: uint16(columns), Rows: uint16(rows)})
	if err != nil {
		expect.Missing(t, "there are no pseudo-terminals here: %v", err)
	}
	defer terminal.Close()
	io.WriteString(terminal, typed)
	shown, _ := io.ReadAll(terminal) // the error is the end
	if err := cmd.Wait(); err != nil {
		t.Errorf("%v: %v", args, err)
	}
	return strings.ReplaceAll(string(shown), "\r\n", "\n")
}

// TestTerminalWidth: at terminals of 40 to 100 columns no line of the answer goes on in the
// next row, and the answer at a glance uses the width there is.
func TestTerminalWidth(t *testing.T) {
	t.Parallel()
	page := filepath.Join("..", "..", "testdata", "alder-kettle-july.txt")
	lines := map[int]int{}
	for _, columns := range []int{40, 60, 80, 100} {
		for _, args := range [][]string{{"plan", page}, {"next", page}, {"tilt", "--wind", "SW 16 mph", "--lake-length", "2 mi", page}, {"compare", "--wind", "SW 16 mph", "--lake-length", "2 mi", page, page}, {"rig", "--water-depth", "15ft"}, {"fish", "rainbow"}} {
			shown := onTerminal(t, columns, 24, "", args...)
			for _, line := range strings.Split(shown, "\n") {
				if utf8.RuneCountInString(line) > columns {
					t.Errorf("%s at %d columns: %q", args[0], columns, line)
				}
			}
			if args[0] == "plan" {
				lines[columns] = strings.Count(shown, "\n")
			}
		}
	}
	if lines[80] > 23 || lines[100] > lines[80] || lines[40] <= lines[80] {
		t.Errorf("lines by columns: %v", lines)
	}
}

// TestDropEndsOnOneScreen: when a drop has ended, a terminal of 80 by 24 shows the whole
// answer at a glance, its title included.
func TestDropEndsOnOneScreen(t *testing.T) {
	t.Parallel()
	shown := onTerminal(t, 80, 24, "1\n31\n74\n52\n63\n72\n66\n57\nstop\n", "drop", "--book", t.TempDir())
	lines := strings.Split(strings.TrimSuffix(shown, "\n"), "\n")
	screen := strings.Join(lines[max(0, len(lines)-23):], "\n")
	for _, want := range []string{", for rainbow trout\n", "\nFly  ", "\nConfidence: ", "--full"} {
		if !strings.Contains(screen, want) {
			t.Errorf("no %q on\n%s", want, screen)
		}
	}
	_, answer, _ := strings.Cut(shown, ", for rainbow trout\n")
	for _, line := range strings.Split(answer, "\n") {
		if utf8.RuneCountInString(line) > 80 {
			t.Errorf("%q goes on in the next row", line)
		}
	}
}

// TestPicturesFitTheTerminal: the column has its first and last row on one screen of 24 rows,
// and a terminal of 40 shows the title, the drawing to scale and the column together.
func TestPicturesFitTheTerminal(t *testing.T) {
	t.Parallel()
	head := regexp.MustCompile(`(?m)^ +(ft|m) +[FC]( .*)?$`)
	pages, _ := filepath.Glob(filepath.Join("..", "..", "testdata", "*.txt"))
	if len(pages) < 4 {
		t.Fatal("no demo pages")
	}
	for _, page := range pages {
		for _, c := range [][2]int{{40, 24}, {60, 24}, {80, 24}, {80, 40}, {100, 40}} {
			shown := onTerminal(t, c[0], c[1], "", "chart", page)
			if strings.Count(shown, " BOTTOM") > 1 { // several drops, one after the other
				continue
			}
			lines := strings.Split(strings.TrimSuffix(shown, "\n"), "\n")
			screen := lines[max(0, len(lines)-c[1]+1):]
			for _, line := range lines {
				if utf8.RuneCountInString(line) > c[0] {
					t.Errorf("%s at %v: %q", page, c, line)
				}
			}
			text := strings.Join(screen, "\n")
			if heads := head.FindAllString(shown, -1); len(heads) == 0 || !strings.Contains(text, heads[len(heads)-1]+"\n") {
				t.Errorf("%s at %v: the top is not on the screen:\n%s", page, c, text)
			}
			if c[1] == 40 && len(lines) >= c[1] {
				t.Errorf("%s at %v: %d lines", page, c, len(lines))
			}
		}
	}
}
