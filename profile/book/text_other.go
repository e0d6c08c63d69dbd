//go:build !unix

package book

import (
	"errors"
	"io"
	"io/fs"
	"os"

	"coldseam/profile/notebook"
)

// text is what stands in a file of a book. It asks the system less often than package os
// would, which a large book feels in a browser.
func text(path string) ([]byte, error) {
	info, err := os.Lstat(path)
	switch {
	case err != nil:
		return nil, err
	case info.Mode()&fs.ModeSymlink != 0:
		return nil, errLink
	case !info.Mode().IsRegular():
		return nil, errNoFile
	case info.Size() > notebook.MaxPage:
		return nil, errLarge
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data := make([]byte, info.Size()+1)
	switch n, err := io.ReadFull(f, data); {
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return data[:n], nil
	case err != nil:
		return nil, err
	}
	rest, err := io.ReadAll(io.LimitReader(f, notebook.MaxPage)) // it has grown meanwhile
	if data = append(data, rest...); len(data) > notebook.MaxPage {
		return nil, errLarge
	}
	return data, err
}
