package main

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/say"
	"coldseam/profile/settings"
	"coldseam/profile/taking"
	"coldseam/profile/unit"
)

func (p *program) dropCommand() *cli.Command {
	return &cli.Command{
		Name:  "drop",
		Usage: "take a drop at anchor: says where to read, saves every reading, ends with the plan",
		Description: `It asks for one depth after the other. Type the temperature there and Enter, or
a depth of your own and its temperature: 12 68. With --port the probe is read
instead. Every reading is on the disk before the next one is asked for, and a
drop that was cut off is offered again. undo, skip, stop and help can be typed
at any time.`,
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "json", Usage: "print the plan as JSON for scripts"},
			&cli.BoolFlag{Name: "moving", Category: probeFlagsTitle, Usage: "the probe states its depth and is lowered without stopping"},
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
	set  settings.Settings
	fish fish.Fish
	take *taking.Taking
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
	defer unlock()
	t, stop := p.talk()
	defer stop()
	d := &dropping{talk: t, set: set}
	d.say("%s", say.AtAnchor)
	var probe *cable
	if probe, err = plugInIfWanted(c, set); err != nil && (c.IsSet("port") || errors.As(err, new(refused))) {
		return err
	} else if err != nil { // the settings' probe stayed at home
		d.say("No probe: %s. Type the readings instead.", say.Shown(oneLine(err)))
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
		return err
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
	how, err := c.learn(d.talk)
	switch {
	case err != nil || how == stopped:
		return err
	case how == byHand:
		return d.typed()
	case moving:
		return d.moving(c)
	}
	return d.probed(c)
}

// openBook opens and locks the folder of saved drops.
func (p *program) openBook(c *cli.Context, set settings.Settings) (b *book.Book, unlock func(), err error) {
	dir := c.String("book")
	if dir == "" {
		dir = set.Book
	}
	if dir == "" {
		if dir, err = book.DefaultDir(); err != nil {
			return nil, nil, refused{err}
		}
	}
	if b, err = book.Open(dir, p.disk); err == nil {
		unlock, err = b.Lock()
	}
	if errors.Is(err, book.ErrInUse) {
		return nil, nil, fmt.Errorf("%s: %w: end that one first, or use another folder with --book", dir, err)
	}
	if err != nil {
		return nil, nil, fmt.Errorf("%s: drops cannot be saved there: %s; use another folder with --book", dir, cause(err))
	}
	return b, unlock, nil
}

// begin finds the drop to go on with, or begins one.
func (d *dropping) begin(shelf *book.Book, flags []notebook.Header, now time.Time) error {
	old, err := d.unended(shelf)
	if err != nil {
		return err
	}
	if old == nil {
		if err := d.anew(shelf, flags, now); err != nil {
			return err
		}
	} else {
		d.take = old
		for _, h := range flags {
			if err := d.note(h); err != nil {
				return refused{err}
			}
		}
	}
	drop := d.take.Drop()
	wanted := drop.For
	if wanted == "" {
		wanted = usualFish
	}
	if d.fish, err = fish.FindIn(d.set.Fish, wanted); err != nil {
		return refused{err}
	}
	if !drop.Bottom.Known {
		if err := d.askBottom(); err != nil {
			return err
		}
	}
	return nil
}

// unended offers the newest drop that was cut off; nil when there is none or it is
// left.
func (d *dropping) unended(shelf *book.Book) (*taking.Taking, error) {
	pages, drops, err := shelf.Unended()
	if err != nil || len(pages) == 0 {
		return nil, err
	}
	page, drop := pages[0], drops[0]
	what := fmt.Sprintf("A drop was cut off: %s, %s (%s).", say.WhereWhen(drop), counted(len(drop.Readings), "reading"), say.Shown(page.Path))
	if log := page.Beside(book.LogEnding); len(drop.Readings) == 0 && exists(log) {
		what += fmt.Sprintf(" What the probe said is beside it: coldseam probe replay --page %s", say.Shown(log))
	}
	n, err := d.choose(what, "go on with it", "leave it for later and begin a new one", "it has ended: keep it as it is, and begin a new one")
	switch {
	case errors.Is(err, errHungUp) || err == nil && n == 1:
		return nil, nil
	case err != nil:
		return nil, err
	}
	take := taking.GoOn(shelf, page, drop)
	if n == 2 {
		return nil, take.End()
	}
	return take, nil
}

// anew begins a drop with what the flags and the settings say, asking for the units
// where they say nothing.
func (d *dropping) anew(shelf *book.Book, flags []notebook.Header, now time.Time) error {
	u, err := d.units(flags)
	if err != nil {
		return err
	}
	flags = append(flags, notebook.Header{Key: "units", Value: u.String(), From: "--units"})
	page := "date: " + now.Format("2006-01-02 15:04") + "\n"
	sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "drop", Unread: true, Flags: flags, Defaults: d.set.Headers})
	if err != nil {
		return refused{err}
	}
	d.take = taking.Begin(shelf, sheets[0].Drop)
	return nil
}

