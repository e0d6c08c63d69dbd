package main

import (
	"bytes"

	"github.com/urfave/cli/v2"

	"coldseam/chart"
	htmlpage "coldseam/chart/page"
	"coldseam/chart/static"
)

func (p *program) seasonCommand() *cli.Command {
	return &cli.Command{
		Name:      "season",
		Usage:     "one water over its dates, as a picture",
		ArgsUsage: "-o x.svg [flags] FILE...",
		Description: `Time goes across, depth downward. Temperatures are filled in between drops up to
21 days apart; what lies between drops further apart stays empty. Each drop
needs its date.`,
		Flags:  append(outFlags(), readFlags()...),
		Action: p.season,
	}
}

func (p *program) season(c *cli.Context) error {
	out := c.String("o")
	if out == "" {
		return refuse("say where the picture goes: -o season.html, .svg, .png or .pdf")
	}
	drops, err := p.figures(c)
	if err != nil {
		return err
	}
	season, err := chart.SeasonOf(drops)
	if err != nil {
		return refused{err}
	}
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
