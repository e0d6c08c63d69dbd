package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"
	"unicode/utf8"

	"golang.org/x/term"

	"coldseam/profile/plain"
	"coldseam/profile/say"
)

// status is one line at the foot of the terminal that is written over. Where there
// is no terminal it is not shown: a log of it would be pages long.
type status struct {
	w     io.Writer
	on    bool
	width int // of what stands there
	last  time.Time
}

func newStatus(w io.Writer) *status {
	if gate, ok := w.(*plain.Writer); ok { // which lets no carriage return through: ours is plain already
		w = gate.To
	}
	f, ok := w.(*os.File)
	return &status{w: w, on: ok && term.IsTerminal(int(f.Fd()))}
}

// show writes over the line, a few times a second at most.
func (s *status) show(text string) {
	if !s.on || time.Since(s.last) < 200*time.Millisecond {
		return
	}
	s.last = time.Now()
	text = plain.Line(text)
	if r := []rune(text); len(r) > say.Width-2 {
		text = string(r[:say.Width-2])
	}
	n := utf8.RuneCountInString(text)
	fmt.Fprintf(s.w, "\r%s%s", text, strings.Repeat(" ", max(0, s.width-n)))
	s.width = n
}

// clear takes the line away.
func (s *status) clear() {
	if s.width > 0 {
		fmt.Fprintf(s.w, "\r%s\r", strings.Repeat(" ", s.width))
		s.width = 0
	}
}