// units are those of the flags, else of the settings, else what the angler answers.
func (d *dropping) units(flags []notebook.Header) (unit.System, error) {
	var u unit.System
	for _, h := range append(append([]notebook.Header(nil), d.set.Headers...), flags...) {
		if h.Key != "units" {
			continue
		}
		s, err := unit.ParseSystem(h.Value)
		if err != nil {
			return u, refused{err}
		}
		if s.Depth != unit.NoLength {
			u.Depth = s.Depth
		}
		if s.Temp != unit.NoTemperature {
			u.Temp = s.Temp
		}
	}
	if u.Depth != unit.NoLength && u.Temp != unit.NoTemperature {
		return u, nil
	}
	systems := []unit.System{{Depth: unit.Foot, Temp: unit.Fahrenheit}, {Depth: unit.Metre, Temp: unit.Celsius}, {Depth: unit.Foot, Temp: unit.Celsius}, {Depth: unit.Metre, Temp: unit.Fahrenheit}}
	n, err := d.choose("In which units are the line's marks and the thermometer? (--units or the settings save this question)",
		"feet and Fahrenheit", "metres and Celsius", "feet and Celsius", "metres and Fahrenheit")
	if err != nil {
		return u, refuse("the units were not given: say --units \"ft F\" or --units \"m C\"")
	}
	return systems[n], nil
}

// askBottom asks for the depth under the boat, which tells where to read first.
func (d *dropping) askBottom() error {
	u := d.take.Drop().Units
	for {
		text, err := d.answer("How deep is it here, in %s? (Enter alone if you do not know):", u.Depth)
		if err != nil || text == "" {
			return nil
		}
		if _, _, err := unit.ParseLength(text); err != nil {
			text += " " + u.Depth.String()
		}
		if err := d.note(notebook.Header{Key: "bottom", Value: text}); err != nil {
			d.say("%s", say.Shown(err.Error()))
			continue
		}
		return nil
	}
}

// note takes a header into the drop.
func (d *dropping) note(h notebook.Header) error {
	if err := notebook.Check(h.Key, h.Value); err != nil {
		return err
	}
	now := d.take.Drop()
	now.Readings = nil
	h.From = "--" + flagName(h.Key)
	sheets, err := notebook.Read([]byte(notebook.Write(now)), notebook.Options{Name: h.From, Unread: true, Flags: []notebook.Header{h}})
	if err != nil {
		return err
	}
	return d.take.Note(sheets[0].Drop)
}

// lost is the error of a drop whose page could not be written: what was read is
// printed, so that it can be copied down.
func (d *dropping) lost(err error) error {
	if errors.As(err, new(refused)) {
		return err
	}
	d.say("SAVING FAILED. Copy this down:")
	fmt.Fprint(d.err, notebook.Write(d.take.Drop()))
	return fmt.Errorf("the drop could not be saved: %s", cause(err))
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
	d.say("Saved: %s", say.Shown(d.take.Saved.Path))
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
