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
	"coldseam/profile/report"
)

// status is one line at the foot of the terminal that is written over. Where there
// is no terminal it is not shown: a log of it would be pages long.
type status struct {
	w     io.Writer
	file  *os.File // the terminal; nil where there is none
	width int      // of what stands there
	last  time.Time
}

func newStatus(w io.Writer) *status {
	s := &status{w: w, file: terminal(w)}
	if gate, ok := w.(*plain.Writer); ok { // which lets no carriage return through: ours is plain already
		s.w = gate.To
	}
	return s
}

// room is how wide a line may be without going on in the next row.
func (s *status) room() int {
	width, _, err := term.GetSize(int(s.file.Fd()))
	if err != nil || width < 1 {
		width = report.Width
	}
	return max(min(width, widest)-2, 1)
}

// show writes over the line, a few times a second at most.
func (s *status) show(text string) {
	if s.file == nil || time.Since(s.last) < 200*time.Millisecond {
		return
	}
	s.last = time.Now()
	text = plain.Line(text)
	room := s.room()
	if r := []rune(text); len(r) > room {
		text = string(r[:room])
	}
	n := utf8.RuneCountInString(text)
	fmt.Fprintf(s.w, "\r%s%s", text, strings.Repeat(" ", max(0, min(s.width, room)-n)))
	s.width = n
}

// clear takes the line away.
func (s *status) clear() {
	if s.width > 0 {
		fmt.Fprintf(s.w, "\r%s\r", strings.Repeat(" ", s.width))
		s.width = 0
	}
}
