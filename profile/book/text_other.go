//go:build !unix

package book

import (
	"io/fs"
	"os"

	"coldseam/profile/notebook"
)

// text is what stands in a file of a book.
func text(path string) ([]byte, error) {
	switch info, err := os.Lstat(path); {
	case err != nil:
		return nil, err
	case info.Mode()&fs.ModeSymlink != 0:
		return nil, errLink
	case !info.Mode().IsRegular():
		return nil, errNoFile
	case info.Size() > notebook.MaxPage:
		return nil, errLarge
	}
	return os.ReadFile(path)
}
