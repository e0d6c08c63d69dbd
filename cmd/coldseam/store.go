package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/session"
	"coldseam/profile/settings"
)

// shelf is the book in which a drop is saved, and those to which it moved on.
type shelf struct {
	disk    book.Disk
	book    *book.Book
	log     *book.Log // what the probe says, wherever the drop is
	unlocks []func()
	tell    func(text string)
}

// openShelf opens and locks the folder of saved drops.
func (p *program) openShelf(c *cli.Context, set settings.Settings) (s *shelf, err error) {
	dir, err := p.bookDir(c, set)
	if err != nil {
		return nil, err
	}
	s = &shelf{disk: p.disk, log: new(book.Log)}
	if err := s.open(dir); err != nil {
		return nil, fmt.Errorf("%w; use another folder with --book", err)
	}
	return s, nil
}

// open opens and locks a folder, in which the drop is saved from now on.
func (s *shelf) open(dir string) error {
	b, err := book.Open(dir, s.disk)
	var unlock func()
	if err == nil {
		unlock, err = b.Lock()
	}
	if errors.Is(err, book.ErrInUse) {
		return fmt.Errorf("%s: %w: end that one first", dir, err)
	}
	if err != nil {
		return fmt.Errorf("%s: drops cannot be saved there: %s", dir, cause(err))
	}
	b.Touched = func(what book.Touch, path, now string) { s.tell(report.Touched(what, path, now)) }
	s.book, s.unlocks = b, append(s.unlocks, unlock)
	return nil
}

func (s *shelf) close() {
	s.log.Close()
	for _, unlock := range s.unlocks {
		unlock()
	}
}

// cut gives the drops that were cut off and can be gone on with, and what is to be told of
// the others.
func (s *shelf) cut() (cut []session.Cut, notes []string, err error) {
	pages, err := s.book.Unended()
	if err != nil {
		return nil, nil, err
	}
	for _, u := range pages {
		if u.Err != nil {
			notes = append(notes, fmt.Sprintf("Not offered, though it may have been cut off: %s: %s.", plain.Line(u.Path), plain.Line(oneLine(u.Err))))
			continue
		}
		c := session.Cut{Drop: u.Drop, Store: u.Store(s.log)}
		if log := u.Beside(book.LogEnding); exists(log) {
			c.Log = log
		}
		cut = append(cut, c)
	}
	return cut, notes, nil
}

// store is for a new drop.
func (s *shelf) store() session.Store { return s.book.Store(s.log) }

// elsewhere has the drop go on in another folder, as it was typed.
func (s *shelf) elsewhere(dir string) (session.Store, error) {
	if rest, ok := strings.CutPrefix(dir, "~/"); ok { // as a shell would have it
		if home, err := os.UserHomeDir(); err == nil {
			dir = filepath.Join(home, rest)
		}
	}
	if err := s.open(dir); err != nil {
		return nil, errors.New(oneLine(err))
	}
	s.tell("The drop goes on in " + plain.Line(s.book.Dir))
	return s.store(), nil
}
