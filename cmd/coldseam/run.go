package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime/debug"
	"strings"
	"time"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/plain"
)

// Exit statuses: done; the job could not be done; the command line or the input
// could not be understood.
const (
	done          = 0
	failed        = 1
	notUnderstood = 2
)

// refused is an error about the command line or the input: status 2.
type refused struct{ error }

// Unwrap gives what was refused.
func (r refused) Unwrap() error { return r.error }

// refuse makes such an error. Texts in it, which others may have written, are made fit
// for its one line.
func refuse(format string, args ...any) error {
	for i, a := range args {
		if s, ok := a.(string); ok {
			args[i] = plain.Line(s)
		}
	}
	return refused{fmt.Errorf(format, args...)}
}

// program is one run: where it reads and writes. Output is kept back until the
// command has succeeded, so that on an error standard output stays empty; a filter
// writes to stdout as it goes.
type program struct {
	in       io.Reader
	out      bytes.Buffer
	stdout   io.Writer
	err      io.Writer
	terminal bool          // somebody can be asked
	wasRead  []fs.FileInfo // files that a picture must not take the place of
	disk     book.Disk
	now      func() time.Time
	told     []string // lines for standard error once all went well
}

// run runs the program and returns its exit status.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	p := &program{in: in, stdout: out, err: errOut, disk: book.System{}, now: time.Now}
	return p.run(args)
}

func (p *program) run(args []string) int {
	if f, ok := p.in.(*os.File); ok {
		p.terminal = term.IsTerminal(int(f.Fd()))
	}
	out, errOut := &plain.Writer{To: output{p.stdout}}, &plain.Writer{To: p.err}
	p.stdout, p.err = out, errOut
	defer errOut.Flush()
	err := p.main(args)
	if err == nil && p.out.Len() > 0 {
		_, err = p.stdout.Write(p.out.Bytes())
	}
	if e := out.Flush(); err == nil {
		err = e
	}
	switch {
	case err == nil:
		for _, line := range p.told {
			fmt.Fprintln(p.err, line)
		}
		return done
	case errors.As(err, new(refused)):
		fmt.Fprintf(p.err, "coldseam: %s\n", oneLine(withFish(err)))
		return notUnderstood
	}
	fmt.Fprintf(p.err, "coldseam: %s\n", oneLine(err))
	return failed
}

// withFish adds to an error about a fish's name where the names are.
func withFish(err error) error {
	switch text := err.Error(); {
	case !errors.As(err, new(fish.Unknown)):
		return err
	case strings.HasSuffix(text, "?"):
		return errors.New(text + " 'coldseam fish' lists them")
	default:
		return errors.New(text + ": 'coldseam fish' lists them")
	}
}

func (p *program) main(args []string) error {
	app := &cli.App{
		Name:                  "coldseam",
		Usage:                 "from a few water temperatures to a depth to fish",
		Description:           about,
		Version:               version(),
		Writer:                &p.out,
		ErrWriter:             p.err,
		HideHelpCommand:       true,
		CustomAppHelpTemplate: appHelp,
		ExitErrHandler:        func(*cli.Context, error) {}, // the status is ours to give
		OnUsageError:          func(_ *cli.Context, err error, _ bool) error { return refused{err} },
		Commands:              p.commands(),
		Flags:                 []cli.Flag{&cli.BoolFlag{Name: "licences", Aliases: []string{"licenses"}}},
		Action: func(c *cli.Context) error {
			if c.Bool("licences") {
				return p.licences()
			}
			if c.Args().Present() {
				return unknownCommand(c.App, c.Args().First())
			}
			return cli.ShowAppHelp(c)
		},
	}
	prepare(app.Commands, "", app.OnUsageError)
	ordered, err := reorder(app, args)
	if err != nil {
		return err
	}
	if err := app.Run(ordered); err != nil {
		return err
	}
	if last := ordered[len(ordered)-1]; last == "--help" || last == "-h" || len(ordered) == 1 {
		fitHelp(&p.out, p.width())
	}
	return nil
}

func (p *program) commands() []*cli.Command {
	return []*cli.Command{
		p.planCommand(),
		p.dropCommand(),
		p.caughtCommand(),
		p.bookCommand(),
		p.probeCommand(),
		p.nextCommand(),
		p.tiltCommand(),
		p.compareCommand(),
		p.tripCommand(),
		p.rigCommand(),
		p.fishCommand(),
		p.chartCommand(),
		p.seasonCommand(),
		p.exportCommand(),
		p.shareCommand(),
		p.batchCommand(),
		p.pocketCommand(),
		p.completionCommand(),
	}
}

// prepare gives commands and their parts the one form of help.
func prepare(commands []*cli.Command, before string, onUsageError cli.OnUsageErrorFunc) {
	for _, c := range commands {
		c.CustomHelpTemplate = strings.ReplaceAll(commandHelp, "COMMAND", before+c.Name)
		c.HideHelpCommand = true
		c.OnUsageError = onUsageError
		prepare(c.Subcommands, before+c.Name+" ", onUsageError)
		if len(c.Subcommands) > 0 {
			parts := ""
			for _, s := range c.Subcommands {
				parts += fmt.Sprintf("   %-12s %s\n", s.Name, s.Usage)
			}
			own := partsHelp
			if len(c.Flags) > 0 { // it does something by itself
				own = commandHelp + "\n" + partsTitle
			}
			c.CustomHelpTemplate = strings.ReplaceAll(own, "COMMAND", c.Name) + parts
		}
	}
}

func unknownCommand(app *cli.App, name string) error {
	var names []string
	for _, c := range app.Commands {
		names = append(names, c.Name)
	}
	return refuse("there is no command %q; the commands are %s", name, strings.Join(names, ", "))
}

// version is what the build says of itself.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return strings.Trim(info.Main.Version, "()")
	}
	return "devel"
}
