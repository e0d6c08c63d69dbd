package main

import (
	"fmt"
	"slices"

	"github.com/urfave/cli/v2"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/catches"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) bookCatchesCommand() *cli.Command {
	return &cli.Command{
		Name:      "catches",
		Usage:     "where and when fish were taken",
		ArgsUsage: "[flags]",
		Description: `coldseam book catches --fish rainbow --month july: how far above or below the
thermocline, at what temperature and in which part of the band, with counts.
Fish are noted with coldseam caught, or on the page: caught: rainbow 16 ft.`,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "water", Usage: "the lake's name, or part of it"},
			&cli.StringFlag{Name: "fish", Usage: "one fish, rainbow"},
			&cli.StringFlag{Name: "month", Usage: "july, 7 or 2026-07"},
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"},
			bookFlag(),
		},
		Action: p.bookCatches,
	}
}

func (p *program) bookCatches(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("book catches takes flags alone: --water, --fish or --month, e.g. --fish %s", c.Args().First())
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	q := book.Query{Water: c.String("water"), Caught: true}
	if c.IsSet("month") {
		if q.Month, err = book.Month(c.String("month")); err != nil {
			return refuse("--month: %w", err)
		}
	}
	asked := func(string) bool { return true }
	if c.IsSet("fish") {
		asked = sameFish(set.Fish, c.String("fish"))
		q.Fish = asked
	}
	b, heads, err := p.heads(c, set, q)
	if err != nil {
		return err
	}
	damaged := len(heads)
	heads = slices.DeleteFunc(heads, func(h book.Head) bool { return h.Err != nil })
	damaged -= len(heads)
	var taken []catches.Taken
	var units unit.System
	far := p.progress()
	defer far.end()
	for i, e := range b.Read(heads, set.Reading()) {
		far.show("looking at what was caught", int64(i), int64(len(heads)))
		if e.Err != nil {
			damaged++
			continue
		}
		of := placed(e, set, asked)
		if len(of) > 0 {
			units = e.Drop.Units
		}
		taken = append(taken, of...)
	}
	if c.Bool("json") {
		return p.json(report.CatchesAsJSON(taken))
	}
	line := func(text string) {
		if text != "" {
			fmt.Fprintln(&p.out, report.WrapTo(text, p.width()))
		}
	}
	if picture := chart.Catches(taken, units, p.width()); picture != "" {
		p.out.WriteString(picture)
		line(report.CatchLegend(chart.CatchMarks(taken)))
		fmt.Fprintln(&p.out)
	}
	if len(taken) == 0 {
		line(report.NothingCaught)
	}
	p.out.WriteString(report.Caught(taken, units, p.width()))
	if text := report.DamagedPages(damaged); text != "" {
		fmt.Fprintln(&p.out)
		line(text)
	}
	return nil
}

// placed says where in the water of a drop each of its catches was that is asked for. The
// band is that of the fish which was caught, where it is known.
func placed(e book.Entry, set settings.Settings, asked func(fish string) bool) (out []catches.Taken) {
	plans := map[string]*plan.Plan{}
	for _, is := range e.Drop.Catches {
		if !asked(is.Fish) {
			continue
		}
		made, ok := plans[is.Fish]
		if !ok {
			made = planFor(e.Sheet, set, is.Fish)
			plans[is.Fish] = made
		}
		if made == nil { // no reading that could be used
			d := e.Drop
			d.Catches = []profile.Catch{is}
			out = append(out, plan.TakenOn(d)...)
			continue
		}
		out = append(out, made.Taken(is))
	}
	return out
}

// planFor is the plan of a drop for a fish, or, where nobody knows that fish, for the usual
// one; nil where there is none.
func planFor(s notebook.Sheet, set settings.Settings, fish string) *plan.Plan {
	for _, s.Drop.For = range []string{fish, ""} {
		j, err := makeJob(s, set, s.Name)
		if err != nil {
			continue
		}
		if made, err := plan.Make(j.input); err == nil {
			return &made
		}
	}
	return nil
}
