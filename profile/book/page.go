package book

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// pageMode: where an angler fishes is his own affair.
const pageMode fs.FileMode = 0o600

// Page is one saved drop.
type Page struct {
	Path string

	book *Book
	text string // what is known to stand there, "" before it was saved
	hand bool   // it was changed by hand before its drop was gone on with
}

// Touch is what happened to a page that somebody else had changed.
type Touch int

// The kinds of Touch.
const (
	Changed Touch = iota // changed while its drop is taken: left as it is, and the drop goes on in another page
	Gone                 // removed while its drop is taken: written again
	Kept                 // changed before its drop was gone on with: as it was, it is kept beside
)

// Begin saves a new drop, not ended, under a name of its own: its date, then its
// water.
func (b *Book) Begin(d profile.Drop) (*Page, error) {
	p := &Page{book: b}
	return p, p.Save(d, false)
}

// Save puts the drop as it is now in the place of what was saved before, durably: the
// next prompt may follow. Mode 600, or what is left of it where the page has less.
//
// A page is never written over that somebody else changed since it was saved or read:
// it stays, and the drop goes on in a page of its own (Changed). One that was changed
// before the drop was gone on with is kept beside (Kept). Both are told.
func (p *Page) Save(d profile.Drop, ended bool) error {
	text := pageText(d, ended)
	mode := pageMode
	if info, err := os.Lstat(p.Path); p.text != "" && err == nil && info.Mode().IsRegular() {
		mode &= info.Mode()
	}
	part, err := p.book.write(p.book.path(pageName(d)), partEnding, text, mode)
	if err != nil {
		return err
	}
	if err := p.place(part, pageName(d)); err != nil {
		p.book.disk.Remove(part)
		return err
	}
	p.text = text
	return p.book.disk.SyncFolder(p.book.Dir)
}

func pageText(d profile.Drop, ended bool) string {
	text := notebook.Write(d)
	if !ended {
		text += notEnded + "\n"
	}
	return text
}

// place gives what was written its name.
func (p *Page) place(part, name string) error {
	disk, was := p.book.disk, p.Path
	switch now, err := p.now(); {
	case p.text == "":
		return p.newName(part, name)
	case errors.Is(err, fs.ErrNotExist):
		err := disk.Move(part, p.Path)
		if err == nil {
			p.book.told(Gone, was, was)
		}
		return err
	case err != nil || now != p.text:
		err := p.newName(part, name)
		if err == nil {
			p.hand = false
			p.book.told(Changed, was, p.Path)
		}
		return err
	}
	if p.hand {
		kept, err := p.book.write(strings.TrimSuffix(p.Path, ".txt"), keptEnding, p.text, pageMode)
		if err == nil {
			err = disk.SyncFolder(p.book.Dir)
		}
		if err != nil {
			return err
		}
		p.hand = false
		p.book.told(Kept, was, kept)
	}
	return disk.Rename(part, p.Path)
}

// keptEnding is that of a page as somebody had changed it; it is no drop of the book.
const keptEnding = ".edited"

// now gives what stands in the page's place; an error where it is no plain file.
func (p *Page) now() (string, error) {
	if info, err := os.Lstat(p.Path); err != nil || !info.Mode().IsRegular() {
		return "", errors.Join(err, errNoFile)
	}
	data, err := p.book.disk.ReadFile(p.Path)
	return string(data), err
}

var errNoFile = errors.New("is no plain file")

// newName gives what was written the first free name.
func (p *Page) newName(part, name string) (err error) {
	path, err := free(p.book.path(name), ".txt", func(to string) error { return p.book.disk.Move(part, to) })
	if err == nil {
		p.Path = path
	}
	return err
}

// free tries names until one is free: base.txt, base-2.txt and so on.
func free(base, ending string, try func(path string) error) (path string, err error) {
	for i := 1; i < 1000; i++ {
		path = base + ending
		if i > 1 {
			path = fmt.Sprintf("%s-%d%s", base, i, ending)
		}
		if err = try(path); !errors.Is(err, fs.ErrExist) {
			return path, err
		}
	}
	return "", &fs.PathError{Op: "name", Path: base + ending, Err: errors.New("a thousand files of this name")}
}

// write writes a text into a new file of the folder, and makes it durable but for its
// name.
func (b *Book) write(base, ending, text string, mode fs.FileMode) (path string, err error) {
	var f File
	path, err = free(base, ending, func(path string) (err error) { f, err = b.disk.Create(path, mode); return err })
	if err == nil {
		if err = write(f, []byte(text)); err != nil {
			b.disk.Remove(path)
		}
	}
	return path, err
}

// partEnding is that of a page while it is written.
const partEnding = ".txt.part"

// Beside gives the path of a file that belongs to the page, of another ending.
func (p *Page) Beside(ending string) string { return strings.TrimSuffix(p.Path, ".txt") + ending }

// Remove takes the page out of the book, unless somebody else changed it.
func (p *Page) Remove() error {
	now, err := p.now()
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil || now != p.text || p.hand:
		p.book.told(Changed, p.Path, "")
		return nil
	}
	if err := p.book.disk.Remove(p.Path); err != nil {
		return err
	}
	return p.book.disk.SyncFolder(p.book.Dir)
}
