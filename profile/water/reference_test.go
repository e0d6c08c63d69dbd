package water

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"coldseam/profile/expect"
)

// TestReferenceTablesReproduce makes the reference tables again and compares them
// with the committed ones byte for byte. The first line names the versions of the
// libraries; where others are installed, that line is only logged, unless
// COLDSEAM_FULL=1.
func TestReferenceTablesReproduce(t *testing.T) {
	python := expect.Python(t, "gsw, iapws, numpy")
	dir := t.TempDir()
	script := filepath.Join("testdata", "make_reference.py")
	if out, err := exec.Command(python, script, dir).CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", script, err, out)
	}
	made, err := filepath.Glob(filepath.Join(dir, "*.csv"))
	if err != nil {
		t.Fatal(err)
	}
	kept, err := filepath.Glob(filepath.Join("testdata", "*.csv"))
	if err != nil {
		t.Fatal(err)
	}
	if len(made) != 2 || len(kept) != 2 {
		t.Fatalf("%d tables made, %d committed, want 2 and 2", len(made), len(kept))
	}
	for _, path := range kept {
		name := filepath.Base(path)
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		compareTables(t, name, bytes.Split(got, []byte("\n")), bytes.Split(want, []byte("\n")))
	}
}

func compareTables(t *testing.T, name string, got, want [][]byte) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d lines, committed %d", name, len(got), len(want))
		return
	}
	for i := range want {
		if bytes.Equal(got[i], want[i]) {
			continue
		}
		if i == 0 && !expect.Full() {
			t.Logf("%s: other versions here:\n%s\ncommitted:\n%s", name, got[i], want[i])
			continue
		}
		t.Errorf("%s line %d:\n%s\ncommitted:\n%s", name, i+1, got[i], want[i])
		return
	}
}
