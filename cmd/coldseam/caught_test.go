package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"coldseam/profile/book"
)

// notes runs coldseam caught at an hour of July 18, 2026.
func notes(disk book.Disk, dir string, now time.Time, args ...string) (status int, out, errOut string) {
	var o, e bytes.Buffer
	p := &program{in: strings.NewReader(""), stdout: &o, err: &e, disk: disk, now: func() time.Time { return now }}
	status = p.run(append([]string{"coldseam", "caught", "--book", dir}, args...))
	return status, o.String(), e.String()
}

const anglersPage = "water: Alder Kettle\ndate: 2026-07-18 14:20\nunits: ft F\nbottom: 31 ft\n0 74\n5 73.5\n10 72\n14 66\n16 62\n20 56\n25 52\n"

func bookOf(t *testing.T, pages ...string) string {
	t.Helper()
	dir := t.TempDir()
	for i, page := range pages {
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%d.txt", i)), []byte(page), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// TestCaught: what is noted, when, on which drop, and what is refused, each in one line.
func TestCaught(t *testing.T) {
	noSettings(t)
	t.Parallel()
	evening := time.Date(2026, 7, 18, 18, 10, 0, 0, time.UTC)
	old := strings.Replace(anglersPage, "2026-07-18", "2026-07-11", 1)
	for _, tc := range []struct {
		name  string
		pages []string
		now   time.Time
		args  []string
		want  string // what stands on the last page then, or the error
	}{
		{"now", []string{anglersPage}, evening, []string{"rainbow 16 ft, black midge"}, "caught: 18:10 rainbow 16 ft, black midge\n"},
		{"without quotes", []string{anglersPage}, evening, []string{"2", "rainbows", "16ft"}, "caught: 18:10 2 rainbows 16ft\n"},
		{"the time given", []string{anglersPage}, evening, []string{"5:30pm rainbow"}, "caught: 5:30pm rainbow\n"},
		{"last night's", []string{anglersPage}, evening.Add(7 * time.Hour), []string{"walleye 14 ft"}, "caught: 01:10 walleye 14 ft\n"},
		{"the next day", []string{anglersPage}, evening.Add(24 * time.Hour), []string{"rainbow"},
			"coldseam: the last drop, number 1, is of 2026-07-18 14:20 and not of today: take one with coldseam drop, or give --drop 1 for that one\n"},
		{"tomorrow's drop", []string{anglersPage}, evening.Add(-24 * time.Hour), []string{"rainbow"},
			"coldseam: the last drop, number 1, is of 2026-07-18 14:20 and not of today: take one with coldseam drop, or give --drop 1 for that one\n"},
		{"another day's, named", []string{anglersPage}, evening.Add(24 * time.Hour), []string{"--drop", "1", "rainbow"}, "caught: rainbow\n"},
		{"another day's, the last", []string{anglersPage}, evening.Add(24 * time.Hour), []string{"--drop", "last", "rainbow"}, "caught: rainbow\n"},
		{"another day's, undone", []string{anglersPage}, evening.Add(24 * time.Hour), []string{"--undo"},
			"coldseam: the last drop, number 1, is of 2026-07-18 14:20 and not of today: give --drop 1 for that one\n"},
		{"one before, named", []string{anglersPage, old}, evening, []string{"rainbow", "--drop", "1"}, "caught: rainbow\n"},
		{"no date", []string{"0 ft 74 F\n"}, evening, []string{"rainbow"}, "coldseam: the last drop, number 1, has no date, so it may not be of today: give --drop 1 for that one\n"},
		{"no such drop", []string{anglersPage}, evening, []string{"--drop", "2", "rainbow"}, "coldseam: --drop 2: the drops of the book are 1 to 1: coldseam book lists them\n"},
		{"no book", nil, evening, []string{"rainbow"}, "coldseam: no drop is saved yet: take one with coldseam drop, then note what is caught\n"},
		{"a damaged book", []string{"\x00"}, evening, []string{"rainbow"}, "coldseam: no drop is saved yet: take one with coldseam drop, then note what is caught\n"},
		{"a damaged page beside", []string{"\x00", anglersPage}, evening, []string{"rainbow"}, "caught: 18:10 rainbow\n"},
		{"nothing said", []string{anglersPage}, evening, nil, "coldseam: say what was caught, e.g. coldseam caught \"rainbow 16 ft, black midge\"\n"},
		{"no catch", []string{anglersPage}, evening, []string{"nothing"}, "coldseam: \"nothing\" names no catch: write e.g. 18:10 rainbow 16 ft black midge\n"},
		{"a control character", []string{anglersPage}, evening, []string{"rain\x1b[1mbow"}, "coldseam: \"rain�[1mbow\" holds a control character: write it on one line, in letters and signs\n"},
		{"undo and more", []string{anglersPage}, evening, []string{"--undo", "rainbow"}, "coldseam: --undo takes away the catch noted last: say nothing else with it\n"},
		{"nothing to undo", []string{anglersPage}, evening, []string{"--undo"},
			"coldseam: drop 1 (Alder Kettle, 2026-07-18 14:20): no catch is noted in this drop: --drop N for another\n"},
	} {
		dir := bookOf(t, tc.pages...)
		status, out, errOut := notes(book.System{}, dir, tc.now, tc.args...)
		if strings.HasPrefix(tc.want, "coldseam: ") {
			if status != 2 || out != "" || errOut != tc.want {
				t.Errorf("%s: status %d, %q, %q", tc.name, status, out, errOut)
			}
			continue
		}
		data, _ := os.ReadFile(filepath.Join(dir, fmt.Sprintf("%d.txt", len(tc.pages)-1)))
		if status != 0 || errOut != "" || !strings.HasPrefix(out, "Noted in drop ") || string(data) != tc.pages[len(tc.pages)-1]+tc.want {
			t.Errorf("%s: status %d, %q, %q\n%s", tc.name, status, out, errOut, data)
		}
	}
}

// TestCaughtUndo: each undo takes away the catch noted last of those that are left, and says
// which.
func TestCaughtUndo(t *testing.T) {
	noSettings(t)
	t.Parallel()
	dir := bookOf(t, anglersPage)
	for _, step := range []struct {
		args []string
		want string
	}{
		{[]string{"rainbow 16 ft"}, "Noted in drop 1 (Alder Kettle, 2026-07-18 14:20): 14:20 rainbow 16 ft.\n"},
		{[]string{"perch"}, "Noted in drop 1 (Alder Kettle, 2026-07-18 14:20): 14:20 perch. No depth could be\nread in it: one has its unit, 16 ft.\n"},
		{[]string{"--undo"}, "Taken away from drop 1 (Alder Kettle, 2026-07-18 14:20): 14:20 perch; 1 left.\n"},
		{[]string{"--undo"}, "Taken away from drop 1 (Alder Kettle, 2026-07-18 14:20): 14:20 rainbow 16 ft;\nnone is left.\n"},
	} {
		if status, out, errOut := notes(book.System{}, dir, fixedNow(), step.args...); status != 0 || errOut != "" || strings.Join(strings.Fields(out), " ") != strings.Join(strings.Fields(step.want), " ") {
			t.Errorf("%s: status %d\n%s%s", step.args, status, out, errOut)
		}
	}
	if got := pageIn(t, dir); got != anglersPage {
		t.Errorf("left %q", got)
	}
}

// TestCaughtTogether: programs that note catches at the same time wait for one another, and
// none is lost; while a drop is taken a catch is typed there.
func TestCaughtTogether(t *testing.T) {
	noSettings(t)
	t.Parallel()
	dir := bookOf(t, anglersPage)
	const n = 8
	var all sync.WaitGroup
	for i := range n {
		all.Go(func() {
			if status, out, errOut := notes(book.System{}, dir, fixedNow(), fmt.Sprintf("rainbow %d ft", 10+i)); status != 0 {
				t.Errorf("%d: status %d, %s%s", i, status, out, errOut)
			}
		})
	}
	all.Wait()
	page := pageIn(t, dir)
	for i := range n {
		if want := fmt.Sprintf("caught: 14:20 rainbow %d ft\n", 10+i); strings.Count(page, want) != 1 {
			t.Errorf("%q is not on the page once:\n%s", want, page)
		}
	}
	b, err := book.Open(dir, book.System{})
	if err != nil {
		t.Fatal(err)
	}
	unlock, err := lockSoon(b) // a process that another test starts has it for a moment
	if err != nil {
		t.Fatal(err)
	}
	defer unlock()
	want := "coldseam: a drop is being taken: type it there, \"caught rainbow 16 ft\", or end that drop first\n"
	if status, out, errOut := notes(book.System{}, dir, fixedNow(), "perch"); status != 2 || out != "" || errOut != want {
		t.Errorf("status %d, %q, %q", status, out, errOut)
	}
	if got := pageIn(t, dir); got != page {
		t.Errorf("the page was changed:\n%s", got)
	}
}

// TestCaughtNoRoom: on a full disk nothing is said to be noted, and the page stays whole.
func TestCaughtNoRoom(t *testing.T) {
	noSettings(t)
	t.Parallel()
	dir := bookOf(t, anglersPage)
	status, out, errOut := notes(&full{left: 0, then: 99}, dir, fixedNow(), "rainbow 16 ft")
	if status != 1 || out != "" || !oneError(errOut) || !strings.Contains(errOut, "nothing was changed: no space left on device") {
		t.Errorf("status %d, %q, %q", status, out, errOut)
	}
	if got := pageIn(t, dir); got != anglersPage {
		t.Errorf("left %q", got)
	}
}

// TestCaughtWhileTaken: a catch that is typed while a drop is taken stands on its page.
func TestCaughtWhileTaken(t *testing.T) {
	dir := t.TempDir()
	status, out, errOut := dropWith(t, dir, "74\ncaught rainbow 16 ft\n52\ncaught: 2 perch 9 ft\nstop\n", "--units", "ft F", "--bottom", "30ft")
	if status != 0 || !strings.Contains(errOut, "Noted: caught rainbow 16 ft.") || !strings.Contains(errOut, "Noted: caught: 2 perch 9 ft.") {
		t.Errorf("status %d\n%s%s", status, out, errOut)
	}
	if got := pageIn(t, dir); !strings.Contains(got, "caught: 14:20 rainbow 16 ft\ncaught: 14:20 2 perch 9 ft\n") {
		t.Errorf("the page:\n%s", got)
	}
}
