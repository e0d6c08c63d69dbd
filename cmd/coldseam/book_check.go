package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) bookCheckCommand() *cli.Command {
	return &cli.Command{
		Name:  "check",
		Usage: "read every page, and name what is damaged or odd",
		Description: `It changes nothing. Exit status 1 where a page cannot be read: its drops count
nowhere until it is mended; all other pages count as before.`,
		ArgsUsage: "[flags]",
		Flags:     []cli.Flag{&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"}, bookFlag()},
		Action:    p.bookCheck,
	}
}

func (p *program) bookCheck(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("book check takes no file: it reads all of the book")
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	b, err := p.saves(c, set)
	if err != nil {
		return err
	}
	checked, err := b.Check(p.now(), set.Reading())
	switch {
	case err != nil:
		return fmt.Errorf("%s: the saved drops cannot be read: %s", plain.Line(b.Dir), cause(err))
	case c.Bool("json"):
		err = p.json(report.CheckAsJSON(checked))
	case checked.Pages == 0 && len(checked.Findings) == 0:
		fmt.Fprintln(&p.out, report.WrapTo(report.EmptyBook, p.width()))
	default:
		for _, f := range checked.Findings {
			fmt.Fprintln(&p.out, report.Wrap(report.Found(f), "  ", p.width()))
		}
		fmt.Fprintln(&p.out, report.WrapTo(report.CheckedBook(checked), p.width()))
	}
	if err != nil || checked.Damaged == 0 {
		return err
	}
	if _, err := p.stdout.Write(p.out.Bytes()); err != nil { // what was found is the answer, whatever the status
		return err
	}
	return fmt.Errorf("%s: %s cannot be read", plain.Line(b.Dir), unit.Count(checked.Damaged, "page"))
}
