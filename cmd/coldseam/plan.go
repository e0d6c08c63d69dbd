package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/chart"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
)

func (p *program) planCommand() *cli.Command {
	return &cli.Command{
		Name:        "plan",
		Usage:       "the answer: depth, where to cast, leader, sink time, retrieve",
		ArgsUsage:   "[flags] [FILE|last...]   (no file, or -: standard input)",
		Description: "A page is header lines such as \"bottom: 31 ft\", then readings, one or more a\nline, as you would jot them down: 5 73.5, 10ft 72F, surf 74, 72@3, 15-65.",
		Flags: append([]cli.Flag{
			fullFlag(),
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts, one object per drop"},
			&cli.StringFlag{Name: "check", Usage: "a reading at the anchor, \"14ft 63\": what it changes"},
			onFlag(),
		}, readFlags()...),
		Action: p.plan,
	}
}

func fullFlag() cli.Flag {
	return &cli.BoolFlag{Name: "full", Usage: "print all of it: picture, reasons, what to confirm, readings, safety"}
}

func (p *program) plan(c *cli.Context) error {
	if c.IsSet("on") {
		return p.on(c)
	}
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return err
	}
	for i, j := range jobs {
		if i > 0 && !c.Bool("json") {
			fmt.Fprint(&p.out, "\n"+strings.Repeat("-", p.width())+"\n\n")
		}
		check := ""
		if c.IsSet("check") {
			check = c.String("check")
			if strings.TrimSpace(check) == "" {
				return errNoCheck
			}
		}
		if err := p.answer(j, check, formOf(c)); err != nil {
			return err
		}
		if formOf(c) == atAGlance && i+1 == len(jobs) {
			fmt.Fprintln(&p.out, report.WrapTo(tellsMore, p.width()))
		}
	}
	return nil
}

const tellsMore = "Local rules come first. More, with picture, reasons and checks: --full"

// form is how a plan is printed.
type form int

const (
	atAGlance form = iota
	inFull
	asJSON
)

// formOf is the form that the flags ask for.
func formOf(c *cli.Context) form {
	switch {
	case c.Bool("json"):
		return asJSON
	case c.Bool("full"):
		return inFull
	}
	return atAGlance
}

// answer makes and prints the plan of a job, for people or for scripts; check is a
// reading at the anchor, or "".
func (p *program) answer(j job, check string, as form) error {
	made, err := plan.Make(j.input)
	if err != nil {
		return unusable(j.sheet.Name, made.Drop, err)
	}
	var checked *report.Check
	if check != "" {
		r, err := notebook.ReadOne("--check", check, made.Drop)
		switch {
		case errors.Is(err, notebook.ErrNotOne):
			return errNoCheck
		case err != nil:
			return refused{err}
		}
		checked = report.CheckReading(made, r)
	}
	switch {
	case as == inFull:
		p.print(made, j, checked)
		return nil
	case as == atAGlance && checked != nil: // the plan itself is stale where the check found otherwise
		fmt.Fprintf(&p.out, "%s\n\n%s\n", report.WrapTo(report.Title(made), p.width()), report.WrapTo(checked.Text, p.width()))
		return nil
	case as == atAGlance:
		fmt.Fprint(&p.out, report.Short(made, j.sheet.Notes).Text(p.width()))
		return nil
	}
	out := report.JSON(made, j.sheet.Notes)
	out.Check = checked
	return p.json(out)
}

var errNoCheck = refuse("--check takes one reading, e.g. --check \"14ft 63\"")

// print prints all of a plan for people: the answer first.
func (p *program) print(made plan.Plan, j job, checked *report.Check) {
	line := func(s string) { fmt.Fprintln(&p.out, report.WrapTo(s, p.width())) }
	line(report.Title(made))
	fmt.Fprintln(&p.out)
	if checked != nil {
		line(checked.Text)
		fmt.Fprintln(&p.out)
	}
	for _, s := range report.Warnings(made) {
		line(s)
		fmt.Fprintln(&p.out)
	}
	for _, s := range report.Answer(made) {
		line(s)
	}
	fmt.Fprintln(&p.out)
	line(report.Sure(made))
	fmt.Fprint(&p.out, "\n"+p.pictures(chart.Of(made)))
	for _, part := range report.Sections(made, j.sheet.Notes) {
		fmt.Fprintln(&p.out, "\n"+part.Title)
		for _, s := range part.Items {
			fmt.Fprintln(&p.out, report.Wrap("- "+s, "  ", p.width()))
		}
	}
}
