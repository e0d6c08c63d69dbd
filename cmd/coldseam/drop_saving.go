package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/settings"
	"coldseam/profile/taking"
)

// openBook opens and locks the folder of saved drops.
func (p *program) openBook(c *cli.Context, set settings.Settings) (b *book.Book, unlock func(), err error) {
	dir := c.String("book")
	if dir == "" {
		dir = set.Book
	}
	if dir == "" {
		if dir, err = book.DefaultDir(); err != nil {
			return nil, nil, refused{err}
		}
	}
	b, unlock, err = openBookIn(dir, p.disk)
	if err != nil {
		return nil, nil, fmt.Errorf("%w; use another folder with --book", err)
	}
	return b, unlock, nil
}

func openBookIn(dir string, disk book.Disk) (b *book.Book, unlock func(), err error) {
	if b, err = book.Open(dir, disk); err == nil {
		unlock, err = b.Lock()
	}
	if errors.Is(err, book.ErrInUse) {
		return nil, nil, fmt.Errorf("%s: %w: end that one first", dir, err)
	}
	if err != nil {
		return nil, nil, fmt.Errorf("%s: drops cannot be saved there: %s", dir, cause(err))
	}
	return b, unlock, nil
}

// dropping prepares a drop that is saved in an open book.
func (p *program) dropping(t *talk, set settings.Settings, shelf *book.Book, unlock func()) *dropping {
	d := &dropping{talk: t, set: set, disk: p.disk, unlocks: []func(){unlock}}
	shelf.Touched = d.touched
	return d
}

func (d *dropping) unlock() {
	for _, unlock := range d.unlocks {
		unlock()
	}
}

// keep goes on with a Taking whose saving may fail.
func (d *dropping) keep(t *taking.Taking) *taking.Taking {
	t.Failed = d.failed
	d.take = t
	return t
}

// touched tells what became of a page in which somebody else had a hand.
func (d *dropping) touched(what book.Touch, path, now string) {
	path, now = plain.Line(path), plain.Line(now)
	switch {
	case what == book.Gone:
		d.say("The page was gone and is written again: %s", path)
	case what == book.Kept:
		d.say("The page had been changed by hand; as it was, it is kept in %s", now)
	case now == "":
		d.say("The page was changed by hand meanwhile, and stays as it is: %s", path)
	default:
		d.say("The page was changed by hand meanwhile, and stays as it is: %s. This drop goes on in %s", path, now)
	}
}

// failed asks what to do when the drop could not be saved. All of it is shown first, so
// that it can be copied down.
func (d *dropping) failed(err error) (again bool, elsewhere *book.Book) {
	d.say("SAVING FAILED: %s. Copy this down if it cannot be mended:", plain.Line(cause(err)))
	if page := notebook.Write(d.take.Drop()); page != d.copied {
		d.copied = page
		fmt.Fprint(d.err, page)
	}
	for {
		n, err := d.choose("What now?", "try again", "save it in another folder", "it is copied down: end the drop")
		switch {
		case err != nil || n == 2:
			return false, nil
		case n == 0:
			return true, nil
		}
		if elsewhere = d.otherBook(); elsewhere != nil {
			return true, elsewhere
		}
	}
}

// otherBook asks for another folder and opens it; nil where that fails.
func (d *dropping) otherBook() *book.Book {
	dir, err := d.answer("Which folder?")
	if err != nil || strings.TrimSpace(dir) == "" {
		return nil
	}
	if rest, ok := strings.CutPrefix(dir, "~/"); ok { // as a shell would have it
		if home, err := os.UserHomeDir(); err == nil {
			dir = filepath.Join(home, rest)
		}
	}
	b, unlock, err := openBookIn(dir, d.disk)
	if err != nil {
		d.say("%s.", plain.Line(oneLine(err)))
		return nil
	}
	b.Touched = d.touched
	d.unlocks = append(d.unlocks, unlock)
	d.say("The drop goes on in %s", plain.Line(b.Dir))
	return b
}

// lost is the error of a drop that could not be saved, and that was shown.
func (d *dropping) lost(err error) error {
	if !errors.As(err, new(taking.Unsaved)) {
		return err
	}
	return fmt.Errorf("the drop could not be saved: %s", cause(err))
}
