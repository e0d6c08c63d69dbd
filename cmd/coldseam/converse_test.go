package main

import (
	"bytes"
	"io"
	"strings"
	"sync"
	"testing"
	"time"

	"coldseam/profile/book"
)

// converse runs the program as a person at a terminal does: waits for what it says,
// then types.
type converse struct {
	t      *testing.T
	in     *io.PipeWriter
	mu     sync.Mutex
	said   bytes.Buffer // standard error
	seen   int          // of it
	out    bytes.Buffer
	status chan int
}

func begin(t *testing.T, args ...string) *converse {
	t.Helper()
	r, w := io.Pipe()
	c := &converse{t: t, in: w, status: make(chan int, 1)}
	p := &program{in: r, stdout: &c.out, err: c, disk: book.System{}, now: fixedNow}
	go func() { c.status <- p.run(append([]string{"coldseam"}, args...)) }()
	t.Cleanup(func() { w.Close() })
	return c
}

// Write takes what is said on standard error.
func (c *converse) Write(b []byte) (int, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.said.Write(b)
}

// everything is all that was said so far, on one line.
func (c *converse) everything() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.said.String()
}

// wait waits for one of some texts, behind what was seen before, and gives its index.
func (c *converse) wait(texts ...string) int {
	c.t.Helper()
	for range 6000 {
		all := c.everything()
		best, which := -1, 0
		for i, text := range texts {
			if at := strings.Index(all[c.seen:], text); at >= 0 && (best < 0 || at < best) {
				best, which = at, i
			}
		}
		if best >= 0 {
			c.seen += best + len(texts[which])
			return which
		}
		select {
		case status := <-c.status:
			c.status <- status
			if all == c.everything() {
				c.t.Fatalf("ended with status %d without %q:\n%s", status, texts, all)
			}
		case <-time.After(10 * time.Millisecond):
		}
	}
	c.t.Fatalf("a minute without %q:\n%s", texts, c.everything())
	return 0
}

// typeLine types a line.
func (c *converse) typeLine(text string) {
	c.t.Helper()
	done := make(chan error, 1)
	go func() { _, err := io.WriteString(c.in, text+"\n"); done <- err }()
	select {
	case err := <-done:
		if err != nil {
			c.t.Fatal(err)
		}
	case <-time.After(time.Minute):
		c.t.Fatalf("nobody reads %q:\n%s", text, c.everything())
	}
}

// end waits for the end, and gives the status and what was printed.
func (c *converse) end() (int, string) {
	c.t.Helper()
	select {
	case status := <-c.status:
		return status, c.out.String()
	case <-time.After(time.Minute):
		c.t.Fatalf("does not end:\n%s", c.everything())
		return 0, ""
	}
}
