package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/fish"
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
		Usage:     "leader, parts and sink time for a depth, without a drop",
		ArgsUsage: "--water-depth 15ft [flags]",
		Description: `With --retrieve the leader is worked out for it, else it is the trade's rule,
the depth of water plus a quarter, with the retrieves at which that holds.
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
			&cli.StringFlag{Name: "kind", Usage: "long-leader, hung, sinking or straight-down"},
			&cli.StringFlag{Name: "for", Usage: notebook.Help("for")},
			&cli.BoolFlag{Name: "ice", Usage: "through a hole in the ice"},
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
	f := rigFlags{c: c}
	in, shown := f.input(set)
	if f.err != nil {
		return f.err
	}
	made := rig.Find(in)
	if c.Bool("json") {
		return p.json(report.Rig(made))
	}
	for _, s := range report.RigAlone(made, in, shown) {
		fmt.Fprintln(&p.out, report.WrapTo(s, p.width()))
	}
	return nil
}

// rigFlags reads flags; what is wrong with the first of those that cannot be read stays
// in err.
type rigFlags struct {
	c   *cli.Context
	err error
}

// input is what the flags and the settings ask for, and the units to print in.
func (f *rigFlags) input(set settings.Settings) (in rig.Input, shown unit.System) {
	in = rig.Input{
		Rules: set.RulesFor(f.c.String("water")), Tackle: set.Tackle, Retrieve: usualRetrieve(set),
	}
	if !f.c.IsSet("water-depth") {
		f.refuse("--water-depth is needed: the depth of water under the fly, e.g. --water-depth 15ft")
	}
	in.WaterM, shown.Depth = f.depth("water-depth")
	in.FlyM = max(0, in.WaterM-set.ClearanceM)
	if f.c.IsSet("fly-depth") {
		in.FlyM, _ = f.depth("fly-depth")
	}
	in.Suspended = rig.InOpenWater(in.WaterM, in.FlyM)
	if in.FlyM > in.WaterM+1e-9 {
		f.refuse("--fly-depth is deeper than the water: the fly would lie on the bottom")
	}
	in.FlyKg, in.FlyDensity = f.fly(set)
	after := f.fish(set)
	in.UsualKg, in.Teeth, in.Ice = after.FlyG.Value/1000, after.Teeth, f.c.Bool("ice")
	in.Wind = f.quantity("wind", notebook.WindMps)
	if f.c.IsSet("retrieve") {
		in.Retrieve = f.quantity("retrieve", notebook.RetrieveMps)
	}
	in.DriftMps = f.quantity("drift", unit.ParseSpeed).Or(0)
	in.ShotKg = f.quantity("shot", unit.ParseMass).Or(0)
	if in.Retrieve.Or(0) > rig.FastestMps || in.DriftMps > rig.FastestMps {
		f.refuse("a retrieve or a drift over 3 m/s (10 ft/s) is too fast for a fly")
	}
	if in.ShotKg > rig.HeaviestShotKg {
		f.refuse("--shot: %q is too heavy to pinch on a leader", f.c.String("shot"))
	}
	if f.c.IsSet("flies") {
		if in.Flies = f.c.Int("flies"); in.Flies < 1 || in.Flies > rig.MostFlies {
			f.refuse("--flies: %d: one to three are tied on", in.Flies)
		}
	}
	in.WaterC = f.quantity("water-temp", waterTemp)
	if in.Kind = rig.Kind(f.c.String("kind")); in.Kind != "" && !in.Kind.Known() {
		f.refuse("--kind: %q: write long-leader, hung, sinking or straight-down", in.Kind)
	}
	if f.c.IsSet("units") {
		var err error
		if shown, err = unit.ParseSystem(f.c.String("units")); err != nil {
			f.refuse("--units: %w", err)
		}
	}
	in.StepM = rig.Step(shown.Feet())
	return in, shown
}

func (f *rigFlags) refuse(format string, args ...any) {
	if f.err == nil {
		f.err = refuse(format, args...)
	}
}

// depth reads a depth, which must be more than nothing.
func (f *rigFlags) depth(name string) (float64, unit.Length) {
	text := f.c.String(name)
	m, u, err := unit.ParseLength(text)
	if err == nil && (m <= 0 || m > 300) {
		err = fmt.Errorf("%q is not a likely depth", text)
	}
	if err != nil {
		f.refuse("--%s: %w", name, err)
	}
	return m, u
}

// quantity reads a flag that may be left out and is not less than nothing.
func (f *rigFlags) quantity(name string, parse func(string) (float64, error)) profile.Optional {
	if !f.c.IsSet(name) {
		return profile.Optional{}
	}
	text := f.c.String(name)
	v, err := parse(text)
	if err == nil && v < 0 {
		err = fmt.Errorf("%q is less than nothing", text)
	}
	if err != nil {
		f.refuse("--%s: %w", name, err)
	}
	return profile.Some(v)
}

func waterTemp(text string) (float64, error) {
	v, u, err := unit.ParseTemperature(text)
	switch {
	case err != nil:
		return 0, err
	case u == unit.NoTemperature:
		return 0, fmt.Errorf("%q has no unit: write e.g. 60 F or 15 C", text)
	case v < 0 || v > 35:
		return 0, fmt.Errorf("%q is not a likely temperature", text)
	}
	return v, nil
}

// fly gives the mass and the density of the fly that is named, else of the usual one.
func (f *rigFlags) fly(set settings.Settings) (kg profile.Optional, density float64) {
	w := set.Usual
	if f.c.IsSet("fly-weight") {
		var err error
		if w, err = set.Fly(f.c.String("fly-weight")); err != nil {
			f.refuse("--fly-weight: %w", err)
		}
	}
	if w.Kg > 0 {
		kg = profile.Some(w.Kg)
	}
	density = w.KnownDensity()
	if material := f.c.String("fly-material"); f.c.IsSet("fly-material") {
		var ok bool
		if density, ok = weight.MetalDensity(material); !ok {
			f.refuse("--fly-material: %q: write a metal, e.g. tungsten, brass or lead", material)
		}
	}
	return kg, density
}

// fish is the one that is named, else that of the settings, else the usual one.
func (f *rigFlags) fish(set settings.Settings) fish.Fish {
	name := fish.Usual
	for _, h := range set.Headers {
		if h.Key == "for" {
			name = h.Value
		}
	}
	if f.c.IsSet("for") {
		name = f.c.String("for")
	}
	found, err := fish.FindIn(set.Fish, name)
	if err != nil {
		f.refuse("--for: %w", err)
	}
	return found
}

// usualRetrieve is that of the settings.
func usualRetrieve(set settings.Settings) (mps profile.Optional) {
	for _, h := range set.Headers {
		if v, err := notebook.RetrieveMps(h.Value); h.Key == "retrieve" && err == nil {
			mps = profile.Some(v)
		}
	}
	return mps
}
