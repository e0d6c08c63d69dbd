package main

import (
	"encoding/json"
	"fmt"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/rig"
	"coldseam/profile/say"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) rigCommand() *cli.Command {
	return &cli.Command{
		Name:        "rig",
		Usage:       "leader, parts and wait for a depth, without a drop",
		ArgsUsage:   "--water-depth 15ft [flags]",
		Description: "The leader is the trade's rule: the depth of water plus a quarter. Lengths carry\ntheir unit.",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"},
			&cli.StringFlag{Name: "water-depth", Usage: "depth of water under the fly, 15ft"},
			&cli.StringFlag{Name: "fly-depth", Usage: "depth of the fly, 14ft; else 1 ft above the bottom"},
			&cli.StringFlag{Name: "fly-weight", Usage: notebook.Help("fly weight")},
			&cli.StringFlag{Name: "wind", Usage: notebook.Help("wind")},
			&cli.StringFlag{Name: "kind", Usage: "long-leader, hung or sinking; else by depth and wind"},
			&cli.StringFlag{Name: "water", Usage: "the lake's name, for its rules in the settings"},
			&cli.StringFlag{Name: "units", Usage: "units to print in; else those of --water-depth"},
		},
		Action: p.rig,
	}
}

func (p *program) rig(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("rig takes flags only, not %q: coldseam rig --water-depth 15ft", c.Args().First())
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	in := rig.Input{Rules: set.RulesFor(c.String("water")), Stock: set.Stock, LongestM: set.LongestM, RodM: set.RodM}
	if !c.IsSet("water-depth") {
		return refuse("--water-depth is needed: the depth of water under the fly, e.g. --water-depth 15ft")
	}
	depth, u, err := length(c, "water-depth")
	if err != nil {
		return err
	}
	in.WaterM = depth
	in.FlyM = max(0, depth-set.ClearanceM)
	if c.IsSet("fly-depth") {
		if in.FlyM, _, err = length(c, "fly-depth"); err != nil {
			return err
		}
	}
	if in.FlyM > in.WaterM+1e-9 {
		return refuse("--fly-depth is deeper than the water: the fly would lie on the bottom")
	}
	for _, h := range set.Headers { // the usual fly, where none is named
		if kg, err := unit.ParseMass(h.Value); h.Key == "fly weight" && err == nil && !c.IsSet("fly-weight") {
			in.FlyKg = profile.Some(kg)
		}
	}
	weigh := func(s string) (float64, error) { return unit.ParseMass(set.FlyWeight(s)) }
	if c.IsSet("fly-weight") {
		if in.FlyKg, err = scaled(c, "fly-weight", weigh); err != nil {
			return err
		}
	}
	if in.Wind, err = scaled(c, "wind", unit.ParseSpeed); err != nil {
		return err
	}
	switch k := rig.Kind(c.String("kind")); k {
	case "", rig.LongLeader, rig.Hung, rig.Sinking:
		in.Kind = k
	default:
		return refuse("--kind: %q: write long-leader, hung or sinking", k)
	}
	shown := unit.System{Depth: u}
	if c.IsSet("units") {
		if shown, err = unit.ParseSystem(c.String("units")); err != nil {
			return refuse("--units: %w", err)
		}
	}
	in.StepM = rig.StepM
	if shown.Feet() {
		in.StepM = rig.StepFtM
	}
	made := rig.Find(in)
	if c.Bool("json") {
		data, err := json.Marshal(say.Rig(made))
		if err != nil {
			return err
		}
		p.out.Write(append(data, '\n'))
		return nil
	}
	for _, s := range say.RigAlone(made, in, shown) {
		fmt.Fprintln(&p.out, say.Wrap(s, ""))
	}
	return nil
}

// length reads a length flag, which must be more than nothing.
func length(c *cli.Context, name string) (float64, unit.Length, error) {
	m, u, err := unit.ParseLength(c.String(name))
	if err == nil && (m <= 0 || m > 300) {
		err = fmt.Errorf("%q is not a likely depth", c.String(name))
	}
	if err != nil {
		return 0, u, refuse("--%s: %w", name, err)
	}
	return m, u, nil
}

func scaled(c *cli.Context, name string, parse func(string) (float64, error)) (profile.Optional, error) {
	if !c.IsSet(name) {
		return profile.Optional{}, nil
	}
	v, err := parse(c.String(name))
	if err == nil && v < 0 {
		err = fmt.Errorf("%q is less than nothing", c.String(name))
	}
	if err != nil {
		return profile.Optional{}, refuse("--%s: %w", name, err)
	}
	return profile.Some(v), nil
}
