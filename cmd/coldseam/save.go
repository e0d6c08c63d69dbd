package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"

	"coldseam/chart/seal"
	"coldseam/profile/plain"
	"coldseam/profile/settings"
)

// largestPicture is more than any picture of this program holds, in bytes.
const largestPicture = 32 << 20

// write writes a picture or an export whole or not at all: into a new file beside its place,
// which then takes it. It never takes the place of what was read, nor, without force, of a
// file that this program did not make or that was changed since: only pictures tell. A link is followed, and
// the file that was there gives its mode.
func (p *program) write(out string, force bool, data []byte) error {
	to, old, err := p.place(out, force, data)
	if err != nil {
		return err
	}
	if err := p.put(to, old, data); err != nil {
		return fmt.Errorf("-o %s: cannot be written: %s", out, cause(err))
	}
	fmt.Fprintf(p.err, "Wrote %s\n", plain.Line(out))
	return nil
}

// place is where data written to out goes, and what is there now, or nil.
func (p *program) place(out string, force bool, data []byte) (to string, old fs.FileInfo, err error) {
	to, err = filepath.EvalSymlinks(out)
	if _, e := os.Lstat(out); e == nil && err != nil {
		return "", nil, refuse("-o %s: that is a link that leads to no file: remove it, or give another name", out)
	}
	if err != nil {
		to = out
	}
	old, err = os.Stat(to)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return to, nil, nil
	case err != nil:
		return "", nil, fmt.Errorf("-o %s: cannot be written: %s", out, cause(err))
	}
	return to, old, p.mayReplace(out, to, old, force, data)
}

// mayReplace refuses to write data in the place of a file that is of worth.
func (p *program) mayReplace(out, to string, old fs.FileInfo, force bool, data []byte) error {
	switch {
	case old.IsDir():
		return refuse("-o %s: that is a folder: give the name of a file in it", out)
	case !old.Mode().IsRegular():
		return refuse("-o %s: that is a pipe or a device: give another name", out)
	}
	for _, read := range p.wasRead {
		if os.SameFile(read, old) {
			return refuse("-o %s: that is the page being read: give another name", out)
		}
	}
	if path, err := settings.Path(); err == nil {
		if info, err := os.Stat(path); err == nil && os.SameFile(info, old) {
			return refuse("-o %s: those are the settings: give another name", out)
		}
	}
	if force {
		return nil
	}
	if old.Mode().Perm()&0o200 == 0 {
		return refuse("-o %s: that file is write-protected: give another name, or --force to replace it", out)
	}
	if old.Size() <= largestPicture {
		if was, err := os.ReadFile(to); err == nil && (seal.Unchanged(was) || bytes.Equal(was, data)) {
			return nil
		}
	}
	if !seal.Unchanged(data) {
		return refuse("-o %s: that file is there already: give another name, or --force to replace it", out)
	}
	return refuse("-o %s: that file is there already, and coldseam did not make it, or it was changed since: give another name, or --force to replace it", out)
}

// put writes data to a new file in the folder of to, and then gives it that name. old is
// what has the name now, or nil.
func (p *program) put(to string, old fs.FileInfo, data []byte) error {
	mode := fs.FileMode(0o666) // as the user's mask lets it be
	if old != nil {
		mode = old.Mode().Perm()
	}
	part := filepath.Join(filepath.Dir(to), fmt.Sprintf(".coldseam-%016x.part", rand.Uint64()))
	f, err := p.disk.Create(part, mode)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	switch {
	case err != nil:
	case old == nil:
		err = p.disk.Move(part, to) // refused where somebody made one meanwhile
	default:
		os.Chmod(part, mode) // more than the user's mask lets through; a card may know no modes
		err = p.disk.Rename(part, to)
	}
	if err != nil {
		p.disk.Remove(part) // what a full disk took of it
	}
	return err
}
