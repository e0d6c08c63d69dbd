package book

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

func drop(water string, temps ...float64) profile.Drop {
	d := profile.Drop{Water: water, Date: "2026-07-18 14:20", Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}}
	for i, t := range temps {
		d.Readings = append(d.Readings, profile.Reading{Depth: float64(5 * i), DepthUnit: unit.Foot, Temp: t, TempUnit: unit.Fahrenheit, Step: 0.1})
	}
	d.Correct()
	return d
}

func open(t *testing.T, disk Disk) *Book {
	t.Helper()
	b, err := Open(filepath.Join(t.TempDir(), "a [new] book"), disk)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func names(t *testing.T, b *Book) []string {
	t.Helper()
	entries, err := os.ReadDir(b.Dir)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

func TestPage(t *testing.T) {
	b := open(t, System{})
	var pages []*Page
	for _, water := range []string{"Alder Kettle", "Alder Kettle", "../../ /étc\x00", ""} {
		p, err := b.Begin(drop(water, 74))
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, p)
	}
	want := []string{
		"2026-07-18-14-20-alder-kettle-2.txt", "2026-07-18-14-20-alder-kettle.txt",
		"2026-07-18-14-20-drop.txt", "2026-07-18-14-20-tc.txt",
	}
	if got := names(t, b); !slices.Equal(got, want) {
		t.Errorf("pages %q, want %q", got, want)
	}
	if err := pages[0].Save(drop("Alder Kettle", 74, 73), true); err != nil {
		t.Fatal(err)
	}
	if err := pages[1].Save(drop("Alder Kettle", 74, 72), false); err != nil {
		t.Fatal(err)
	}
	if err := pages[2].Remove(); err != nil {
		t.Fatal(err)
	}
	later := time.Now().Add(time.Hour) // the clock of a disk may stand still for milliseconds
	if err := os.Chtimes(pages[1].Path, later, later); err != nil {
		t.Fatal(err)
	}
	got, err := b.Unended() // the one saved last stands first
	if err != nil || len(got) != 2 || got[0].Path != pages[1].Path || got[1].Path != pages[3].Path || len(got[0].Drop.Readings) != 2 {
		t.Errorf("unended: %v, %v", got, err)
	}
	data, err := os.ReadFile(pages[0].Path)
	if err != nil || string(data) != notebook.Write(drop("Alder Kettle", 74, 73)) {
		t.Errorf("ended page: %q, %v", data, err)
	}
	if got := pages[0].Beside(".probe"); got != filepath.Join(b.Dir, "2026-07-18-14-20-alder-kettle.probe") {
		t.Errorf("beside: %s", got)
	}
}

func TestLock(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("a browser's pages are kept apart by a lock of its own: see the tests of folder.js")
	}
	b := open(t, System{})
	unlock, err := b.Lock()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.Lock(); !errors.Is(err, ErrInUse) {
		t.Errorf("a second drop: %v", err)
	}
	unlock()
	if unlock, err = b.Lock(); err != nil {
		t.Fatalf("after unlocking: %v", err)
	}
	unlock()
}

// failing fails at the n-th step, and records the steps.
type failing struct {
	System
	at    int
	steps []string
}

var errFull = errors.New("no space left")

func (f *failing) step(name string) error {
	f.steps = append(f.steps, name)
	if len(f.steps) == f.at {
		return errFull
	}
	return nil
}

type failingFile struct {
	File
	f *failing
}

func (f *failing) Create(path string, mode fs.FileMode) (File, error) {
	if err := f.step("create"); err != nil {
		return nil, err
	}
	file, err := f.System.Create(path, mode)
	return failingFile{file, f}, err
}
func (f *failing) Rename(a, b string) error {
	if err := f.step("rename"); err != nil {
		return err
	}
	return f.System.Rename(a, b)
}
func (f *failing) Move(a, b string) error {
	if err := f.step("move"); err != nil {
		return err
	}
	return f.System.Move(a, b)
}
func (f *failing) SyncFolder(path string) error {
	if filepath.Base(path) != "a [new] book" { // those above, when it was made
		return f.System.SyncFolder(path)
	}
	if err := f.step("sync folder"); err != nil {
		return err
	}
	return f.System.SyncFolder(path)
}
func (f failingFile) Write(b []byte) (int, error) {
	if err := f.f.step("write"); err != nil {
		n, _ := f.File.Write(b[:len(b)/2])
		return n, err
	}
	return f.File.Write(b)
}
func (f failingFile) Sync() error {
	if err := f.f.step("sync"); err != nil {
		return err
	}
	return f.File.Sync()
}

// What was saved before stays whole whichever step of saving fails, and the steps
// come in the order that makes a page durable.
func TestEachStepFails(t *testing.T) {
	first, second := drop("Alder Kettle", 74), drop("Alder Kettle", 74, 73)
	for at := 0; at <= 10; at++ {
		disk := &failing{at: at}
		b := open(t, disk)
		p, err := b.Begin(first)
		if at == 0 {
			if err := p.Save(second, true); err != nil {
				t.Fatal(err)
			}
			want := "create write sync move sync folder create write sync rename sync folder"
			if got := strings.Join(disk.steps, " "); got != want {
				t.Errorf("steps: %s\nwant:  %s", got, want)
			}
			continue
		}
		if err == nil {
			err = p.Save(second, true)
		}
		if !errors.Is(err, errFull) {
			t.Errorf("step %d failed: %v", at, err)
		}
		data, err := os.ReadFile(filepath.Join(b.Dir, "2026-07-18-14-20-alder-kettle.txt"))
		switch {
		case at <= 4 && !errors.Is(err, fs.ErrNotExist):
			t.Errorf("step %d failed, and there is a page: %q", at, data)
		case at > 5 && at < 10 && string(data) != notebook.Write(first)+notEnded+"\n":
			t.Errorf("step %d failed, and the page is %q", at, data)
		}
		for _, name := range names(t, b) {
			if strings.HasSuffix(name, ".part") {
				t.Errorf("step %d left %s", at, name)
			}
		}
	}
}

// together is a disk on which another program makes each folder first.
type together struct{ System }

func (d together) Folder(path string) error {
	if err := d.System.Folder(path); err != nil {
		return err
	}
	return d.System.Folder(path)
}

// Two programs that make the book's folder at once both have it.
func TestFolderMadeMeanwhile(t *testing.T) {
	if _, err := Open(filepath.Join(t.TempDir(), "new", "book"), together{}); err != nil {
		t.Error(err)
	}
}
