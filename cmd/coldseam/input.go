package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/settings"
)

const pageFlags = "What a page can say too (a flag wins over it, and it over the settings)"

// readFlags are those of every command that reads a page.
func readFlags() []cli.Flag { return append([]cli.Flag{bookFlag()}, headerFlags()...) }

// headerFlags makes a flag of each header key of the notebook.
func headerFlags() []cli.Flag {
	var flags []cli.Flag
	for _, key := range notebook.Keys() {
		flags = append(flags, &cli.StringFlag{Name: flagName(key), Usage: notebook.Help(key), Category: pageFlags})
	}
	return flags
}

func flagName(key string) string { return strings.ReplaceAll(key, " ", "-") }

// headers takes the header flags that were given, each checked by itself so that an
// error names the flag.
func headers(c *cli.Context, set settings.Settings) ([]notebook.Header, error) {
	var out []notebook.Header
	for _, key := range notebook.Keys() {
		name := flagName(key)
		if !c.IsSet(name) {
			continue
		}
		value := c.String(name)
		if key == "fly weight" {
			value = set.FlyWeight(value)
		}
		if err := notebook.Check(key, value); err != nil {
			return nil, refuse("--%s: %w", name, err)
		}
		out = append(out, notebook.Header{Key: key, Value: value, From: "--" + name})
	}
	return out, nil
}

// page is a file's text.
type page struct {
	name string
	data []byte
}

// pages reads the files named, drops of the book, or standard input.
func (p *program) pages(c *cli.Context, set settings.Settings) (out []page, err error) {
	names := c.Args().Slice()
	if len(names) == 0 {
		names = p.unnamed(c)
	}
	stdin := 0
	for _, name := range names {
		if inBook(name) {
			pg, err := p.saved(c, set, name)
			if err != nil {
				return nil, err
			}
			out = append(out, pg)
			continue
		}
		if name == "-" {
			if stdin++; stdin > 1 {
				return nil, refuse("standard input can be read once only: give - once")
			}
			if p.terminal {
				fmt.Fprintln(p.err, "Type the readings, one a line (depth, temperature), then press Ctrl-D on a new line.")
			}
		}
		data, err := p.read(name)
		if err != nil {
			return nil, err
		}
		if name == "-" {
			name = "standard input"
		}
		out = append(out, page{name, data})
	}
	return out, nil
}

// read reads one file, no more of it than a page may hold.
func (p *program) read(name string) ([]byte, error) {
	in := p.in
	if name != "-" {
		f, err := open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	if f, ok := in.(*os.File); ok {
		if info, err := f.Stat(); err == nil {
			p.wasRead = append(p.wasRead, info)
		}
	}
	data, err := io.ReadAll(io.LimitReader(in, notebook.MaxPage+1))
	if err != nil {
		return nil, refuse("%s: cannot be read: %s", name, cause(err))
	}
	return data, nil
}

// open opens a file, or refuses it.
func open(name string) (*os.File, error) {
	f, err := os.Open(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, refuse("%s: there is no such file", name)
	case err != nil:
		return nil, refuse("%s: cannot be read: %s", name, cause(err))
	}
	return f, nil
}

func exists(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}

// cause is an error of the system without the paths that are printed before it.
func cause(err error) string { return book.Cause(err) }

// errNotAnswered reports that the input ended before a question was answered.
var errNotAnswered = errors.New("not answered")

// ask puts a question on standard error and reads the number of the choice. At the
// end of input the page is refused.
func (p *program) ask(q notebook.Question) (int, error) {
	printQuestion(p.err, q)
	in, ok := p.in.(*bufio.Reader)
	if !ok {
		in = bufio.NewReader(p.in)
		p.in = in
	}
	for {
		fmt.Fprint(p.err, "Number, then Enter: ")
		line, err := in.ReadString('\n')
		if line = strings.TrimSpace(line); line != "" {
			if n, ok := choice(line, len(q.Choices)); ok {
				return n, nil
			}
		}
		if err != nil {
			return 0, errNotAnswered
		}
	}
}

// job is a drop with all that a plan of it needs.
type job struct {
	sheet notebook.Sheet
	input plan.Input
}

// jobs reads the pages of a command into drops with their settings; with unread a
// page may have no readings yet.
func (p *program) jobs(c *cli.Context, unread bool) ([]job, settings.Settings, error) {
	set, err := settings.Load()
	if err != nil {
		return nil, set, refused{err}
	}
	flags, err := headers(c, set)
	if err != nil {
		return nil, set, err
	}
	pages, err := p.pages(c, set)
	if err != nil {
		return nil, set, err
	}
	var out []job
	taken := p.taken(c, set)
	for _, pg := range pages {
		options := notebook.Options{Name: pg.name, Unread: unread, Flags: flags, Defaults: set.Headers, Fish: set.Fish, Waters: set.WaterNames(), Units: "--units"}
		if p.terminal {
			options.Ask = p.ask
		}
		sheets, err := notebook.Read(pg.data, options)
		if err != nil {
			return nil, set, refused{err}
		}
		for _, sheet := range sheets {
			j, err := makeJob(sheet, set, pg.name)
			if err != nil {
				return nil, set, err
			}
			j.input.Taken = taken
			out = append(out, j)
		}
	}
	return out, set, nil
}

func makeJob(sheet notebook.Sheet, set settings.Settings, name string) (job, error) {
	in, err := set.Input(sheet.Drop)
	if err != nil {
		return job{sheet: sheet}, refuse("%s: %w", name, err)
	}
	sheet.Drop = in.Drop
	return job{sheet, in}, nil
}

// unusable says why a drop gave no plan: every reading is flagged.
func unusable(name string, d profile.Drop, err error) error {
	for _, r := range d.Readings {
		if r.Flag != "" {
			hint := ""
			if r.Guess != "" {
				hint = ", perhaps " + r.Guess
			}
			return refuse("%s:%d: %w (%s%s): check the units and read again", name, r.Line, err, r.Flag, hint)
		}
	}
	return refuse("%s: %w", name, err)
}
