package device

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"sync"
	"sync/atomic"
	"time"

	"coldseam/profile/plain"
)

const (
	// waitingEvents is how many events may wait for whoever listens. When they do,
	// reading waits too, and the system's own buffer fills.
	waitingEvents = 64
	// atOnce is the longest time within which a read that brought nothing has not
	// waited for a byte.
	atOnce = Poll / 2
	// breath is the pause after such a read: a port that always returns at once must
	// not keep a processor busy.
	breath = Poll / 5
	// pulled is how many such reads running, with io.EOF, mean that the cable is out.
	pulled = 5
	// closing is the longest that Close waits for a read to return. It takes about Poll,
	// more on a busy machine; only a driver that hangs takes longer.
	closing = 20 * Poll
)

// backOff is the wait before each try to open a lost port; the last repeats.
var backOff = []time.Duration{
	500 * time.Millisecond, time.Second, 2 * time.Second, 4 * time.Second, 8 * time.Second, 10 * time.Second,
}

// Options sets up a Listener. Zero values take the default.
type Options struct {
	QuietAfter time.Duration // silence that is worth a Quiet; 0 is 5 s
	Cut        bool          // hand on the line within which the port was opened, as a Cut

	// Open opens the port, first and again; nil is the real one. What it returns must
	// come back from a Read within about Poll, as Open says.
	Open func(Config) (io.ReadCloser, error)

	// Now stamps lines, nil is time.Now. It is called as soon as a read has returned.
	Now func() time.Time

	// Ports lists what is plugged in, to find a probe under a new name; nil is the
	// real one.
	Ports func() ([]Info, error)
}

// Listener follows one port until Close.
type Listener struct {
	config Config
	opt    Options
	who    identity
	events chan Event
	stop   chan struct{} // closed by Close
	once   sync.Once
	done   chan struct{} // closed when the port is closed and nothing more will come

	// used by the goroutine alone
	split splitter
	buf   [4096]byte
	tries int // to open since the port last brought a byte

	lines, lost atomic.Int64
}

// Listen opens the port and follows it. An error is that of the settings or of opening
// the port for the first time, and is not tried again. A port lost later is tried again
// after 0.5, 1, 2, 4, 8 and then every 10 s, until Close. A port that opens but brings
// nothing before it is lost again goes on in that row.
//
// The lost device is sought first, by its identity in Ports, under whatever name it has
// now; then its old name is tried, unless another device is known to have it. Devices of
// one make without serial numbers look alike: of two, only the old name is tried, but
// one put in the other's place cannot be told.
//
// The line within which a port was opened is thrown away, every time, unless
// Options.Cut asks for it.
func Listen(c Config, o Options) (*Listener, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	if o.QuietAfter < 0 {
		return nil, fmt.Errorf("a silence of %v is not possible: give a time above 0", o.QuietAfter)
	}
	if o.QuietAfter == 0 {
		o.QuietAfter = 5 * time.Second
	}
	if o.Open == nil {
		o.Open = func(c Config) (io.ReadCloser, error) { return Open(c) }
	}
	if o.Ports == nil {
		o.Ports = Ports
	}
	l := &Listener{
		config: c.filled(),
		opt:    o,
		events: make(chan Event, waitingEvents),
		stop:   make(chan struct{}),
		done:   make(chan struct{}),
	}
	port, err := o.Open(l.config)
	if err != nil {
		return nil, err
	}
	l.who = identify(c.Name, l.ports())
	l.split.cutToo = o.Cut
	go l.run(port)
	return l, nil
}

// Events gives what happens, in order. It is closed after Close, behind what still waits
// in it. Whoever listens should not be slow: no memory grows, but the system's buffer
// holds some thousand bytes, and what comes on top is lost unseen.
func (l *Listener) Events() <-chan Event { return l.events }

// Counts is what was seen so far. It may be called at any time.
func (l *Listener) Counts() Counts {
	return Counts{
		Lines:   int(l.lines.Load()),
		Torn:    int(l.split.torn.Load()),
		TooLong: int(l.split.tooLong.Load()),
		Lost:    int(l.lost.Load()),
	}
}

