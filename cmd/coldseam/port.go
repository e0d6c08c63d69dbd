package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/device"
	"coldseam/device/format"
	"coldseam/device/line"
	"coldseam/device/probe"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
	"coldseam/profile/water"
)

const probeFlagsTitle = "The probe (or once and for all under [probe] in the settings)"

// lineFlags say how a probe's lines are read.
func lineFlags() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "layout", Category: probeFlagsTitle, Usage: `what its lines hold, "depth m, temp C"; found by itself where possible`},
		&cli.StringFlag{Name: "thermistor", Category: probeFlagsTitle, Usage: `its three coefficients, "1.129241e-3 2.341077e-4 8.775468e-8", for ohms`},
		&cli.StringFlag{Name: "air", Category: probeFlagsTitle, Usage: `pressure of the air, "1008 hPa", for a probe that states absolute pressure`},
	}
}

// portFlags say where a probe is and how its port is set.
func portFlags() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "port", Category: probeFlagsTitle, Usage: "the probe's port; coldseam probe list shows them"},
		&cli.IntFlag{Name: "baud", Category: probeFlagsTitle, Usage: "its speed, 9600 if not said"},
		&cli.IntFlag{Name: "data-bits", Category: probeFlagsTitle, Usage: "7 or 8"},
		&cli.StringFlag{Name: "parity", Category: probeFlagsTitle, Usage: "none, even or odd"},
	}
}

// decoding is how lines are read, as the flags say, else the settings.
func decoding(c *cli.Context, set settings.Settings) (l *format.Layout, o format.Options, err error) {
	o.AirPa = set.Probe.AirPa
	if text := c.String("air"); text != "" {
		if o.AirPa, err = unit.ParsePressure(text); err != nil {
			return nil, o, refuse("--air: %w", err)
		}
	}
	if text := c.String("altitude"); text != "" && o.AirPa == 0 {
		m, _, err := unit.ParseLength(text)
		if err != nil {
			return nil, o, refuse("--altitude: %w", err)
		}
		o.AirPa = water.AirPressure(m)
	}
	if t := set.Probe.Thermistor; len(t) == 3 {
		o.Thermistor = line.Thermistor{A: t[0], B: t[1], C: t[2]}
	}
	if text := c.String("thermistor"); text != "" {
		t := &o.Thermistor
		if n, _ := fmt.Sscan(strings.ReplaceAll(text, ",", " "), &t.A, &t.B, &t.C); n != 3 || len(strings.Fields(strings.ReplaceAll(text, ",", " "))) != 3 {
			return nil, o, refuse("--thermistor: %q: write the three coefficients of its data sheet, a b c", text)
		}
	}
	text, from := c.String("layout"), "--layout"
	if text == "" {
		text, from = set.Probe.Layout, "settings: probe: layout"
	}
	if text == "" {
		return nil, o, nil
	}
	parsed, err := format.Parse(text)
	if err != nil {
		return nil, o, refuse("%s: %w", from, err)
	}
	return &parsed, o, nil
}

// portOf is the port as the flags say, else the settings.
func portOf(c *cli.Context, set settings.Settings) (device.Config, error) {
	config := device.Config{Name: set.Probe.Port, Baud: set.Probe.Baud, DataBits: set.Probe.DataBits, Parity: set.Probe.Parity}
	if c.IsSet("port") {
		config.Name = c.String("port")
	}
	if c.IsSet("baud") {
		config.Baud = c.Int("baud")
		if config.Baud == 0 {
			config.Baud = -1 // not the one that stands for "not said"
		}
	}
	if c.IsSet("data-bits") {
		config.DataBits = c.Int("data-bits")
	}
	if c.IsSet("parity") {
		config.Parity = c.String("parity")
	}
	if err := config.Check(); err != nil {
		return config, refused{err}
	}
	return config, nil
}

// plugInIfWanted opens the probe's port where a flag or the settings name one; nil is
// the keyboard.
func plugInIfWanted(c *cli.Context, set settings.Settings) (*probe.Probe, error) {
	l, o, err := decoding(c, set)
	if err != nil {
		return nil, err
	}
	if c.String("port") == "" && set.Probe.Port == "" {
		for _, name := range []string{"baud", "data-bits", "parity", "layout", "air", "thermistor", "moving"} {
			if c.IsSet(name) {
				return nil, refuse("--%s is about a probe: name its port with --port", name)
			}
		}
		return nil, nil
	}
	config, err := portOf(c, set)
	if err != nil {
		return nil, err
	}
	return probe.Open(probe.Options{Port: config, Layout: l, Format: o})
}
