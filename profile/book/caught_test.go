package book

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/notebook"
)

// asRead is how the tests read pages.
var asRead = notebook.Options{Unread: true}

// entryOf is the n-th drop of a book.
func entryOf(t *testing.T, b *Book, n int) Entry {
	t.Helper()
	all, err := b.Entries(asRead)
	if err != nil || len(all) < n || all[n-1].Err != nil {
		t.Fatalf("%+v, %v", all, err)
	}
	return all[n-1]
}

// TestCatchOnAPage: a catch is added to the text of a page as it is, whoever wrote it, at
// the end of its drop; taking the catches away again, one after the other, leaves what was
// there.
func TestCatchOnAPage(t *testing.T) {
	const head, rows = "date: 2026-07-18 14:20\nunits: ft F\n", "0 74\n5 73\n10 66\n15 60\n"
	const second = "\ndate: 2026-07-19\n0 73\n5 72\n10 65\n15 59\n"
	for _, tc := range []struct {
		name, page string
		number     int
		text, want string
	}{
		{"the program's own", head + rows, 1, "rainbow 16 ft", head + rows + "caught: rainbow 16 ft\n"},
		{"no newline at its end", head + strings.TrimSuffix(rows, "\n"), 1, "rainbow 16 ft", head + rows + "caught: rainbow 16 ft\n"},
		{"being taken", head + rows + "# not ended: coldseam drop goes on with it\n", 1, "rainbow 16 ft",
			head + rows + "caught: rainbow 16 ft\n# not ended: coldseam drop goes on with it\n"},
		{"Windows line ends", strings.ReplaceAll(head+rows, "\n", "\r\n"), 1, "rainbow 16 ft", strings.ReplaceAll(head+rows+"caught: rainbow 16 ft\n", "\n", "\r\n")},
		{"old Macintosh line ends", strings.ReplaceAll(head+rows, "\n", "\r"), 1, "rainbow", strings.ReplaceAll(head+rows+"caught: rainbow\n", "\n", "\r")},
		{"a byte order mark", "\ufeff" + head + rows, 1, "rainbow", "\ufeff" + head + rows + "caught: rainbow\n"},
		{"one byte a letter", head + "spot: caf\xe9\n" + rows, 1, "bär 5 m", head + "spot: caf\xe9\n" + rows + "caught: b\xe4r 5 m\n"},
		{"by hand, with words", head + "# windy\n\n" + rows + "\nsaw loons, missed 2 at 14 ft\n\n", 1, "rainbow # 4 midge",
			head + "# windy\n\n" + rows + "\nsaw loons, missed 2 at 14 ft\ncaught: rainbow # 4 midge\n\n"},
		{"the first of two drops", head + rows + second, 1, "rainbow", head + rows + "caught: rainbow\n" + second},
		{"the second of two drops", head + rows + second, 2, "rainbow", head + rows + second + "caught: rainbow\n"},
		{"no readings yet", head, 1, "perch 4 m", head + "caught: perch 4 m\n"},
		{"written across", head + "depth 0 5 10 15\ntemp 74 73 66 60\n", 1, "perch 4 m", head + "depth 0 5 10 15\ntemp 74 73 66 60\ncaught: perch 4 m\n"},
		{"a sign of comments", head + rows, 1, `rainbow # b \# c`, head + rows + `caught: rainbow \# b \\\# c` + "\n"},
		{"an emoji", head + rows, 1, "🐟 16 ft", head + rows + "caught: 🐟 16 ft\n"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			b := open(t, System{})
			path := filepath.Join(b.Dir, "by hand.txt")
			edit(t, path, tc.page)
			if err := os.Chmod(path, 0o640); err != nil {
				t.Fatal(err)
			}
			c, err := b.AddCatch(entryOf(t, b, tc.number), tc.text, asRead)
			if err != nil || c.Text != tc.text {
				t.Fatalf("%+v, %v", c, err)
			}
			if got := read(t, path); got != tc.want {
				t.Fatalf("got  %q\nwant %q", got, tc.want)
			}
			if got := entryOf(t, b, tc.number).Drop.Catches; len(got) != 1 || got[0] != c {
				t.Errorf("read back as %+v", got)
			}
			if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
				t.Errorf("%v, %v", info.Mode(), err)
			}
			if _, err := b.AddCatch(entryOf(t, b, tc.number), "perch 3 m", asRead); err != nil {
				t.Fatal(err)
			}
			for _, want := range []string{"perch 3 m", tc.text} {
				if c, err := b.TakeCatch(entryOf(t, b, tc.number), asRead); err != nil || c.Text != want {
					t.Errorf("took %+v, %v; want %s", c, err, want)
				}
			}
			if got := read(t, path); strings.TrimRight(got, "\r\n") != strings.TrimRight(tc.page, "\r\n") {
				t.Errorf("left %q", got)
			}
			if _, err := b.TakeCatch(entryOf(t, b, tc.number), asRead); !errors.Is(err, ErrNoCatch) {
				t.Errorf("none left: %v", err)
			}
			if got, _ := os.ReadDir(b.Dir); len(got) != 1 {
				t.Errorf("left %s", got)
			}
		})
	}
}

