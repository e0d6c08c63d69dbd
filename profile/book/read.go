package book

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"sync"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// Head is one drop as the top of its page tells it, or why that could not be read.
type Head struct {
	notebook.Glance
	Number  int // its place by date, the oldest 1; undated drops come first. 0 where Err is set
	Path    string
	Unended bool  // it is being taken, or was cut off
	Err     error // then Date is what the file's name or a line says, and the rest is not known

	at int // which drop of its page
}

// Entry is one drop as it stands in the book: what was read of its page, or why that
// could not be.
type Entry struct {
	notebook.Sheet
	Number  int // as of its Head
	Path    string
	Nth     int // which drop of its page, from 1
	Unended bool
	Err     error
	Date    string // as of its Head
}

// At is a book that is only read: the folder need not be there, and nothing is made.
func At(dir string, disk Disk) *Book { return &Book{Dir: dir, disk: disk} }

// Heads gives the head of every drop of the book, the oldest first, and behind them the
// pages that could not be read. A page may hold several drops. A folder that is not there
// has none. Of the pages that this program wrote only the head is looked at, so that
// thousands take no time; what it gives is what reading each in full would give.
func (b *Book) Heads(o notebook.Options) ([]Head, error) { return b.Find(Query{}, o) }

// Find gives the heads of the drops that are asked for, each with its number in the book,
// and behind them the pages that could not be read.
func (b *Book) Find(q Query, o notebook.Options) ([]Head, error) {
	names, err := b.pages()
	if err != nil {
		return nil, err
	}
	found := make([][]found, len(names))
	var all sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		all.Go(func() {
			g := notebook.NewGlancer(o)
			for i := w; i < len(names); i += workers {
				found[i] = b.look(names[i], g, q, o)
			}
		})
	}
	all.Wait()
	return inOrder(slices.Concat(found...)), nil
}

// found is a head, and whether it is asked for.
type found struct {
	Head
	asked bool
}

// inOrder numbers the drops, and keeps those that are asked for.
func inOrder(all []found) []Head {
	slices.SortStableFunc(all, func(x, y found) int {
		switch {
		case x.Err == nil && y.Err == nil:
			return cmp.Compare(x.Date, y.Date)
		case x.Err == nil:
			return -1
		case y.Err == nil:
			return 1
		}
		return 0
	})
	var out []Head
	for i, f := range all {
		if f.Err == nil {
			f.Number = i + 1
		}
		if f.asked {
			out = append(out, f.Head)
		}
	}
	return out
}

// look gives the heads of a page.
func (b *Book) look(name string, g *notebook.Glancer, q Query, o notebook.Options) []found {
	path := b.path(name)
	damaged := func(data []byte, err error) []found {
		return []found{{Head{Glance: notebook.Glance{Date: likelyDate(name, data)}, Path: path, Err: err}, true}}
	}
	data, err := text(path)
	if err != nil {
		return damaged(nil, err)
	}
	unended := isUnended(data)
	if is, ok := g.Look(data); ok {
		page := onPage{func() string { return string(data) }, func() []profile.Catch { return g.Catches(data) }}
		return []found{{Head{Glance: is, Path: path, Unended: unended}, q.asks(is, page)}}
	}
	o.Name = path
	sheets, err := notebook.Read(data, o)
	if err != nil {
		return damaged(data, err)
	}
	var out []found
	for i, s := range sheets {
		is := notebook.GlanceOf(s.Drop)
		text := func() string {
			if len(sheets) == 1 {
				return string(data)
			}
			return notebook.Write(s.Drop)
		}
		page := onPage{text, func() []profile.Catch { return s.Drop.Catches }}
		out = append(out, found{Head{Glance: is, Path: path, Unended: unended, at: i}, q.asks(is, page)})
	}
	return out
}

// likelyDate is the day of a page that cannot be read, "" where there is no telling.
func likelyDate(name string, data []byte) string {
	if m := dateLine().FindSubmatch(data); m != nil {
		return string(m[1])
	}
	return dateAhead().FindString(name)
}

var (
	dateLine = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`(?m)^date: *(\d{4}-\d\d-\d\d(?: \d\d:\d\d)?)[ \t\r]*$`)
	})
	dateAhead = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\d{4}-\d\d-\d\d`) })
)

// ByDate puts pages that cannot be read in their place among the drops.
func ByDate(heads []Head) {
	slices.SortStableFunc(heads, func(x, y Head) int { return cmp.Compare(x.Date, y.Date) })
}

// isUnended reports whether a page says that its drop goes on.
func isUnended(data []byte) bool {
	return bytes.Contains(data, []byte("not ended")) && goesOn().Match(data)
}

// Entries gives every drop of the book in full, the oldest first, and behind them the
// pages that could not be read.
func (b *Book) Entries(o notebook.Options) ([]Entry, error) {
	heads, err := b.Heads(o)
	if len(heads) == 0 || err != nil {
		return nil, err
	}
	return b.Read(heads, o), nil
}

// Read reads drops in full. One whose page was changed meanwhile, so that it is not there
// any more, has its Err.
func (b *Book) Read(heads []Head, o notebook.Options) []Entry {
	out := make([]Entry, len(heads))
	var all sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		all.Go(func() {
			for i := w; i < len(heads); i += workers {
				out[i] = b.entry(heads[i], o)
			}
		})
	}
	all.Wait()
	return out
}

func (b *Book) entry(h Head, o notebook.Options) Entry {
	e := Entry{Number: h.Number, Path: h.Path, Nth: h.at + 1, Unended: h.Unended, Err: h.Err, Date: h.Date}
	if h.Err != nil {
		return e
	}
	data, err := text(h.Path)
	var sheets []notebook.Sheet
	if err == nil {
		o.Name = h.Path
		sheets, err = notebook.Read(data, o)
	}
	switch {
	case err == nil && (h.at >= len(sheets) || notebook.GlanceOf(sheets[h.at].Drop) != h.Glance):
		e.Err = errMeanwhile
	case errors.Is(err, fs.ErrNotExist):
		e.Err = errMeanwhile
	default:
		e.Err = err
	}
	if e.Err == nil {
		e.Sheet = sheets[h.at]
	}
	return e
}

var errMeanwhile = errors.New("it was changed or removed while the book was read: try again")

// pages are the names of the files that are pages, sorted.
func (b *Book) pages() ([]string, error) {
	dir, err := os.Open(b.Dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	} else if err != nil {
		return nil, err
	}
	defer dir.Close()
	names, err := dir.Readdirnames(-1)
	names = slices.DeleteFunc(names, func(name string) bool { return filepath.Ext(name) != ".txt" })
	slices.Sort(names)
	return names, err
}

// Why a file is not read. A link may lead out of the folder, and a drop that two names
// have would count twice; whatever is no file may never end.
var (
	errLink  = errors.New("it is a link, and links are not followed: coldseam book add takes what it leads to into the book")
	errLarge = fmt.Errorf("it is larger than %d MiB, and no page is", notebook.MaxPage>>20)
)
