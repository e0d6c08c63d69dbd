package book

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"coldseam/profile/notebook"
)

// Entry is one drop as it stands in the book: what was read of its page, or why that
// could not be.
type Entry struct {
	notebook.Sheet
	Number  int // its place by date, the oldest 1; undated drops come first. 0 where Err is set
	Path    string
	Unended bool // it is being taken, or was cut off
	Err     error
}

// At is a book that is only read: the folder need not be there, and nothing is made.
func At(dir string, disk Disk) *Book { return &Book{Dir: dir, disk: disk} }

// Entries gives every drop of the book, the oldest first, and behind them the pages that
// could not be read. A page may hold several drops. A folder that is not there has none.
func (b *Book) Entries(o notebook.Options) ([]Entry, error) {
	names, err := b.pages()
	if err != nil {
		return nil, err
	}
	var drops, damaged []Entry
	for _, name := range names {
		for _, e := range b.entries(name, o) {
			if e.Err != nil {
				damaged = append(damaged, e)
			} else {
				drops = append(drops, e)
			}
		}
	}
	slices.SortStableFunc(drops, func(x, y Entry) int { return cmp.Compare(x.Drop.Date, y.Drop.Date) })
	for i := range drops {
		drops[i].Number = i + 1
	}
	return append(drops, damaged...), nil
}

// pages are the names of the files that are pages, sorted.
func (b *Book) pages() ([]string, error) {
	entries, err := os.ReadDir(b.Dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	var names []string
	for _, e := range entries {
		if filepath.Ext(e.Name()) == ".txt" {
			names = append(names, e.Name())
		}
	}
	return names, err
}

// entries are the drops of a page.
func (b *Book) entries(name string, o notebook.Options) []Entry {
	path := b.path(name)
	failed := func(err error) []Entry { return []Entry{{Path: path, Err: err}} }
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return failed(err)
	case !info.Mode().IsRegular():
		return failed(errNoFile)
	case info.Size() > notebook.MaxPage:
		return failed(errors.New("it is larger than 1 MiB, and no page is"))
	}
	data, err := b.disk.ReadFile(path)
	if err != nil {
		return failed(err)
	}
	o.Name = path
	sheets, err := notebook.Read(data, o)
	if err != nil {
		return failed(err)
	}
	var out []Entry
	for _, s := range sheets {
		out = append(out, Entry{Sheet: s, Path: path, Unended: goesOn().Match(data)})
	}
	return out
}
