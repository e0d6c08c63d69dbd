package main

import (
	"bytes"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"coldseam/chart/seal"
	"coldseam/profile/book"
)

// pictureFolder is a folder with a page to draw, which is made the working folder.
func pictureFolder(t *testing.T) {
	t.Helper()
	noSettings(t)
	t.Chdir(t.TempDir())
	put(t, "page.txt", "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 72\n15 65\n20 56\n25 52\n")
}

func put(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func get(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// link makes a link, or skips where there are none.
func link(t *testing.T, make func(old, name string) error, old, name string) {
	t.Helper()
	if err := make(old, name); err != nil {
		t.Skipf("no links here: %v", err)
	}
}

// TestPictureKeeps: whatever lies in the place of a picture or has a name like it, no
// page and nothing that somebody else wrote is lost, and nothing is left behind.
func TestPictureKeeps(t *testing.T) {
	pictureFolder(t)
	page := get(t, "page.txt")
	for _, ext := range []string{".svg", ".html"} {
		put(t, "page"+ext, page)
	}
	dated := "water: Alder Kettle\ndate: 2026-07-18\n" + page + "\nwater: Alder Kettle\ndate: 2026-07-25\n" + page
	put(t, "dated.svg", dated)
	put(t, "x.svg.part", "precious")
	put(t, "mine.svg", "precious")
	put(t, "mine.pdf", "precious")
	link(t, os.Symlink, "page.txt", "soft.svg")
	link(t, os.Link, "page.txt", "hard.svg")
	link(t, os.Symlink, "mine.svg", "tomine.svg")
	link(t, os.Symlink, "nowhere", "dangling.svg")
	if err := os.Mkdir("folder.svg", 0o755); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args   string
		status int
		said   string // "" is Wrote
	}{
		{"chart -o page.svg page.svg", 2, "the page being read"},
		{"chart -o ./././page.html page.html", 2, "the page being read"},
		{"season -o dated.svg dated.svg", 2, "the page being read"},
		{"chart -o soft.svg page.txt", 2, "the page being read"},
		{"chart --force -o soft.svg page.txt", 2, "the page being read"},
		{"chart --force -o hard.svg page.txt", 2, "the page being read"},
		{"chart -o soft.svg page.svg page.txt", 2, "the page being read"},
		{"chart -o mine.svg page.txt", 2, "did not make"},
		{"chart -o mine.pdf page.txt", 2, "did not make"},
		{"chart -o soft.svg page.svg", 2, "did not make"},
		{"chart -o tomine.svg page.txt", 2, "did not make"},
		{"chart -o dangling.svg page.txt", 2, "a link that leads to no file"},
		{"chart -o folder.svg page.txt", 2, "that is a folder"},
		{"chart --force -o folder.svg page.txt", 2, "that is a folder"},
		{"chart -o none/x.svg page.txt", 1, "cannot be written: "},
		{"chart -o x.svg x.svg.part", 2, "x.svg.part"},
		{"chart -o x.svg page.txt", 0, ""},
		{"chart -o x.svg page.txt", 0, ""}, // again, over its own
	} {
		status, out, errOut := runWith(t, "", strings.Fields(c.args)...)
		want := "Wrote x.svg\n"
		if c.said != "" {
			want = "coldseam: "
		}
		if status != c.status || out != "" || !strings.HasPrefix(errOut, want) || !strings.Contains(errOut, c.said) || strings.Count(errOut, "\n") != 1 {
			t.Errorf("%s: status %d, %q%q, want %d, %s", c.args, status, out, errOut, c.status, c.said)
		}
	}
	for name, want := range map[string]string{"page.txt": page, "page.svg": page, "page.html": page, "soft.svg": page, "hard.svg": page, "dated.svg": dated,
		"x.svg.part": "precious", "mine.svg": "precious", "mine.pdf": "precious", "tomine.svg": "precious"} {
		if get(t, name) != want {
			t.Errorf("%s holds %.40q", name, get(t, name))
		}
	}
	if left, _ := filepath.Glob(".coldseam*"); len(left) > 0 {
		t.Errorf("left behind: %q", left)
	}
	if status, _, errOut := runWith(t, "", "chart", "--force", "-o", "tomine.svg", "page.txt"); status != 0 || !strings.HasPrefix(get(t, "mine.svg"), "<svg") {
		t.Errorf("with --force: status %d, %s", status, errOut)
	}
}

// TestPictureOwn: each form is replaced by its next picture without a word, until
// somebody adds to it; the same page gives the same bytes.
func TestPictureOwn(t *testing.T) {
	pictureFolder(t)
	for _, ext := range []string{"svg", "png", "pdf", "html"} {
		name := "x." + ext
		for range 2 {
			if status, _, errOut := runWith(t, "", "chart", "-o", name, "page.txt"); status != 0 {
				t.Fatalf("%s: status %d, %s", name, status, errOut)
			}
		}
		first := get(t, name)
		if !seal.Unchanged([]byte(first)) {
			t.Errorf("%s is not known as this program's own", name)
		}
		runWith(t, "", "chart", "-o", "again."+ext, "page.txt")
		if get(t, "again."+ext) != first {
			t.Errorf("%s: other bytes the second time", name)
		}
		put(t, name, first+"<!-- my note -->")
		if status, _, _ := runWith(t, "", "chart", "-o", name, "page.txt"); status != 2 || get(t, name) != first+"<!-- my note -->" {
			t.Errorf("%s: status %d, and what was added to it may be lost", name, status)
		}
	}
}

// TestPictureStdin: the file that standard input was redirected from is not replaced.
func TestPictureStdin(t *testing.T) {
	pictureFolder(t)
	page := get(t, "page.txt")
	put(t, "in.svg", page)
	for _, args := range [][]string{{"chart", "-o", "in.svg"}, {"chart", "--force", "-o", "in.svg", "-"}} {
		in, err := os.Open("in.svg")
		if err != nil {
			t.Fatal(err)
		}
		var out, errOut bytes.Buffer
		status := run(append([]string{"coldseam"}, args...), in, &out, &errOut)
		in.Close()
		if status != 2 || get(t, "in.svg") != page || !strings.Contains(errOut.String(), "the page being read") {
			t.Errorf("%q: status %d, %s", args, status, errOut.String())
		}
	}
}

// TestPictureSettings: the settings are read too, and not replaced even with --force.
func TestPictureSettings(t *testing.T) {
	pictureFolder(t)
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir, err := os.UserConfigDir()
	if err != nil {
		t.Skip(err)
	}
	dir = filepath.Join(dir, "coldseam")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join(dir, "settings.toml"), "flies = 2\n")
	link(t, os.Symlink, filepath.Join(dir, "settings.toml"), "s.svg")
	if status, _, _ := runWith(t, "", "chart", "--force", "-o", "s.svg", "page.txt"); status != 2 || get(t, "s.svg") != "flies = 2\n" {
		t.Errorf("status %d, the settings hold %.40q", status, get(t, "s.svg"))
	}
}

