package device

import (
	"fmt"
	"time"
)

// Kind is what an Event says.
type Kind uint8

// The kinds of event.
const (
	_       Kind = iota
	Line         // the probe wrote a whole line
	Quiet        // no byte came for Options.QuietAfter; said once in a silence
	Lost         // the cable was pulled, or the port failed
	Waiting      // the port is lost, and something is there that cannot be used; said when the reason is a new one
	Back         // the port is open again
	Cut          // a line whose beginning may be missing, where Options.Cut asks for it
)

// String names the kind in plain words.
func (k Kind) String() string {
	switch k {
	case Line:
		return "line"
	case Quiet:
		return "quiet"
	case Lost:
		return "lost"
	case Waiting:
		return "waiting"
	case Back:
		return "back"
	case Cut:
		return "cut"
	}
	return fmt.Sprintf("Kind(%d)", uint8(k))
}

// Event is one thing that happened to the port.
type Event struct {
	Kind Kind

	// At is when it was noticed: for a line, when the read returned that brought its
	// END. It carries Go's monotonic clock, so the time between two events is right
	// whatever is done to the clock on the wall. Lines that waited for a slow consumer
	// in the system's buffer are stamped late.
	At time.Time

	Line []byte // of Line and Cut, without its end; up to MaxLine bytes as they came, nothing cleaned
	Text string // of Quiet, Lost and Waiting the reason, of Back the name of the port; printable
}

// Counts is what a Listener has seen so far.
type Counts struct {
	Lines   int // whole ones
	Torn    int // cut at the start, as the port was opened within it, or at the end, as the cable was pulled
	TooLong int // more than MaxLine bytes without a line end
	Lost    int // times the port was lost
}
