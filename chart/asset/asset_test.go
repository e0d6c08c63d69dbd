package asset

import (
	"bytes"
	"coldseam/profile/expect"
	"errors"
	"strings"
	"testing"
)

// The script is the wanted one, or none; its licences go with it.
func TestScript(t *testing.T) {
	b := Script()
	if b == nil {
		expect.Missing(t, "the script was not fetched: go generate ./chart/asset")
	}
	for _, f := range Files {
		if f.To == scriptFile {
			if err := f.Check(b); err != nil {
				t.Error(err)
			}
		}
	}
	if text := Licences(); !strings.Contains(text, "Apache License") || !strings.Contains(text, "BSD 3-Clause") {
		t.Errorf("licences: %.200q", text)
	}
}

// A script that is missing or was changed by one byte is none.
func TestChecked(t *testing.T) {
	if b := checked(scriptFile, func(string) ([]byte, error) { return nil, errors.New("no such file") }); b != nil {
		t.Errorf("a missing script: %.20q", b)
	}
	if b := checked(scriptFile, func(string) ([]byte, error) { return append(bytes.Clone(Script()), ' '), nil }); b != nil {
		t.Errorf("another script: %.20q", b)
	}
	if b := checked("README.txt", folder.ReadFile); b != nil {
		t.Errorf("a file that is not listed: %.20q", b)
	}
}

// An empty folder builds, since the README is always embedded.
func TestReadme(t *testing.T) {
	b, err := folder.ReadFile("README.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range Files {
		if !strings.Contains(string(b), f.To) {
			t.Errorf("README.txt does not name %s", f.To)
		}
	}
	if !strings.Contains(string(b), strings.Replace(Package, "@", " ", 1)) {
		t.Errorf("README.txt does not name %s", Package)
	}
	entries, err := folder.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), ".go") || e.IsDir() {
			t.Errorf("%s is embedded", e.Name())
		}
	}
}
