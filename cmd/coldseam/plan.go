package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/chart"
	"coldseam/profile"
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
		r, err := checkReading(check, made)
		if err != nil {
			return err
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

// checkReading reads the one reading of --check in the units of the drop.
func checkReading(text string, made plan.Plan) (profile.Reading, error) {
	sheets, err := notebook.Read([]byte(text), notebook.Options{Name: "--check", Flags: []notebook.Header{{Key: "units", Value: made.Drop.Units.String(), From: "page"}}})
	if err != nil {
		return profile.Reading{}, refused{err}
	}
	if len(sheets) != 1 || len(sheets[0].Drop.Readings) != 1 {
		return profile.Reading{}, errNoCheck
	}
	// the same thermometer and line as on the page
	d := made.Drop
	d.Readings = sheets[0].Drop.Readings
	d.Correct()
	return d.Readings[0], nil
}

// print prints all of a plan for people: the answer first.
func (p *program) print(made plan.Plan, j job, checked *report.Check) {
	line := func(s string) { fmt.Fprintln(&p.out, report.WrapTo(s, p.width())) }
	block := func(title string, items []string) {
		if len(items) == 0 {
			return
		}
		fmt.Fprintln(&p.out, "\n"+title)
		for _, s := range items {
			fmt.Fprintln(&p.out, report.Wrap("- "+s, "  ", p.width()))
		}
	}
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
	why, changes := report.Reasons(made)
	block("Confirm at the anchor", report.Confirm(made))
	block("Why", why)
	block("What would change it", changes)
	block("Light of the day", report.Sun(made))
	block("The whole lake", report.Basin(made))
	block("Assumed or not measured", report.Assumed(made))
	block("Your readings", report.AsRead(made, j.sheet.Notes))
	block("Safety", report.Cautions(made))
}
