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
		Usage:       "the answer: depth, water to cast over, leader, wait and retrieve",
		ArgsUsage:   "[flags] [FILE...]   (no file, or -, is standard input)",
		Description: "A page is header lines such as \"bottom: 31 ft\", then readings, one or more a\nline, as you would jot them down: 5 73.5, 10ft 72F, surf 74, 72@3, 15-65.",
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts, one object per drop"},
			&cli.StringFlag{Name: "check", Usage: "a reading at the anchor, \"14ft 63\": what it changes"},
		}, headerFlags()...),
		Action: p.plan,
	}
}

func (p *program) plan(c *cli.Context) error {
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return err
	}
	for i, j := range jobs {
		if i > 0 && !c.Bool("json") {
			fmt.Fprint(&p.out, "\n"+strings.Repeat("-", report.Width)+"\n\n")
		}
		check := ""
		if c.IsSet("check") {
			check = c.String("check")
			if strings.TrimSpace(check) == "" {
				return errNoCheck
			}
		}
		if err := p.answer(j, check, c.Bool("json")); err != nil {
			return err
		}
	}
	return nil
}

// answer makes and prints the plan of a job, for people or for scripts; check is a
// reading at the anchor, or "".
func (p *program) answer(j job, check string, asJSON bool) error {
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
	if !asJSON {
		p.print(made, j, checked)
		return nil
	}
	notes := append(append(report.AsRead(made, j.sheet.Notes)[1:], report.Assumed(made)...), j.notes...)
	out := report.JSON(made, notes)
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

// print prints a plan for people: the answer first.
func (p *program) print(made plan.Plan, j job, checked *report.Check) {
	line := func(s string) { fmt.Fprintln(&p.out, report.Wrap(s, "")) }
	block := func(title string, items []string) {
		if len(items) == 0 {
			return
		}
		fmt.Fprintln(&p.out, "\n"+title)
		for _, s := range items {
			fmt.Fprintln(&p.out, report.Wrap("- "+s, "  "))
		}
	}
	line(report.Title(made))
	fmt.Fprintln(&p.out)
	for _, s := range report.Warnings(made) {
		line(s)
		fmt.Fprintln(&p.out)
	}
	for _, s := range report.Answer(made) {
		line(s)
	}
	if checked != nil {
		fmt.Fprintln(&p.out)
		line(checked.Text)
	}
	fmt.Fprintln(&p.out)
	line(report.Sure(made))
	fmt.Fprint(&p.out, "\n"+chart.Strip(chart.Of(made)))
	why, changes := report.Reasons(made)
	block("Confirm at the anchor", report.Confirm(made))
	block("Why", why)
	block("What would change it", changes)
	block("Assumed or not measured", append(report.Assumed(made), j.notes...))
	block("As read", report.AsRead(made, j.sheet.Notes))
	block("Care", report.Cautions(made))
}
