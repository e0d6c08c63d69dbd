package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"

	"github.com/urfave/cli/v2"

	"coldseam/device/probe"
	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/session"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
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
			&cli.StringFlag{Name: "time-constant", Usage: "of the probe, 12 s: corrects its lag in a page"},
		),
		Action: p.replay,
	}
}

func (p *program) replay(c *cli.Context) error {
	if c.Args().Len() > 1 {
		return refuse("probe replay takes one file")
	}
	if c.Bool("page") && c.Bool("count") {
		return refuse("use --page or --count, not both")
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
	k := probe.NewDecoder(l, o)
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
		return p.replayPage(c, set, k, in, name)
	}
	out := bufio.NewWriterSize(p.stdout, 1<<16)
	e := &explainer{out: out, err: p.err, k: k}
	if c.Bool("count") {
		e.out = nil
	}
	if err := probe.Lines(in, func(_ float64, b []byte) error { e.line(b); return nil }); err != nil {
		return refuse("%s: cannot be read: %s", name, cause(err))
	}
	e.end()
	if err := out.Flush(); err != nil {
		return err
	}
	fmt.Fprintf(p.err, "%s.\n", k.Counted())
	return nil
}

// replayPage makes a page of a recording.
func (p *program) replayPage(c *cli.Context, set settings.Settings, k *probe.Decoder, in io.Reader, name string) error {
	u, tauS, err := pageOptions(c, set)
	if err != nil {
		return err
	}
	record, clocked, err := k.Cast(in)
	switch {
	case errors.Is(err, probe.ErrEmpty), errors.Is(err, probe.ErrNoDepth), errors.As(err, new(probe.OpenError)):
		return refuse("%s: %w", name, err)
	case err != nil:
		return refuse("%s: cannot be read: %s", name, cause(err))
	}
	if !clocked { // no lag can be told without the time
		tauS = 0
	}
	readings, trip, err := record.Readings(u, tauS)
	if err != nil {
		return refuse("%s: %w", name, err)
	}
	drop := profile.Drop{Units: u, Marks: profile.MarksAtWater, LineAngle: profile.Some(0), Readings: readings, Notes: []string{"read from a probe's record: " + session.CastTold(record, trip)}}
	p.out.WriteString(notebook.Write(drop))
	fmt.Fprintf(p.err, "%s.\n", k.Counted())
	return nil
}

// pageOptions are the units of a page and the probe's time constant, s.
func pageOptions(c *cli.Context, set settings.Settings) (u unit.System, tauS float64, err error) {
	u = unit.System{Depth: unit.Metre, Temp: unit.Celsius}
	for _, h := range set.Headers {
		if h.Key == "units" {
			if u, err = unit.ParseSystem(h.Value); err != nil {
				return u, 0, refused{err}
			}
		}
	}
	if c.IsSet("units") {
		if u, err = unit.ParseSystem(c.String("units")); err != nil {
			return u, 0, refuse("--units: %w", err)
		}
	}
	if u.Depth == unit.NoLength || u.Temp == unit.NoTemperature {
		return u, 0, refuse("--units names both units, \"ft F\" or \"m C\"")
	}
	if text := c.String("time-constant"); text != "" {
		if tauS, err = unit.ParseDuration(text); err != nil {
			return u, 0, refuse("--time-constant: %w", err)
		}
		if !(tauS > 0 && tauS <= 600) {
			return u, 0, refuse("--time-constant: %q is not a likely value", text)
		}
	}
	return u, tauS, nil
}
