package main

import (
	"errors"
	"fmt"
	"slices"

	"github.com/urfave/cli/v2"

	"coldseam/device"
	"coldseam/device/probe"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/session"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) dropCommand() *cli.Command {
	return &cli.Command{
		Name:      "drop",
		Usage:     "take a drop at anchor: where to read next, then the plan",
		ArgsUsage: "[flags]",
		Description: `It asks for one depth after another. Type the temperature there, then Enter, or
a depth of your own and its temperature: 12 68. With --port the probe is read
instead. Every reading is saved before the next one is asked for, and a drop
that was cut off can be continued. undo, skip, stop and help work at any time.`,
		Flags: append([]cli.Flag{
			fullFlag(),
			&cli.BoolFlag{Name: "json", Usage: "print the plan as JSON for scripts"},
			&cli.BoolFlag{Name: "again", Usage: "take over water, fish, units, thermometer, marks of the last drop"},
			&cli.BoolFlag{Name: "moving", Category: probeFlagsTitle, Usage: "lower the probe without a stop; it states its depth"},
			bookFlag(),
		}, append(append(portFlags(), lineFlags()...), headerFlags()...)...),
		Action: p.drop,
	}
}

func bookFlag() cli.Flag {
	return &cli.StringFlag{Name: "book", Usage: "the folder where drops are saved"}
}

// dropping is one run of a command that takes a drop.
type dropping struct {
	*console
	set   settings.Settings
	shelf *shelf
	flags []notebook.Header
	probe *probe.Probe // nil for the keyboard
	lower func(toM float64) string
}

func (p *program) drop(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("drop reads no file; for a page that is already written use: coldseam plan %s", c.Args().First())
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	flags, err := headers(c, set)
	if err != nil {
		return err
	}
	took := ""
	if c.Bool("again") {
		var over []notebook.Header
		if over, took, err = p.again(c, set); err != nil {
			return err
		}
		set.Headers = append(slices.Clone(set.Headers), over...)
	}
	d, stop, err := p.dropping(c, set, flags)
	if err != nil {
		return err
	}
	defer stop()
	d.say(report.AtAnchor)
	if took != "" {
		d.say(took)
	}
	if d.probe, err = plugInIfWanted(c, set); err != nil && (c.IsSet("port") || errors.As(err, new(refused))) {
		return err
	} else if err != nil { // the settings' probe stayed at home
		d.say(fmt.Sprintf("No probe: %s. Type the readings instead.", plain.Line(oneLine(err))))
	}
	return p.takeDrop(c, d)
}

// dropping opens the book and begins to read lines.
func (p *program) dropping(c *cli.Context, set settings.Settings, flags []notebook.Header) (*dropping, func(), error) {
	shelf, err := p.openShelf(c, set)
	if err != nil {
		return nil, nil, err
	}
	t, stop := p.console()
	shelf.tell = t.say
	return &dropping{console: t, set: set, shelf: shelf, flags: flags}, func() { stop(); shelf.close() }, nil
}

// takeDrop takes a drop from its beginning to the plan.
func (p *program) takeDrop(c *cli.Context, d *dropping) error {
	cut, notes, err := d.shelf.cut()
	if err != nil {
		return err
	}
	for _, n := range notes {
		d.say(n)
	}
	o := session.Options{
		Headers: d.set.Headers, Flags: d.flags, Now: p.now(), Clock: p.now, Cut: cut, New: d.shelf.store(), Elsewhere: d.shelf.elsewhere,
		Fish: d.set.Fish, Waters: d.set.WaterNames(),
	}
	if d.probe != nil {
		defer d.probe.Close()
		o.Probe = &session.Probe{
			Name: d.probe.Name(), Known: d.probe.Known(), Depths: d.probe.Depths, Moving: c.Bool("moving"),
			NowS: d.probe.NowS, Counted: d.probe.Counted, Lower: d.lower,
		}
		if d.probe.Known() {
			o.Probe.Layout = d.probe.Layout.String()
		}
	}
	s := session.New(o)
	d.shelf.tell = s.Tell
	d.loop(s)
	switch err := s.Err(); {
	case d.cut.Load() && s.Saved() == "":
		return errors.New("interrupted before the first reading: nothing was saved")
	case d.cut.Load():
		return fmt.Errorf("interrupted: %s saved in %s; start coldseam drop to continue it", unit.Count(len(s.Drop().Readings), "reading"), s.Saved())
	case errors.As(err, new(session.BadInput)):
		return refused{err}
	case err != nil:
		return err
	}
	d.say("Saved: " + plain.Line(s.Saved()))
	fmt.Fprintln(d.err)
	j, err := makeJob(notebook.Sheet{Name: s.Saved(), Drop: s.Drop()}, d.set, s.Saved())
	if err != nil {
		return err
	}
	j.input.Taken = p.taken(c, d.set)
	if err := p.answer(j, "", formOf(c)); err != nil || formOf(c) != atAGlance {
		return err
	}
	name := plain.Line(s.Saved())
	if p.isLast(c, d.set, s.Saved()) {
		name = last
	}
	fmt.Fprintln(&p.out, report.WrapTo("Local rules come first. Picture, reasons, checks: coldseam plan --full "+name, p.width()))
	return nil
}

// isLast reports whether a page is what last means where no book is named.
func (p *program) isLast(c *cli.Context, set settings.Settings, path string) bool {
	if c.IsSet("book") {
		return false
	}
	_, heads, err := p.heads(c, set, book.Query{})
	if err != nil {
		return false
	}
	h, several, err := pick(heads, last)
	return err == nil && !several && h.Path == path && !exists(last)
}

// loop takes lines and what the probe says, one event after the other, until the drop has
// ended or Ctrl-C cut it off.
func (d *dropping) loop(s *session.Session) {
	for {
		v := s.View()
		d.show(v)
		if v.Ended {
			return
		}
		var events <-chan device.Event
		if d.probe != nil && v.Listening { // else its lines wait
			events = d.probe.Events()
		}
		select {
		case text, ok := <-d.lines:
			d.answered(ok)
			switch {
			case d.cut.Load():
				return
			case ok:
				s.Type(text)
			default:
				s.HangUp()
			}
		case e := <-events:
			hear(s, d.probe, e)
		}
	}
}

// hear hands on what an event of the port brought.
func hear(s *session.Session, p *probe.Probe, e device.Event) {
	said := p.Take(e)
	switch e.Kind {
	case device.Cut:
		return
	case device.Line:
	default:
		s.Port(probe.Told(e), e.Kind.String()+": "+e.Text, e.Kind == device.Lost, e.Kind == device.Back)
		return
	}
	h := session.Heard{AtS: said.AtS, Raw: e.Line}
	switch {
	case said.Noise:
		h.Noise = said.Err.Error()
	case said.Err == nil:
		h.TempC, h.DepthM, h.BottomM, h.SurfaceC = said.Sample.TempC, said.Sample.DepthM, said.Sample.BottomM, said.Sample.SurfaceC
	}
	s.Hear(h)
	switch {
	case said.Learnt:
		s.Learnt(p.Layout.String(), p.Depths, said.Told)
	case said.Lost:
		s.NotUnderstood()
	case said.Open != nil:
		var texts []string
		for _, l := range said.Open.Choices {
			texts = append(texts, l.String())
		}
		s.AskLayout(said.Open.Example, said.Open.Why, texts, func(n int) {
			p.Choose(n)
			s.Learnt(p.Layout.String(), p.Depths, true)
		})
	}
}
