package book

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A power cut at any moment leaves a file as it was or as it is to be.
func TestReplaceSurvivesPowerCut(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "settings.toml")
	disk := newForgetful(dir)
	if err := Replace(path, "old\n", disk); err != nil {
		t.Fatal(err)
	}
	seen := 0
	disk.first = func() {
		seen++
		if got, _ := disk.cut(path); got != "old\n" {
			t.Errorf("before the new one is in its place a cut leaves %q", got)
		}
		for name, is := range disk.files {
			if strings.HasSuffix(name, ".part") && is.kept != "new\n" {
				t.Errorf("the new one takes the place with %q synced", is.kept)
			}
		}
	}
	if err := Replace(path, "new\n", disk); err != nil {
		t.Fatal(err)
	}
	if got, _ := disk.cut(path); seen != 1 || got != "new\n" || read(t, path) != "new\n" {
		t.Errorf("afterwards %q, %d renamed", got, seen)
	}
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("left over: %v", files)
	}
}

// Where it cannot be put in its place, nothing is left beside it.
func TestReplaceRefused(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "settings.toml")
	if err := os.MkdirAll(filepath.Join(path, "x"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := Replace(path, "new\n", System{}); err == nil {
		t.Error("a folder was replaced")
	}
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("left over: %v", files)
	}
}

// A page that is taken out stays out after a power cut; one that was changed meanwhile stays.
func TestTakeOut(t *testing.T) {
	above := t.TempDir()
	disk := newForgetful(above)
	b, err := Open(filepath.Join(above, "book"), disk)
	if err != nil {
		t.Fatal(err)
	}
	p, err := b.Begin(drop("Alder Kettle", 74))
	if err != nil {
		t.Fatal(err)
	}
	text := read(t, p.Path)
	if err := b.TakeOut(p.Path, text+"# mine\n"); !errors.Is(err, ErrMeanwhile) || read(t, p.Path) != text {
		t.Errorf("a page that was changed is taken out: %v", err)
	}
	if err := b.TakeOut(p.Path, text); err != nil {
		t.Fatal(err)
	}
	if _, there := disk.cut(p.Path); there {
		t.Error("after a cut of the power the page is there again")
	}
	if err := b.TakeOut(p.Path, text); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("taken out twice: %v", err)
	}
}
