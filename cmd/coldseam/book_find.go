package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

func (p *program) bookShowCommand() *cli.Command {
	return &cli.Command{
		Name:        "show",
		Usage:       "the page of a drop as it was written, with its path",
		ArgsUsage:   "[flags] N|last...",
		Description: "coldseam book show 12 prints the page of drop 12, as the list numbers it.",
		Flags:       []cli.Flag{bookFlag()},
		Action:      p.bookShow,
	}
}

func (p *program) bookShow(c *cli.Context) error {
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	_, heads, err := p.heads(c, set, book.Query{})
	if err != nil {
		return err
	}
	names := c.Args().Slice()
	if len(names) == 0 {
		return refuse("book show which drop? coldseam book show 12, or last; coldseam book lists them")
	}
	for _, name := range names {
		h, several, err := pick(heads, name)
		if err != nil {
			return err
		}
		data, err := p.read(h.Path)
		if err != nil {
			return err
		}
		fmt.Fprintf(&p.out, "# %s\n", plain.Line(h.Path))
		if several {
			fmt.Fprintln(&p.out, report.SharedPage)
		}
		p.out.Write(data)
		if len(data) > 0 && data[len(data)-1] != '\n' {
			fmt.Fprintln(&p.out)
		}
	}
	return nil
}

func (p *program) bookFindCommand() *cli.Command {
	return &cli.Command{
		Name:      "find",
		Usage:     "the drops of a water, a month, a fish, or with words",
		ArgsUsage: "[flags] [WORD...]",
		Description: `coldseam book find --water alder --month july lists the drops of all Julys.
Part of a name is enough. A fish is one that was fished for or caught. Words may
stand anywhere on the page; all must be there.`,
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "water", Usage: "the lake's name, or part of it"},
			&cli.StringFlag{Name: "spot", Usage: "where on it, or part of it"},
			&cli.StringFlag{Name: "month", Usage: "july, 7 or 2026-07"},
			&cli.StringFlag{Name: "fish", Aliases: []string{"for"}, Usage: "the fish that was fished for or caught"},
			bookFlag(),
		}, listFlags()...),
		Action: p.bookFind,
	}
}

func (p *program) bookFind(c *cli.Context) error {
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	q := book.Query{Water: c.String("water"), Spot: c.String("spot")}
	for _, a := range c.Args().Slice() {
		q.Words = append(q.Words, strings.Fields(a)...)
	}
	if c.IsSet("month") {
		if q.Month, err = book.Month(c.String("month")); err != nil {
			return refuse("--month: %w", err)
		}
	}
	if c.IsSet("fish") {
		q.Fish = sameFish(set.Fish, c.String("fish"))
	}
	return p.list(c, &q)
}

// sameFish reports of a fish's name whether it means the one that is asked for, by whatever
// of its names.
func sameFish(own []fish.Fish, asked string) func(name string) bool {
	want, known := fish.Known(own, asked)
	return func(name string) bool {
		is, ok := fish.Known(own, name)
		if known && ok {
			return is.Key == want.Key
		}
		return strings.EqualFold(strings.TrimSpace(name), strings.TrimSpace(asked))
	}
}
