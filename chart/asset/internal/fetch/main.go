// Command fetch gets the script for pages: fetch FOLDER asks npm for the package,
// checks the files that are wanted, and keeps them in the folder. Nothing is kept
// unless all of them are as they must be. It runs nothing of the package.
package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"time"

	"coldseam/chart/asset"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "fetch: name the folder that keeps the files")
		os.Exit(2)
	}
	if err := fetch(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "fetch:", err)
		os.Exit(1)
	}
}

func fetch(folder string) error {
	temp, err := os.MkdirTemp("", "fetch")
	if err != nil {
		return err
	}
	defer os.RemoveAll(temp)
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	npm := exec.CommandContext(ctx, "npm", "pack", "--ignore-scripts", "--silent", asset.Package)
	npm.Dir = temp
	if out, err := npm.CombinedOutput(); err != nil {
		return fmt.Errorf("npm pack %s: %w\n%s", asset.Package, err, out)
	}
	packed, err := filepath.Glob(filepath.Join(temp, "*.tgz"))
	if err != nil || len(packed) != 1 {
		return fmt.Errorf("npm pack %s left %d packages, want 1", asset.Package, len(packed))
	}
	f, err := os.Open(packed[0])
	if err != nil {
		return err
	}
	defer f.Close()
	return keep(f, folder, asset.Files)
}
