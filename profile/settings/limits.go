package settings

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// Limits of the file, far above what an angler writes. Wrong keys cost the decoder the
// square of their number, and names of fish are compared each with each.
const (
	maxFile    = 64 << 10 // bytes
	maxLines   = 2000
	maxOnALine = 4000 // bytes
	maxTables  = 200  // of one kind, [[fly]] and the like
	maxText    = 400  // letters
)

// read reads the file, no more of it than it may hold; nil where there is none. A pipe or
// a device is not waited for.
func read(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, syscall.ENOTDIR) { // a home that is /dev/null
		if _, err := os.Lstat(path); err == nil {
			return nil, fmt.Errorf("%s: that is a link that leads to no file: fix or remove it", path)
		}
		return nil, nil
	}
	if err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s: that is a folder, a pipe or a device: put a file of settings there, or remove it", path)
	}
	var f *os.File
	if err == nil {
		f, err = os.Open(path)
	}
	var data []byte
	if err == nil {
		defer f.Close()
		data, err = io.ReadAll(io.LimitReader(f, maxFile+1))
	}
	if err != nil {
		var inner *fs.PathError
		if errors.As(err, &inner) {
			err = inner.Err
		}
		return nil, fmt.Errorf("%s: cannot be read: %w; check its permissions, or remove it", path, err)
	}
	return data, nil
}

// bounded refuses a file that is larger than settings are.
func bounded(name string, data []byte) error {
	if len(data) > maxFile {
		return fmt.Errorf("%s: has more than %d kB: settings are shorter, leave some out", name, maxFile>>10)
	}
	lines := bytes.Split(data, []byte("\n"))
	if len(lines) > maxLines {
		return fmt.Errorf("%s: has more than %d lines: settings are shorter, leave some out", name, maxLines)
	}
	for i, l := range lines {
		if len(l) > maxOnALine {
			return &Error{Name: name, Line: i + 1, Err: fmt.Errorf("the line is longer than %d letters: shorten it", maxOnALine)}
		}
	}
	return nil
}
