package book

import (
	"errors"
	"io/fs"
	"os"
	"syscall"

	"coldseam/profile"
)

// Store keeps one drop as a page of a book while it is taken, and beside it what its probe
// said. Its errors are told: they are the system's, without the paths.
type Store struct {
	book *Book
	page *Page // nil before it has its name
	log  *Log
}

// Store is for a new drop.
func (b *Book) Store(log *Log) *Store { return &Store{b, nil, log} }

// Store goes on with the page.
func (p *Page) Store(log *Log) *Store { return &Store{p.book, p, log} }

// Save makes the drop durable before it returns.
func (s *Store) Save(d profile.Drop, ended bool) error {
	if s.page != nil {
		return tellable(s.page.Save(d, ended))
	}
	p, err := s.book.Begin(d)
	if p.Path != "" { // it has its name, even where that is not durable yet
		s.page = p
	}
	if err == nil && ended {
		err = p.Save(d, true)
	}
	return tellable(err)
}

// Remove takes the page away.
func (s *Store) Remove() error { return tellable(s.page.Remove()) }

// Name is the path of the page, "" before the drop was saved.
func (s *Store) Name() string {
	if s.page == nil {
		return ""
	}
	return s.page.Path
}

// Line keeps a line of the probe.
func (s *Store) Line(atS float64, raw []byte) error { return tellable(s.log.Line(atS, raw)) }

// Remark keeps what happened to the probe.
func (s *Store) Remark(text string) error { return tellable(s.log.Remark(text)) }

// Sync makes what the probe said durable.
func (s *Store) Sync() error { return tellable(s.log.Sync(s.page)) }

// Log is the path of what the probe said.
func (s *Store) Log() string { return s.page.Beside(LogEnding) }

// told is an error as it is told.
type told struct{ error }

func (t told) Error() string { return Cause(t.error) }
func (t told) Unwrap() error { return t.error }

func tellable(err error) error {
	if err == nil {
		return nil
	}
	return told{err}
}

// Cause is an error of the system without the paths that are printed before it.
func Cause(err error) string {
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err.Error()
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		if errors.Is(path.Err, syscall.EISDIR) {
			return "it is a folder, not a page"
		}
		return path.Err.Error()
	}
	return err.Error()
}
