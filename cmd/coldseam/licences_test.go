package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/chart/asset"
	"coldseam/cmd/coldseam/internal/licence"
	"coldseam/profile/expect"
)

// needLicences skips a test where they were not gathered; with COLDSEAM_FULL=1 it fails.
func needLicences(t *testing.T) {
	t.Helper()
	if _, err := licence.Text(); err != nil {
		expect.Missing(t, "%v", err)
	}
}

// The listing of a program as it is built has a licence for every module that Go's own
// tools find in it, with its version, and what the licences of fonts, FreeType and the
// script of the pages ask for in so many words.
func TestLicencesComplete(t *testing.T) {
	needLicences(t)
	if testing.Short() {
		t.Skip("builds the program")
	}
	bin := filepath.Join(t.TempDir(), "coldseam")
	if out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	var errOut bytes.Buffer
	cmd := exec.Command(bin, "--licences")
	cmd.Stderr = &errOut
	listing, err := cmd.Output()
	if err != nil || errOut.Len() > 0 {
		t.Fatalf("%v, %s", err, &errOut)
	}
	parts, err := exec.Command("go", "version", "-m", bin).Output()
	if err != nil {
		t.Fatal(err)
	}
	var modules []string
	for line := range strings.Lines(string(parts)) {
		if f := strings.Fields(line); len(f) > 2 && f[0] == "dep" {
			modules = append(modules, f[1]+" "+f[2])
		}
	}
	if len(modules) < 15 {
		t.Fatalf("go version -m names only %q", modules)
	}
	for _, m := range append(modules, "Go, its runtime and library, go", "coldseam") {
		if !underHead(string(listing), m) {
			t.Errorf("no licence of %s", m)
		}
	}
	want := []string{
		"SIL OPEN FONT LICENSE Version 1.1", "Reserved Font Name Liberation",
		"Portions of this software are copyright © 2010 The FreeType Project\n(www.freetype.org).  All rights reserved.", // asked for by the FreeType License
		"The FreeType Project LICENSE", "MIT License",
	}
	if asset.Script() != nil {
		want = append(want, "Copyright 2017-2023 The Apache Software Foundation", "Apache License", "BSD 3-Clause", "Copyright 2010-2016 Mike Bostock")
	}
	for _, w := range want {
		if !strings.Contains(string(listing), w) {
			t.Errorf("no %q", w)
		}
	}
	if strings.Contains(string(listing), "GNU GENERAL PUBLIC LICENSE") {
		t.Error("the licence that FreeType is not used under")
	}
}

// underHead reports whether a part is named in a head and a text of some length follows.
func underHead(listing, name string) bool {
	_, after, found := strings.Cut(listing, "\n"+licence.Head+name)
	if !found {
		return false
	}
	_, body, _ := strings.Cut(after, "\n\n")
	body, _, _ = strings.Cut(body, "\n"+licence.Head)
	return len(body) > 200
}

// A build without gathered licences says how they are gathered, with status 1, and
// nothing else.
func TestLicencesCommand(t *testing.T) {
	status, out, errOut := runWith(t, "", "--licences")
	if _, err := licence.Text(); err != nil {
		if status != 1 || out != "" || strings.Count(errOut, "\n") != 1 || !strings.Contains(errOut, "go generate ./cmd/coldseam/internal/licence") {
			t.Errorf("status %d, %q, %q", status, out, errOut)
		}
		return
	}
	if status != 0 || errOut != "" || !strings.HasPrefix(out, "Coldseam is made of these parts.") {
		t.Errorf("status %d, %.60q, %q", status, out, errOut)
	}
	if status, _, errOut := runWith(t, "", "--licences", "x"); status != 2 || !strings.Contains(errOut, "takes nothing after it") {
		t.Errorf("status %d, %q", status, errOut)
	}
}

// Where the listing cannot be written the status is 1, with one line.
func TestLicencesOntoFullDevice(t *testing.T) {
	needLicences(t)
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		expect.Missing(t, "%v", err)
	}
	defer full.Close()
	cmd := exec.Command(program, "--licences")
	cmd.Env = append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1")
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = full, &said
	var exit *exec.ExitError
	if err := cmd.Run(); !errors.As(err, &exit) || exit.ExitCode() != 1 || !strings.HasPrefix(said.String(), "coldseam: standard output cannot be written: ") || strings.Count(said.String(), "\n") != 1 {
		t.Errorf("%v: %q", err, said.String())
	}
}
