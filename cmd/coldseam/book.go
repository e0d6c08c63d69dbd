package main

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

func (p *program) bookCommand() *cli.Command {
	return &cli.Command{
		Name:      "book",
		Usage:     "the saved drops, the newest first",
		ArgsUsage: "[flags]",
		Flags:     append(listFlags(), bookFlag()),
		Subcommands: []*cli.Command{
			p.bookShowCommand(),
			p.bookFindCommand(),
			p.bookCheckCommand(),
			p.bookAddCommand(),
			p.bookCatchesCommand(),
		},
		Action: func(c *cli.Context) error {
			if c.Args().Present() {
				return refuse("book has no part %q; coldseam book --help tells which it has", c.Args().First())
			}
			return p.list(c, nil)
		},
	}
}

// newest is how many drops are listed where nothing else is said.
const newest = 20

// listFlags are those of a list.
func listFlags() []cli.Flag {
	return []cli.Flag{
		&cli.BoolFlag{Name: "all", Usage: "list all drops, not the newest 20 alone"},
		&cli.StringFlag{Name: "most", Usage: "how many to list, 50"},
		&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"},
	}
}

// most is how many drops are to be listed of so many.
func most(c *cli.Context, of int) (int, error) {
	switch {
	case c.Bool("all") && c.IsSet("most"):
		return 0, refuse("--all and --most cannot both hold: give one")
	case c.Bool("all"):
		return of, nil
	case !c.IsSet("most"):
		return min(of, newest), nil
	}
	n, err := strconv.Atoi(c.String("most"))
	if err != nil || n < 1 {
		return 0, refuse("--most: %q is not a number of drops: write e.g. 50", c.String("most"))
	}
	return min(of, n), nil
}

// list prints the drops that are asked for, or all with the pages that cannot be read in
// their place; the newest first.
func (p *program) list(c *cli.Context, asked *book.Query) error {
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	q, none := book.Query{}, report.EmptyBook
	if asked != nil {
		q, none = *asked, report.NoneFound
	}
	b, heads, err := p.heads(c, set, q)
	if err != nil {
		return err
	}
	damaged := len(heads)
	drops := slices.DeleteFunc(slices.Clone(heads), func(h book.Head) bool { return h.Err != nil })
	damaged -= len(drops)
	if asked != nil {
		heads = drops
	}
	book.ByDate(heads)
	n, err := most(c, len(heads))
	if err != nil {
		return err
	}
	more := len(heads) - n
	entries := b.Read(heads[more:], set.Reading())
	slices.Reverse(entries)
	if c.Bool("json") {
		return p.json(p.listJSON(entries, set, more))
	}
	line := func(text string) {
		if text != "" {
			fmt.Fprintln(&p.out, report.WrapTo(text, p.width()))
		}
	}
	if len(entries) == 0 {
		line(none)
	} else {
		var lines []report.BookLine
		far := p.progress()
		for i, e := range entries {
			far.show("looking at each drop", int64(i), int64(len(entries)))
			line, _ := report.InBook(e, set.Input)
			lines = append(lines, line)
		}
		far.end()
		p.out.WriteString(report.BookTable(lines, p.width()))
		if more+damaged > 0 {
			fmt.Fprintln(&p.out)
		}
	}
	line(report.MoreDrops(more))
	line(report.DamagedPages(damaged))
	return nil
}

// listJSON is the list for scripts.
func (p *program) listJSON(entries []book.Entry, set settings.Settings, more int) report.BookJSON {
	out := report.BookJSON{Drops: []report.InBookJSON{}, More: more}
	for _, e := range entries {
		if e.Err != nil {
			out.Drops = append(out.Drops, report.InBookJSON{Path: e.Path, Date: e.Date, Error: oneLine(e.Err)})
			continue
		}
		_, made := report.InBook(e, set.Input)
		out.Drops = append(out.Drops, report.InBookAsJSON(e.Number, e.Path, e.Drop, made, e.Unended))
	}
	return out
}
