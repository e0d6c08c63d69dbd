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
	ErrNoDepth = errors.New("these lines state no depth, so there is no page in them: take a drop with coldseam drop --port")
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
	record = &response.Record{}
	type timed struct {
		atS float64
		b   []byte
	}
	var first []timed
	n := 0
	take := func(l timed) {
		s, err := d.Read(l.b)
		if err != nil {
			return
		}
		n++
		switch {
		case l.atS >= 0:
			clocked = true
		case s.TimeS.Known:
			l.atS, clocked = s.TimeS.Value, true
		default:
			l.atS = float64(n)
		}
		if s.DepthM.Known && s.TempC.Known {
			record.Add(l.atS, s.DepthM.Value, s.TempC.Value)
		}
	}
	flush := func() error {
		if d.Layout == nil && len(first) > 0 {
			var lines [][]byte
			for _, l := range first {
				lines = append(lines, l.b)
			}
			f := d.Find(lines)
			if !f.Known {
				open := OpenError{Why: f.Why}
				if len(f.Choices) > 0 {
					open.Example = f.Choices[0].String()
				}
				return open
			}
			d.Use(f.Layout)
		}
		for _, l := range first {
			take(l)
		}
		first = nil
		return nil
	}
	err = Lines(in, func(atS float64, b []byte) error {
		if d.Layout != nil {
			take(timed{atS, b})
			return nil
		}
		if first = append(first, timed{atS, append([]byte(nil), b...)}); len(first) == giveUpAfter {
			return flush()
		}
		return nil
	})
	if err == nil {
		err = flush()
	}
	switch {
	case err != nil:
	case d.Layout == nil:
		err = ErrEmpty
	case !d.Layout.StatesDepth() && record.Len() == 0:
		err = ErrNoDepth
	}
	return record, clocked, err
}
