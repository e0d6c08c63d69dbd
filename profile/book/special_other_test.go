//go:build !unix

package book

import (
	"os"
	"path/filepath"
	"testing"
)

// special: folders, where there are neither pipes nor sockets.
func special(t *testing.T, dir string) {
	t.Helper()
	for _, name := range []string{"2026-08-01-pipe.txt", "2026-08-02-socket.txt"} {
		if err := os.Mkdir(filepath.Join(dir, name), 0o700); err != nil {
			t.Fatal(err)
		}
	}
}
