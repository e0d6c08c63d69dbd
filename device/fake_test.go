package device

import (
	"io"
	"sync/atomic"
	"testing"
	"time"
)

// step is what one Read of a fake does: wait, then give data and err.
type step struct {
	after time.Duration
	data  string
	err   error
}

// silence is a read that timed out, as on Linux.
var silence = step{Poll, "", io.EOF}

// says is a read that brings text at once.
func says(text string) step { return step{0, text, nil} }

// fake is a port that follows a script, and is silent behind its end unless it repeats
// its last step. It fails the test if it is closed under a read, or twice.
type fake struct {
	t       *testing.T
	steps   []step
	forever bool // the last step repeats

	reads   atomic.Int64
	reading atomic.Bool
	closed  atomic.Bool
}

func (f *fake) Read(b []byte) (int, error) {
	if f.closed.Load() || !f.reading.CompareAndSwap(false, true) {
		f.t.Error("read after Close, or two at once")
	}
	defer f.reading.Store(false)
	f.reads.Add(1)
	s := silence
	if len(f.steps) > 0 {
		s = f.steps[0]
		if !f.forever || len(f.steps) > 1 {
			f.steps = f.steps[1:]
		}
	}
	time.Sleep(s.after)
	return copy(b, s.data), s.err
}

func (f *fake) Close() error {
	if f.reading.Load() {
		f.t.Error("closed under a read")
	}
	if f.closed.Swap(true) {
		f.t.Error("closed twice")
	}
	return nil
}

// opener opens fakes one after the other; between them it may fail.
type opener struct {
	t     *testing.T
	start time.Time
	ports []any // *fake or error, one for each Open; behind its end the last

	names []string        // asked for
	times []time.Duration // since start
}

func (o *opener) Open(c Config) (io.ReadCloser, error) {
	o.names = append(o.names, c.Name)
	o.times = append(o.times, time.Since(o.start))
	next := o.ports[0]
	if len(o.ports) > 1 {
		o.ports = o.ports[1:]
	}
	if err, ok := next.(error); ok {
		return nil, err
	}
	next.(*fake).t = o.t
	return next.(*fake), nil
}

// listen starts a Listener on the ports, and closes it at the end of the test.
func listen(t *testing.T, o Options, ports ...any) (*Listener, *opener) {
	t.Helper()
	op := &opener{t: t, start: time.Now(), ports: ports}
	o.Open = op.Open
	if o.Ports == nil {
		o.Ports = func() ([]Info, error) { return nil, nil }
	}
	l, err := Listen(Config{Name: "/dev/probe"}, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := l.Close(); err != nil {
			t.Error(err)
		}
	})
	return l, op
}

// next is the next event within a minute, of the kind wanted.
func next(t *testing.T, l *Listener, want Kind) Event {
	t.Helper()
	select {
	case e, ok := <-l.Events():
		if !ok || e.Kind != want {
			t.Fatalf("%v %q %q (open: %v), want %v", e.Kind, e.Line, e.Text, ok, want)
		}
		return e
	case <-time.After(time.Minute):
		t.Fatalf("nothing came, want %v", want)
	}
	panic("not reached")
}

// wantLines takes the lines from the events; any other kind fails.
func wantLines(t *testing.T, l *Listener, want ...string) {
	t.Helper()
	for _, w := range want {
		if e := next(t, l, Line); string(e.Line) != w {
			t.Fatalf("line %q, want %q", e.Line, w)
		}
	}
}

// nothing fails if an event comes within d.
func nothing(t *testing.T, l *Listener, d time.Duration) {
	t.Helper()
	select {
	case e := <-l.Events():
		t.Fatalf("%v %q %q, want nothing", e.Kind, e.Line, e.Text)
	case <-time.After(d):
	}
}
