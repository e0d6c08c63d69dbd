package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"

	"github.com/urfave/cli/v2"

	"coldseam/profile/batch"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

func (p *program) batchCommand() *cli.Command {
	return &cli.Command{
		Name:      "batch",
		Usage:     "the layers of many columns: CSV in, one line of JSON each out",
		ArgsUsage: "[flags] [FILE...]   (no file, or -, is standard input)",
		Description: `The CSV begins with the names of its columns: profile, depth_m and temp_c in any
order, others are ignored. Rows of one profile stand together; one that
comes back (noticed among the next 65,536) is a problem. Lines come out in the
order of the profiles, as soon as they can. A profile that cannot be read gets a
line with its "problem", and the exit status is 1.`,
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "no-intervals", Usage: "best values alone: much faster"},
			&cli.BoolFlag{Name: "unsorted", Usage: "rows of a profile may stand anywhere in their file, which is held in memory"},
			&cli.StringFlag{Name: "precision", Usage: "the thermometer's standard error, 0.1C; else 0.25C"},
			&cli.StringFlag{Name: "depth-error", Usage: "the error of the depths, 0.1m; else none"},
		},
		Action: p.batch,
	}
}

// precisionC is assumed of a thermometer of which nothing is said, as for pages.
const precisionC = 0.25

func (p *program) batch(c *cli.Context) error {
	o := batch.Options{Intervals: !c.Bool("no-intervals"), Unsorted: c.Bool("unsorted"), ErrC: precisionC}
	if err := bounded(c, "precision", &o.ErrC, unit.ParseTemperatureDiff, 5, "a thermometer's precision lies between 0 and 5 C (9 F)"); err != nil {
		return err
	}
	if err := bounded(c, "depth-error", &o.ErrM, unit.ParseLength, 10, "the error of a depth lies between 0 and 10 m (33 ft)"); err != nil {
		return err
	}
	inputs, err := p.inputs(c.Args().Slice())
	if err != nil {
		return err
	}
	if !o.Unsorted && os.Getenv("GOGC") == "" && os.Getenv("GOMEMLIMIT") == "" {
		// Little is alive at any time, so rubbish may gather for longer: a fifth less
		// time. The limit keeps the peak from growing with the length of the run.
		debug.SetGCPercent(400)
		debug.SetMemoryLimit(16<<20 + 4<<20*int64(runtime.GOMAXPROCS(0)))
	}
	far := p.progress()
	if terminal(p.stdout) == nil { // where the lines themselves run by, they show how far it is
		total := size(c.Args().Slice())
		o.Progress = func(columns int, bytes int64) { far.show(unit.Count(columns, "column")+" done", bytes, total) }
	}
	sum, err := batch.Run(inputs, p.stdout, o)
	far.end()
	switch {
	case errors.As(err, new(*batch.InputError)):
		return refused{err}
	case err != nil:
		return err
	case sum.Problems > 0:
		return fmt.Errorf("%d of %d columns could not be read; the first is \"%s\": %s",
			sum.Problems, sum.Columns, plain.Line(short(sum.First)), plain.Line(sum.Problem))
	}
	return nil
}

// bounded reads a flag into a number from 0 to most; limits says so in words.
func bounded[U any](c *cli.Context, name string, to *float64, parse func(string) (float64, U, error), most float64, limits string) error {
	if !c.IsSet(name) {
		return nil
	}
	v, _, err := parse(c.String(name))
	if err == nil && (v < 0 || v > most) {
		err = fmt.Errorf("%q: %s", c.String(name), limits)
	}
	if err != nil {
		return refuse("--"+name+": %w", err)
	}
	*to = v
	return nil
}

// size is how many bytes files hold together; 0 where one of them is no file.
func size(names []string) (total int64) {
	for _, name := range names {
		info, err := os.Stat(name)
		if err != nil || !info.Mode().IsRegular() {
			return 0
		}
		total += info.Size()
	}
	return total
}

// short cuts a name that would make the line of an error long.
func short(name string) string {
	if r := []rune(name); len(r) > 60 {
		return string(r[:60]) + "..."
	}
	return name
}

// inputs makes the inputs of the files named, or of standard input. Files are checked
// before the first line is written, so that a wrong one among many gives an error and
// no output; a pipe can be read once only and is checked when its turn comes.
func (p *program) inputs(names []string) ([]batch.Input, error) {
	if len(names) == 0 {
		names = []string{"-"}
	}
	var out []batch.Input
	stdin := 0
	for _, name := range names {
		if name != "-" {
			if err := checkCSV(name); err != nil {
				return nil, err
			}
			out = append(out, batch.Input{Name: name, Open: func() (io.ReadCloser, error) { return os.Open(name) }})
			continue
		}
		if stdin++; stdin > 1 {
			return nil, refuse("standard input can be read once only: give - once")
		}
		if p.terminal {
			fmt.Fprintln(p.err, "Type CSV, first the line profile,depth_m,temp_c, then one line a reading; Ctrl-D on a new line ends it.")
		}
		out = append(out, batch.Input{Name: "standard input", Open: func() (io.ReadCloser, error) { return io.NopCloser(p.in), nil }})
	}
	return out, nil
}

func checkCSV(name string) error {
	f, err := open(name)
	if err != nil {
		return err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return refuse("%s: cannot be read: %s", name, cause(err))
	}
	if info.IsDir() {
		return refuse("%s: it is a folder, not a CSV", name)
	}
	if !info.Mode().IsRegular() {
		return nil
	}
	if err := batch.Check(name, f); err != nil {
		return refused{err}
	}
	return nil
}