// TestPictureMode: a picture keeps the mode of the one before it, and a file that is
// write-protected is left.
func TestPictureMode(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no modes on Windows")
	}
	pictureFolder(t)
	for _, mode := range []fs.FileMode{0o600, 0o666, 0o640} {
		runWith(t, "", "chart", "-o", "x.svg", "page.txt")
		if err := os.Chmod("x.svg", mode); err != nil {
			t.Fatal(err)
		}
		if status, _, errOut := runWith(t, "", "chart", "-o", "x.svg", "page.txt"); status != 0 {
			t.Fatalf("status %d, %s", status, errOut)
		}
		if info, err := os.Stat("x.svg"); err != nil || info.Mode().Perm() != mode {
			t.Errorf("mode %v, want %v", info.Mode(), mode)
		}
	}
	if err := os.Chmod("x.svg", 0o444); err != nil {
		t.Fatal(err)
	}
	if status, _, errOut := runWith(t, "", "chart", "-o", "x.svg", "page.txt"); status != 2 || !strings.Contains(errOut, "write-protected") {
		t.Errorf("status %d, %s", status, errOut)
	}
}

// TestPictureDevice: a pipe or a device under a picture's name is refused at once.
func TestPictureDevice(t *testing.T) {
	pictureFolder(t)
	if err := os.Symlink(os.DevNull, "null.svg"); err != nil {
		t.Skip(err)
	}
	names := []string{"null.svg"}
	if err := exec.Command("mkfifo", "pipe.svg").Run(); err == nil {
		names = append(names, "pipe.svg")
	}
	for _, name := range names {
		ended := make(chan string, 1)
		go func() {
			var out, errOut bytes.Buffer
			status := run([]string{"coldseam", "chart", "--force", "-o", name, "page.txt"}, strings.NewReader(""), &out, &errOut)
			ended <- strings.Repeat("2", status/2) + errOut.String()
		}()
		select {
		case said := <-ended:
			if !strings.HasPrefix(said, "2coldseam: ") || !strings.Contains(said, "a pipe or a device") {
				t.Errorf("%s: %s", name, said)
			}
		case <-time.After(20 * time.Second):
			t.Fatalf("%s: waits", name)
		}
	}
}

