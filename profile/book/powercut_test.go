package book

import (
	"io/fs"
	"maps"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// forgetful is a disk whose power may be cut at any moment. It forgets every byte that
// was not synced with its file, and every name that was not synced with its folder, as
// POSIX allows (fsync: "all currently queued I/O operations associated with the file").
type forgetful struct {
	System
	base  string                       // the folder that was there before
	files map[string]*inode            // by path, as they are now
	kept  map[string]map[string]*inode // by folder: the names that outlive a cut
	first func()                       // is called before a name is taken by another file
}

type inode struct{ now, kept string }

func newForgetful(above string) *forgetful {
	return &forgetful{base: filepath.Clean(above), files: map[string]*inode{}, kept: map[string]map[string]*inode{}}
}

type forgetfulFile struct {
	File
	*inode
}

func (f forgetfulFile) Write(b []byte) (int, error) { f.now += string(b); return f.File.Write(b) }
func (f forgetfulFile) Sync() error                 { f.kept = f.now; return f.File.Sync() }

func (d *forgetful) Create(path string, mode fs.FileMode) (File, error) {
	f, err := d.System.Create(path, mode)
	if err != nil {
		return nil, err
	}
	d.files[path] = &inode{}
	return forgetfulFile{f, d.files[path]}, nil
}

func (d *forgetful) Append(path string) (File, error) {
	f, err := d.System.Append(path)
	if d.files[path] == nil {
		d.files[path] = &inode{}
	}
	return forgetfulFile{f, d.files[path]}, err
}

func (d *forgetful) Folder(path string) error {
	d.files[path] = &inode{}
	return d.System.Folder(path)
}

func (d *forgetful) Rename(from, to string) error {
	if d.first != nil {
		d.first()
	}
	d.files[to] = d.files[from]
	delete(d.files, from)
	return d.System.Rename(from, to)
}

func (d *forgetful) Move(from, to string) error {
	err := d.System.Move(from, to)
	if err == nil {
		d.files[to] = d.files[from]
		delete(d.files, from)
	}
	return err
}

func (d *forgetful) Remove(path string) error { delete(d.files, path); return d.System.Remove(path) }

func (d *forgetful) SyncFolder(path string) error {
	path = filepath.Clean(path)
	d.kept[path] = map[string]*inode{}
	for name, file := range d.files {
		if filepath.Dir(name) == path {
			d.kept[path][name] = file
		}
	}
	return d.System.SyncFolder(path)
}

// cut gives what a file holds after the power was cut now.
func (d *forgetful) cut(path string) (text string, there bool) {
	above := filepath.Dir(path)
	for dir := above; dir != d.base; dir = filepath.Dir(dir) { // each folder must have its name in the one above
		if d.kept[filepath.Dir(dir)][dir] == nil {
			return "", false
		}
	}
	file := d.kept[above][path]
	if file == nil {
		return "", false
	}
	return file.kept, true
}

// Whatever was told to be saved is there after a cut of the power: the page, as it was
// saved last, the lines of the probe, and the page that somebody changed.
func TestPowerCut(t *testing.T) {
	above := t.TempDir()
	disk := newForgetful(above)
	b, err := Open(filepath.Join(above, "new", "newer", "book"), disk)
	if err != nil {
		t.Fatal(err)
	}
	must := func(path, want string) {
		t.Helper()
		if got, there := disk.cut(path); !there || got != want {
			t.Fatalf("after a cut %s holds %q, %v; want %q", filepath.Base(path), got, there, want)
		}
	}
	d := drop("Alder Kettle", 74)
	p, err := b.Begin(d)
	if err != nil {
		t.Fatal(err)
	}
	must(p.Path, pageText(d, false))
	var l Log
	l.Line(1, []byte("18.31"))
	if err := l.Sync(p); err != nil {
		t.Fatal(err)
	}
	must(p.Beside(LogEnding), "+1.000 18.31\n")
	l.Line(2, []byte("18.30"))
	if err := l.Sync(p); err != nil {
		t.Fatal(err)
	}
	must(p.Beside(LogEnding), "+1.000 18.31\n+2.000 18.30\n")
	l.Close()
	d = drop("Alder Kettle", 74, 73)
	if err := p.Save(d, false); err != nil {
		t.Fatal(err)
	}
	must(p.Path, pageText(d, false))

	byHand := pageText(d, false) + "# windy\n"
	edit(t, p.Path, byHand)
	pages, err := b.Unended()
	if err != nil || len(pages) != 1 {
		t.Fatal(pages, err)
	}
	d = drop("Alder Kettle", 74, 73, 72)
	disk.first = func() { must(pages[0].Beside(keptEnding), byHand) }
	if err := pages[0].Save(d, false); err != nil {
		t.Fatal(err)
	}
	must(p.Path, pageText(d, false))
	must(pages[0].Beside(keptEnding), byHand)
	if err := pages[0].Remove(); err != nil {
		t.Fatal(err)
	}
	if _, there := disk.cut(p.Path); there {
		t.Error("what was removed is there again after a cut")
	}
	left := maps.Clone(disk.files)
	for path := range left {
		if strings.HasSuffix(path, ".part") {
			t.Errorf("left %s", path)
		}
	}
}

// Syncing a folder is not pretended. What it does on a disk is seen from outside, in
// the command's tests.
func TestSyncFolder(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("folder.js gives a file its name durably, without a sync of the folder")
	}
	if err := (System{}).SyncFolder(filepath.Join(t.TempDir(), "gone")); err == nil {
		t.Error("a folder that is not there was synced")
	}
}
