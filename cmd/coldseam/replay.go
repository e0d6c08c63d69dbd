package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"

	"github.com/urfave/cli/v2"

	"coldseam/device/line"
	"coldseam/profile/book"
	"coldseam/profile/settings"
)

func (p *program) replayCommand() *cli.Command {
	return &cli.Command{
		Name:      "replay",
		Usage:     "how each line of a recording is read, or a page of it",
		ArgsUsage: "[flags] [FILE]   (no file, or -, is standard input)",
		Flags: append(append(lineFlags(), altitudeFlag()),
			&cli.BoolFlag{Name: "page", Usage: "print a page of readings, for coldseam plan -"},
			&cli.BoolFlag{Name: "count", Usage: "print only how many lines were read and refused"},
			&cli.StringFlag{Name: "units", Usage: "units of the page, \"ft F\" or \"m C\""},
			&cli.StringFlag{Name: "time-constant", Usage: "of the probe, 12 s: takes its lag out of a page"},
		),
		Action: p.replay,
	}
}

func (p *program) replay(c *cli.Context) error {
	if c.Args().Len() > 1 {
		return refuse("probe replay takes one file")
	}
	if c.Bool("page") && c.Bool("count") {
		return refuse("--page and --count exclude each other")
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	l, o, err := decoding(c, set)
	if err != nil {
		return err
	}
	o.Vouched = true // somebody recorded it
	k := newDecoder(l, o)
	in, name := p.in, "standard input"
	if n := c.Args().First(); n != "" && n != "-" {
		f, err := open(n)
		if err != nil {
			return err
		}
		defer f.Close()
		in, name = f, n
	}
	if c.Bool("page") {
		return p.replayPage(c, set, &k, in, name)
	}
	out := bufio.NewWriterSize(p.stdout, 1<<16)
	e := &explainer{out: out, err: p.err, k: &k}
	if c.Bool("count") {
		e.out = nil
	}
	if err := eachLine(in, func(_ float64, b []byte) error { e.line(b); return nil }); err != nil {
		return refuse("%s: cannot be read: %s", name, cause(err))
	}
	e.end()
	if err := out.Flush(); err != nil {
		return err
	}
	fmt.Fprintf(p.err, "%s.\n", k.counted())
	return nil
}

// eachLine gives the lines of a recording one by one, those of a probe's log as the
// probe wrote them, with their time in seconds or -1. A line is cut at what a line of a
// probe may have; the bytes are valid during the call only.
func eachLine(in io.Reader, each func(atS float64, b []byte) error) error {
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

// findLayout reads the first lines of a recording and says what they hold.
func (k *decoder) findLayout(first [][]byte, name string) error {
	f := k.find(first)
	if !f.Known {
		hint := ""
		if len(f.Choices) > 0 {
			hint = fmt.Sprintf(", e.g. --layout %q", f.Choices[0].String())
		}
		return refuse("%s: what the lines hold is open (%s): say it with --layout%s", name, f.Why, hint)
	}
	k.use(f.Layout)
	return nil
}
