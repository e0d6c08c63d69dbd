// Command build makes the parts of the pocket page that are not in git: it compiles the
// program for the browser, makes it small and packs it, and copies the script that Go's
// toolchain has for it. It needs the toolchain alone.
package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "build: name the folder to write to")
		os.Exit(2)
	}
	if err := build(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

func build(folder string) error {
	script, err := browserScript()
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(folder, "wasm_exec.js"), script, 0o644); err != nil {
		return err
	}
	program, err := compile("coldseam/cmd/pocket")
	if err != nil {
		return err
	}
	small, err := shrink(program)
	if err != nil {
		return err
	}
	packed := pack(small)
	fmt.Fprintf(os.Stderr, "compiled %d bytes, made small %d, packed %d\n", len(program), len(small), len(packed))
	return os.WriteFile(filepath.Join(folder, "pocket.lzma"), packed, 0o644)
}

// compile compiles a command for the browser. Inlining is off, since it makes the program a
// fifth larger.
func compile(command string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "pocket")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "pocket.wasm")
	cmd := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=all=-l", "-o", out, command)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOFLAGS=-mod=readonly", "GOWASM=", "CGO_ENABLED=0")
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("go build %s: %w", command, err)
	}
	return os.ReadFile(out)
}

// browserScript is the toolchain's script that a browser runs Go's programs with.
func browserScript() ([]byte, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("go env GOROOT: %w", err)
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
}
