package main

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/sampling"
	"coldseam/profile/taking"
	"coldseam/profile/unit"
)

// word finds what is meant by the start of a word.
func word(text string) (string, bool) {
	text = bare(text)
	var found []string
	for _, w := range []string{"undo", "skip", "stop", "help"} {
		if text != "" && strings.HasPrefix(w, text) {
			found = append(found, w)
		}
	}
	if text == "?" {
		return "help", true
	}
	switch {
	case len(found) == 1:
		return found[0], true
	case len(found) > 1:
		return "help", true
	}
	return "", false
}

const helpTyping = `Temperature and Enter: the reading at the depth asked for. Depth and temperature (12 68): a reading at a depth of your own; a depth that was read before can be put right so. "bottom: 24 ft" or another line of a page: notes it. undo: takes the last reading back. skip: passes the depth over. stop: ends, with the plan.`

// typed takes readings from the keyboard until the angler stops.
func (d *dropping) typed() error {
	d.say("Type the temperature and Enter; or depth and temperature (12 68). undo, skip, stop, help.")
	challenged := false
	for {
		u := d.take.Drop().Units
		advice := d.take.Next(d.fish.LimitsC())
		if !challenged {
			fmt.Fprintln(d.err)
			d.say("%s", report.Next(advice, u.Shown()))
		}
		text, err := d.answer("%s", d.question(advice, challenged))
		if err != nil { // the end of input ends the drop
			return nil
		}
		w, isWord := word(text)
		switch {
		case text == "" && challenged:
			challenged = false
		case text == "" && advice.Enough, w == "stop":
			return nil
		case w == "help":
			d.say(helpTyping)
		case w == "skip" && challenged:
			challenged = false
		case w == "skip" && advice.Enough:
			d.say("No depth is asked for: Enter ends the drop.")
		case w == "skip":
			d.take.Skip(advice.DepthM)
		case w == "undo":
			challenged = false
			if err := d.undo(); err != nil {
				return err
			}
		case text == "":
			d.say("Nothing was typed. %s", helpTyping)
		case !isWord:
			if challenged, err = d.taken(text, advice, challenged); err != nil {
				return err
			}
		}
	}
}

// question is the prompt: what Enter would mean stands in it.
func (d *dropping) question(a sampling.Advice, challenged bool) string {
	u := d.take.Drop().Units
	switch {
	case challenged:
		return "Enter keeps it; else type it again, or undo:"
	case a.Enough:
		return "Enter ends with the plan; or depth and temperature:"
	}
	return fmt.Sprintf("Temperature at %s, %s:", report.Mark(a.DepthM, u.Shown()), u.Temp)
}

// taken takes in a typed line. again says that the last reading was doubted: what is
// typed now takes its place.
func (d *dropping) taken(text string, a sampling.Advice, again bool) (challenged bool, err error) {
	if key, _, ok := strings.Cut(text, ":"); ok && bare(key) == "units" {
		d.say("The units stay as they were begun with; write the unit behind a number instead: 4 m 18 C.")
		return again, nil
	}
	depth := ""
	switch drop := d.take.Drop(); {
	case !notebook.TemperatureAlone(text):
	case again:
		last := drop.Readings[len(drop.Readings)-1]
		depth = unit.Exact(last.Depth) + " " + last.DepthUnit.String()
	case a.Enough:
		d.say("At which depth? Type depth and temperature.")
		return false, nil
	default:
		depth = report.Mark(a.DepthM, drop.Units.Shown())
	}
	read, err := d.read(depth, text)
	if err != nil {
		return again, d.refusal(err)
	}
	readings := read.Readings
	if again && len(readings) > 0 { // what is typed now stands in the place of what was doubted
		if _, _, err := d.take.Undo(); err != nil {
			return false, err
		}
	}
	noted, err := d.noted(read, text)
	if err != nil {
		return again, d.refusal(err)
	}
	if len(readings) == 0 {
		if !noted {
			d.say("No reading was taken.")
		}
		return again, nil
	}
	return d.add(readings)
}

// noted takes what a typed line says of the drop besides its readings: a fish that is
// known serves the next advice too.
func (d *dropping) noted(read profile.Drop, text string) (bool, error) {
	was := d.take.Drop()
	was.Readings, read.Readings = nil, nil
	if reflect.DeepEqual(was, read) {
		return false, nil
	}
	if read.For != was.For && read.For != "" {
		f, err := fish.FindIn(d.set.Fish, read.For)
		if err != nil {
			return false, err
		}
		d.fish = f
	}
	if err := d.take.Note(read); err != nil {
		return false, err
	}
	d.say("Noted: %s.", plain.Line(text))
	return true, nil
}

// read reads a typed line as the notebook would, in the drop's units; a temperature
// alone is at depth. It gives the drop as it would be, with the readings of
// that line alone.
func (d *dropping) read(depth, text string) (profile.Drop, error) {
	ask := func(q notebook.Question) (int, error) {
		q.Line = 0 // the line is the one just typed
		return d.ask(q)
	}
	read, err := notebook.ReadLine(text, depth, d.take.Drop(), notebook.Options{Name: "typed", Ask: ask, Fish: d.set.Fish, Waters: d.set.WaterNames()})
	for _, n := range read.Notes {
		if n.Line == 1 && len(read.Drop.Readings) == 0 {
			d.say("%s.", plain.Line(n.Text))
		}
	}
	return read.Drop, err
}

// refusal says what could not be read. What cannot be saved is handed on.
func (d *dropping) refusal(err error) error {
	var page *notebook.Error
	if errors.As(err, &page) {
		err = errors.New(page.Msg)
	} else if errors.As(err, new(taking.Unsaved)) {
		return err
	}
	d.say("Not taken: %s. Type it again.", plain.Line(err.Error()))
	return nil
}

// add takes readings into the drop, shows the column, and challenges what is odd.
func (d *dropping) add(readings []profile.Reading) (challenged bool, err error) {
	for _, r := range readings {
		before := d.take.At(r)
		odd, err := d.take.Add(r)
		if err != nil {
			return false, err
		}
		fmt.Fprint(d.err, "\n"+chart.Growing(d.take.Drop()))
		if len(before) > 0 {
			if err := d.twice(r, before); err != nil {
				return false, err
			}
			continue
		}
		for i, o := range odd {
			d.say("%s", report.Flagged(o))
			challenged = challenged || i == 0 && o.Depth == r.Depth && o.Temp == r.Temp
		}
	}
	return challenged, nil
}

// twice asks what a second reading of a depth is. Both are on the disk by then.
func (d *dropping) twice(r profile.Reading, before []profile.Reading) error {
	var was []string
	for _, b := range before {
		was = append(was, unit.Exact(b.Temp)+" "+b.TempUnit.String())
	}
	n, err := d.choose(fmt.Sprintf("At %s %s it was %s before.", unit.Exact(r.Depth), r.DepthUnit, strings.Join(was, " and ")),
		"this puts it right: only the new one counts", "it is a second reading: both count")
	if err != nil || n == 1 { // hung up: both are kept
		return nil
	}
	_, err = d.take.Correct(r)
	return err
}

func (d *dropping) undo() error {
	r, ok, err := d.take.Undo()
	if err != nil {
		return err
	}
	if !ok {
		d.say("Nothing of this sitting to take back. To put a reading right, type its depth and the right temperature.")
		return nil
	}
	d.say("Taken back: %s %s at %s %s.", unit.Exact(r.Temp), r.TempUnit, unit.Exact(r.Depth), r.DepthUnit)
	fmt.Fprint(d.err, chart.Growing(d.take.Drop()))
	return nil
}
