package line

import (
	"errors"

	"coldseam/profile/plain"
)

// Code says why a line was refused, for counting and for choosing what to ask.
type Code uint8

// The reasons for a refusal.
const (
	Fine        Code = iota
	TooLong          // longer than MaxBytes
	Garbled          // bytes that are not text: a wrong baud rate, noise
	Blank            // an empty line, or a comment
	BadChecksum      // a checksum that does not fit the sentence
	Other            // whole, but about something else
	BadForm          // fields missing or in excess
	Empty            // the fields that matter are empty
	BadNumber        // a field that is not a number
	BadUnit          // a unit that is unknown or out of place
	Disagree         // the same depth in three units that contradict each other
	OutOfRange       // a value no lake can have
	Sentinel         // a number or word that stands for a fault
	AskUnit          // the unit is not stated: ask
	AskWhich         // more than one meaning is possible: ask
	Waiting          // one part of a block of lines: more of it to come
	Header           // names of columns
)

// Last is the last of the codes.
const Last = Code(len(codeNames) - 1)

var codeNames = [...]string{"fine", "too long", "garbled", "blank", "bad checksum", "other",
	"bad form", "empty", "bad number", "bad unit", "disagree", "out of range", "sentinel",
	"ask unit", "ask which", "waiting", "header"}

// String names the code.
func (c Code) String() string {
	if int(c) < len(codeNames) {
		return codeNames[c]
	}
	return "?"
}

// Refusal is the error of a line that says nothing usable. Text is plain and
// of at most a few hundred characters, whatever the line held.
type Refusal struct {
	Code Code
	Text string
}

// Error gives the text.
func (r *Refusal) Error() string { return r.Text }

// CodeOf is the code of an error of this package, Fine for nil and Other for an
// error from elsewhere.
func CodeOf(err error) Code {
	if err == nil {
		return Fine
	}
	var r *Refusal
	if errors.As(err, &r) {
		return r.Code
	}
	return Other
}

func refuse(c Code, text string) error { return &Refusal{c, text} }

// Shown quotes bytes of a line for a message: at most 40 of its characters.
func Shown(b []byte) string { return plain.Quote(string(b), 40) }
