package main

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/taking"
	"coldseam/profile/unit"
)

// begin finds the drop to go on with, or begins one.
func (d *dropping) begin(shelf *book.Book, flags []notebook.Header, now time.Time) error {
	resumed, err := d.resume(shelf)
	switch {
	case err != nil:
		return err
	case !resumed:
		err = d.anew(shelf, flags, now)
	default:
		for _, h := range flags {
			if err = d.note(h); err != nil && !errors.As(err, new(taking.Unsaved)) {
				err = refused{err}
			}
			if err != nil {
				break
			}
		}
	}
	if err != nil {
		return err
	}
	drop := d.take.Drop()
	wanted := drop.For
	if wanted == "" {
		wanted = usualFish
	}
	d.fish, err = fish.FindIn(d.set.Fish, wanted)
	if err != nil && resumed { // a page from elsewhere: its readings are worth going on with
		d.say("%s. Rainbow trout is used until you type e.g. \"for: perch\".", plain.Line(err.Error()))
		drop.Notes = append(drop.Notes, "for: "+drop.For)
		drop.For = ""
		if err := d.take.Note(drop); err != nil {
			return err
		}
		d.fish, err = fish.FindIn(d.set.Fish, usualFish)
	}
	if err != nil {
		return refused{err}
	}
	if !drop.Bottom.Known {
		return d.askBottom()
	}
	return nil
}

// resume offers the drops that were cut off, and names those of them that cannot be
// gone on with; false where none is gone on with.
func (d *dropping) resume(shelf *book.Book) (bool, error) {
	pages, err := shelf.Unended()
	if err != nil {
		return false, err
	}
	var open []book.Unended
	for _, u := range pages {
		if u.Err == nil {
			open = append(open, u)
			continue
		}
		d.say("Not offered, though it may have been cut off: %s: %s.", plain.Line(u.Path), plain.Line(oneLine(u.Err)))
	}
	if len(open) == 0 {
		return false, nil
	}
	what, choices := offered(open)
	n, err := d.choose(what, choices...)
	switch {
	case errors.Is(err, errHungUp) || err == nil && n == len(open):
		return false, nil
	case err != nil:
		return false, err
	case n < len(open):
		d.keep(taking.GoOn(shelf, open[n]))
		return true, nil
	}
	for _, u := range open {
		if err := d.keep(taking.GoOn(shelf, u)).End(); err != nil {
			return false, err
		}
	}
	return false, nil
}

// offered is the question which drop to go on with, and the answers: one for each, to
// leave them, and to end them.
func offered(open []book.Unended) (what string, choices []string) {
	named := func(u book.Unended) string {
		return fmt.Sprintf("%s, %s (%s)", report.WhereWhen(u.Drop), counted(len(u.Drop.Readings), "reading"), plain.Line(u.Path))
	}
	leave, end := "leave it for later and begin a new one", "it has ended: begin a new one"
	if len(open) == 1 {
		what, choices = "A drop was cut off: "+named(open[0])+".", []string{"go on with it"}
	} else {
		what = fmt.Sprintf("%d drops were cut off.", len(open))
		leave, end = "leave them for later and begin a new one", "they have ended: begin a new one"
		for _, u := range open {
			choices = append(choices, "go on with "+named(u))
		}
	}
	for _, u := range open {
		if log := u.Beside(book.LogEnding); len(u.Drop.Readings) == 0 && exists(log) {
			what += fmt.Sprintf(" What the probe said is beside it: coldseam probe replay --page %s", plain.Line(log))
		}
	}
	return what, append(choices, leave, end)
}

// anew begins a drop with what the flags and the settings say, asking for the units
// where they say nothing.
func (d *dropping) anew(shelf *book.Book, flags []notebook.Header, now time.Time) error {
	u, err := d.units(flags)
	if err != nil {
		return err
	}
	date := notebook.Header{Key: "date", Value: now.Format("2006-01-02 15:04")}
	units := notebook.Header{Key: "units", Value: u.String(), From: "--units"}
	drop, err := notebook.New(slices.Concat(d.set.Headers, []notebook.Header{date}, flags, []notebook.Header{units})...)
	if err != nil {
		return refused{err}
	}
	d.keep(taking.Begin(shelf, drop))
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
		err = d.note(notebook.Header{Key: "bottom", Value: text})
		if err == nil || errors.As(err, new(taking.Unsaved)) {
			return err
		}
		d.say("%s", plain.Line(err.Error()))
	}
}
