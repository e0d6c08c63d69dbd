package main

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"

	"coldseam/profile/expect"
	"coldseam/profile/plain"
)

// TestStatusLine: the line at the foot is written over, in whatever wide a terminal says
// it is, never further than its last column but one; what a shorter one leaves of a
// longer is blanked; where there is no terminal nothing is shown.
func TestStatusLine(t *testing.T) {
	master, slave := expect.Pty(t)
	defer master.Close()
	defer slave.Close()
	shown := func(write func()) string {
		t.Helper()
		write()
		slave.WriteString("#")
		var got strings.Builder
		for b := make([]byte, 1); b[0] != '#'; got.Write(b) {
			if _, err := master.Read(b); err != nil {
				t.Fatal(err)
			}
		}
		return strings.TrimSuffix(got.String(), "#")
	}
	long := strings.Repeat("0123456789", 30)
	for _, c := range []struct {
		columns uint16
		room    int
	}{{0, 78}, {1, 1}, {2, 1}, {3, 1}, {4, 2}, {40, 38}, {80, 78}, {200, 98}, {65535, 98}} {
		if err := pty.Setsize(slave, &pty.Winsize{Rows: c.columns, Cols: c.columns}); err != nil {
			t.Fatal(err)
		}
		s := newStatus(&plain.Writer{To: slave})
		if got, want := shown(func() { s.show(long) }), "\r"+long[:c.room]; got != want {
			t.Errorf("%d columns: %q, want %q", c.columns, got, want)
		}
		if got := shown(func() { s.show("too soon") }); got != "" {
			t.Errorf("%d columns: a second one at once: %q", c.columns, got)
		}
		s.last = time.Now().Add(-time.Second)
		if got, want := shown(func() { s.show("\x1b") }), "\r\ufffd"+strings.Repeat(" ", c.room-1); got != want {
			t.Errorf("%d columns: a shorter one: %q, want %q", c.columns, got, want)
		}
		if got := shown(s.clear); got != "\r \r" {
			t.Errorf("%d columns: taken away with %q", c.columns, got)
		}
		if got := shown(s.clear); got != "" {
			t.Errorf("%d columns: taken away twice: %q", c.columns, got)
		}
	}
	var file bytes.Buffer
	s := newStatus(&plain.Writer{To: &file})
	s.show("no terminal")
	s.clear()
	if file.Len() > 0 {
		t.Errorf("without a terminal there is %q", file.String())
	}
}
