package taking

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func reading(depthFt, tempF float64) profile.Reading {
	return profile.Reading{Depth: depthFt, DepthUnit: unit.Foot, Temp: tempF, TempUnit: unit.Fahrenheit, Step: 0.1}
}

func begin(t interface{ Fatal(...any) }, dir string) *Taking {
	b, err := book.Open(dir, book.System{})
	if err != nil {
		t.Fatal(err)
	}
	return Begin(b, profile.Drop{Water: "Alder Kettle", Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, Bottom: profile.Some(9.144)})
}

func temps(d profile.Drop) []float64 {
	var out []float64
	for _, r := range d.Readings {
		out = append(out, r.Temp)
	}
	return out
}

// A reading that is odd is told at once, and one that shows that an older was odd.
func TestOdd(t *testing.T) {
	k := begin(t, t.TempDir())
	for _, c := range []struct {
		r    profile.Reading
		want []string
	}{
		{reading(1, 74), nil},
		{reading(10, 35), nil}, // the end of the drop so far, and a cold lake has it
		{reading(20, 60), []string{"10 ft: spike"}},
		{reading(200, 51), []string{"200 ft: below bottom"}},
		{reading(15, 610), []string{"15 ft: slipped digit"}},
	} {
		odd, err := k.Add(c.r)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, o := range odd {
			got = append(got, fmt.Sprintf("%v %s: %s", o.Depth, o.DepthUnit, o.Flag))
		}
		if !cmp.Equal(got, c.want) {
			t.Errorf("%v F at %v ft: flags %q, want %q", c.r.Temp, c.r.Depth, got, c.want)
		}
	}
}

func TestSkipAndNext(t *testing.T) {
	k := begin(t, t.TempDir())
	first := k.Next(nil)
	k.Skip(first.DepthM)
	if again := k.Next(nil); again.DepthM == first.DepthM {
		t.Errorf("asks again for %v m", again.DepthM)
	}
}

// What was noted stays when no reading was taken; a page with nothing on it goes.
func TestEndWithoutReadings(t *testing.T) {
	for _, note := range []string{"", "loons at the inlet"} {
		dir := t.TempDir()
		k := begin(t, dir)
		if note != "" {
			d := k.Drop()
			d.Notes = append(d.Notes, note)
			if err := k.Note(d); err != nil {
				t.Fatal(err)
			}
		}
		if err := k.End(); err != nil {
			t.Fatal(err)
		}
		pages, _ := filepath.Glob(filepath.Join(dir, "*.txt"))
		if want := len(note) > 0; (len(pages) > 0) != want {
			t.Errorf("noted %q: pages %q", note, pages)
		}
	}
}

// A save that failed is tried again for as long as somebody says so, in another book
// where one is given, and nothing is lost by it.
func TestFailedIsTriedAgain(t *testing.T) {
	disk := &full{}
	b, err := book.Open(t.TempDir(), disk)
	if err != nil {
		t.Fatal(err)
	}
	other, err := book.Open(t.TempDir(), book.System{})
	if err != nil {
		t.Fatal(err)
	}
	k := Begin(b, profile.Drop{Water: "Alder Kettle", Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}})
	pageHolds := func(want ...float64) {
		t.Helper()
		data, err := os.ReadFile(k.Saved.Path)
		if err != nil {
			t.Fatal(err)
		}
		sheets, err := notebook.Read(data, notebook.Options{})
		if err != nil || !cmp.Equal(temps(sheets[0].Drop), want) {
			t.Fatalf("page %q, %v; want %v", data, err, want)
		}
	}
	add := func(depthFt, tempF float64) error { _, err := k.Add(reading(depthFt, tempF)); return err }
	if err := add(1, 74); err != nil {
		t.Fatal(err)
	}
	first := k.Saved.Path

	disk.left = 2 // fails twice
	asked := 0
	k.Failed = func(err error) (bool, *book.Book) { asked++; return true, nil }
	if err := add(5, 73); err != nil || asked != 2 {
		t.Fatalf("%v, asked %d times", err, asked)
	}
	pageHolds(74, 73)

	disk.left = 1
	k.Failed = func(err error) (bool, *book.Book) { return true, other }
	if err := add(10, 70); err != nil || filepath.Dir(k.Saved.Path) != other.Dir {
		t.Fatalf("%v, saved in %s", err, k.Saved.Path)
	}
	pageHolds(74, 73, 70)
	if _, err := os.Stat(first); err != nil {
		t.Error("what was saved first is gone")
	}

	k.book, k.Saved, disk.left = b, nil, 1
	k.Failed = func(err error) (bool, *book.Book) { return false, nil }
	if err := add(15, 66); !errors.As(err, new(Unsaved)) {
		t.Errorf("given up: %v", err)
	}
	if got := temps(k.Drop()); !cmp.Equal(got, []float64{74, 73, 70, 66}) {
		t.Errorf("the drop has %v", got)
	}
}

