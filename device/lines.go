package device

import (
	"bytes"
	"iter"
	"sync/atomic"
)

// MaxLine is the longest line in bytes, without its end, that is handed on.
const MaxLine = 1024

// splitter makes lines of bytes as they come. A line ends with \n, \r or both; empty
// lines are passed over, so that it does not matter which. Its memory is its own size,
// however long a line goes on.
//
// The zero value stands where a port was just opened: somewhere within a line, which is
// thrown away. Every run of bytes that is not handed on is counted once.
type splitter struct {
	whole   bool // a line end was seen: what follows is a line from its start
	n       int  // bytes of the line so far; MaxLine+1 stands for more than MaxLine
	first   bool // the line given last was that within which the port was opened
	cutToo  bool // such a line is given too
	buf     [MaxLine]byte
	torn    atomic.Int64
	tooLong atomic.Int64
}

// lines gives the lines that chunk ends, without their ends. A line holds until the
// next is asked for. The rest is kept for the next chunk, unless the loop is left early.
func (s *splitter) lines(chunk []byte) iter.Seq[[]byte] {
	return func(yield func([]byte) bool) {
		for rest := chunk; ; {
			end := bytes.IndexAny(rest, "\r\n")
			if end < 0 {
				s.keep(rest)
				return
			}
			s.keep(rest[:end])
			rest = rest[end+1:]
			if line := s.end(); line != nil && !yield(line) {
				return
			}
		}
	}
}

// keep adds bytes to the line.
func (s *splitter) keep(b []byte) {
	switch {
	case s.n > MaxLine: // counted already
	case s.n+len(b) > MaxLine:
		s.n = MaxLine + 1
		s.tooLong.Add(1)
	default:
		s.n += copy(s.buf[s.n:], b)
	}
}

// end ends the line, and gives it if it is not empty, not too long and whole, or cut and
// wanted.
func (s *splitter) end() []byte {
	n, whole := s.n, s.whole
	s.n, s.whole, s.first = 0, true, !s.whole
	switch {
	case n == 0 || n > MaxLine:
		return nil
	case !whole:
		s.torn.Add(1)
		if !s.cutToo {
			return nil
		}
	}
	return s.buf[:n]
}

// cut is for a cable that was pulled: what there is of the line is thrown away, and so
// is what comes next up to a line end.
func (s *splitter) cut() {
	if 0 < s.n && s.n <= MaxLine {
		s.torn.Add(1)
	}
	s.n, s.whole = 0, false
}
