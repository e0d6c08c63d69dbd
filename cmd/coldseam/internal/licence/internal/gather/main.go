// Command gather writes the licences of all modules that a command of this module is built
// from, on the systems named, to the file named. It takes them from the module cache and
// from Go itself, asks no network, and fails where a module has none.
package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

func main() {
	if len(os.Args) < 4 {
		fmt.Fprintln(os.Stderr, "gather: name the file to write, the command, and its systems, such as linux/amd64")
		os.Exit(2)
	}
	if err := gather(os.Args[1], os.Args[2], os.Args[3:]); err != nil {
		fmt.Fprintln(os.Stderr, "gather:", err)
		os.Exit(1)
	}
}

// part is something built into the program: a module, or Go's own library.
type part struct {
	name    string   // with its version
	root    string   // folder
	folders []string // of the packages used
}

func gather(out, command string, systems []string) error {
	parts := map[string]*part{}
	for _, system := range systems {
		if err := list(parts, command, system); err != nil {
			return err
		}
	}
	goroot, err := run(nil, "go", "env", "GOROOT")
	if err != nil {
		return err
	}
	root := strings.TrimSpace(string(goroot))
	parts["Go"] = &part{name: "Go, its runtime and library, " + runtime.Version(), root: root, folders: []string{root}}
	var all []*part
	for _, key := range slices.Sorted(maps.Keys(parts)) {
		all = append(all, parts[key])
	}
	text, err := write(all)
	if err != nil {
		return err
	}
	return os.WriteFile(out, text, 0o644)
}

// list adds the modules that a command has on a system.
func list(parts map[string]*part, command, system string) error {
	name, processor, _ := strings.Cut(system, "/")
	// cgo on: without it the serial library for macOS is left out
	env := []string{"GOOS=" + name, "GOARCH=" + processor, "CGO_ENABLED=1", "GOFLAGS=-mod=readonly"}
	b, err := run(env, "go", "list", "-deps", "-json=Dir,Module", command)
	if err != nil {
		return err
	}
	for d := json.NewDecoder(bytes.NewReader(b)); ; {
		var p struct {
			Dir    string
			Module *struct {
				Path, Version, Dir string
				Replace            *struct{ Path, Version, Dir string }
			}
		}
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
		if p.Module == nil {
			continue // of Go's library
		}
		m := *p.Module
		if m.Replace != nil {
			m.Path, m.Version, m.Dir = m.Replace.Path, m.Replace.Version, m.Replace.Dir
		}
		if parts[m.Path] == nil {
			parts[m.Path] = &part{name: strings.TrimSpace(m.Path + " " + m.Version), root: m.Dir}
		}
		parts[m.Path].folders = append(parts[m.Path].folders, p.Dir)
	}
}

func run(env []string, name string, args ...string) ([]byte, error) {
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stderr = os.Stderr
	b, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w", name, strings.Join(args, " "), err)
	}
	return b, nil
}

// files are the licences of a part: of its folder, of every folder from there to a package
// that is used, and of folders that hold nothing else.
func (p *part) files() ([]string, error) {
	folders := map[string]bool{p.root: true}
	for _, f := range p.folders {
		for ; len(f) > len(p.root); f = filepath.Dir(f) {
			folders[f] = true
		}
	}
	var out []string
	for _, f := range slices.Sorted(maps.Keys(folders)) {
		entries, err := os.ReadDir(f)
		if err != nil {
			return nil, err
		}
		for _, e := range entries {
			switch {
			case e.IsDir() && ofLicences(e.Name()):
				inside, err := os.ReadDir(filepath.Join(f, e.Name()))
				if err != nil {
					return nil, err
				}
				for _, i := range inside {
					if !i.IsDir() {
						out = append(out, filepath.Join(f, e.Name(), i.Name()))
					}
				}
			case !e.IsDir() && isLicence(e.Name()):
				out = append(out, filepath.Join(f, e.Name()))
			}
		}
	}
	return out, nil
}

// isLicence reports whether a file is a licence by its name, or goes with one.
func isLicence(name string) bool {
	name = strings.ToLower(name)
	if strings.HasSuffix(name, ".go") {
		return false
	}
	return slices.ContainsFunc([]string{"license", "licence", "copying", "copyright", "notice", "patents", "unlicense"}, func(begin string) bool {
		return strings.HasPrefix(name, begin)
	})
}

// ofLicences reports whether a folder holds licences by its name.
func ofLicences(name string) bool {
	name = strings.ToLower(name)
	return strings.HasSuffix(name, "licenses") || strings.HasSuffix(name, "licences")
}
