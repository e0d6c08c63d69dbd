//go:build unix

package book

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// SyncFolder syncs a folder. Some file systems cannot, and say EINVAL; nothing more
// can be done there.
func (System) SyncFolder(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	defer d.Close()
	if err := d.Sync(); err != nil && !errors.Is(err, unix.EINVAL) {
		return err
	}
	return nil
}

// lock takes the lock that one drop at a time may hold; the system lets go of it
// when the process ends, however it ends.
func lock(path string) (*os.File, error) {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return nil, err
	}
	if err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB); err != nil {
		f.Close()
		if errors.Is(err, unix.EWOULDBLOCK) {
			return nil, ErrInUse
		}
		return nil, err
	}
	return f, nil
}
