package main

import (
	"io"
	"os"

	"golang.org/x/term"

	"coldseam/profile/plain"
	"coldseam/profile/report"
)

// terminal is the terminal that a writer leads to; nil where it leads elsewhere.
func terminal(w io.Writer) *os.File {
	switch to := w.(type) {
	case *plain.Writer:
		return terminal(to.To)
	case output:
		return terminal(to.Writer)
	case *os.File:
		if term.IsTerminal(int(to.Fd())) {
			return to
		}
	}
	return nil
}

// Columns that text is fitted to.
const (
	narrowest = 40
	widest    = 100
)

// columns is how wide the terminal is that a writer leads to, within limits; report.Width
// where it leads to none. rows is how high it is, 24 where that is not known.
func columns(w io.Writer) (columns, rows int) {
	columns, rows = report.Width, 24
	if f := terminal(w); f != nil {
		if c, r, err := term.GetSize(int(f.Fd())); err == nil && c > 0 && r > 0 {
			columns, rows = min(max(c, narrowest), widest), r
		}
	}
	return columns, rows
}

// width is how wide what is printed may be.
func (p *program) width() int {
	w, _ := columns(p.stdout)
	return w
}
