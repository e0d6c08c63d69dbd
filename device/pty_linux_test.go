package device

import (
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"coldseam/profile/expect"
)

// These tests read real ports, the slave ends of pseudo-terminals. A pseudo-terminal
// has no speed and no parity: those are not checked here.

// bound is how long anything here may take before the test fails.
const bound = 20 * time.Second

// probe is the far end of a cable: the master of a pseudo-terminal.
type probe struct {
	t      *testing.T
	master *os.File
	slave  *os.File // the test's own, open until someone else has it
	name   string
}

func newProbe(t *testing.T) *probe {
	t.Helper()
	master, slave := expect.Pty(t)
	p := &probe{t, master, slave, slave.Name()}
	t.Cleanup(func() {
		p.master.Close()
		p.slave.Close()
	})
	return p
}

// listen follows the probe's port, under a link to it when one is given.
func (p *probe) listen(name string, o Options) *Listener {
	p.t.Helper()
	l, err := Listen(Config{Name: name}, o)
	if err != nil {
		p.t.Fatal(err)
	}
	p.t.Cleanup(func() {
		if err := l.Close(); err != nil {
			p.t.Error(err)
		}
	})
	p.slave.Close() // while it is open, closing the master hangs nothing up
	return l
}

// start sends text while the test goes on, and says when it was read. Deadlines do
// nothing on a master, hence the goroutine.
func (p *probe) start(text string) <-chan error {
	done := make(chan error, 1)
	go func() {
		_, err := io.WriteString(p.master, text)
		done <- err
	}()
	return done
}

// write sends text.
func (p *probe) write(text string) {
	p.t.Helper()
	p.sent(p.start(text))
}

// sent waits until all is read.
func (p *probe) sent(done <-chan error) {
	p.t.Helper()
	select {
	case err := <-done:
		if err != nil {
			p.t.Fatal(err)
		}
	case <-time.After(bound):
		p.t.Fatal("nobody reads what is written")
	}
}

// pull pulls the cable.
func (p *probe) pull() {
	p.t.Helper()
	if err := p.master.Close(); err != nil {
		p.t.Fatal(err)
	}
}

// want fails unless the counts are those.
func want(t *testing.T, l *Listener, counts Counts) {
	t.Helper()
	if got := l.Counts(); got != counts {
		t.Errorf("%+v, want %+v", got, counts)
	}
}

func TestRealPause(t *testing.T) {
	t.Parallel()
	p := newProbe(t)
	p.write("stale\n1")
	l := p.listen(p.name, Options{})
	p.write("7.1\r\n18.")
	time.Sleep(3 * Poll) // real polls must run out here
	p.write("4\r\n17.9\r\n")
	wantLines(t, l, "18.4", "17.9")
	want(t, l, Counts{Lines: 2, Torn: 1})
}

func TestRealNoLineEnd(t *testing.T) {
	t.Parallel()
	p := newProbe(t)
	l := p.listen(p.name, Options{})
	p.write("\n" + strings.Repeat("z", 1<<20) + "\r\n18.4\r\n")
	wantLines(t, l, "18.4")
	want(t, l, Counts{Lines: 1, TooLong: 1})
}

// TestRealWrongSpeed: noise gives odd lines, which are for others to refuse, and the
// good ones behind it come whole.
func TestRealWrongSpeed(t *testing.T) {
	t.Parallel()
	p := newProbe(t)
	l := p.listen(p.name, Options{})
	text := noise(1 << 14)
	sending := p.start(string(text) + "\r\n18.4\r\n17.9\r\n")

	var s splitter
	for line := range s.lines(text) { // as it would be without a port between
		if e := next(t, l, Line); string(e.Line) != string(line) {
			t.Fatalf("%q, want %q", e.Line, line)
		}
	}
	e := next(t, l, Line)
	if string(e.Line) != "18.4" { // the end of the noise was a line, too
		wantLines(t, l, "18.4")
	}
	wantLines(t, l, "17.9")
	p.sent(sending)
}