// full is a disk that is full for the next left pages.
type full struct {
	book.System
	left int
}

func (f *full) Create(path string, mode fs.FileMode) (book.File, error) {
	if f.left > 0 {
		f.left--
		return nil, errors.New("no space left on device")
	}
	return f.System.Create(path, mode)
}

// Whatever is done in whatever order, the page in the book is the drop: read back it
// gives the same readings, and a list kept beside it agrees.
func TestPageIsTheDrop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dir, err := os.MkdirTemp("", "taking")
		if err != nil {
			t.Fatal(err)
		}
		defer os.RemoveAll(dir)
		k := begin(t, dir)
		var model []profile.Reading
		sitting := 0 // readings before this sitting
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			r := reading(float64(rapid.IntRange(0, 12).Draw(t, "depth")), float64(rapid.IntRange(40, 80).Draw(t, "temp")))
			switch rapid.SampledFrom([]string{"add", "add", "undo", "correct", "go on", "note"}).Draw(t, "step") {
			case "add":
				_, err = k.Add(r)
				model = append(model, r)
			case "undo":
				var ok bool
				if _, ok, err = k.Undo(); ok != (len(model) > sitting) {
					t.Fatalf("undo gives %v with %d readings, %d from before", ok, len(model), sitting)
				} else if ok {
					model = model[:len(model)-1]
				}
			case "correct":
				var kept []profile.Reading
				before := 0
				for i, m := range model {
					if m.Depth == r.Depth {
						continue
					}
					if i < sitting {
						before++
					}
					kept = append(kept, m)
				}
				model, sitting = append(kept, r), before
				_, err = k.Correct(r)
			case "note":
				d := k.Drop()
				d.Wind = profile.Some(float64(rapid.IntRange(0, 5).Draw(t, "wind")))
				err = k.Note(d)
			case "go on":
				if k.Saved == nil {
					continue
				}
				pages, e := k.book.Unended()
				if e != nil || len(pages) != 1 || pages[0].Err != nil {
					t.Fatalf("%d pages to go on with, %v", len(pages), e)
				}
				k = GoOn(k.book, pages[0])
				sitting, model = len(model), k.Drop().Readings // sorted by depth now
			}
			if err != nil {
				t.Fatal(err)
			}
			var want []float64
			for _, m := range model {
				want = append(want, m.Temp)
			}
			if got := temps(k.Drop()); !cmp.Equal(got, want) {
				t.Fatalf("readings %v, want %v", got, want)
			}
			if k.Saved == nil {
				continue
			}
			data, err := os.ReadFile(k.Saved.Path)
			if err != nil {
				t.Fatal(err)
			}
			sheets, err := notebook.Read(data, notebook.Options{Unread: true})
			if err != nil || len(sheets) != 1 || len(sheets[0].Drop.Readings) != len(model) {
				t.Fatalf("page %q: %v", data, err)
			}
			if notebook.Write(sheets[0].Drop) != notebook.Write(k.Drop()) {
				t.Fatalf("page %q is not the drop", data)
			}
		}
		if err := k.End(); err != nil {
			t.Fatal(err)
		}
		if pages, _ := k.book.Unended(); len(pages) != 0 {
			t.Fatalf("%d pages go on after the end", len(pages))
		}
	})
}
