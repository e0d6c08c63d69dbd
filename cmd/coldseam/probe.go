package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/signal"

	"github.com/urfave/cli/v2"

	"coldseam/device"
	"coldseam/device/format"
	"coldseam/device/line"
	"coldseam/profile"
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
		fmt.Fprintln(&p.out, "No serial port is there. Plug the probe in; some need a driver or a powered hub.")
		return nil
	}
	for _, port := range ports {
		fmt.Fprintln(&p.out, plain.Line(port.String()))
		if port.ByID != "" {
			fmt.Fprintln(&p.out, "   stays the same when it is plugged in again: "+plain.Line(port.ByID))
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
	k, err := plugIn(config, l, o)
	if err != nil {
		return err
	}
	defer k.Close()
	interrupted := make(chan os.Signal, 1)
	signal.Notify(interrupted, os.Interrupt)
	defer signal.Stop(interrupted)
	fmt.Fprintf(p.err, "Listening to %s; Ctrl-C ends.\n", plain.Line(config.Name))
	out := bufio.NewWriter(p.stdout) // which keeps its first error
	e := &explainer{out: out, err: p.err, k: &k.decoder}
	for {
		select {
		case <-interrupted:
			e.end()
			err := out.Flush()
			fmt.Fprintf(p.err, "%s.\n", k.counted())
			return err
		case event := <-k.Events():
			switch event.Kind {
			case device.Line:
				e.line(event.Line)
			case device.Cut:
				k.cut = event.Line
				fmt.Fprintf(out, "%-32s  - the port was opened within this line\n", plain.Cut(string(event.Line), longestRaw))
			default:
				fmt.Fprintln(p.err, k.told(event))
			}
			if err := out.Flush(); err != nil {
				return err
			}
		}
	}
}

// longestRaw is how much of a raw line is shown.
const longestRaw = 60

// explainer shows lines and how they are read. Lines that come before it is known what
// they hold wait for it.
type explainer struct {
	out, err io.Writer
	k        *decoder
	first    [][]byte
}

func (e *explainer) line(b []byte) {
	if e.k.layout != nil {
		e.show(b)
		return
	}
	e.first = append(e.first, append([]byte(nil), b...))
	f := e.k.find(e.first)
	if !f.Known && len(e.first) < askAfter {
		return
	}
	e.settle(f)
}

// settle goes on with what was found in the first lines, or with the first of what
// they may hold.
func (e *explainer) settle(f format.Found) {
	switch {
	case f.Known:
		fmt.Fprintf(e.err, "Lines are read as: %s.\n", f.Layout)
	case len(f.Choices) > 0:
		f.Layout = f.Choices[0]
		fmt.Fprintf(e.err, "What the lines hold is open: %s. Shown here as: %s. Others:\n", plain.Line(f.Why), f.Layout)
		for _, l := range f.Choices[1:] {
			fmt.Fprintf(e.err, "   --layout \"%s\"\n", l)
		}
	default:
		fmt.Fprintf(e.err, "What the lines hold is not known: %s. Say it with --layout, e.g. --layout \"depth m, temp C\".\n", plain.Line(f.Why))
	}
	e.k.use(f.Layout)
	first := e.first
	e.first = nil
	for _, b := range first {
		e.show(b)
	}
}

func (e *explainer) show(b []byte) {
	s, err := e.k.decode(b)
	if e.out == nil { // only counted
		return
	}
	fmt.Fprintf(e.out, "%-32s  %s\n", plain.Cut(string(b), longestRaw), e.meaning(s, err))
}

// end settles what is still waiting.
func (e *explainer) end() {
	if len(e.first) > 0 {
		e.settle(e.k.find(e.first))
	}
}

// meaning says how a line was read, or why not.
func (e *explainer) meaning(s format.Sample, err error) string {
	switch code := line.CodeOf(err); {
	case code == line.Fine:
	case aside(code):
		return "- " + err.Error()
	default:
		return "refused, " + code.String() + ": " + err.Error()
	}
	text := ""
	add := func(o profile.Optional, format string) {
		if o.Known {
			if text != "" {
				text += ", "
			}
			text += fmt.Sprintf(format, o.Value)
		}
	}
	add(s.DepthM, "depth %.3f m")
	add(s.TempC, "%.3f C")
	add(s.BottomM, "bottom under the boat %.2f m (a sounder's)")
	add(s.SurfaceC, "surface %.2f C (the boat's)")
	if s.WrongChecksum {
		text += ", though its checksum is wrong"
	}
	return text
}
