//go:build unix

package book

import (
	"net"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// special puts what is no file into a folder: whoever opened the pipe to read would wait.
func special(t *testing.T, dir string) {
	t.Helper()
	if err := unix.Mkfifo(filepath.Join(dir, "2026-08-01-pipe.txt"), 0o600); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir) // the name of a socket is short
	l, err := net.Listen("unix", "2026-08-02-socket.txt")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close() })
}
