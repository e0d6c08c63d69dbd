package device

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
)

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		config Config
		want   string // the whole error
	}{
		{Config{Name: "COM3"}, ""},
		{Config{"/dev/ttyUSB0", 115200, 7, "even"}, ""},
		{Config{"/dev/ttyUSB0", 1200, 8, "odd"}, ""},
		{Config{}, "no port named: give one such as /dev/ttyUSB0 or COM3"},
		{Config{Name: "COM3\x00"}, `the name "COM3\x00" is not the name of a port: it holds signs that cannot be printed`},
		{Config{Name: "a\u202eb"}, `the name "a\u202eb" is not the name of a port: it holds signs that cannot be printed`},
		{Config{Name: "a\xff"}, `the name "a\xff" is not the name of a port: it holds signs that cannot be printed`},
		{Config{Name: "p", Baud: 9601}, "9601 baud is not a speed of a probe: use 1200, 2400, 4800, 9600, 19200, 38400, 57600 or 115200"},
		{Config{Name: "p", Baud: -1}, "-1 baud is not a speed of a probe: use 1200, 2400, 4800, 9600, 19200, 38400, 57600 or 115200"},
		{Config{Name: "p", DataBits: 6}, "6 data bits are not possible: use 7 or 8"},
		{Config{Name: "p", Parity: "mark"}, `parity "mark" is not possible: use none, even or odd`},
	} {
		got := ""
		if err := c.config.Check(); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("%+v: %q, want %q", c.config, got, c.want)
		}
		if got == "" {
			continue
		}
		if p, err := Open(c.config); err == nil || err.Error() != c.want {
			t.Errorf("Open(%+v): %v, %v, want the same", c.config, p, err)
		}
	}
	if got, want := (Config{Name: "p"}).filled(), (Config{"p", 9600, 8, "none"}); got != want {
		t.Errorf("defaults: %+v, want %+v", got, want)
	}
}

func TestOpenRefuses(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("names of Linux")
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	gone := filepath.Join(dir, "gone")
	for _, c := range []struct {
		name  string
		want  string // the error begins so
		cause error
	}{
		{gone, "there is no port " + gone + "", fs.ErrNotExist},
		{file, file + " is not a serial port: give one such as /dev/ttyUSB0", syscall.ENOTTY},
		{dir, dir + " is not a serial port: ", syscall.EISDIR},
		{os.DevNull, os.DevNull + " is not a serial port: ", syscall.ENOTTY},
		{"/" + strings.Repeat("x", 5000), "/xxx", syscall.ENAMETOOLONG},
	} {
		p, err := Open(Config{Name: c.name})
		if err == nil {
			p.Close()
			t.Fatalf("Open(%q) opened something", c.name)
		}
		if !strings.HasPrefix(err.Error(), c.want) || !errors.Is(err, c.cause) {
			t.Errorf("Open(%q): %q, want %q at its start, from %v", c.name, err, c.want, c.cause)
		}
	}
}

// TestExplain checks the texts that need a port, a group or another system to come up.
func TestExplain(t *testing.T) {
	pathError := func(e syscall.Errno) error { return &fs.PathError{Op: "open", Path: "p", Err: e} }
	for _, c := range []struct {
		err   error
		want  string
		cause error
	}{
		{ErrBusy, "p is busy: close the other program that uses it, then try again", ErrBusy},
		{pathError(syscall.EBUSY), "p is busy: close the other program that uses it, then try again", ErrBusy},
		{pathError(syscall.ENXIO), "p has no working device behind it: plug the probe in again, or give another port", syscall.ENXIO},
		{syscall.EIO, "p has no working device behind it: plug the probe in again, or give another port", syscall.EIO},
		{errors.New("odd\x1b[2J"), "p cannot be opened: odd\ufffd[2J", nil},
	} {
		err := explain("p", c.err)
		if err.Error() != c.want {
			t.Errorf("%v: %q, want %q", c.err, err, c.want)
		}
		if c.cause != nil && !errors.Is(err, c.cause) {
			t.Errorf("%v: %q is not %v", c.err, err, c.cause)
		}
	}
	if err := explain("p", pathError(syscall.EACCES)); !errors.Is(err, fs.ErrPermission) && !errors.Is(err, ErrBusy) {
		t.Errorf("no right: %v", err)
	}
	for got, want := range map[string]string{
		denied("p", "dialout"): "p cannot be opened: it belongs to the group dialout; run `sudo usermod -aG dialout $USER`, then log out and in again",
		denied("p", ""):        "p cannot be opened: only the system may use it; ask whoever set up the computer",

		missing("p", nil, nil): "there is no port p, and none is plugged in: check the cable",
		missing("p", []Info{{Name: "COM3"}, {Name: "COM4", Maker: "Acme", Product: "Cable"}}, nil): "there is no port p: there is COM3, COM4 (Acme Cable)",
		missing("p", nil, errors.New("no\nlist")):                                                  "there is no port p, and the ports cannot be listed: no\ufffdlist",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
