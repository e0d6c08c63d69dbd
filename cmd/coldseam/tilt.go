package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/tilt"
	"coldseam/profile/unit"
)

func (p *program) tiltCommand() *cli.Command {
	return &cli.Command{
		Name:      "tilt",
		Usage:     "what the wind does to the thermocline: which end to try first",
		ArgsUsage: "[flags] [FILE|last...]   (no file, or -: standard input)",
		Description: `Wind pushes the warm water to the end that it blows to. The thermocline stands
lower there, higher at the other end, and rocks for hours when the wind drops:

   coldseam tilt last --wind "SW 10 mph" --hours 3 --lake-length 800m`,
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts, one object per drop"},
			&cli.StringFlag{Name: "hours", Usage: "how long this wind has blown, 3 or \"40 min\""},
			&cli.StringFlag{Name: "at", Usage: "where the drop was taken: upwind, middle or downwind"},
		}, readFlags()...),
		Action: p.tilt,
	}
}

func (p *program) tilt(c *cli.Context) error {
	s, at, err := blown(c)
	if err != nil {
		return err
	}
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return err
	}
	for i, j := range jobs {
		made, err := plan.Make(j.input)
		if err != nil {
			return unusable(j.sheet.Name, made.Drop, err)
		}
		tilted, no := made.Tilt(s, at)
		switch {
		case no != "":
			return refuse("%s: %s", j.sheet.Name, report.NoTilt(made, no))
		case c.Bool("json"):
			if err := p.json(report.TiltAsJSON(made, tilted)); err != nil {
				return err
			}
			continue
		case i > 0:
			fmt.Fprint(&p.out, "\n"+strings.Repeat("-", p.width())+"\n\n")
		}
		fmt.Fprint(&p.out, report.Tilt(made, tilted, p.width()))
	}
	return nil
}

// longestBlow is the longest that a wind is taken to blow, s: ten days.
const longestBlow = 10 * 24 * 3600

// blown reads how long the wind has blown, and where the drop was taken.
func blown(c *cli.Context) (s profile.Optional, at tilt.Place, err error) {
	if text := c.String("hours"); c.IsSet("hours") {
		s.Known = true
		if s.Value, err = unit.ParseDuration(text + " h"); err != nil { // a bare number is hours
			s.Value, err = unit.ParseDuration(text)
		}
		if err != nil || s.Value < 0 || s.Value > longestBlow {
			return s, at, refuse("--hours: %q is no time that a wind blows: write e.g. 3, or \"40 min\"", text)
		}
	}
	if !c.IsSet("at") {
		return s, tilt.AnyPlace, nil
	}
	switch at = tilt.Place(strings.ToLower(strings.TrimSpace(c.String("at")))); at {
	case tilt.Upwind, tilt.Middle, tilt.Downwind:
		return s, at, nil
	}
	return s, at, refuse("--at: %q is no place here: write upwind, middle or downwind", c.String("at"))
}