// TestCatchRefused: what cannot be noted leaves the page as it was, and no other file.
func TestCatchRefused(t *testing.T) {
	page := notebook.Write(drop("Alder Kettle", 74, 73, 70))
	for _, tc := range []struct {
		name string
		hand func(t *testing.T, path string) // between reading the drop and noting the catch
		want error
	}{
		{"changed", func(t *testing.T, path string) { edit(t, path, page+"30 ft: 50 F\n") }, ErrMeanwhile},
		{"damaged", func(t *testing.T, path string) { edit(t, path, "\x00") }, ErrMeanwhile},
		{"removed", func(t *testing.T, path string) { os.Remove(path) }, fs.ErrNotExist},
		{"a link", func(t *testing.T, path string) { os.Rename(path, path+".away"); os.Symlink(path+".away", path) }, errNoFile},
	} {
		b := open(t, System{})
		path := filepath.Join(b.Dir, "a.txt")
		edit(t, path, page)
		e := entryOf(t, b, 1)
		tc.hand(t, path)
		was, _ := os.ReadFile(path)
		if _, err := b.AddCatch(e, "rainbow", asRead); !errors.Is(err, tc.want) {
			t.Errorf("%s: %v", tc.name, err)
		}
		if now, _ := os.ReadFile(path); string(now) != string(was) {
			t.Errorf("%s: the page is %q now", tc.name, now)
		}
	}
	b := open(t, System{})
	edit(t, filepath.Join(b.Dir, "a.txt"), "spot: caf\xe9\n"+page)
	if _, err := b.AddCatch(entryOf(t, b, 1), "🐟 16 ft", asRead); !errors.Is(err, ErrLetters) {
		t.Errorf("letters: %v", err)
	}
	if _, err := b.AddCatch(entryOf(t, b, 1), "nothing", asRead); err == nil {
		t.Error("nothing is noted")
	}
}

// TestCatchFails: where a step of the save fails the page is whole, and but for the sync of
// the folder as it was, and no part is left.
func TestCatchFails(t *testing.T) {
	page := notebook.Write(drop("Alder Kettle", 74, 73, 70))
	for at := 1; at <= 5; at++ {
		disk := &failing{}
		b := open(t, disk)
		path := filepath.Join(b.Dir, "a.txt")
		edit(t, path, page)
		e := entryOf(t, b, 1)
		disk.steps, disk.at = nil, at
		_, err := b.AddCatch(e, "rainbow 16 ft", asRead)
		if !errors.Is(err, errFull) {
			t.Fatalf("step %d of %v: %v", at, disk.steps, err)
		}
		want := page
		if disk.steps[at-1] == "sync folder" {
			want += "caught: rainbow 16 ft\n"
		}
		if got := read(t, path); got != want {
			t.Errorf("%s: the page is %q now", disk.steps[at-1], got)
		}
		if got, _ := os.ReadDir(b.Dir); len(got) != 1 {
			t.Errorf("%s: left %s", disk.steps[at-1], got)
		}
	}
}

