package book

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// heads looks through a book.
func heads(t *testing.T, b *Book) []Head {
	t.Helper()
	out, err := b.Heads(notebook.Options{Unread: true})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestAddOnce: a drop that is in the book is known by its water, spot, date and readings,
// however they are written; another date, spot or reading is another drop.
func TestAddOnce(t *testing.T) {
	b := open(t, System{})
	d := drop("Alder Kettle", 74, 73, 60)
	d.Spot = "north bay"
	if _, err := b.Add(d); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Add(drop("Sedge Mere", 70)); err != nil {
		t.Fatal(err)
	}
	k := b.Known(heads(t, b), notebook.Options{Unread: true})
	change := func(f func(d *profile.Drop)) profile.Drop {
		c := d
		c.Readings = append([]profile.Reading(nil), d.Readings...)
		f(&c)
		return c
	}
	for name, c := range map[string]struct {
		d  profile.Drop
		is bool
	}{
		"the same":     {d, true},
		"other case":   {change(func(d *profile.Drop) { d.Water, d.Spot = "ALDER  kettle", "North Bay " }), true},
		"other order":  {change(func(d *profile.Drop) { d.Readings[0], d.Readings[2] = d.Readings[2], d.Readings[0] }), true},
		"other units":  {change(func(d *profile.Drop) { d.Readings[1].Depth, d.Readings[1].DepthUnit = 1.524, unit.Metre }), true},
		"more notes":   {change(func(d *profile.Drop) { d.Notes = []string{"mist"} }), true},
		"other spot":   {change(func(d *profile.Drop) { d.Spot = "south bay" }), false},
		"other hour":   {change(func(d *profile.Drop) { d.Date = "2026-07-18 15:20" }), false},
		"other water":  {change(func(d *profile.Drop) { d.Water = "Sedge Mere" }), false},
		"other depth":  {change(func(d *profile.Drop) { d.Readings[1].Depth = 6 }), false},
		"other temp":   {change(func(d *profile.Drop) { d.Readings[1].Temp += 0.1 }), false},
		"one more":     {change(func(d *profile.Drop) { d.Readings = append(d.Readings, d.Readings[0]) }), false},
		"oxygen added": {change(func(d *profile.Drop) { d.Readings[0].Oxygen = profile.Some(0) }), false},
	} {
		if n, has := k.Has(c.d); has != c.is || has && n != 1 {
			t.Errorf("%s: known %v, as number %d", name, has, n)
		}
	}
	other := change(func(d *profile.Drop) { d.Date = "" })
	if _, has := k.Has(other); has {
		t.Error("known before it was added")
	}
	k.Added(other)
	if n, has := k.Has(other); !has || n != 0 {
		t.Errorf("not known once it was added: %d", n)
	}
}

// TestAddNames: nothing is written over, and no name leads out of the folder.
func TestAddNames(t *testing.T) {
	b := open(t, System{})
	edit(t, filepath.Join(b.Dir, "2026-07-18-14-20-alder-kettle.txt"), "somebody's")
	seen := map[string]bool{}
	for i, water := range []string{"Alder Kettle", "Alder Kettle", "../../etc/passwd", "😀 \"quoted\" \\ /", strings.Repeat("Å long ", 43), "", ".", "a\x00b\nc"} {
		d := drop(water, float64(60+i))
		path, err := b.Add(d)
		if err != nil || seen[path] || filepath.Dir(path) != b.Dir {
			t.Fatalf("%q: %q, %v", water, path, err)
		}
		seen[path] = true
		if data, err := os.ReadFile(path); err != nil || string(data) != notebook.Write(d) {
			t.Errorf("%q: %q, %v", water, data, err)
		}
	}
	if data, err := os.ReadFile(filepath.Join(b.Dir, "2026-07-18-14-20-alder-kettle.txt")); err != nil || string(data) != "somebody's" {
		t.Errorf("written over: %q, %v", data, err)
	}
}

// cutting is a disk whose power is cut at one of its calls.
type cutting struct {
	*forgetful
	left int // calls before the cut
}

var errCut = errors.New("the power was cut")

func (d *cutting) call() error {
	if d.left--; d.left < 0 {
		return errCut
	}
	return nil
}

func (d *cutting) Create(path string, mode fs.FileMode) (File, error) {
	if err := d.call(); err != nil {
		return nil, err
	}
	f, err := d.forgetful.Create(path, mode)
	return cuttingFile{f, d}, err
}

func (d *cutting) Move(from, to string) error {
	if err := d.call(); err != nil {
		return err
	}
	return d.forgetful.Move(from, to)
}

func (d *cutting) Remove(path string) error {
	if err := d.call(); err != nil {
		return err
	}
	return d.forgetful.Remove(path)
}

func (d *cutting) SyncFolder(path string) error {
	if err := d.call(); err != nil {
		return err
	}
	return d.forgetful.SyncFolder(path)
}

type cuttingFile struct {
	File
	disk *cutting
}

func (f cuttingFile) Write(b []byte) (int, error) {
	if err := f.disk.call(); err != nil {
		f.File.Write(b[:len(b)/2]) // half of it may have got there
		return 0, err
	}
	return f.File.Write(b)
}

func (f cuttingFile) Sync() error {
	if err := f.disk.call(); err != nil {
		return err
	}
	return f.File.Sync()
}

// TestAddPowerCut: at whatever moment the power is cut, each page is there whole or not at
// all, those that were told to be added are there, and adding the same again completes them.
func TestAddPowerCut(t *testing.T) {
	drops := []profile.Drop{drop("Alder Kettle", 74, 73), drop("Alder Kettle", 72, 71), drop("Sedge Mere", 70)}
	for calls := 0; ; calls++ {
		above := t.TempDir()
		disk := &cutting{newForgetful(above), 1000}
		b, err := Open(filepath.Join(above, "book"), disk)
		if err != nil {
			t.Fatal(err)
		}
		disk.left = calls
		told := map[string]string{}
		for _, d := range drops {
			path, err := b.Add(d)
			if err == nil {
				told[path] = notebook.Write(d)
			} else if !errors.Is(err, errCut) {
				t.Fatal(err)
			}
		}
		for path, want := range told {
			if got, there := disk.cut(path); !there || got != want {
				t.Fatalf("cut at call %d: %s was told to be added and holds %q, %v", calls, filepath.Base(path), got, there)
			}
		}
		for path, file := range disk.files { // a name may outlive a cut though it was not synced
			if filepath.Ext(path) == ".txt" && (file.kept == "" || file.kept != file.now) {
				t.Fatalf("cut at call %d: %s may hold %q", calls, filepath.Base(path), file.kept)
			}
		}
		if len(told) == len(drops) {
			return
		}
		again := At(b.Dir, System{}) // what a process finds that was only killed
		k := again.Known(heads(t, again), notebook.Options{Unread: true})
		for _, d := range drops {
			if _, has := k.Has(d); !has {
				if _, err := again.Add(d); err != nil {
					t.Fatal(err)
				}
			}
		}
		if n := len(heads(t, again)); n != len(drops) {
			t.Fatalf("cut at call %d, then added again: %d drops", calls, n)
		}
	}
}

// TestHeadsOfAnything: whatever stands in the folder, it is listed and nothing waits; links
// are not followed.
func TestHeadsOfAnything(t *testing.T) {
	b := open(t, System{})
	if _, err := b.Add(drop("Alder Kettle", 74)); err != nil {
		t.Fatal(err)
	}
	outside := filepath.Join(t.TempDir(), "2026-07-01-out.txt")
	edit(t, outside, "water: Sedge Mere\nunits: ft F\n0 70\n5 69\n")
	if err := os.Symlink(outside, filepath.Join(b.Dir, "2026-07-01-link.txt")); err != nil {
		t.Skip(err)
	}
	os.Symlink(filepath.Join(b.Dir, "none"), filepath.Join(b.Dir, "2026-07-02-dangling.txt"))
	os.Mkdir(filepath.Join(b.Dir, "2026-07-03-folder.txt"), 0o700)
	edit(t, filepath.Join(b.Dir, "2026-07-04-large.txt"), strings.Repeat("note: x\n", notebook.MaxPage/8)+"0 ft: 70 F\n")
	edit(t, filepath.Join(b.Dir, "2026-07-05-binary.txt"), "\x7fELF\x00\x01")
	edit(t, filepath.Join(b.Dir, "2026-07-06-"+strings.Repeat("n", 240)+".txt"), "date: 2026-07-09 12:00\nunits: bananas\n0 70\n")
	edit(t, filepath.Join(b.Dir, "empty.txt"), "")
	special(t, b.Dir)
	all := heads(t, b)
	ByDate(all)
	var got []string
	for _, h := range all {
		why := ""
		if h.Err != nil {
			why = strings.ReplaceAll(h.Err.Error(), h.Path, "page")
		}
		got = append(got, fmt.Sprintf("%d %s %.40s", h.Number, h.Date, why))
	}
	for _, want := range []string{
		"0 2026-07-01 it is a link, and links are not followed",
		"0 2026-07-02 it is a link, and links are not followed",
		"0 2026-07-03 is no plain file", "0 2026-07-04 it is larger than 1 MiB, and no page is", "0 2026-07-05 page: is not text: give a page of readin",
		"0 2026-07-09 12:00 page:2: units: \"bananas\" is not a pair o", "2 2026-07-18 14:20 ", "0 2026-08-01 is no plain file", "0 2026-08-02 is no plain file",
	} {
		if !strings.Contains("\n"+strings.Join(got, "\n")+"\n", "\n"+want+"\n") {
			t.Errorf("%q is missing in\n%s", want, strings.Join(got, "\n"))
		}
	}
}

// TestHeadsMeanwhile: a page that is changed or removed between the look at its head and
// its reading is told, and the others are read.
func TestHeadsMeanwhile(t *testing.T) {
	b := open(t, System{})
	var paths []string
	for _, w := range []string{"Alder Kettle", "Sedge Mere", "Heron Reservoir"} {
		path, err := b.Add(drop(w, 74, 70))
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	all := heads(t, b)
	os.Remove(paths[0])
	edit(t, paths[1], "water: Other\nunits: ft F\n0 60\n5 59\n")
	for _, e := range b.Read(all, notebook.Options{Unread: true}) {
		if changed := e.Path == paths[0] || e.Path == paths[1]; changed != (e.Err != nil) || changed && !errors.Is(e.Err, errMeanwhile) {
			t.Errorf("%s: %v", filepath.Base(e.Path), e.Err)
		}
	}
}

// TestHeadsAreEntries: what heads say is what reading each page in full says, of a book of
// pages that were written, edited and jotted down.
func TestHeadsAreEntries(t *testing.T) {
	b := At(fill(t, 300), System{})
	for name, text := range map[string]string{
		"a.txt": "2026-07-18\nAlder Kettle, north bay\n0 74F\n5ft 73\n", "b.txt": "water: X\nunits: m C\n0 20\n1 19\n\nwater: Y\n0 18\n1 17\n", "c.txt": "0 70",
	} {
		edit(t, filepath.Join(b.Dir, name), text)
	}
	o := notebook.Options{Unread: true, Defaults: []notebook.Header{{Key: "units", Value: "ft F", From: "settings"}}}
	heads, err := b.Heads(o)
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range b.Read(heads, o) {
		if e.Err != nil || notebook.GlanceOf(e.Drop) != heads[i].Glance || e.Number != i+1 || i > 0 && heads[i-1].Date > e.Drop.Date {
			t.Fatalf("entry %d: %+v of %+v", i, e, heads[i])
		}
	}
	if len(heads) != 304 {
		t.Errorf("%d drops", len(heads))
	}
}
