package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
)

// addTo adds a file to a book.
func addTo(disk book.Disk, dir, file string) (status int, out, errOut string) {
	var o, e bytes.Buffer
	p := &program{in: strings.NewReader(""), stdout: &o, err: &e, disk: disk, now: fixedNow}
	status = p.run([]string{"coldseam", "book", "add", file, "--book", dir})
	return status, o.String(), e.String()
}

// manyDrops is a file of n drops of one day.
func manyDrops(t *testing.T, water string, n int) string {
	t.Helper()
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "water: %s\ndate: 2026-07-%02d\nunits: ft F\n0 74\n5 73\n10 %d\n---\n", water, i%28+1, 40+i)
	}
	path := filepath.Join(t.TempDir(), "old.txt")
	if err := os.WriteFile(path, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestAddFull: on a full disk one line says how many drops were added; each is whole, and
// the same again adds the rest.
func TestAddFull(t *testing.T) {
	noSettings(t)
	t.Parallel()
	dir, file := filepath.Join(t.TempDir(), "book"), manyDrops(t, "Alder Kettle", 3)
	status, out, errOut := addTo(&full{left: 1, then: 99}, dir, file)
	if want := "coldseam: " + dir + ": 1 of 3 drops added, and the next cannot be saved: no space left on device; mend that, then add the same files again\n"; status != 1 || out != "" || errOut != want {
		t.Errorf("status %d, %q, %q", status, out, errOut)
	}
	entries, err := book.At(dir, book.System{}).Entries(notebook.Options{})
	if err != nil || len(entries) != 1 || entries[0].Err != nil || len(entries[0].Drop.Readings) != 3 {
		t.Errorf("left %+v, %v", entries, err)
	}
	if status, out, errOut := addTo(book.System{}, dir, file); status != 0 || errOut != "" || !strings.Contains(strings.Join(strings.Fields(out), " "), "2 drops added to "+dir+", 1 there already.") {
		t.Errorf("status %d, %q, %q", status, out, errOut)
	}
}

// TestAddTogether: programs that add at once lose nothing and add nothing twice.
func TestAddTogether(t *testing.T) {
	noSettings(t)
	t.Parallel()
	dir := filepath.Join(t.TempDir(), "book")
	files := []string{manyDrops(t, "Alder Kettle", 25), manyDrops(t, "Alder Kettle", 25), manyDrops(t, "Sedge Mere", 25)}
	var all sync.WaitGroup
	for _, file := range files {
		all.Go(func() {
			for range 3 { // as a person would, told that the book is in use
				status, out, errOut := addTo(book.System{}, dir, file)
				if status == 0 {
					return
				}
				if out != "" || !strings.Contains(errOut, "nothing was added") {
					t.Errorf("status %d, %q, %q", status, out, errOut)
				}
			}
			t.Errorf("%s was never added", file)
		})
	}
	all.Wait()
	entries, err := book.At(dir, book.System{}).Entries(notebook.Options{})
	if err != nil || len(entries) != 50 {
		t.Errorf("%d drops, %v", len(entries), err)
	}
	for _, e := range entries {
		if e.Err != nil || len(e.Drop.Readings) != 3 {
			t.Errorf("%+v", e)
		}
	}
}

// TestAddWhileTaken: while a drop is being taken nothing is added, and that is said.
func TestAddWhileTaken(t *testing.T) {
	noSettings(t)
	t.Parallel()
	dir := t.TempDir()
	b, err := book.Open(dir, book.System{})
	if err != nil {
		t.Fatal(err)
	}
	unlock, err := b.Lock()
	if err != nil {
		t.Fatal(err)
	}
	defer unlock()
	want := "coldseam: " + dir + ": another drop is being taken into this book: end that one first; nothing was added\n"
	if status, out, errOut := addTo(book.System{}, dir, manyDrops(t, "Alder Kettle", 2)); status != 1 || out != "" || errOut != want {
		t.Errorf("status %d, %q, %q", status, out, errOut)
	}
}

// TestBookReadOnly: listing, showing and finding need no right to write, and make nothing.
func TestBookReadOnly(t *testing.T) {
	noSettings(t)
	if os.Getuid() == 0 {
		t.Log("as root the folder can be written all the same: only what is made is looked at")
	}
	dir := t.TempDir()
	page := filepath.Join(dir, "a.txt")
	if err := os.WriteFile(page, []byte("water: Alder Kettle\nunits: ft F\n0 74\n5 73\n10 60\n"), 0o400); err != nil {
		t.Fatal(err)
	}
	os.Chmod(dir, 0o500)
	defer os.Chmod(dir, 0o700)
	for _, args := range [][]string{{"book"}, {"book", "show", "1"}, {"book", "find", "alder"}, {"book", "check"}, {"plan", "last"}, {"plan", "--check", "10ft 60", "1"}} {
		if status, out, errOut := runWith(t, "", append(args, "--book", dir)...); status != 0 || errOut != "" || !strings.Contains(out, "Alder Kettle") && args[len(args)-1] != "check" {
			t.Errorf("%v: status %d, %q, %q", args, status, out, errOut)
		}
	}
	if entries, err := os.ReadDir(dir); err != nil || len(entries) != 1 {
		t.Errorf("%v, %v", entries, err)
	}
}