// TestCatchPowerCut: once a catch was told to be noted, or to be taken away, a cut of the
// power leaves it so; before, the page is as it was.
func TestCatchPowerCut(t *testing.T) {
	above := t.TempDir()
	disk := newForgetful(above)
	b, err := Open(filepath.Join(above, "book"), disk)
	if err != nil {
		t.Fatal(err)
	}
	page, err := b.Begin(drop("Alder Kettle", 74, 73, 70))
	if err != nil {
		t.Fatal(err)
	}
	must := func(want string) {
		t.Helper()
		if got, there := disk.cut(page.Path); !there || got != want {
			t.Fatalf("after a cut: %q, %v; want %q", got, there, want)
		}
	}
	before := read(t, page.Path)
	disk.first = func() { must(before) }
	if _, err := b.AddCatch(entryOf(t, b, 1), "rainbow 16 ft", asRead); err != nil {
		t.Fatal(err)
	}
	noted := strings.Replace(before, notEnded, "caught: rainbow 16 ft\n"+notEnded, 1)
	must(noted)
	disk.first = func() { must(noted) }
	if _, err := b.TakeCatch(entryOf(t, b, 1), asRead); err != nil {
		t.Fatal(err)
	}
	must(before)
}

// meddling is a disk on which somebody writes a page while another text is made ready.
type meddling struct {
	System
	path, text string
}

func (d *meddling) Create(path string, mode fs.FileMode) (File, error) {
	if d.path != "" {
		if err := os.WriteFile(d.path, []byte(d.text), 0o600); err != nil {
			return nil, err
		}
	}
	return d.System.Create(path, mode)
}

// TestCatchMeanwhile: what somebody else writes while a catch is saved stays.
func TestCatchMeanwhile(t *testing.T) {
	page := notebook.Write(drop("Alder Kettle", 74, 73, 70))
	disk := &meddling{}
	b := open(t, disk)
	path := filepath.Join(b.Dir, "a.txt")
	edit(t, path, page)
	e := entryOf(t, b, 1)
	disk.path, disk.text = path, page+"note: mine\n"
	if _, err := b.AddCatch(e, "rainbow 16 ft", asRead); !errors.Is(err, ErrMeanwhile) {
		t.Errorf("%v", err)
	}
	if got := read(t, path); got != disk.text {
		t.Errorf("the page is %q now", got)
	}
	if got, _ := os.ReadDir(b.Dir); len(got) != 1 {
		t.Errorf("left %s", got)
	}
}

// TestRewrite: a corrected page stands in the place of the old one, durably; a text without
// readings, one that cannot be read, and a page changed meanwhile change nothing.
func TestRewrite(t *testing.T) {
	const page = "units: ft F\n# mine\n0 74\n5 73\n10 66\n"
	above := t.TempDir()
	disk := newForgetful(above)
	b, err := Open(filepath.Join(above, "book"), disk)
	if err != nil {
		t.Fatal(err)
	}
	begun, err := b.Begin(drop("Alder Kettle", 74, 73, 70))
	if err != nil {
		t.Fatal(err)
	}
	was := read(t, begun.Path)
	sheets, err := b.Rewrite(begun.Path, was, page, asRead)
	if err != nil || len(sheets) != 1 || len(sheets[0].Drop.Readings) != 3 {
		t.Fatalf("%v, %v", sheets, err)
	}
	if got, there := disk.cut(begun.Path); !there || got != page {
		t.Errorf("after a cut: %q, %v", got, there)
	}
	for _, c := range []struct{ was, text, want string }{
		{page, "units: ft F\n", "no readings"}, {page, "fly weight: heavy\n0 ft 74 F\n", "fly weight"}, {was, page + "15 60\n", "changed meanwhile"},
	} {
		if _, err := b.Rewrite(begun.Path, c.was, c.text, asRead); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.text, err, c.want)
		}
		if got := read(t, begun.Path); got != page {
			t.Errorf("the page is %q now", got)
		}
	}
	if _, err := b.Rewrite(filepath.Join(b.Dir, "none.txt"), page, page, asRead); err == nil {
		t.Error("a page that is not there was written")
	}
}
