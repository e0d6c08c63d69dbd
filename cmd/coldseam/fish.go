package main

import (
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) fishCommand() *cli.Command {
	return &cli.Command{
		Name:      "fish",
		Usage:     "what each fish needs of temperature and oxygen, with sources",
		ArgsUsage: "[flags] [NAME]",
		Description: `Without a name it lists all fish in a table. A fish of your settings ([[fish]])
replaces the one of that name. Where neither --units nor the settings state a
scale, temperatures are given on both. --json is in C and mg/L: one object, or a
list of them without a name.`,
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"},
			&cli.StringFlag{Name: "units", Usage: notebook.Help("units")},
		},
		Action: p.fish,
	}
}

func (p *program) fish(c *cli.Context) error {
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	u := unit.System{}
	for _, h := range set.Headers {
		if h.Key == "units" {
			u, _ = unit.ParseSystem(h.Value)
		}
	}
	if c.IsSet("units") {
		if u, err = unit.ParseSystem(c.String("units")); err != nil {
			return refuse("--units: %w", err)
		}
	}
	if !c.Args().Present() {
		all := fish.All(set.Fish...)
		if c.Bool("json") {
			list := make([]report.FishJSON, 0, len(all))
			for _, f := range all {
				list = append(list, report.FishAsJSON(f))
			}
			return p.json(list)
		}
		p.out.WriteString(report.FishTable(all, u, p.width()))
		return nil
	}
	f, err := fish.FindIn(set.Fish, strings.Join(c.Args().Slice(), " "))
	if err != nil {
		return refused{err}
	}
	if c.Bool("json") {
		return p.json(report.FishAsJSON(f))
	}
	p.out.WriteString(report.Fish(f, u, p.width()))
	return nil
}