// recorded is a disk that writes down its steps and fails at one of them.
type recorded struct {
	book.System
	steps  *[]string
	failAt string
}

type recordedFile struct {
	book.File
	d recorded
}

func (d recorded) step(name string) error {
	*d.steps = append(*d.steps, name)
	if name == d.failAt {
		return &fs.PathError{Op: name, Path: "/somewhere", Err: os.ErrPermission}
	}
	return nil
}

func (d recorded) Create(path string, mode fs.FileMode) (book.File, error) {
	if err := d.step("create"); err != nil {
		return nil, err
	}
	f, err := d.System.Create(path, mode)
	return recordedFile{f, d}, err
}
func (d recorded) Rename(from, to string) error {
	if err := d.step("rename"); err != nil {
		return err
	}
	return d.System.Rename(from, to)
}
func (d recorded) Move(from, to string) error {
	if err := d.step("move"); err != nil {
		return err
	}
	return d.System.Move(from, to)
}
func (f recordedFile) Write(b []byte) (int, error) {
	if err := f.d.step("write"); err != nil {
		f.File.Write(b[:len(b)/2])
		return 0, err
	}
	return f.File.Write(b)
}
func (f recordedFile) Sync() error {
	if err := f.d.step("sync"); err != nil {
		return err
	}
	return f.File.Sync()
}

// TestPictureWhole: a picture is whole in a file of its own before it takes its name, so
// that whatever step fails the one before it stays as it was; and by a second name of
// that one (a hard link) its bytes are seen to stay, as they do not where a file is
// written in place.
func TestPictureWhole(t *testing.T) {
	pictureFolder(t)
	draw := func(failAt string) (steps []string, status int, errOut string) {
		var e bytes.Buffer
		p := &program{in: strings.NewReader(""), stdout: io.Discard, err: &e, disk: recorded{steps: &steps, failAt: failAt}, now: time.Now}
		status = p.run([]string{"coldseam", "chart", "-o", "x.svg", "page.txt"})
		return steps, status, e.String()
	}
	if steps, status, errOut := draw(""); status != 0 || strings.Join(steps, " ") != "create write sync move" {
		t.Fatalf("new: status %d, %q, %s", status, steps, errOut)
	}
	before := get(t, "x.svg")
	link(t, os.Link, "x.svg", "before.svg")
	put(t, "page.txt", get(t, "page.txt")+"30 51\n")
	for _, failAt := range []string{"create", "write", "sync", "rename"} {
		steps, status, errOut := draw(failAt)
		if status != 1 || errOut != "coldseam: -o x.svg: cannot be written: permission denied\n" || steps[len(steps)-1] != failAt {
			t.Errorf("%s fails: status %d, %q, %s", failAt, status, steps, errOut)
		}
		if left, _ := filepath.Glob(".coldseam*"); get(t, "x.svg") != before || len(left) > 0 {
			t.Errorf("%s fails: the picture is changed, or something is left: %q", failAt, left)
		}
	}
	if steps, status, errOut := draw(""); status != 0 || strings.Join(steps, " ") != "create write sync rename" {
		t.Fatalf("again: status %d, %q, %s", status, steps, errOut)
	}
	if get(t, "x.svg") == before || get(t, "before.svg") != before {
		t.Error("the picture was written in place")
	}
}
