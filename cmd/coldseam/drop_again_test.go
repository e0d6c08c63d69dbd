package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/book"
)

// TestSavingTriedAgain: a first save that fails is not the end: the readings are shown
// and the angler says whether to try again, in another folder, or to end.
func TestSavingTriedAgain(t *testing.T) {
	noSettings(t)
	t.Chdir(t.TempDir()) // where an answer taken for a folder does no harm
	drop := func(typed string, disk book.Disk) (status int, dir, out, errOut string) {
		var o, e bytes.Buffer
		dir = t.TempDir()
		p := &program{in: strings.NewReader(typed), stdout: &o, err: &e, disk: disk, now: fixedNow}
		status = p.run([]string{"coldseam", "drop", "--book", dir, "--units", "ft F", "--bottom", "30ft"})
		return status, dir, o.String(), e.String()
	}
	three := []string{"1 ft: 74 F", "14 ft: 63 F", "29 ft: 52 F"}
	saved := func(what, dir string, want []string) {
		t.Helper()
		if got := readings(pageIn(t, dir)); fmt.Sprint(got) != fmt.Sprint(want) || strings.Contains(pageIn(t, dir), "not ended") != (len(want) < 3) {
			t.Errorf("%s: saved %q", what, got)
		}
	}
	status, dir, _, errOut := drop("74\n52\n1\n63\nstop\n", &full{left: 1, then: 1})
	if status != 0 || strings.Count(errOut, "SAVING FAILED: no space left on device") != 1 || len(readings(errOut)) != 2 {
		t.Errorf("status %d: %s", status, errOut)
	}
	saved("again", dir, three)

	other := filepath.Join(t.TempDir(), "a stick")
	status, dir, _, errOut = drop("74\n52\n2\n"+other+"\n63\nstop\n", &full{left: 1, then: 1})
	if status != 0 || !strings.Contains(errOut, "Saved: "+other) {
		t.Errorf("status %d: %s", status, errOut)
	}
	saved("elsewhere", other, three)
	saved("before", dir, three[:1])

	status, dir, out, errOut := drop("74\n52\nwhat\n2 68\n3\n63\n", &full{left: 1, then: 9})
	if status != 1 || out != "" || strings.Contains(errOut, "Which folder?") || !strings.HasSuffix(errOut, "\ncoldseam: the drop could not be saved: no space left on device\n") {
		t.Errorf("status %d, %q: %s", status, out, errOut)
	}
	saved("copied down", dir, three[:1])

	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	status, dir, _, errOut = drop("74\n52\n2\n"+file+"\n1\n63\nstop\n", &full{left: 1, then: 1})
	if status != 0 || !strings.Contains(strings.Join(strings.Fields(errOut), " "), file+": drops cannot be saved there: not a folder") {
		t.Errorf("status %d: %s", status, errOut)
	}
	saved("no folder", dir, three)
}
