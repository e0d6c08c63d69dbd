package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/chart/seal"
	pocketpage "coldseam/cmd/pocket/page"
)

// The page and the site are written whole, replaced by their next version, and never in the
// place of what somebody else made. A build without the program of the page says in one line
// how it is made.
func TestPocket(t *testing.T) {
	noSettings(t)
	t.Chdir(t.TempDir())
	for args, want := range map[string]string{
		"": "say what to write", "-o x.html --site y": "give one", "-o x.html more": "takes nothing after",
	} {
		if status, out, errOut := runWith(t, "", append([]string{"pocket"}, strings.Fields(args)...)...); status != 2 || out != "" || !strings.Contains(errOut, want) {
			t.Errorf("%s: status %d, %q, %q", args, status, out, errOut)
		}
	}
	if _, err := pocketpage.File(); err != nil {
		status, out, errOut := runWith(t, "", "pocket", "-o", "x.html")
		if status != 1 || out != "" || strings.Count(errOut, "\n") != 1 || !strings.Contains(errOut, "go generate ./cmd/pocket/page") {
			t.Errorf("status %d, %q, %q", status, out, errOut)
		}
		return
	}
	for range 2 {
		if status, out, errOut := runWith(t, "", "pocket", "-o", "x.html"); status != 0 || out != "" || !strings.Contains(errOut, "Wrote x.html\nAndroid: ") || !strings.Contains(errOut, "\niPhone, iPad: ") {
			t.Errorf("status %d, %.60q, %q", status, out, errOut)
		}
		if status, _, errOut := runWith(t, "", "pocket", "--site", "s/deep"); status != 0 || !strings.Contains(errOut, "home screen") {
			t.Errorf("status %d, %q", status, errOut)
		}
	}
	file := get(t, "x.html")
	if !seal.Unchanged([]byte(file)) {
		t.Error("the file is not known as this program's own")
	}
	if status, out, _ := runWith(t, "", "pocket", "-o", "-"); status != 0 || out != file {
		t.Errorf("standard output: status %d, %d bytes, the file has %d", status, len(out), len(file))
	}
	put(t, "mine.html", "mine")
	if status, _, _ := runWith(t, "", "pocket", "-o", "mine.html"); status != 2 || get(t, "mine.html") != "mine" {
		t.Errorf("status %d, and somebody's file is %.20q", status, get(t, "mine.html"))
	}
	put(t, filepath.Join("s", "deep", "sw.js"), "mine")
	os.Remove(filepath.Join("s", "deep", "index.html"))
	if status, _, _ := runWith(t, "", "pocket", "--site", "s/deep"); status != 2 {
		t.Errorf("status %d", status)
	}
	if _, err := os.Stat(filepath.Join("s", "deep", "index.html")); err == nil {
		t.Error("a part of the site was written though another could not be")
	}
	if status, _, errOut := runWith(t, "", "pocket", "--site", "mine.html"); status != 2 || !strings.Contains(errOut, "that is a file") {
		t.Errorf("status %d, %q", status, errOut)
	}
}
