package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
	"coldseam/profile/rig"
	"coldseam/profile/rig/weight"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

func (p *program) rigCommand() *cli.Command {
	return &cli.Command{
		Name:      "rig",
		Usage:     "leader, parts and wait for a depth, without a drop",
		ArgsUsage: "--water-depth 15ft [flags]",
		Description: `With --retrieve the leader is worked out for it, else it is the trade's rule,
the depth of water plus a quarter, and the draws at which that holds are given.
Lengths, weights and speeds carry their unit.`,
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"},
			&cli.StringFlag{Name: "water-depth", Usage: "depth of water under the fly, 15ft"},
			&cli.StringFlag{Name: "fly-depth", Usage: "depth of the fly, 14ft; else 1 ft above the bottom"},
			&cli.StringFlag{Name: "fly-weight", Usage: "0.25 g, \"3.3 mm tungsten\", or a fly of the settings"},
			&cli.StringFlag{Name: "fly-material", Usage: "what the fly mostly weighs by: tungsten, lead..."},
			&cli.StringFlag{Name: "retrieve", Usage: notebook.Help("retrieve")},
			&cli.StringFlag{Name: "drift", Usage: "speed of a boat adrift, 0.1 m/s; at anchor none"},
			&cli.IntFlag{Name: "flies", Usage: "flies tied on; else as in the settings, else 1"},
			&cli.StringFlag{Name: "shot", Usage: "weight pinched on a foot above the fly, 0.4 g"},
			&cli.StringFlag{Name: "water-temp", Usage: "temperature of the water, 60 F; else 12 C"},
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
	in.Suspended = in.WaterM-in.FlyM > rig.OpenWaterM
	if in.FlyM > in.WaterM+1e-9 {
		return refuse("--fly-depth is deeper than the water: the fly would lie on the bottom")
	}
	if in.FlyKg, in.FlyDensity, err = fly(c, set); err != nil {
		return err
	}
	if in.Wind, err = scaled(c, "wind", unit.ParseSpeed); err != nil {
		return err
	}
	if err := drawn(c, set, &in); err != nil {
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
		return p.json(report.Rig(made))
	}
	for _, s := range report.RigAlone(made, in, shown) {
		fmt.Fprintln(&p.out, report.Wrap(s, ""))
	}
	return nil
}

// fly gives the mass and the density of the fly that is named, else of the usual one.
func fly(c *cli.Context, set settings.Settings) (kg profile.Optional, density float64, err error) {
	w := set.Usual
	if c.IsSet("fly-weight") {
		if w, err = set.Fly(c.String("fly-weight")); err != nil {
			return kg, 0, refuse("--fly-weight: %w", err)
		}
	}
	if w.Kg > 0 {
		kg = profile.Some(w.Kg)
	}
	if w.Density != weight.AnyFly {
		density = w.Density
	}
	if c.IsSet("fly-material") {
		var ok bool
		if density, ok = weight.MetalDensity(c.String("fly-material")); !ok {
			return kg, 0, refuse("--fly-material: %q: write a metal, e.g. tungsten, brass or lead", c.String("fly-material"))
		}
	}
	return kg, density, nil
}

// drawn reads the flags about the draw and what is on the leader.
func drawn(c *cli.Context, set settings.Settings, in *rig.Input) (err error) {
	for _, h := range set.Headers { // the usual retrieve, where none is given
		if v, err := unit.ParseSpeed(h.Value); h.Key == "retrieve" && err == nil {
			in.Retrieve = profile.Some(v)
		}
	}
	if c.IsSet("retrieve") {
		if in.Retrieve, err = scaled(c, "retrieve", unit.ParseSpeed); err != nil {
			return err
		}
	}
	drift, err := scaled(c, "drift", unit.ParseSpeed)
	if err != nil {
		return err
	}
	shot, err := scaled(c, "shot", unit.ParseMass)
	if err != nil {
		return err
	}
	in.DriftMps, in.ShotKg = drift.Or(0), shot.Or(0)
	switch {
	case in.Retrieve.Or(0) > 3 || in.DriftMps > 3:
		return refuse("a draw or a drift over 3 m/s (10 ft/s) is no speed for a fly")
	case in.ShotKg > 0.05:
		return refuse("--shot: %q is too heavy to pinch on a leader", c.String("shot"))
	}
	in.Flies = set.Flies
	if c.IsSet("flies") {
		if in.Flies = c.Int("flies"); in.Flies < 1 || in.Flies > 3 {
			return refuse("--flies: %d: one to three are tied on", in.Flies)
		}
	}
	if c.IsSet("water-temp") {
		v, u, err := unit.ParseTemperature(c.String("water-temp"))
		switch {
		case err != nil:
		case u == unit.NoTemperature:
			err = fmt.Errorf("%q has no unit: write e.g. 60 F or 15 C", c.String("water-temp"))
		case v < 0 || v > 35:
			err = fmt.Errorf("%q is not a likely temperature", c.String("water-temp"))
		}
		if err != nil {
			return refuse("--water-temp: %w", err)
		}
		in.WaterC = profile.Some(v)
	}
	in.SinkMps, in.BottomContacts = set.SinkMps, set.BottomContacts
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
