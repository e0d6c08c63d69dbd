package book

import (
	"encoding/binary"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf16"
)

// Every page whose drop has not ended is offered, or named with the reason why it is
// not: whatever an editor, another machine or a torn copy made of it.
func TestUnended(t *testing.T) {
	page := pageText(drop("Alder Kettle", 74, 73), false)
	units := utf16.Encode([]rune("\ufeff" + page))
	wide := make([]byte, 0, 2*len(units))
	for _, u := range units {
		wide = binary.LittleEndian.AppendUint16(wide, u)
	}
	for _, c := range []struct {
		name, text, reason string // no reason: it is offered with two readings
	}{
		{"as it was", page, ""},
		{"CRLF", strings.ReplaceAll(page, "\n", "\r\n"), ""},
		{"a mark of UTF-8 before it", "\ufeff" + page, ""},
		{"no end of the last line", strings.TrimSuffix(page, "\n"), ""},
		{"no end, CRLF", strings.TrimSuffix(strings.ReplaceAll(page, "\n", "\r\n"), "\r\n"), ""},
		{"lines after the marker", page + "note: windy\n\n", ""},
		{"blanks before the marker", strings.Replace(page, "# not", "  # not", 1), ""},
		{"UTF-16", string(wide), "UTF-16"},
		{"an impossible line", strings.Replace(page, "units: ft F", "units: bananas", 1), "line 3: "},
		{"two drops", strings.Replace(page, "# not", "---\nunits: ft F\n0 ft: 70 F\n5 ft: 69 F\n# not", 1), "2 drops"},
		{"larger than a page", strings.Repeat("# \n", 1<<19) + page, "1 MiB"},
	} {
		b := open(t, System{})
		edit(t, filepath.Join(b.Dir, "cut off.txt"), c.text)
		got, err := b.Unended()
		if err != nil || len(got) != 1 {
			t.Errorf("%s: %v, %v", c.name, got, err)
			continue
		}
		switch u := got[0]; {
		case c.reason == "" && (u.Err != nil || len(u.Drop.Readings) != 2):
			t.Errorf("%s: not offered: %v", c.name, u.Err)
		case c.reason == "" && u.hand != strings.Contains(c.name, "the marker"): // more than line ends
			t.Errorf("%s: changed by hand: %v", c.name, u.hand)
		case c.reason != "" && (u.Err == nil || !strings.Contains(u.Err.Error(), c.reason)):
			t.Errorf("%s: the reason is %v, want %q", c.name, u.Err, c.reason)
		}
	}
}

// What has ended, and what is no page, is not asked about.
func TestEnded(t *testing.T) {
	b := open(t, System{})
	page := pageText(drop("Alder Kettle", 74, 73), true)
	for name, text := range map[string]string{
		"ended.txt": page, "spoken of.txt": page + "note: it was # not ended: there\n", "short.txt": "#", "other.md": notEnded + "\n", "x.edited": notEnded + "\n",
	} {
		edit(t, filepath.Join(b.Dir, name), text)
	}
	if err := os.Mkdir(filepath.Join(b.Dir, "folder.txt"), 0o700); err != nil {
		t.Fatal(err)
	}
	if got, err := b.Unended(); err != nil || len(got) != 0 {
		t.Errorf("%v, %v", got, err)
	}
}

// A page that may not be read, or is a link, is named.
func TestUnendedNamed(t *testing.T) {
	b := open(t, System{})
	page := filepath.Join(b.Dir, "2026.txt")
	edit(t, page, pageText(drop("", 74), false))
	if err := os.Symlink(page, filepath.Join(b.Dir, "link.txt")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(page+"-gone", filepath.Join(b.Dir, "nowhere.txt")); err != nil {
		t.Fatal(err)
	}
	b.disk = unreadable{}
	got, err := b.Unended()
	var reasons []string
	for _, u := range got {
		reasons = append(reasons, filepath.Base(u.Path)+": "+fmt.Sprint(u.Err))
	}
	slices.Sort(reasons)
	all := strings.Join(reasons, "\n")
	if err != nil || len(got) != 3 || !strings.Contains(all, "2026.txt: whether its drop has ended cannot be told: permission denied") || !strings.Contains(all, "nowhere.txt: whether") {
		t.Errorf("%s, %v", all, err)
	}
	b.disk = System{}
	if got, _ = b.Unended(); len(got) != 3 || got[1].Err == nil && got[0].Err == nil {
		t.Errorf("a link: %v", got)
	}
}

type unreadable struct{ System }

func (unreadable) ReadFile(string) ([]byte, error) { return nil, os.ErrPermission }

// The drop saved last comes first, and one with a date to come hides none.
func TestUnendedOrder(t *testing.T) {
	b := open(t, System{})
	for i, name := range []string{"2031-01-01-b.txt", "2026-07-18-a.txt", "2024-05-01-c.txt"} {
		path := filepath.Join(b.Dir, name)
		edit(t, path, pageText(drop(name, 74), false))
		at := time.Date(2026, 7, 18, 14, i, 0, 0, time.UTC)
		if err := os.Chtimes(path, at, at); err != nil {
			t.Fatal(err)
		}
	}
	pages, err := b.Unended()
	var got []string
	for _, u := range pages {
		got = append(got, u.Drop.Water)
	}
	if want := []string{"2024-05-01-c.txt", "2026-07-18-a.txt", "2031-01-01-b.txt"}; err != nil || !slices.Equal(got, want) {
		t.Errorf("%q, %v", got, err)
	}
}
