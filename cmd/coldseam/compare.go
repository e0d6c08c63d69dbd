package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"coldseam/profile/plan"
	"coldseam/profile/report"
)

func (p *program) compareCommand() *cli.Command {
	return &cli.Command{
		Name:      "compare",
		Usage:     "two spots or more: which one to fish, and why",
		ArgsUsage: "[flags] FILE|last|N...   (or one file of several drops)",
		Description: `Says which drop to fish, whether the readings can show a difference at all, and
whether wind alone can have made it:

   coldseam compare 7 last --wind "SW 10 mph" --lake-length 800m`,
		Flags:  append([]cli.Flag{&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"}}, readFlags()...),
		Action: p.compare,
	}
}

// mostCompared is how many drops have a letter.
const mostCompared = 26

func (p *program) compare(c *cli.Context) error {
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return err
	}
	if n := len(jobs); n < 2 || n > mostCompared {
		return refuse("compare takes 2 to %d drops, and here is %d: name files, or drops of the book by their number, e.g. coldseam compare 7 last", mostCompared, n)
	}
	var plans []plan.Plan
	var names []string
	for _, j := range jobs {
		j.input.Drop.Units = jobs[0].input.Drop.Units // one reader
		made, err := plan.Make(j.input)
		if err != nil {
			return unusable(j.sheet.Name, made.Drop, err)
		}
		plans, names = append(plans, made), append(names, j.sheet.Name)
	}
	if c.Bool("json") {
		return p.json(report.CompareAsJSON(plans, names))
	}
	fmt.Fprint(&p.out, report.Compare(plans, names, p.width()))
	return nil
}
