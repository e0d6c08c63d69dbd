//go:build unix

package book

import (
	"errors"
	"io/fs"
	"syscall"

	"golang.org/x/sys/unix"

	"coldseam/profile/notebook"
)

// text is what stands in a file of a book: opened without waiting, so that a pipe does not
// hold up the others, and looked at when it is open, so that nobody can change it between.
// Package os asks the system twice as often for a file, which a large book feels.
func text(path string) ([]byte, error) {
	failed := func(err error) ([]byte, error) { return nil, &fs.PathError{Op: "open", Path: path, Err: err} }
	fd, err := again(func() (int, error) {
		return unix.Open(path, unix.O_RDONLY|unix.O_NOFOLLOW|unix.O_NONBLOCK|unix.O_CLOEXEC, 0)
	})
	switch {
	case errors.Is(err, unix.ELOOP), errors.Is(err, unix.EMLINK): // as POSIX and FreeBSD say it
		return nil, errLink
	case errors.Is(err, unix.ENXIO): // a socket
		return nil, errNoFile
	case err != nil:
		return failed(err)
	}
	defer unix.Close(fd)
	var info unix.Stat_t
	switch err := unix.Fstat(fd, &info); {
	case err != nil:
		return failed(err)
	case info.Mode&unix.S_IFMT != unix.S_IFREG:
		return nil, errNoFile
	}
	data := make([]byte, 0, min(max(info.Size, 0), notebook.MaxPage)+1)
	for len(data) <= notebook.MaxPage {
		if len(data) == cap(data) {
			data = append(data, 0)[:len(data)]
		}
		n, err := again(func() (int, error) { return unix.Read(fd, data[len(data):cap(data)]) })
		if err != nil {
			return failed(err)
		}
		if data = data[:len(data)+n]; n == 0 || int64(len(data)) == info.Size {
			return data, nil
		}
	}
	return nil, errLarge
}

// again calls the system until no signal came between.
func again(call func() (int, error)) (int, error) {
	for {
		n, err := call()
		if err != syscall.EINTR {
			return n, err
		}
	}
}
