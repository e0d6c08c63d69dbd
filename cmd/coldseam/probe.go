package main

import (
	"bufio"
	"fmt"
	"os"
	"os/signal"

	"github.com/urfave/cli/v2"

	"coldseam/device"
	"coldseam/device/probe"
	"coldseam/profile/plain"
	"coldseam/profile/settings"
)

func (p *program) probeCommand() *cli.Command {
	listen := append(append(portFlags(), lineFlags()...), altitudeFlag())
	return &cli.Command{
		Name:  "probe",
		Usage: "list ports, listen to a probe, replay, rehearse without one",
		Subcommands: []*cli.Command{
			{Name: "list", Usage: "the ports there are", Action: p.probeList},
			{Name: "listen", Usage: "each line of a probe and how it is read; Ctrl-C ends", ArgsUsage: "[flags]", Flags: listen, Action: p.probeListen},
			p.replayCommand(),
			p.rehearseCommand(),
		},
		Action: func(c *cli.Context) error {
			if c.Args().Present() {
				return refuse("probe has no part %q; it has list, listen, replay and rehearse", c.Args().First())
			}
			return refuse("probe what? list, listen, replay or rehearse; see coldseam probe --help")
		},
	}
}

func altitudeFlag() cli.Flag {
	return &cli.StringFlag{Name: "altitude", Category: probeFlagsTitle, Usage: "of the lake, 1900 ft: gives the pressure of the air where --air does not"}
}

func (p *program) probeList(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("probe list takes nothing after it")
	}
	if err := device.Serial(); err != nil {
		return err
	}
	ports, err := device.Ports()
	if err != nil {
		return fmt.Errorf("the ports cannot be listed: %w", err)
	}
	if len(ports) == 0 {
		fmt.Fprintln(&p.out, "No serial port was found. Plug the probe in; some need a driver or a powered hub.")
		return nil
	}
	for _, port := range ports {
		fmt.Fprintln(&p.out, plain.Line(port.String()))
		if port.ByID != "" {
			fmt.Fprintln(&p.out, "   the same each time it is plugged in: "+plain.Line(port.ByID))
		}
	}
	fmt.Fprintln(&p.out, "\nTry one: coldseam probe listen --port "+plain.Line(ports[0].Name))
	return nil
}

func (p *program) probeListen(c *cli.Context) error {
	if c.Args().Present() {
		return refuse("probe listen takes no file; to read one: coldseam probe replay %s", c.Args().First())
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	l, o, err := decoding(c, set)
	if err != nil {
		return err
	}
	config, err := portOf(c, set)
	if err != nil {
		return err
	}
	k, err := probe.Open(probe.Options{Port: config, Layout: l, Format: o})
	if err != nil {
		return err
	}
	defer k.Close()
	interrupted := make(chan os.Signal, 1)
	signal.Notify(interrupted, os.Interrupt)
	defer signal.Stop(interrupted)
	fmt.Fprintf(p.err, "Listening to %s; Ctrl-C ends.\n", plain.Line(config.Name))
	out := bufio.NewWriter(p.stdout) // which keeps its first error
	e := &explainer{out: out, err: p.err, k: k.Decoder}
	for {
		select {
		case <-interrupted:
			e.end()
			err := out.Flush()
			fmt.Fprintf(p.err, "%s.\n", k.Counted())
			return err
		case event := <-k.Events():
			switch event.Kind {
			case device.Line:
				e.line(event.Line)
			case device.Cut:
				k.Cut(event.Line)
				fmt.Fprintf(out, "%-32s  - the port was opened within this line\n", plain.Cut(string(event.Line), longestRaw))
			default:
				fmt.Fprintln(p.err, probe.Told(event))
			}
			if err := out.Flush(); err != nil {
				return err
			}
		}
	}
}
