//go:build !unix

package book

import "os"

// SyncFolder does nothing: here a folder cannot be synced, and its system does so by
// itself, in a browser folder.js of the pocket page.
func (System) SyncFolder(string) error { return nil }

// lock opens the file only: it keeps no other program out. The pocket page takes a lock of
// the browser's besides.
func lock(path string) (*os.File, error) {
	return os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o644)
}
