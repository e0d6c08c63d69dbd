package book

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

// Disk is what saving asks of the system, a call a step, so that a test can record
// their order.
type Disk interface {
	Create(path string) (File, error)     // a new file, refused where there is one
	Rename(from, to string) error         // takes to's place
	Link(from, to string) error           // refused where there is a to
	Remove(path string) error             //
	SyncFolder(path string) error         // makes names durable
	ReadFile(path string) ([]byte, error) //
}

// File is a file that is being written.
type File interface {
	io.Writer
	Sync() error
	Close() error
}

// System is the Disk of the machine.
type System struct{}

// Create makes a new file that only its owner may change.
func (System) Create(path string) (File, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
}

// Rename puts a file in another's place.
func (System) Rename(from, to string) error { return os.Rename(from, to) }

// Link gives a file its name unless there is one of that name. Cards and sticks know
// no links: there it looks, then renames.
func (System) Link(from, to string) error {
	err := os.Link(from, to)
	if err == nil {
		return os.Remove(from)
	}
	if errors.Is(err, fs.ErrExist) {
		return err
	}
	if _, err := os.Lstat(to); err == nil {
		return fs.ErrExist
	}
	return os.Rename(from, to)
}

// Remove removes a file.
func (System) Remove(path string) error { return os.Remove(path) }

// ReadFile reads a file.
func (System) ReadFile(path string) ([]byte, error) { return os.ReadFile(path) }
