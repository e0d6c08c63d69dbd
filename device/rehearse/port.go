package rehearse

import (
	"io"
	"os"
	"time"
)

const (
	poll      = 100 * time.Millisecond // how long a Read waits for a byte
	breath    = time.Millisecond       // the shortest wait: a fast lake must not spin
	pieceMost = 5                      // bytes of one Read: lines come in pieces
	keptMost  = 4096                   // bytes kept for a reader
)

// port is one opening of the probe. The probe's lock guards it.
type port struct {
	probe   *Probe
	waiting []byte
	said    []mark // of what waits, in order
	left    int    // lines until the cable is pulled, where that is a fault
	pulled  bool   // and so the port is broken
	told    bool   // a Read said so
	shut    bool
	closed  chan struct{} // wakes a waiting Read
}

// mark is when some bytes were said, on the lake's clock since start.
type mark struct {
	bytes int
	at    time.Duration
}

// put keeps bytes for the reader, or loses them all: half a line is a fault of its own.
func (o *port) put(text string) {
	if len(o.waiting)+len(text) <= keptMost {
		o.waiting = append(o.waiting, text...)
		o.said = append(o.said, mark{len(text), o.probe.at})
	}
}

// read forgets n bytes that were read.
func (o *port) read(n int) {
	if n > 0 {
		o.probe.heard = o.said[0].at
	}
	o.waiting = o.waiting[n:]
	for n > 0 {
		now := min(n, o.said[0].bytes)
		n -= now
		if o.said[0].bytes -= now; o.said[0].bytes == 0 {
			o.said = o.said[1:]
		}
	}
}

func (o *port) Read(b []byte) (int, error) {
	until := time.Now().Add(poll)
	for {
		n, wait, err := o.take(b)
		if n > 0 || err != nil || len(b) == 0 {
			return n, err
		}
		wait = min(wait, time.Until(until))
		if wait <= 0 {
			return 0, io.EOF
		}
		select {
		case <-time.After(max(wait, breath)):
		case <-o.closed:
		}
	}
}

// take gives what came, at once, or else how long it is to the next line.
func (o *port) take(b []byte) (n int, wait time.Duration, err error) {
	p := o.probe
	p.mu.Lock()
	defer p.mu.Unlock()
	now := p.advance()
	switch {
	case o.shut:
		return 0, 0, os.ErrClosed
	case o.pulled && o.told:
		return 0, 0, io.EOF
	case o.pulled:
		o.told = true
		return 0, 0, ErrPulled
	}
	n = copy(b[:min(len(b), pieceMost)], o.waiting)
	o.read(n)
	return n, time.Duration(float64(p.due()-now)/p.o.Speed) + 1, nil
}

func (o *port) Write(b []byte) (int, error) { return len(b), nil }

func (o *port) Close() error {
	p := o.probe
	p.mu.Lock()
	defer p.mu.Unlock()
	if o.shut {
		return os.ErrClosed
	}
	p.advance()
	o.shut = true
	close(o.closed)
	if p.port == o {
		p.port = nil
	}
	return nil
}
