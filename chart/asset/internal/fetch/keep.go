package main

import (
	"archive/tar"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"coldseam/chart/asset"
)

const mostBytes = 16 << 20 // of one file: none that is wanted is near it

// keep reads a package and keeps the wanted files in the folder, all or none.
func keep(packed io.Reader, folder string, files []asset.File) error {
	unzipped, err := gzip.NewReader(packed)
	if err != nil {
		return err
	}
	found := map[string][]byte{}
	for archive := tar.NewReader(unzipped); ; {
		head, err := archive.Next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		for _, f := range files {
			if head.Name != f.From {
				continue
			}
			if found[f.From], err = io.ReadAll(io.LimitReader(archive, mostBytes)); err != nil {
				return err
			}
		}
	}
	for _, f := range files {
		b, ok := found[f.From]
		if !ok {
			return fmt.Errorf("the package has no %s", f.From)
		}
		if err := f.Check(b); err != nil {
			return err
		}
	}
	for _, f := range files {
		if err := os.WriteFile(filepath.Join(folder, f.To), found[f.From], 0o644); err != nil {
			return err
		}
	}
	return nil
}