// Close ends the listening, within about Poll, and closes the port once no read is under
// way. It may be called more than once. The error is that of a driver that does not
// return from a read or from opening; the port is then closed when it does.
func (l *Listener) Close() error {
	l.once.Do(func() { close(l.stop) })
	select {
	case <-l.done:
		return nil
	case <-time.After(closing):
		return fmt.Errorf("%s does not answer: pull its cable, or end the program, to free it", l.config.Name)
	}
}

// run owns the port.
func (l *Listener) run(port io.ReadCloser) {
	defer close(l.done)
	defer close(l.events)
	for {
		reason := l.read(port)
		// At once, and no later: as long as it is open, the system gives the probe
		// another name when it comes back.
		port.Close()
		if reason == "" {
			return
		}
		l.split.cut()
		l.lost.Add(1)
		l.send(Event{Kind: Lost, At: time.Now(), Text: reason})
		if port = l.reopen(); port == nil {
			return
		}
	}
}

// read hands on what the port brings until it is lost, and gives the reason; "" when
// Close was called.
func (l *Listener) read(port io.Reader) (reason string) {
	heard := time.Now()
	quiet := false
	ends := 0 // reads running that returned at once with io.EOF
	for !l.stopped() {
		asked := time.Now()
		n, err := port.Read(l.buf[:])
		at := time.Now()
		if n > 0 {
			stamp := at
			if l.opt.Now != nil {
				stamp = l.opt.Now()
			}
			if !l.handOn(l.buf[:n], stamp) {
				return ""
			}
			// not at: while a slow consumer kept us waiting we heard nothing
			heard, quiet, ends, l.tries = time.Now(), false, 0, 0
		}
		switch {
		case err != nil && !errors.Is(err, io.EOF):
			return plain.Cut(err.Error(), longestCause)
		case n > 0:
			continue
		case at.Sub(asked) >= atOnce:
			ends = 0
		default:
			if ends++; err == nil {
				ends = 0
			}
			if ends == pulled {
				return "the port has closed: the cable was pulled"
			}
			if !l.wait(breath) {
				return ""
			}
		}
		if !quiet && time.Since(heard) >= l.opt.QuietAfter {
			quiet = true
			l.send(Event{Kind: Quiet, At: time.Now(), Text: fmt.Sprintf("no byte for %g s", l.opt.QuietAfter.Seconds())})
		}
	}
	return ""
}

// handOn sends the lines that a chunk ends; false when Close was called.
func (l *Listener) handOn(chunk []byte, at time.Time) bool {
	for line := range l.split.lines(chunk) {
		kind := Line
		if l.split.first {
			kind = Cut
		} else {
			l.lines.Add(1)
		}
		if !l.send(Event{Kind: kind, At: at, Line: bytes.Clone(line)}) {
			return false
		}
	}
	return true
}

// reopen tries to open the lost port until it succeeds; nil when Close was called.
func (l *Listener) reopen() io.ReadCloser {
	said := ""
	for {
		if !l.wait(backOff[min(l.tries, len(backOff)-1)]) {
			return nil
		}
		l.tries++
		c := l.config
		var err error
		if c.Name, err = l.who.find(l.ports()); err == nil {
			var port io.ReadCloser
			if port, err = l.opt.Open(c); err == nil {
				l.send(Event{Kind: Back, At: time.Now(), Text: c.Name})
				return port
			}
		}
		if text := plain.Cut(err.Error(), longestCause); text != said && !errors.Is(err, fs.ErrNotExist) {
			said = text
			l.send(Event{Kind: Waiting, At: time.Now(), Text: text})
		}
	}
}

// ports lists what is plugged in. Where that fails, the name given is all there is to
// go by.
func (l *Listener) ports() []Info {
	ports, err := l.opt.Ports()
	if err != nil {
		return nil
	}
	return ports
}

// send hands an event on, waiting while there is no room; false when Close was called.
func (l *Listener) send(e Event) bool {
	select {
	case l.events <- e:
		return true
	case <-l.stop:
		return false
	}
}

// wait waits; false when Close was called.
func (l *Listener) wait(d time.Duration) bool {
	select {
	case <-time.After(d):
		return true
	case <-l.stop:
		return false
	}
}

func (l *Listener) stopped() bool {
	select {
	case <-l.stop:
		return true
	default:
		return false
	}
}
