package main

import (
	"bytes"
	"errors"
	"path/filepath"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"coldseam/profile/exchange"
	"coldseam/profile/plain"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) exportCommand() *cli.Command {
	return &cli.Command{
		Name:      "export",
		Usage:     "drops as CSV or JSON, for a spreadsheet or an agency",
		ArgsUsage: "[flags] [FILE|last|N...]   (none: the whole book)",
		Description: `Forms: long has a row for each reading, as written and as corrected, and loses
nothing: coldseam book add reads it back. wide has a row for each drop and a
column for each depth; it loses corrected values, repeats (the last counts) and
the order of the readings. json is a list of drops. wqx has the US water-quality
exchange columns, corrected values, and comments that say what was done; it asks
for a time zone, and leaves empty what was not measured or given. Confirm its
columns against the agency's current template before you send it.

   coldseam export -o season.csv --water "Alder Kettle"
   coldseam export --form wqx --site AK-1 --time-zone America/Chicago`,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "form", Usage: "long (usual), wide, json or wqx"},
			&cli.BoolFlag{Name: "json", Usage: "the same as --form json"},
			&cli.StringFlag{Name: "o", Usage: "the file to write; without it standard output"},
			&cli.BoolFlag{Name: "force", Usage: "replace a file that is there"},
			&cli.StringFlag{Name: "water", Usage: "only the drops of this water"},
			&cli.StringFlag{Name: "time-zone", Usage: "of the drops' times: America/Chicago or -05:00"},
			&cli.StringFlag{Name: "project", Usage: "what the agency calls its project (wqx)"},
			&cli.StringFlag{Name: "site", Usage: "what the agency calls the place (wqx)"},
			bookFlag(),
		},
		Action: p.export,
	}
}

func (p *program) export(c *cli.Context) error {
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	form, err := exportForm(c)
	if err != nil {
		return err
	}
	zone := set.Zone
	if c.IsSet("time-zone") {
		if zone, err = settings.ParseZone(c.String("time-zone")); err != nil {
			return refuse("--time-zone: %w", err)
		}
	}
	sources, err := p.sources(c, set)
	if err != nil {
		return err
	}
	items, err := exchange.Items(sources)
	if err != nil {
		return refused{err}
	}
	var out bytes.Buffer
	switch form {
	case "long":
		err = exchange.WriteLong(&out, items, zone)
	case "wide":
		err = p.exportWide(&out, items, zone)
	case "wqx":
		err = p.exportAgency(&out, c, items, agency(c, set, zone))
	default:
		var line []byte
		line, err = jsonLine(exchange.JSON(items, zone))
		out.Write(line)
	}
	if err != nil {
		return err
	}
	if to := c.String("o"); to != "" {
		p.keep(to, sources)
		return p.write(to, c.Bool("force"), out.Bytes())
	}
	if plain.Line(strings.Map(cellSign, out.String())) != strings.Map(cellSign, out.String()) {
		p.tell("Signs that a terminal may act on are replaced: -o FILE keeps them.")
	}
	_, err = p.out.Write(out.Bytes())
	return err
}

// cellSign leaves the signs between rows and cells out of what is looked at.
func cellSign(r rune) rune {
	if r == '\n' || r == '\t' {
		return ' '
	}
	return r
}

// exportForm is the form that the flags ask for, or the name of the file.
func exportForm(c *cli.Context) (string, error) {
	form := c.String("form")
	switch {
	case c.Bool("json") && form != "" && form != "json":
		return "", refuse("--json and --form %s are two forms: give one", form)
	case c.Bool("json"):
		form = "json"
	case form == "" && strings.EqualFold(filepath.Ext(c.String("o")), ".json"):
		form = "json"
	case form == "":
		form = "long"
	}
	switch form {
	case "wqx":
	case "long", "wide", "json":
		for _, flag := range []string{"project", "site"} {
			if c.IsSet(flag) {
				return "", refuse("--%s is for the exchange columns: add --form wqx", flag)
			}
		}
	default:
		return "", refuse("--form: %q is none: long, wide, json or wqx", form)
	}
	return form, nil
}

func (p *program) exportWide(out *bytes.Buffer, items []exchange.Item, zone *time.Location) error {
	lost, err := exchange.WriteWide(out, items, zone)
	if lost > 0 {
		p.tell("%s of a depth that was read again left out: --form long has all.", unit.Count(lost, "reading"))
	}
	return err
}

// agency is what the exchange columns take from flags and settings.
func agency(c *cli.Context, set settings.Settings, zone *time.Location) exchange.Agency {
	a := exchange.Agency{Project: set.Project, Zone: zone, Site: func(water string) string { return set.LakeFor(water).Site }}
	if c.IsSet("project") {
		a.Project = c.String("project")
	}
	if c.IsSet("site") {
		a.Site = func(string) string { return c.String("site") }
	}
	return a
}

func (p *program) exportAgency(out *bytes.Buffer, c *cli.Context, items []exchange.Item, a exchange.Agency) error {
	it, err := a.Check(items)
	page := "standard input"
	if it != nil && it.Page != "" {
		page = it.Page
	}
	switch {
	case errors.Is(err, exchange.ErrNoZone):
		return refuse("%s: %w: say --time-zone America/Chicago, or time_zone in the settings", page, err)
	case errors.Is(err, exchange.ErrNoCode):
		return refuse("%s: %w: give its name, America/Chicago", a.Zone.String(), err)
	case errors.Is(err, exchange.ErrNoDate):
		return refuse("%s: %w: add a line such as date: 2026-07-18", page, err)
	case errors.Is(err, exchange.ErrNoSite):
		return refuse("%s: %w: give each [[water]] its site in the settings, or one of them with --water and --site", page, err)
	case errors.Is(err, exchange.ErrSite):
		return refuse("%s: %w: choose one with --water", page, err)
	case err != nil:
		return refuse("%s: %w: put the date right, or leave the time out", page, err)
	}
	empty := []string{"Activity Relative Depth Name", "Sample Collection Method ID", "Result Measure Qualifier", "Result Status ID"}
	if a.Project == "" {
		empty = append(empty, "Project ID")
	}
	if len(items) > 0 && a.Site(items[0].Drop.Water) == "" {
		empty = append(empty, "Monitoring Location ID")
	}
	p.tell("Left empty, since nothing is known of them: %s. Confirm all columns against the agency's current template.", strings.Join(empty, ", "))
	return a.Write(out, items)
}
