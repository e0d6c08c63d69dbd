package settings

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// many writes n lines or tables of a form that counts them.
func many(n int, form string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, form, i)
	}
	return b.String()
}

// TestLimits: a file far larger, a text far longer than any angler's is refused by one
// short line that names the place, and at once.
func TestLimits(t *testing.T) {
	long := strings.Repeat("x", 401)
	for _, c := range []struct{ name, toml, want string }{
		{"20,000 keys", many(20000, "k%d = 1\n"), "s: has more than 64 kB"},
		{"many short lines", strings.Repeat("\n", 2500), "s: has more than 2000 lines"},
		{"a long line", "# " + strings.Repeat("x", 4100), "s:1: the line is longer than 4000 letters"},
		{"50 MB", strings.Repeat("#", 50_000_000), "s: has more than 64 kB"},
		{"a deep array", "flies = 1\nunits = " + strings.Repeat("[", 30000), "s:2: the line is longer"},
		{"a deep array of many lines", "units = " + strings.Repeat(strings.Repeat("[", 3000)+"\n", 15), "s:4: arrays and inline tables are nested more"},
		{"a deep key", "a" + strings.Repeat(".a", 1900) + " = 1", `there is no setting "a.a.a.a`},
		{"a long key", strings.Repeat("k", 3000) + " = 1", "s:1: there is no setting \"" + strings.Repeat("k", 60) + "...\""},
		{"a long text", "flies = 1\nbook = \"/" + long + `"`, "s:2: book: is longer than 400 letters"},
		{"a long note of a water", "[[water]]\nname = \"A\"\n[[water]]\nname = \"B\"\nnote = \"" + long + `"`, "s:5: note: is longer than 400 letters"},
		{"a long layout", "[probe]\nlayout = \"" + long + `"`, "s:2: layout: is longer than 400 letters"},
		{"a long name of a fly", "[[fly]]\nname = \"" + long + "\"\nweight = \"0.1 g\"", "s:2: name: is longer than 400 letters"},
		{"too many fish", many(201, "[[fish]]\nname = \"w%d\"\nlike = \"rainbow\"\n"), "s:601: fish: more than 200 of [[fish]]"},
		{"too many flies", many(201, "[[fly]]\nname = \"f%d\"\nweight = \"0.1 g\"\n"), "s:601: fly: more than 200 of [[fly]]"},
	} {
		_, err := Parse("s", []byte(c.toml))
		if err == nil || !strings.Contains(err.Error(), c.want) || len(err.Error()) > 400 || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %.300v, want %s", c.name, err, c.want)
		}
	}
	for name, toml := range map[string]string{
		"as many fish as may be":   many(200, "[[fish]]\nname = \"w%d\"\nlike = \"rainbow\"\n"),
		"a text as long as may be": "[[water]]\nname = \"A\"\nnote = \"" + long[1:] + `"`,
	} {
		if _, err := Parse("s", []byte(toml)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestLoadNoFile: what is no file in the place of the settings is refused at once, by its
// path; a missing one gives the defaults.
func TestLoadNoFile(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	path, err := Path()
	if err != nil {
		t.Skip(err)
	}
	dir := filepath.Dir(path)
	if !strings.HasPrefix(dir, os.Getenv("XDG_CONFIG_HOME")) {
		t.Skip("settings have another place on this system")
	}
	if _, err := Load(); err != nil {
		t.Errorf("no folder: %v", err)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	if _, err := Load(); err != nil {
		t.Errorf("no file: %v", err)
	}
	for name, c := range map[string]struct {
		make func() error
		want string
	}{
		"a folder":           {func() error { return os.Mkdir(path, 0o755) }, "a folder, a pipe or a device"},
		"a device":           {func() error { return os.Symlink("/dev/zero", path) }, "a folder, a pipe or a device"},
		"a pipe":             {func() error { return exec.Command("mkfifo", path).Run() }, "a folder, a pipe or a device"},
		"a link to nothing":  {func() error { return os.Symlink("nowhere", path) }, "a link that leads to no file"},
		"a link to itself":   {func() error { return os.Symlink("settings.toml", path) }, "cannot be read: too many levels"},
		"a file, by a link":  {func() error { os.WriteFile(path+"2", nil, 0o644); return os.Symlink(path+"2", path) }, ""},
		"a very large file":  {func() error { return os.WriteFile(path, make([]byte, 1<<20), 0o644) }, "has more than 64 kB"},
		"an empty file":      {func() error { return os.WriteFile(path, nil, 0o644) }, ""},
		"a file of settings": {func() error { return os.WriteFile(path, []byte("flies = 3\n"), 0o644) }, ""},
	} {
		if err := c.make(); err != nil {
			t.Logf("%s: cannot be made here: %v", name, err)
			continue
		}
		ended := make(chan error, 1)
		go func() { _, err := Load(); ended <- err }()
		select {
		case err := <-ended:
			if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want) || !strings.HasPrefix(err.Error(), path+": ")) {
				t.Errorf("%s: %v, want %s", name, err, c.want)
			}
		case <-time.After(20 * time.Second):
			t.Fatalf("%s: waits", name)
		}
		if err := os.Remove(path); err != nil {
			t.Fatal(err)
		}
	}
}
