package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/urfave/cli/v2"

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
		Description: `A simulated probe is lowered through an invented lake, so that the job can be
learned without hardware. Its lake's clock runs fast; its readings settle
slowly, like real ones. What is saved goes to a folder of its own.`,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "lake", Value: "alder-kettle", Usage: "which lake: " + strings.Join(rehearse.Names(), ", ")},
			&cli.BoolFlag{Name: "depth", Usage: "the probe states its depth too"},
			&cli.StringFlag{Name: "faults", Usage: "what goes wrong: boot, garbage, torn, sentinel, quiet, pulled, or all"},
			&cli.Float64Flag{Name: "speed", Value: 10, Usage: "how many times as fast as ours its clock runs, 1-100"},
			&cli.BoolFlag{Name: "moving", Usage: "lower the probe without stopping (with --depth)"},
			&cli.StringFlag{Name: "units", Value: "ft F", Usage: "your units, \"ft F\" or \"m C\""},
			&cli.StringFlag{Name: "for", Usage: "the fish"},
			bookFlag(),
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
	shelf, unlock, err := p.openBook(c, set)
	if err != nil {
		return err
	}
	t, stop := p.talk()
	defer stop()
	d := p.dropping(t, set, shelf, unlock)
	defer d.unlock()
	d.say("A rehearsal: %s and the probe are made up, and their clock runs %g times as fast.", o.Lake.Name(), c.Float64("speed"))
	k, err := plugInRehearsal(o)
	if err != nil {
		return err
	}
	defer k.Close()
	return p.takeDrop(c, d, shelf, flags, k)
}

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
	o.StatesDepth, o.Seed = c.Bool("depth") || c.Bool("moving"), 1
	return o, nil
}
