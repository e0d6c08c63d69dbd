package probe

import (
	"bufio"
	"errors"
	"fmt"
	"io"

	"coldseam/device/line"
	"coldseam/profile/book"
	"coldseam/profile/response"
)

// Lines gives the lines of a recording one by one, those of a drop's log as the probe
// wrote them, with their time in seconds or -1. A line is cut at what a line of a probe
// may have; the bytes are valid during the call only.
func Lines(in io.Reader, each func(atS float64, b []byte) error) error {
	r := bufio.NewReaderSize(in, 1<<16)
	buf := make([]byte, 0, 8*line.MaxBytes)
	for {
		part, err := r.ReadSlice('\n')
		buf = append(buf[:0], part...)
		for errors.Is(err, bufio.ErrBufferFull) {
			part, err = r.ReadSlice('\n')
			if len(buf) < 4*line.MaxBytes {
				buf = append(buf, part[:min(len(part), 4*line.MaxBytes)]...)
			}
		}
		if len(buf) > 0 {
			b := buf
			for len(b) > 0 && (b[len(b)-1] == '\n' || b[len(b)-1] == '\r') {
				b = b[:len(b)-1]
			}
			atS := -1.0
			if since, raw, ok := book.Logged(b); ok {
				atS, b = since, raw
			}
			if err := each(atS, b); err != nil {
				return err
			}
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// Errors of a recording that gives no cast.
var (
	ErrEmpty   = errors.New("there is no line in it")
	ErrNoDepth = errors.New("these lines hold no depth, so no page can be made of them: take a drop with coldseam drop --port")
)

// OpenError says that it is open what the lines of a recording hold.
type OpenError struct{ Why, Example string }

func (e OpenError) Error() string {
	hint := ""
	if e.Example != "" {
		hint = fmt.Sprintf(", e.g. --layout %q", e.Example)
	}
	return "what the lines hold is open (" + e.Why + "): say it with --layout" + hint
}

// Cast reads a recording as the cast of a probe that was lowered without a stop. clocked
// reports whether its lines have a time: without it no lag can be told. The error is
// ErrEmpty, ErrNoDepth, an OpenError, or that of in.
func (d *Decoder) Cast(in io.Reader) (record *response.Record, clocked bool, err error) {
	r := recording{d: d}
	err = Lines(in, r.line)
	if err == nil {
		err = r.learn()
	}
	switch {
	case err != nil:
	case d.Layout == nil:
		err = ErrEmpty
	case !d.Layout.StatesDepth() && r.record.Len() == 0:
		err = ErrNoDepth
	}
	return &r.record, r.clocked, err
}

// recording is a cast that is read from a recording.
type recording struct {
	d       *Decoder
	record  response.Record
	clocked bool
	read    int // lines
	first   [][]byte
	firstS  []float64 // their times
}

// line takes in a line; the first ones wait until it is known what they hold.
func (r *recording) line(atS float64, b []byte) error {
	if r.d.Layout != nil {
		r.add(atS, b)
		return nil
	}
	r.first, r.firstS = append(r.first, append([]byte(nil), b...)), append(r.firstS, atS)
	if len(r.first) < giveUpAfter {
		return nil
	}
	return r.learn()
}

// learn finds what the first lines hold, and takes them in.
func (r *recording) learn() error {
	if len(r.first) == 0 {
		return nil
	}
	f := r.d.Find(r.first)
	if !f.Known {
		open := OpenError{Why: f.Why}
		if len(f.Choices) > 0 {
			open.Example = f.Choices[0].String()
		}
		return open
	}
	r.d.Use(f.Layout)
	for i, b := range r.first {
		r.add(r.firstS[i], b)
	}
	r.first = nil
	return nil
}

// add takes in a line whose layout is known. One without a time has the number of the line
// for it.
func (r *recording) add(atS float64, b []byte) {
	s, err := r.d.Read(b)
	if err != nil {
		return
	}
	r.read++
	switch {
	case atS >= 0:
		r.clocked = true
	case s.TimeS.Known:
		atS, r.clocked = s.TimeS.Value, true
	default:
		atS = float64(r.read)
	}
	if s.DepthM.Known && s.TempC.Known {
		r.record.Add(atS, s.DepthM.Value, s.TempC.Value)
	}
}
