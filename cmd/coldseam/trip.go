package main

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/rig"
	"coldseam/profile/settings"
	"coldseam/profile/sun"
	"coldseam/profile/trip"
	"coldseam/profile/unit"
)

// tripKeys are the header keys that a trip takes as flags.
var tripKeys = []string{"for", "deepest", "lake length", "secchi", "latitude", "longitude", "units", "wind", "fly weight", "retrieve"}

func (p *program) tripCommand() *cli.Command {
	flags := []cli.Flag{
		&cli.StringFlag{Name: "water", Usage: "the lake's name, as on its drops"},
		&cli.StringFlag{Name: "on", Usage: "the day, 2026-08-01; else today"},
		&cli.BoolFlag{Name: "json", Usage: "print JSON for scripts"},
		bookFlag(),
	}
	for _, key := range tripKeys {
		flags = append(flags, &cli.StringFlag{Name: flagName(key), Usage: notebook.Help(key)})
	}
	return &cli.Command{
		Name:      "trip",
		Usage:     "before the trip: what to expect, leaders to tie, line to mark",
		ArgsUsage: "--water \"Alder Kettle\" [flags]",
		Description: `Half a page to print. It expects by the drops of that water in the book; where
there are none, by the lake's greatest depth, or by its length and clarity:

   coldseam trip --water "Alder Kettle" --on 2026-08-01 --for rainbow
   coldseam trip --deepest 38ft --lake-length 800m --secchi 9ft`,
		Flags:  flags,
		Action: p.trip,
	}
}

func (p *program) trip(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("trip takes flags only, not %q: coldseam trip --water \"Alder Kettle\"", c.Args().First())
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	day, err := p.onDay(c)
	if err != nil {
		return err
	}
	j, err := p.blank(c, set)
	if err != nil {
		return err
	}
	var seen []job
	if j.input.Drop.Water != "" {
		if seen, err = p.history(c, set, j.input.Drop.Water); err != nil {
			return err
		}
	}
	if j.input.Drop.For == "" && len(seen) > 0 { // the fish of the last drop there
		j.input.Fish = seen[len(seen)-1].input.Fish
	}
	lake := set.LakeFor(j.input.Drop.Water)
	in := before(j, seen, lake, day)
	expected, err := trip.Expect(in)
	var unknown trip.Unknown
	switch {
	case errors.As(err, &unknown) && unknown.Length:
		return refuse("--lake-length: the rule of thumb speaks for lakes of 50 m to 20 km: give --deepest 38ft instead")
	case errors.As(err, &unknown):
		return refuse("%s: nothing is known of it: give --deepest 38ft, or --lake-length 800m and --secchi 9ft, or name a --water of the book", named(j.input.Drop.Water))
	case err != nil:
		return err
	}
	water, units := j.input.Drop.Water, shownOn(c, set, j.input.Drop.Units, seen)
	if len(seen) > 0 { // as it is written there
		water = seen[len(seen)-1].input.Drop.Water
	}
	out := report.Trip{
		Water: water, Day: day, Fish: j.input.Fish, Units: units, Rules: j.input.Rules, Clear: in.Secchi.Known, Expect: expected,
		Kit: trip.Pack(expected, in, tackleOf(j.input, units), units.Feet(), units.DepthStepM()),
	}
	if in.Latitude.Known {
		o := sun.Look(day, in.Latitude.Value, j.input.Drop.Longitude, in.Secchi, set.Zone)
		out.Sun = &o
	}
	if c.Bool("json") {
		return p.json(out.JSON())
	}
	fmt.Fprint(&p.out, out.Text(p.width()))
	return nil
}

func named(water string) string {
	if water == "" {
		return "no --water"
	}
	return water
}

// onDay is the day of --on, else today.
func (p *program) onDay(c *cli.Context) (time.Time, error) {
	if !c.IsSet("on") {
		return time.Parse(time.DateOnly, p.now().Format(time.DateOnly))
	}
	day, err := time.Parse(time.DateOnly, c.String("on"))
	if err != nil {
		return day, refuse("--on: %q is not a day: write e.g. 2026-08-01", c.String("on"))
	}
	return day, nil
}

// blank is a job without readings, of the flags and the settings alone.
func (p *program) blank(c *cli.Context, set settings.Settings) (job, error) {
	flags, err := headers(c, set)
	if err != nil {
		return job{}, err
	}
	sheets, err := notebook.Read(nil, notebook.Options{Name: "trip", Unread: true, Flags: flags, Defaults: set.Headers, Fish: set.Fish, Waters: set.WaterNames()})
	if err != nil {
		return job{}, refused{err}
	}
	return makeJob(sheets[0], set, "trip")
}

// before is what is known before the trip: the drops that were taken, each with its plan for
// the fish of the trip, and the water's place, size and clarity by flags, settings or drops.
func before(j job, seen []job, lake settings.Lake, day time.Time) trip.Input {
	in := trip.Input{Day: day, ClearanceM: j.input.ClearanceM}
	if f := j.input.Fish; f.Kind == fish.Coldwater {
		in.LimitC = profile.Optional{Value: f.ComfortHighC.Value, Known: f.ComfortHighC.Known}
	}
	in.Learn(j.input.Drop)
	if lake.Basin != nil {
		in.Learn(profile.Drop{Deepest: profile.Some(lake.Basin.FloorM())})
	}
	for _, s := range slices.Backward(seen) { // the youngest first
		s.input.Fish = j.input.Fish
		made, err := plan.Make(s.input)
		if err != nil {
			continue // nothing usable was read
		}
		in.Learn(made.Drop)
		in.Drops = append(in.Drops, dropOf(made))
	}
	in.Learn(profile.Drop{Secchi: lake.SecchiM})
	return in
}

// dropOf is what a trip is expected by, of a plan.
func dropOf(made plan.Plan) trip.Drop {
	when, _ := time.Parse(time.DateOnly, made.Drop.Date[:len(time.DateOnly)])
	d := trip.Drop{When: when, Layers: made.Layers, Ice: made.UnderIce()}
	if b := made.Band; b.Found {
		d.WaterM = profile.Some(b.WaterM)
		d.Edge = profile.Optional{Value: b.Top.Best, Known: !b.ToSurface}
	}
	return d
}

// shownOn are the units to print in: those that were said, else those of the last drop, else
// those of a length on a flag.
func shownOn(c *cli.Context, set settings.Settings, said unit.System, seen []job) unit.System {
	settled := slices.IndexFunc(set.Headers, func(h notebook.Header) bool { return h.Key == "units" })
	switch {
	case c.IsSet("units"):
		return said.Shown()
	case settled >= 0: // a page's own scale is told by its readings, and here are none
		own, _ := unit.ParseSystem(set.Headers[settled].Value)
		return own.Shown()
	case len(seen) > 0:
		return seen[len(seen)-1].input.Drop.Units.Shown()
	}
	for _, name := range []string{"deepest", "secchi", "lake-length"} {
		if _, u, err := unit.ParseLength(c.String(name)); err == nil && u == unit.Foot {
			return unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}
		}
	}
	return said.Shown()
}

func tackleOf(in plan.Input, units unit.System) trip.Tackle {
	return trip.Tackle{
		Wind: in.Drop.Wind, Suspended: in.Fish.OpenWater, UsualKg: in.Fish.FlyG.Value / 1000, Teeth: in.Fish.Teeth, Rules: in.Rules,
		StepM: rig.Step(units.Feet()), Tackle: in.Tackle, FlyKg: in.Drop.FlyWeight, FlyDensity: in.FlyDensity, Retrieve: in.Drop.Retrieve,
	}
}
