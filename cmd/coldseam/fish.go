package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/say"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) fishCommand() *cli.Command {
	return &cli.Command{
		Name:      "fish",
		Usage:     "what each fish needs of temperature and oxygen, with sources",
		ArgsUsage: "[flags] [NAME]",
		Flags:     []cli.Flag{&cli.StringFlag{Name: "units", Usage: notebook.Help("units")}},
		Action:    p.fish,
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
	if c.Args().Present() {
		f, err := fish.Find(strings.Join(c.Args().Slice(), " "))
		if err != nil {
			return refused{err}
		}
		fmt.Fprint(&p.out, say.Fish(f, u))
		return nil
	}
	fmt.Fprint(&p.out, say.FishTable(fish.All(), u))
	return nil
}
