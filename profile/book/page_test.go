package book

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coldseam/profile/notebook"
)

// touched records what was told of pages.
func touched(b *Book) *[]string {
	var told []string
	b.Touched = func(what Touch, path, now string) {
		told = append(told, []string{"changed", "gone", "kept"}[what]+" "+filepath.Base(path)+" "+filepath.Base(now))
	}
	return &told
}

func read(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func edit(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

// What somebody does to a page while its drop is taken stays, and so does the drop.
func TestChangedByHand(t *testing.T) {
	const name, second = "2026-07-18-14-20-alder-kettle.txt", "2026-07-18-14-20-alder-kettle-2.txt"
	full := notebook.Write(drop("Alder Kettle", 74, 73, 70))
	for _, c := range []struct {
		name string
		hand func(t *testing.T, path string)
		want string // where the drop is at its end
		told []string
		left func(path string) bool // what the hand did is still there
	}{
		{"edited", func(t *testing.T, path string) { edit(t, path, "units: ft F\n3 74\n") }, second,
			[]string{"changed " + name + " " + second}, func(path string) bool { data, _ := os.ReadFile(path); return string(data) == "units: ft F\n3 74\n" }},
		{"emptied", func(t *testing.T, path string) { edit(t, path, "") }, second,
			[]string{"changed " + name + " " + second}, func(path string) bool { data, err := os.ReadFile(path); return err == nil && len(data) == 0 }},
		{"removed", func(t *testing.T, path string) { os.Remove(path) }, name,
			[]string{"gone " + name + " " + name}, func(string) bool { return true }},
		{"a folder", func(t *testing.T, path string) { os.Remove(path); os.Mkdir(path, 0o700) }, second,
			[]string{"changed " + name + " " + second}, func(path string) bool { info, err := os.Stat(path); return err == nil && info.IsDir() }},
		{"a link to what it was", func(t *testing.T, path string) { os.Rename(path, path+".away"); os.Symlink(path+".away", path) }, second,
			[]string{"changed " + name + " " + second}, func(path string) bool { to, err := os.Readlink(path); return err == nil && to == path+".away" }},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := open(t, System{})
			told := touched(b)
			p, err := b.Begin(drop("Alder Kettle", 74))
			if err != nil {
				t.Fatal(err)
			}
			first := p.Path
			c.hand(t, first)
			for _, ended := range []bool{false, true} {
				if err := p.Save(drop("Alder Kettle", 74, 73, 70), ended); err != nil {
					t.Fatal(err)
				}
			}
			if filepath.Base(p.Path) != c.want || read(t, p.Path) != full || !slices.Equal(*told, c.told) || !c.left(first) {
				t.Errorf("drop in %s, told %q: %q", p.Path, *told, read(t, p.Path))
			}
			for _, n := range names(t, b) {
				if strings.HasSuffix(n, ".part") {
					t.Errorf("left behind: %s", n)
				}
			}
		})
	}
}

// A page that was changed by hand after its drop was cut off is gone on with, and kept
// as it was: a comment is no part of a drop.
func TestEditedBefore(t *testing.T) {
	b := open(t, System{})
	p, err := b.Begin(drop("Alder Kettle", 74))
	if err != nil {
		t.Fatal(err)
	}
	byHand := "# guests took 3\r\n" + strings.ReplaceAll(read(t, p.Path), "\n", "\r\n") + "5 ft: 73 F # windy"
	edit(t, p.Path, byHand)
	told := touched(b)
	pages, err := b.Unended()
	if err != nil || len(pages) != 1 || pages[0].Err != nil || len(pages[0].Drop.Readings) != 2 {
		t.Fatalf("%+v, %v", pages, err)
	}
	for range 2 {
		if err := pages[0].Save(drop("Alder Kettle", 74, 73, 70), true); err != nil {
			t.Fatal(err)
		}
	}
	const kept = "2026-07-18-14-20-alder-kettle.edited"
	if got := read(t, filepath.Join(b.Dir, kept)); got != byHand {
		t.Errorf("kept %q", got)
	}
	if want := []string{"kept 2026-07-18-14-20-alder-kettle.txt " + kept}; !slices.Equal(*told, want) || pages[0].Path != p.Path {
		t.Errorf("told %q, saved in %s", *told, pages[0].Path)
	}
}

// Nobody's page is removed with a drop whose readings were all taken back.
func TestRemoveChanged(t *testing.T) {
	b := open(t, System{})
	told := touched(b)
	p, err := b.Begin(drop("Alder Kettle", 74))
	if err != nil {
		t.Fatal(err)
	}
	edit(t, p.Path, "a note")
	if err := p.Remove(); err != nil || read(t, p.Path) != "a note" || len(*told) != 1 {
		t.Errorf("%v, told %q", err, *told)
	}
}

// Pages, logs and new folders are their owner's alone, and a page that has fewer rights
// keeps them so.
func TestModes(t *testing.T) {
	b := open(t, System{})
	p, err := b.Begin(drop("Alder Kettle", 74))
	if err != nil {
		t.Fatal(err)
	}
	var l Log
	if err := l.Sync(p); err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	mode := func(path string) fs.FileMode {
		info, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		return info.Mode().Perm()
	}
	if mode(p.Path) != 0o600 || mode(p.Beside(LogEnding)) != 0o600 || mode(b.Dir) != 0o700 {
		t.Errorf("page %v, log %v, folder %v", mode(p.Path), mode(p.Beside(LogEnding)), mode(b.Dir))
	}
	for _, c := range []struct{ was, want fs.FileMode }{{0o644, 0o600}, {0o400, 0o400}, {0o440, 0o400}} {
		if err := os.Chmod(p.Path, c.was); err != nil {
			t.Fatal(err)
		}
		if err := p.Save(drop("Alder Kettle", 74, 73), false); err != nil || mode(p.Path) != c.want {
			t.Errorf("%v became %v, %v", c.was, mode(p.Path), err)
		}
	}
}

// Parts that a killed drop left are taken away at the next start, and in nobody's way
// before that; what else is called so stays.
func TestParts(t *testing.T) {
	b := open(t, System{})
	p, err := b.Begin(drop("Alder Kettle", 74))
	if err != nil {
		t.Fatal(err)
	}
	precious := filepath.Join(b.Dir, "precious")
	edit(t, precious, "x")
	const base = "2026-07-18-14-20-alder-kettle"
	edit(t, filepath.Join(b.Dir, base+".txt.part"), "units: f")
	edit(t, filepath.Join(b.Dir, base+"-2.txt.part"), "")
	edit(t, filepath.Join(b.Dir, "undated-drop.txt.part"), "")
	if err := os.Symlink(precious, filepath.Join(b.Dir, base+"-3.txt.part")); err != nil {
		t.Fatal(err)
	}
	others := []string{base + "-4.txt.part", "film.txt.part", "2026-07-18.part"}
	if err := os.MkdirAll(filepath.Join(b.Dir, others[0], "x"), 0o700); err != nil {
		t.Fatal(err)
	}
	edit(t, filepath.Join(b.Dir, others[1]), "x")
	edit(t, filepath.Join(b.Dir, others[2]), "x")
	if err := p.Save(drop("Alder Kettle", 74, 73), false); err != nil {
		t.Fatal(err)
	}
	unlock, err := b.Lock()
	if err != nil {
		t.Fatal(err)
	}
	unlock()
	want := append(others, ".taking", base+"-3.txt.part", base+".txt", "precious")
	slices.Sort(want)
	if got := names(t, b); !slices.Equal(got, want) || read(t, precious) != "x" {
		t.Errorf("left %q, want %q", got, want)
	}
}
