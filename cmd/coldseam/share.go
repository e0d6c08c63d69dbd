package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/report"
)

func (p *program) shareCommand() *cli.Command {
	return &cli.Command{
		Name:      "share",
		Usage:     "the answer in a few lines, for a message to a partner",
		ArgsUsage: "[flags] [FILE|last|N]   (no file: the last drop)",
		Description: `Your spot is not told unless you say --with-spot; the water and the date are.

   coldseam share
   coldseam share --with-spot 12`,
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "with-spot", Usage: "tell where on the water it was, too"},
		}, readFlags()...),
		Action: p.share,
	}
}

func (p *program) share(c *cli.Context) error {
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return err
	}
	if len(jobs) > 1 {
		return refuse("share takes one drop, and there are %d: name one, or share them one by one", len(jobs))
	}
	j := jobs[0]
	const longest = 40 // letters of a name
	j.input.Drop.Water, j.input.Drop.Spot = plain.Cut(j.input.Drop.Water, longest), plain.Cut(j.input.Drop.Spot, longest)
	if !c.Bool("with-spot") {
		j.input.Drop.Spot = ""
	}
	made, err := plan.Make(j.input)
	if err != nil {
		return unusable(j.sheet.Name, made.Drop, err)
	}
	fmt.Fprint(&p.out, report.Share(made))
	return nil
}
