package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"coldseam/device"
	"coldseam/device/probe"
	"coldseam/device/rehearse"
	"coldseam/profile/notebook"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) rehearseCommand() *cli.Command {
	return &cli.Command{
		Name:      "rehearse",
		Usage:     "the whole drop with an invented probe and lake",
		ArgsUsage: "[flags]",
		Description: `A simulated probe is lowered through an invented lake, so that you can
learn the job without hardware. The lake's clock runs fast; readings settle
slowly, as real ones do. What is saved goes to a folder of its own.`,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "lake", Value: "alder-kettle", Usage: "which lake: " + strings.Join(rehearse.Names(), ", ")},
			&cli.BoolFlag{Name: "depth", Usage: "the probe states its depth too"},
			&cli.StringFlag{Name: "faults", Usage: "what goes wrong: boot, garbage, torn, sentinel, quiet, pulled, or all"},
			&cli.Float64Flag{Name: "speed", Value: 10, Usage: "how many times as fast as ours its clock runs, 1-100"},
			&cli.BoolFlag{Name: "moving", Usage: "lower the probe without stopping (with --depth)"},
			&cli.StringFlag{Name: "units", Value: "ft F", Usage: "your units, \"ft F\" or \"m C\""},
			&cli.StringFlag{Name: "for", Usage: "the fish"},
			bookFlag(),
			fullFlag(),
			&cli.BoolFlag{Name: "json", Usage: "print the plan as JSON for scripts"},
		},
		Action: p.rehearse,
	}
}

func (p *program) rehearse(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("probe rehearse takes nothing after it")
	}
	o, err := rehearsalOf(c)
	if err != nil {
		return err
	}
	if u, err := unit.ParseSystem(c.String("units")); err != nil || u.Depth == unit.NoLength || u.Temp == unit.NoTemperature {
		return refuse("--units names both units, \"ft F\" or \"m C\"")
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	set.Headers = nil // the lake's thermometer and line are not the angler's
	if c.String("book") == "" {
		if set.Book, err = os.MkdirTemp("", "coldseam-rehearsal-"); err != nil {
			return fmt.Errorf("%s: no folder can be made there for the rehearsal: %s; name one with --book", os.TempDir(), cause(err))
		}
	}
	flags := []notebook.Header{
		{Key: "units", Value: c.String("units"), From: "--units"},
		{Key: "water", Value: o.Lake.Name(), From: "--lake"},
		{Key: "spot", Value: "a rehearsal", From: "--lake"},
		{Key: "bottom", Value: fmt.Sprintf("%.2f m", o.Lake.BottomM()), From: "--lake"},
	}
	if c.IsSet("for") {
		if err := notebook.Check("for", c.String("for")); err != nil {
			return refuse("--for: %w", err)
		}
		flags = append(flags, notebook.Header{Key: "for", Value: c.String("for"), From: "--for"})
	}
	d, stop, err := p.dropping(c, set, flags)
	if err != nil {
		return err
	}
	defer stop()
	d.say(fmt.Sprintf("A rehearsal: %s and the probe are made up, and their clock runs %g times as fast.", o.Lake.Name(), c.Float64("speed")))
	sim := rehearse.New(o)
	d.lower = func(toM float64) string {
		sim.Lower(toM)
		if c.Bool("moving") {
			return "(Rehearsal: the line runs out by itself, and in again.)"
		}
		return "(Rehearsal: the line runs out by itself.)"
	}
	if d.probe, err = probe.Open(probe.Options{
		Port: device.Config{Name: "the rehearsal's probe"},
		Listen: device.Options{
			Now:        sim.Heard,
			QuietAfter: time.Duration(float64(quietAfter) / o.Speed),
			Open:       func(device.Config) (io.ReadCloser, error) { return sim.Open() },
			Ports:      func() ([]device.Info, error) { return nil, nil },
		},
		Now: sim.Now,
	}); err != nil {
		return err
	}
	return p.takeDrop(c, d)
}

// quietAfter is how long a silence is, on the lake's clock, before it is told.
const quietAfter = 5 * time.Second

// rehearsalOf reads the flags that set the rehearsal up.
func rehearsalOf(c *cli.Context) (o rehearse.Options, err error) {
	if o.Lake, err = rehearse.Named(c.String("lake")); err != nil {
		return o, refuse("--lake: %w", err)
	}
	if o.Faults, err = rehearse.ParseFaults(c.String("faults")); err != nil {
		return o, refuse("--faults: %w", err)
	}
	o.Speed = c.Float64("speed")
	if !(o.Speed >= 1 && o.Speed <= 100) {
		return o, refuse("--speed: %v is not from 1 to 100", o.Speed)
	}
	o.StatesDepth, o.HaulIn, o.Seed = c.Bool("depth") || c.Bool("moving"), c.Bool("moving"), 1
	return o, nil
}
