package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

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
	made, err := plan.Make(jobs[0].input)
	if err != nil {
		return unusable(jobs[0].sheet.Name, made.Drop, err)
	}
	fmt.Fprint(&p.out, report.Share(made, c.Bool("with-spot")))
	return nil
}
