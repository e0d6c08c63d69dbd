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
	Create(path string, mode fs.FileMode) (File, error) // a new file, refused where there is one
	Append(path string) (File, error)                   // a file that grows, new or not
	Folder(path string) error                           // a new folder, refused where there is one
	Rename(from, to string) error                       // takes to's place
	Move(from, to string) error                         // refused where there is a to
	Remove(path string) error                           //
	SyncFolder(path string) error                       // makes names durable
	ReadFile(path string) ([]byte, error)               //
}

// File is a file that is being written.
type File interface {
	io.Writer
	Sync() error
	Close() error
}

// System is the Disk of the machine.
type System struct{}

// Create makes a new file.
func (System) Create(path string, mode fs.FileMode) (File, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
}

// Append opens a file to write at its end, and makes it where it is missing.
func (System) Append(path string) (File, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_APPEND, pageMode)
}

// Folder makes a folder that is its owner's alone, as the XDG Base Directory
// Specification asks for one of the user's data.
func (System) Folder(path string) error { return os.Mkdir(path, 0o700) }

// Rename puts a file in another's place.
func (System) Rename(from, to string) error { return os.Rename(from, to) }

// Move gives a file another name unless there is one of that name. Cards and sticks
// know no links: there it looks, then renames.
func (System) Move(from, to string) error {
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

// write fills a new file, and makes it durable.
func write(f File, data []byte) error {
	_, err := f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

// Remove removes a file.
func (System) Remove(path string) error { return os.Remove(path) }

// ReadFile reads a file.
func (System) ReadFile(path string) ([]byte, error) { return os.ReadFile(path) }
