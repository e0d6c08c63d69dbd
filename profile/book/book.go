package book

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// ErrInUse reports that another program is taking a drop into the same folder.
var ErrInUse = errors.New("another drop is being taken into this book")

// Book is a folder of pages.
type Book struct {
	Dir  string
	disk Disk
}

// DefaultDir is where drops are kept when nothing else is said: coldseam in
// $XDG_DATA_HOME, else ~/.local/share/coldseam.
func DefaultDir() (string, error) {
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "coldseam"), nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", errors.New("no home folder is known: say where drops are kept with --book DIR")
	}
	return filepath.Join(home, ".local", "share", "coldseam"), nil
}

// Open opens the folder as a book, and makes it where it is missing.
func Open(dir string, disk Disk) (*Book, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	return &Book{dir, disk}, nil
}

// Lock keeps other drops out until the function it gives is called or the process
// ends: ErrInUse where one is being taken.
func (b *Book) Lock() (unlock func(), err error) {
	f, err := lock(filepath.Join(b.Dir, ".taking"))
	if err != nil {
		return nil, err
	}
	return func() { f.Close() }, nil
}

// Page is one saved drop.
type Page struct {
	Path string
	book *Book
}

// Begin saves a new drop, not ended, under a name of its own: its date, then its
// water.
func (b *Book) Begin(d profile.Drop) (*Page, error) {
	base := filepath.Join(b.Dir, pageName(d))
	for i := 1; i < 1000; i++ {
		p := &Page{Path: base + ".txt", book: b}
		if i > 1 {
			p.Path = fmt.Sprintf("%s-%d.txt", base, i)
		}
		err := p.put(d, false, b.disk.Link)
		if !errors.Is(err, os.ErrExist) {
			return p, err
		}
	}
	return nil, fmt.Errorf("%s: a thousand drops of this name", base)
}

// Save puts the drop as it is now in the place of what was saved before.
func (p *Page) Save(d profile.Drop, ended bool) error { return p.put(d, ended, p.book.disk.Rename) }

// Beside gives the path of a file that belongs to the page, of another ending.
func (p *Page) Beside(ending string) string { return strings.TrimSuffix(p.Path, ".txt") + ending }

// Remove takes the page out of the book.
func (p *Page) Remove() error {
	if err := p.book.disk.Remove(p.Path); err != nil {
		return err
	}
	return p.book.disk.SyncFolder(p.book.Dir)
}

// notEnded is the comment by which a page tells that its drop goes on.
const notEnded = "# not ended: coldseam drop goes on with it"

func (p *Page) put(d profile.Drop, ended bool, name func(from, to string) error) error {
	text := notebook.Write(d)
	if !ended {
		text += notEnded + "\n"
	}
	disk, part := p.book.disk, p.Path+".part"
	f, err := disk.Create(part)
	if errors.Is(err, os.ErrExist) { // left by a drop that was killed while saving
		if err = disk.Remove(part); err == nil {
			f, err = disk.Create(part)
		}
	}
	if err != nil {
		return err
	}
	_, err = f.Write([]byte(text))
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = name(part, p.Path)
	}
	if err != nil {
		disk.Remove(part)
		return err
	}
	return disk.SyncFolder(p.book.Dir)
}

// Unended gives the pages whose drop has not ended, the newest name first, as far as
// they can be read.
func (b *Book) Unended() ([]*Page, []profile.Drop, error) {
	entries, err := os.ReadDir(b.Dir) // sorted by name
	if err != nil {
		return nil, nil, err
	}
	slices.Reverse(entries)
	var pages []*Page
	var drops []profile.Drop
	for _, e := range entries {
		name := filepath.Join(b.Dir, e.Name())
		if !e.Type().IsRegular() || filepath.Ext(name) != ".txt" {
			continue
		}
		data, err := b.disk.ReadFile(name)
		if err != nil || len(data) > notebook.MaxPage || !strings.HasSuffix(string(data), notEnded+"\n") {
			continue
		}
		sheets, err := notebook.Read(data, notebook.Options{Name: name, Unread: true})
		if err != nil || len(sheets) != 1 {
			continue
		}
		pages, drops = append(pages, &Page{name, b}), append(drops, sheets[0].Drop)
	}
	return pages, drops, nil
}

// pageName is a drop's date and water in letters, digits and hyphens, and nothing
// that a file system could stumble over.
func pageName(d profile.Drop) string {
	slug := func(s string, most int) string {
		var out []byte
		for _, r := range strings.ToLower(s) {
			switch {
			case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
				out = append(out, byte(r))
			case len(out) > 0 && out[len(out)-1] != '-':
				out = append(out, '-')
			}
			if len(out) >= most {
				break
			}
		}
		return strings.Trim(string(out), "-")
	}
	parts := []string{slug(d.Date, 20), slug(d.Water, 40)}
	if parts[0] == "" {
		parts[0] = "undated"
	}
	if parts[1] == "" {
		parts[1] = "drop"
	}
	return strings.Join(parts, "-")
}
