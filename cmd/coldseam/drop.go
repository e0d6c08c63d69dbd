package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/settings"
	"coldseam/profile/taking"
)

func (p *program) dropCommand() *cli.Command {
	return &cli.Command{
		Name:      "drop",
		Usage:     "take a drop at anchor: where to read, each saved, then the plan",
		ArgsUsage: "[flags]",
		Description: `It asks for one depth after the other. Type the temperature there and Enter, or
a depth of your own and its temperature: 12 68. With --port the probe is read
instead. Every reading is on the disk before the next one is asked for, and a
drop that was cut off is offered again. undo, skip, stop and help can be typed
at any time.`,
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "json", Usage: "print the plan as JSON for scripts"},
			&cli.BoolFlag{Name: "moving", Category: probeFlagsTitle, Usage: "lower the probe without a stop; it states its depth"},
			bookFlag(),
		}, append(append(portFlags(), lineFlags()...), headerFlags()...)...),
		Action: p.drop,
	}
}

func bookFlag() cli.Flag {
	return &cli.StringFlag{Name: "book", Usage: "the folder where drops are saved"}
}

// dropping is one run of the command.
type dropping struct {
	*talk
	set     settings.Settings
	fish    fish.Fish
	take    *taking.Taking
	disk    book.Disk
	unlocks []func() // of the books it was saved in
	copied  string   // what was last shown to be copied down
}

func (p *program) drop(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("drop reads no file; a page that is already written goes to: coldseam plan %s", c.Args().First())
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	flags, err := headers(c, set)
	if err != nil {
		return err
	}
	shelf, unlock, err := p.openBook(c, set)
	if err != nil {
		return err
	}
	t, stop := p.talk()
	defer stop()
	d := p.dropping(t, set, shelf, unlock)
	defer d.unlock()
	d.say("%s", report.AtAnchor)
	var probe *cable
	if probe, err = plugInIfWanted(c, set); err != nil && (c.IsSet("port") || errors.As(err, new(refused))) {
		return err
	} else if err != nil { // the settings' probe stayed at home
		d.say("No probe: %s. Type the readings instead.", plain.Line(oneLine(err)))
	}
	if probe != nil {
		defer probe.Close()
	}
	return p.takeDrop(c, d, shelf, flags, probe)
}

// takeDrop takes a drop from its beginning to the plan; probe is nil for the keyboard.
func (p *program) takeDrop(c *cli.Context, d *dropping, shelf *book.Book, flags []notebook.Header, probe *cable) error {
	err := d.begin(shelf, flags, p.now())
	switch {
	case d.cut.Load():
		return d.interrupted()
	case err != nil:
		return d.lost(err)
	case probe == nil:
		err = d.typed()
	default:
		err = d.withProbe(probe, c.Bool("moving"))
	}
	if err != nil {
		return d.lost(err)
	}
	if d.cut.Load() {
		return d.interrupted()
	}
	return p.endDrop(c, d)
}

// interrupted is the error of a drop that Ctrl-C cut off: it can be gone on with.
func (d *dropping) interrupted() error {
	if d.take == nil || d.take.Saved == nil {
		return errors.New("interrupted before the first reading: nothing was saved")
	}
	return fmt.Errorf("interrupted: %s saved in %s; coldseam drop goes on with it", counted(len(d.take.Drop().Readings), "reading"), d.take.Saved.Path)
}

// plugInIfWanted opens the probe's port where a flag or the settings name one; nil is
// the keyboard.
func plugInIfWanted(c *cli.Context, set settings.Settings) (*cable, error) {
	l, o, err := decoding(c, set)
	if err != nil {
		return nil, err
	}
	if c.String("port") == "" && set.Probe.Port == "" {
		for _, name := range []string{"baud", "data-bits", "parity", "layout", "air", "thermistor", "moving"} {
			if c.IsSet(name) {
				return nil, refuse("--%s is about a probe: name its port with --port", name)
			}
		}
		return nil, nil
	}
	config, err := portOf(c, set)
	if err != nil {
		return nil, err
	}
	return plugIn(config, l, o)
}

// withProbe takes readings from a probe; from the keyboard, where its lines are not
// waited for.
func (d *dropping) withProbe(c *cable, moving bool) error {
	switch c.learn(d.talk) {
	case stopped:
		return nil
	case byHand:
		return d.typed()
	}
	if moving && c.depths {
		return d.moving(c)
	}
	if moving {
		d.say("A probe that is lowered without stopping must state its depth, and this one does not: hold it at one depth after the other instead.")
	}
	return d.probed(c)
}

// note takes a header into the drop.
func (d *dropping) note(h notebook.Header) error {
	now := d.take.Drop()
	if err := notebook.Set(&now, h.Key, h.Value); err != nil {
		return err
	}
	return d.take.Note(now)
}

// endDrop saves the drop as ended and gives the plan.
func (p *program) endDrop(c *cli.Context, d *dropping) error {
	if err := d.take.End(); err != nil {
		return d.lost(err)
	}
	drop := d.take.Drop()
	if len(drop.Readings) == 0 {
		return errors.New("no reading was taken, so there is no plan and nothing was saved")
	}
	d.say("Saved: %s", plain.Line(d.take.Saved.Path))
	fmt.Fprintln(d.err)
	j, err := makeJob(notebook.Sheet{Name: d.take.Saved.Path, Drop: drop}, d.set, d.take.Saved.Path)
	if err != nil {
		return err
	}
	return p.answer(j, "", c.Bool("json"))
}

// counted is a number of things in words.
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// bare gives a typed line in small letters, without the blanks around it.
func bare(text string) string { return strings.ToLower(strings.TrimSpace(text)) }
