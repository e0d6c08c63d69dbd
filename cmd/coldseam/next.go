package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/check"
	"coldseam/profile/report"
	"coldseam/profile/sampling"
)

func (p *program) nextCommand() *cli.Command {
	return &cli.Command{
		Name:      "next",
		Usage:     "which depth to read next, and why, or that it is enough",
		ArgsUsage: "[flags] [FILE|last...]   (no file, or -: standard input)",
		Flags:     append([]cli.Flag{&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"}}, readFlags()...),
		Action:    p.next,
	}
}

func (p *program) next(c *cli.Context) error {
	jobs, _, err := p.jobs(c, true)
	if err != nil {
		return err
	}
	for _, j := range jobs {
		checked := check.Of(j.sheet.Drop)
		d := checked.Drop()
		var column profile.Column
		if len(d.Readings) > 0 {
			if column, err = checked.Column(); err != nil {
				return unusable(j.sheet.Name, d, err)
			}
		}
		advice := sampling.Find(sampling.Input{
			Column: column, Bottom: d.Bottom, Length: d.LakeLength, Secchi: d.Secchi,
			LevelsC: j.input.Fish.LimitsC(), MarkM: d.Units.DepthStepM(),
		})
		if !c.Bool("json") {
			fmt.Fprintln(&p.out, report.WrapTo(report.Next(advice, d.Units.Shown()), p.width()))
			continue
		}
		if err := p.json(report.NextAsJSON(advice, d.Units.Shown())); err != nil {
			return err
		}
	}
	return nil
}
