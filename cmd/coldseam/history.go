package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

// bookDir is the folder of saved drops: the flag's, else the settings', else the usual one.
func (p *program) bookDir(c *cli.Context, set settings.Settings) (string, error) {
	switch {
	case c.String("book") != "":
		return c.String("book"), nil
	case set.Book != "":
		return set.Book, nil
	}
	dir, err := book.DefaultDir()
	if err != nil {
		return "", refused{err}
	}
	return dir, nil
}

// saves is the folder of saved drops, to look into.
func (p *program) saves(c *cli.Context, set settings.Settings) (*book.Book, error) {
	dir, err := p.bookDir(c, set)
	return book.At(dir, p.disk), err
}

// heads are what the tops of the book's pages say, the oldest drop first, and the pages that
// cannot be read.
func (p *program) heads(c *cli.Context, set settings.Settings, q book.Query) (*book.Book, []book.Head, error) {
	b, err := p.saves(c, set)
	if err != nil {
		return b, nil, err
	}
	heads, err := b.Find(q, set.Reading())
	if err != nil {
		return b, nil, fmt.Errorf("%s: the saved drops cannot be read: %s", b.Dir, cause(err))
	}
	return b, heads, nil
}

// history is the drops of a water that have a date and a reading, the oldest first; those
// of all waters where it is "".
func (p *program) history(c *cli.Context, set settings.Settings, water string) ([]job, error) {
	b, heads, err := p.heads(c, set, book.Query{})
	if err != nil {
		return nil, err
	}
	heads = slices.DeleteFunc(heads, func(h book.Head) bool {
		return h.Err != nil || h.Date == "" || water != "" && !sameName(h.Water, water)
	})
	var out []job
	for _, e := range b.Read(heads, set.Reading()) {
		if e.Err != nil || len(e.Drop.Readings) == 0 {
			continue
		}
		j, err := makeJob(e.Sheet, set, e.Path)
		if err != nil { // a fish that nobody knows does not make the temperatures worthless
			e.Drop.For = ""
			j, err = makeJob(e.Sheet, set, e.Path)
		}
		if err != nil {
			return nil, err
		}
		out = append(out, j)
	}
	return out, nil
}

func sameName(a, b string) bool {
	return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b))
}

// last is the word for the last drop of the book.
const last = "last"

// saved gives the page of a drop of the book: of the last one, or of a number. Of a page
// with several drops it is the one that is meant, as it would be written alone.
func (p *program) saved(c *cli.Context, set settings.Settings, name string) (page, error) {
	b, heads, err := p.heads(c, set, book.Query{})
	if err != nil {
		return page{}, err
	}
	h, several, err := pick(heads, name)
	if err != nil {
		return page{}, err
	}
	if n := damaged(heads); name == last && n > 0 { // one of them may be the later
		fmt.Fprintln(p.err, report.DamagedPages(n))
	}
	if several {
		e := b.Read([]book.Head{h}, set.Reading())[0]
		return page{e.Path, []byte(notebook.Write(e.Drop))}, e.Err
	}
	data, err := p.read(h.Path)
	return page{h.Path, data}, err
}

func damaged(heads []book.Head) (n int) {
	for _, h := range heads {
		if h.Err != nil {
			n++
		}
	}
	return n
}

// pick is the drop that is meant by last or a number, and whether its page has several.
func pick(heads []book.Head, name string) (h book.Head, several bool, err error) {
	heads = slices.DeleteFunc(slices.Clone(heads), func(h book.Head) bool { return h.Err != nil })
	n := len(heads)
	if n == 0 {
		return h, false, refuse("%s: no drop is saved yet: take one with coldseam drop, or name a file", name)
	}
	if name != last {
		if n, err = strconv.Atoi(name); err != nil || n < 1 || n > len(heads) {
			return h, false, refuse("%s: there is no such file, and the drops of the book are 1 to %d: coldseam book lists them", name, len(heads))
		}
	}
	h = heads[n-1]
	return h, slices.ContainsFunc(heads, func(o book.Head) bool { return o.Path == h.Path && o.Number != h.Number }), nil
}

// inBook reports whether a name means a drop of the book: last, or a number, where no file
// has that name.
func inBook(name string) bool {
	_, err := strconv.Atoi(name)
	return (name == last || err == nil) && !exists(name)
}

// unnamed is what a command reads where no file was named: standard input, or for a reading
// at the anchor, and to share, the last drop, where nobody hands over a page.
func (p *program) unnamed(c *cli.Context) []string {
	if (c.IsSet("check") || c.Command.Name == "share") && !p.handed() {
		return []string{last}
	}
	return []string{"-"}
}

// fromBook reports whether a command that can look into the book is to do so: no file was
// named, and nobody hands over a page.
func (p *program) fromBook(c *cli.Context) bool { return !c.Args().Present() && !p.handed() }

// handed reports whether standard input brings a page: it is no terminal, and not empty.
func (p *program) handed() bool {
	f, ok := p.in.(*os.File)
	if !ok {
		return true
	}
	info, err := f.Stat()
	if err != nil || info.Mode()&fs.ModeCharDevice != 0 { // a terminal, or nothing
		return false
	}
	in := bufio.NewReader(f)
	if _, err := in.Peek(1); errors.Is(err, io.EOF) {
		return false
	}
	p.in = in
	return true
}
