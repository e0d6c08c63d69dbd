//go:build unix

package device

import (
	"os"
	"path/filepath"
	"testing"
)

// TestOwningGroup: a group is named only where joining it helps, and never root's.
func TestOwningGroup(t *testing.T) {
	file := filepath.Join(t.TempDir(), "port")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	gid := os.Getgid()
	if gid == 0 { // root may give the file to a group that has no name, most likely
		gid = 54321
	}
	if err := os.Chown(file, -1, gid); err != nil {
		t.Fatal(err)
	}
	for _, mode := range []os.FileMode{0o600, 0o640, 0o620, 0o660} { // the last stays
		if err := os.Chmod(file, mode); err != nil {
			t.Fatal(err)
		}
		if got := owningGroup(file); (got != "") != (mode == 0o660) {
			t.Errorf("%o: group %q", mode, got)
		}
	}
	if os.Getgid() == 0 {
		if err := os.Chown(file, -1, 0); err != nil {
			t.Fatal(err)
		}
		if got := owningGroup(file); got != "" {
			t.Errorf("root's group: %q", got)
		}
	}
	if got := owningGroup(filepath.Join(file, "none")); got != "" {
		t.Errorf("no file: %q", got)
	}
}

// TestGroupName: the group of the number 0 has a name on every system.
func TestGroupName(t *testing.T) {
	if got := groupName("0"); got != "root" && got != "wheel" {
		t.Errorf("group 0 is %q", got)
	}
	if got := groupName("3999999999"); got != "3999999999" {
		t.Errorf("a group that is not there: %q", got)
	}
}
