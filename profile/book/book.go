package book

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"coldseam/profile"
)

// ErrInUse reports that another program is taking a drop into the same folder.
var ErrInUse = errors.New("another drop is being taken into this book")

// Book is a folder of pages.
type Book struct {
	Dir string

	// Touched is told where somebody else had a hand in a page: which, and the page
	// or file that was written because of it, "" for none. nil tells nobody.
	Touched func(what Touch, path, now string)

	disk Disk
}

func (b *Book) told(what Touch, path, now string) {
	if b.Touched != nil {
		b.Touched(what, path, now)
	}
}

// DefaultDir is where drops are kept when nothing else is said: coldseam in
// $XDG_DATA_HOME, else ~/.local/share/coldseam.
func DefaultDir() (string, error) {
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "coldseam"), nil
	}
	home, err := os.UserHomeDir()
	if err != nil || !filepath.IsAbs(home) {
		return "", errors.New("no home folder is known: say where drops are kept with --book DIR")
	}
	return filepath.Join(home, ".local", "share", "coldseam"), nil
}

// Open opens the folder as a book, and makes it where it is missing, durably.
func Open(dir string, disk Disk) (*Book, error) {
	if err := makeFolder(filepath.Clean(dir), disk); err != nil {
		return nil, err
	}
	return &Book{Dir: dir, disk: disk}, nil
}

// makeFolder makes a folder and those above it that are missing. The name of a folder
// is kept by the one above it, which is synced.
func makeFolder(dir string, disk Disk) error {
	if info, err := os.Stat(dir); err == nil {
		if !info.IsDir() {
			return errors.New("not a folder")
		}
		return nil
	} else if !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	above := filepath.Dir(dir)
	if above != dir {
		if err := makeFolder(above, disk); err != nil {
			return err
		}
	}
	if err := disk.Folder(dir); errors.Is(err, fs.ErrExist) {
		if _, err := os.Stat(dir); err != nil { // another program may have made it just now
			return errors.New("a link that leads nowhere")
		}
	} else if err != nil {
		return err
	}
	if err := disk.SyncFolder(above); err != nil && !errors.Is(err, fs.ErrPermission) { // one that may not be read cannot be synced
		return err
	}
	return nil
}

// Lock keeps other drops out until the function it gives is called or the process
// ends: ErrInUse where one is being taken. What a drop left that was killed while it
// saved is taken away.
func (b *Book) Lock() (unlock func(), err error) {
	f, err := lock(filepath.Join(b.Dir, ".taking"))
	if err != nil {
		return nil, err
	}
	b.clean()
	return func() { f.Close() }, nil
}

// clean removes parts of pages. They hold nothing that was told to be saved, so what
// cannot be removed does no harm.
func (b *Book) clean() {
	entries, err := os.ReadDir(b.Dir)
	if err != nil {
		return
	}
	for _, e := range entries {
		if e.Type().IsRegular() && ownPart(e.Name()) {
			b.disk.Remove(b.path(e.Name()))
		}
	}
}

// ownPart reports whether a part is one that this package names: a year or "undated", and
// what pageName makes of the rest.
func ownPart(name string) bool {
	name, isPart := strings.CutSuffix(name, partEnding)
	head, rest, _ := strings.Cut(name, "-")
	year := len(head) == 4 && strings.Trim(head, digits) == ""
	return isPart && rest != "" && strings.Trim(rest, slugLetters) == "" && (year || head == "undated")
}

const (
	digits      = "0123456789"
	slugLetters = "abcdefghijklmnopqrstuvwxyz-" + digits
)

func (b *Book) path(name string) string { return filepath.Join(b.Dir, name) }

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
