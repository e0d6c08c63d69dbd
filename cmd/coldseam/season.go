package main

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/chart"
	htmlpage "coldseam/chart/page"
	"coldseam/chart/static"
	"coldseam/profile/plan"
	"coldseam/profile/report"
)

func (p *program) seasonCommand() *cli.Command {
	return &cli.Command{
		Name:      "season",
		Usage:     "one water over its dates: what changed, and a picture",
		ArgsUsage: "[flags] [FILE|N...]   (no file: the book's last water)",
		Description: `Without -o it says what changed since the drop before and since earlier years,
how fast the thermocline sinks, and when the water will be one layer again:

   coldseam season --water "Alder Kettle"

With -o it draws the season: time goes across, depth downward. Temperatures are
filled in between drops up to 21 days apart; what lies between drops further
apart than that stays empty. Each drop needs its date.`,
		Flags: append(append(outFlags(),
			&cli.StringFlag{Name: "year", Usage: "the season of another year, 2025; later drops are left out"},
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"},
		), readFlags()...),
		Action: p.season,
	}
}

func (p *program) season(c *cli.Context) error {
	out := c.String("o")
	if out != "" && c.Bool("json") {
		return refuse("-o and --json cannot both hold: give one")
	}
	if out == "" && c.IsSet("size") {
		return refuse("--size is of a still picture: say which with -o x.svg")
	}
	jobs, err := p.dropsOf(c)
	if err != nil {
		return err
	}
	if jobs, err = ofYear(c, jobs); err != nil {
		return err
	}
	plans, err := p.plansOf(jobs)
	if err != nil {
		return err
	}
	season := seasonOf(jobs, plans)
	switch {
	case out != "":
		return p.drawSeason(c, out, season, plans)
	case c.Bool("json"):
		return p.json(report.SeasonAsJSON(season))
	}
	fmt.Fprint(&p.out, report.Season(season, p.width()))
	return nil
}

// ofYear leaves out what is later than the year of --year; the season is that of the last
// drop left.
func ofYear(c *cli.Context, jobs []job) (out []job, err error) {
	if !c.IsSet("year") {
		return jobs, nil
	}
	year, err := strconv.Atoi(strings.TrimSpace(c.String("year")))
	if err != nil || year < 1 || year > 9999 {
		return nil, refuse("--year: %q is no year: write e.g. 2025", c.String("year"))
	}
	for _, j := range jobs {
		if when, _ := j.input.Drop.When(); when.Year() <= year {
			out = append(out, j)
		}
	}
	if len(out) > 0 {
		if when, _ := out[len(out)-1].input.Drop.When(); when.Year() == year {
			return out, nil
		}
	}
	return nil, refuse("--year %d: no drop of that year", year)
}

// plansOf makes the plans of jobs.
func (p *program) plansOf(jobs []job) (plans []plan.Plan, err error) {
	far := p.progress()
	defer far.end()
	for i, j := range jobs {
		far.show(fmt.Sprintf("drop %d of %d", i+1, len(jobs)), int64(i), int64(len(jobs)))
		made, err := plan.Make(j.input)
		if err != nil {
			return nil, unusable(j.sheet.Name, made.Drop, err)
		}
		plans = append(plans, made)
	}
	return plans, nil
}

// seasonOf is the season of the last of some plans.
func seasonOf(jobs []job, plans []plan.Plan) plan.Season {
	var in []plan.Dated
	for i, j := range jobs {
		when, _ := j.input.Drop.When()
		in = append(in, plan.Dated{When: when, Plan: plans[i]})
	}
	return plan.SeasonOf(in, jobs[len(jobs)-1].south())
}

// drawSeason draws the drops of files, all of them, or of the book, those of the season.
func (p *program) drawSeason(c *cli.Context, out string, words plan.Season, plans []plan.Plan) error {
	if p.fromBook(c) {
		plans = words.Drops
	}
	var drops []chart.Drop
	for _, made := range plans {
		drops = append(drops, chart.Of(made))
	}
	season, err := chart.SeasonOf(drops)
	if err != nil {
		return refused{err}
	}
	season.Words = report.SeasonLines(words)
	still := func(buf *bytes.Buffer, f static.Format, size static.Size) error {
		return static.DrawSeason(buf, f, size, season)
	}
	return p.draw(c, out, still, func(buf *bytes.Buffer) error {
		var wide, upright bytes.Buffer
		if err := still(&wide, static.SVG, static.Desk); err != nil {
			return err
		}
		if err := still(&upright, static.SVG, static.Phone); err != nil {
			return err
		}
		return htmlpage.WriteSeason(buf, wide.Bytes(), upright.Bytes(), season)
	})
}
