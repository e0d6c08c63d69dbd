package main

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/urfave/cli/v2"

	"coldseam/profile/check"
	"coldseam/profile/forecast"
	"coldseam/profile/layers"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

func onFlag() cli.Flag {
	return &cli.StringFlag{Name: "on", Usage: "a day to come, 2026-08-02: what to expect there, from the drops of the book or the files"}
}

// on prints what is to be expected on the day of --on.
func (p *program) on(c *cli.Context) error {
	day, err := time.Parse(time.DateOnly, c.String("on"))
	if err != nil {
		return refuse("--on: %q is no day: write e.g. 2026-08-02", c.String("on"))
	}
	for _, other := range []string{"check", "full"} {
		if c.IsSet(other) {
			return refuse("--on and --%s cannot both hold: give one", other)
		}
	}
	day = day.Add(12 * time.Hour)
	jobs, err := p.dropsOf(c)
	if err != nil {
		return err
	}
	in := forecast.Input{Day: day}
	for _, j := range jobs {
		d, err := layersOf(j)
		if err != nil {
			return err
		}
		in.Drops = append(in.Drops, d)
	}
	in.South = jobs[len(jobs)-1].south()
	f, err := forecast.Make(in)
	var no forecast.Refusal
	if errors.As(err, &no) {
		return refuse("--on %s: %s", c.String("on"), report.NoForecast(no, day))
	}
	last := jobs[len(jobs)-1]
	made, err := plan.Make(last.input)
	if err != nil {
		return unusable(last.sheet.Name, made.Drop, err)
	}
	e := made.Expect(last.input, f, day)
	if c.Bool("json") {
		return p.json(report.ExpectedAsJSON(e))
	}
	fmt.Fprint(&p.out, report.Expected(e, p.width()))
	return nil
}

// south reports whether the water lies south of the equator.
func (j job) south() bool {
	l := j.input.Drop.Latitude
	return l.Known && l.Value < 0
}

// layersOf gives the layers of a drop that is usable.
func layersOf(j job) (forecast.Drop, error) {
	when, _ := j.input.Drop.When()
	column, err := check.Of(j.input.Drop).Column()
	if err != nil {
		return forecast.Drop{}, unusable(j.sheet.Name, j.input.Drop, err)
	}
	return forecast.Drop{When: when, Layers: layers.Find(column)}, nil
}

// dropsOf gives the dated drops of one water, the oldest first, with a usable reading each:
// of the files that were named, else of the book's water, that of --water or of its last
// drop. What flags say holds of the last.
func (p *program) dropsOf(c *cli.Context) ([]job, error) {
	if !p.fromBook(c) {
		return p.dropsOfFiles(c)
	}
	set, err := settings.Load()
	if err != nil {
		return nil, refused{err}
	}
	water := c.String("water")
	jobs, err := p.history(c, set, water)
	if err != nil {
		return nil, err
	}
	jobs = slices.DeleteFunc(jobs, func(j job) bool { return !usable(j) })
	switch n := len(jobs); {
	case n == 0 && water != "":
		return nil, refuse("no drop of %q with a date and a reading is in the book: coldseam book lists them", water)
	case n == 0:
		return nil, refuse("no drop with a date and a reading is in the book: take one with coldseam drop, or name files")
	case water == "":
		water = jobs[n-1].sheet.Drop.Water
		jobs = slices.DeleteFunc(jobs, func(j job) bool { return !sameName(j.sheet.Drop.Water, water) })
	}
	return p.flagged(c, set, jobs)
}

// dropsOfFiles are those of the files named.
func (p *program) dropsOfFiles(c *cli.Context) ([]job, error) {
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return nil, err
	}
	for _, j := range jobs {
		if _, ok := j.input.Drop.When(); !ok {
			return nil, refuse("%s: no date: add date: 2026-07-18 to its page", j.sheet.Name)
		}
		if first := jobs[0].sheet.Drop.Water; !sameName(first, j.sheet.Drop.Water) {
			return nil, refuse("two waters, %q and %q: give the drops of one", first, j.sheet.Drop.Water)
		}
		if !usable(j) {
			checked := check.Of(j.input.Drop)
			_, err := checked.Column()
			return nil, unusable(j.sheet.Name, checked.Drop(), err)
		}
	}
	slices.SortStableFunc(jobs, func(a, b job) int {
		x, _ := a.input.Drop.When()
		y, _ := b.input.Drop.When()
		return x.Compare(y)
	})
	return jobs, nil
}

// usable reports whether a drop has a date and a reading that is not flagged as useless.
func usable(j job) bool {
	_, dated := j.input.Drop.When()
	column, err := check.Of(j.input.Drop).Column()
	return dated && err == nil && column.Len() > 0
}

// flagged lets the flags hold of the last drop.
func (p *program) flagged(c *cli.Context, set settings.Settings, jobs []job) ([]job, error) {
	flags, err := headers(c, set)
	flags = slices.DeleteFunc(flags, func(h notebook.Header) bool { return h.Key == "water" }) // it chose the drops
	if err != nil || len(flags) == 0 {
		return jobs, err
	}
	last := &jobs[len(jobs)-1]
	options := set.Reading()
	options.Name, options.Flags = last.sheet.Name, flags
	sheets, err := notebook.Read([]byte(notebook.Write(last.sheet.Drop)), options)
	if err != nil {
		return nil, refused{err}
	}
	again, err := makeJob(sheets[0], set, last.sheet.Name)
	if err != nil {
		return nil, err
	}
	*last = again
	return jobs, nil
}
