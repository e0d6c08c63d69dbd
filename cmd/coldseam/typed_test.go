package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// saved gives the text of the one page of a book.
func saved(t *testing.T, dir string) string {
	t.Helper()
	pages, err := filepath.Glob(filepath.Join(dir, "*.txt"))
	if err != nil || len(pages) != 1 {
		t.Fatalf("%v, %v", pages, err)
	}
	text, err := os.ReadFile(pages[0])
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestTypedSlips: a text with two points and a depth under the bottom are asked about
// before anything is taken.
func TestTypedSlips(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	c := begin(t, "drop", "--book", dir, "--units", "ft F", "--bottom", "31 ft")
	for _, r := range []string{"74", "10 73"} {
		c.wait("Temperature at")
		c.typeLine(r)
	}
	c.wait("Temperature at")
	c.typeLine("61..2")
	c.wait("write 61.2")
	c.wait("Temperature at")
	c.typeLine("61 52")
	c.wait("the bottom was noted at 31 ft")
	c.typeLine("1")
	c.wait("Temperature at")
	c.typeLine("40 52")
	c.wait("the bottom was noted at 31 ft")
	c.typeLine("2")
	c.wait("Temperature at", "Enter ends")
	c.typeLine("stop")
	c.end()
	page := saved(t, dir)
	for _, want := range []string{"bottom: 40 ft", "40 ft: 52 F", "10 ft: 73 F"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
	if strings.Contains(page, "61") {
		t.Errorf("the slip was taken:\n%s", page)
	}
}

// TestTypedWords: what is typed besides readings is checked and noted: a fish that is
// not known is refused with the one that was meant, and a known one serves the next
// advice and the plan; other words are a note with what is known in them taken.
func TestTypedWords(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	c := begin(t, "drop", "--book", dir, "--units", "ft F", "--bottom", "31 ft")
	for _, r := range []string{"0 74", "10 73", "15 64", "20 56"} {
		c.wait("Temperature at")
		c.typeLine(r)
	}
	for _, tc := range []struct{ typed, said string }{
		{"for: rainbo", "did you mean rainbow"},
		{"for: walleye", "Noted"},
		{"caught 2 at 14 ft", "kept as a note"},
		{"wind SW 8", "Noted"},
		{"note: fish at # 3 buoy", "Noted"},
		{"12 6x.5", "is not a number"},
	} {
		c.wait("Temperature at", "Enter ends")
		c.typeLine(tc.typed)
		c.wait(tc.said)
	}
	c.wait("Temperature at", "Enter ends")
	c.typeLine("stop")
	_, out := c.end()
	page := saved(t, dir)
	for _, want := range []string{"for: walleye", "note: caught 2 at 14 ft", "wind: 8 mph", "note: wind SW 8", "note: fish at # 3 buoy"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
	if !strings.Contains(out, "walleye") || strings.Contains(page, "12 ft") {
		t.Errorf("plan:\n%s\npage:\n%s", out, page)
	}
}

// TestResumedWithUnknownFish: a page whose fish is not known can still be gone on with.
func TestResumedWithUnknownFish(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	c := begin(t, "drop", "--book", dir, "--units", "ft F", "--bottom", "31 ft")
	c.wait("Temperature at")
	c.typeLine("0 74")
	c.wait("Temperature at")
	c.typeLine("10 72")
	c.wait("Temperature at")
	pages, _ := filepath.Glob(filepath.Join(dir, "*.txt"))
	page := saved(t, dir)
	other := t.TempDir()
	if err := os.WriteFile(filepath.Join(other, filepath.Base(pages[0])), []byte("for: rainbo\n"+page), 0o600); err != nil {
		t.Fatal(err)
	}
	c.typeLine("stop")
	c.end()
	c = begin(t, "drop", "--book", other)
	c.wait("was cut off")
	c.typeLine("1")
	c.wait("did you mean rainbow")
	c.wait("Temperature at", "Enter ends")
	c.typeLine("20 58")
	c.wait("Temperature at", "Enter ends")
	c.typeLine("stop")
	if status, out := c.end(); status != 0 || !strings.Contains(out, "rainbow") {
		t.Errorf("status %d:\n%s", status, out)
	}
	if page := saved(t, other); !strings.Contains(page, "note: for: rainbo") || !strings.Contains(page, "20 ft: 58 F") {
		t.Errorf("saved:\n%s", page)
	}
}