func TestRealCablePulledAndBack(t *testing.T) {
	t.Parallel()
	p := newProbe(t)
	link := filepath.Join(t.TempDir(), "probe")
	if err := os.Symlink(p.name, link); err != nil {
		t.Fatal(err)
	}
	l := p.listen(link, Options{})
	p.write("\n18.4\n17.")
	wantLines(t, l, "18.4")
	p.pull()
	if e := next(t, l, Lost); e.Text == "" {
		t.Error("lost without a reason")
	}

	again := newProbe(t)
	if err := os.Remove(link); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(again.name, link); err != nil {
		t.Fatal(err)
	}
	back(t, l, link)
	again.slave.Close()
	again.write("9\n16.0\n")
	wantLines(t, l, "16.0")
	want(t, l, Counts{Lines: 2, Torn: 2, Lost: 1})
}

func TestRealCableBackUnderANewName(t *testing.T) {
	t.Parallel()
	p := newProbe(t)
	var now atomic.Pointer[Info]
	now.Store(&Info{Name: p.name, VendorID: "0403", ProductID: "6001", Serial: "A1"})
	l := p.listen(p.name, Options{Ports: func() ([]Info, error) { return []Info{*now.Load()}, nil }})
	p.write("\n18.4\n17.")
	wantLines(t, l, "18.4")

	again := newProbe(t) // before the old one goes, or it might be given its name
	info := *now.Load()
	info.Name = again.name
	now.Store(&info)
	p.pull()
	next(t, l, Lost)
	back(t, l, again.name)
	again.slave.Close()
	again.write("9\n16.0\n")
	wantLines(t, l, "16.0")
	want(t, l, Counts{Lines: 2, Torn: 2, Lost: 1})
}

// back takes the Back under that name. A try to open the port before it is there
// again may have failed for some reason worth telling.
func back(t *testing.T, l *Listener, name string) {
	t.Helper()
	for timeout := time.After(bound); ; {
		select {
		case e := <-l.Events():
			if e.Kind == Waiting {
				t.Logf("waiting: %s", e.Text)
				continue
			}
			if e.Kind != Back || e.Text != name {
				t.Fatalf("%v %q, want back under %s", e.Kind, e.Text, name)
			}
			return
		case <-timeout:
			t.Fatalf("the port did not come back under %s", name)
		}
	}
}

func TestRealQuiet(t *testing.T) {
	t.Parallel()
	p := newProbe(t)
	l := p.listen(p.name, Options{QuietAfter: 3 * Poll})
	p.write("\n18.4\n")
	wantLines(t, l, "18.4")
	next(t, l, Quiet)
	p.write("17.9\n")
	wantLines(t, l, "17.9")
	next(t, l, Quiet)
	want(t, l, Counts{Lines: 2})
}

func TestRealCloseWhileReading(t *testing.T) {
	t.Parallel()
	p := newProbe(t)
	l := p.listen(p.name, Options{})
	p.write("\n18.4\n")
	wantLines(t, l, "18.4") // from here on it waits in a read
	for range 2 {
		if err := l.Close(); err != nil {
			t.Error(err)
		}
	}
	if e, ok := <-l.Events(); ok {
		t.Errorf("%v after Close", e.Kind)
	}
}

// TestRealTwoPrograms: the test's own binary is the second program.
func TestRealTwoPrograms(t *testing.T) {
	const variable = "COLDSEAM_TEST_PORT"
	if name := os.Getenv(variable); name != "" {
		_, err := Open(Config{Name: name})
		if !errors.Is(err, ErrBusy) {
			t.Fatalf("the second program: %v, want busy", err)
		}
		if want := name + " is busy: close the other program that uses it, then try again"; err.Error() != want {
			t.Fatalf("the second program: %q, want %q", err, want)
		}
		return
	}
	t.Parallel()
	p := newProbe(t)
	l := p.listen(p.name, Options{})
	link := filepath.Join(t.TempDir(), "link")
	if err := os.Symlink(p.name, link); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{p.name, link} {
		ctx, cancel := context.WithTimeout(t.Context(), bound)
		defer cancel()
		second := exec.CommandContext(ctx, os.Args[0], "-test.run=^TestRealTwoPrograms$", "-test.count=1")
		second.Env = append(os.Environ(), variable+"="+name, "GORACE=atexit_sleep_ms=0")
		if out, err := second.CombinedOutput(); err != nil {
			t.Errorf("%v\n%s", err, out)
		}
	}
	p.write("\n18.4\n")
	wantLines(t, l, "18.4") // the first is none the worse

	if err := l.Close(); err != nil {
		t.Fatal(err)
	}
	third, err := Open(Config{Name: p.name})
	if err != nil {
		t.Fatalf("after Close: %v", err)
	}
	third.Close()
}
