package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/exchange"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

func (p *program) bookAddCommand() *cli.Command {
	return &cli.Command{
		Name:      "add",
		Usage:     "bring in pages, old notebooks and CSV, a page for each drop",
		ArgsUsage: "[flags] FILE...   (-: standard input)",
		Description: `coldseam book add notes-2019.txt lake.csv reads all files first and, where one
cannot be read, adds nothing. A file may hold many drops. One that is in the
book already is not added again: same water, spot, date and readings. The files
stay as they are. --dry-run says what would be added.`,
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "dry-run", Usage: "say what would be added, and add nothing"},
		}, readFlags()...),
		Action: p.bookAdd,
	}
}

func (p *program) bookAdd(c *cli.Context) error {
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	flags, err := headers(c, set)
	if err != nil {
		return err
	}
	if !c.Args().Present() {
		return refuse("book add which files? coldseam book add notes.txt lake.csv")
	}
	var sheets []notebook.Sheet
	for _, name := range c.Args().Slice() {
		is, err := p.sheets(name, set, flags)
		if err != nil {
			return err
		}
		sheets = append(sheets, is...)
	}
	a := &adding{program: p, dry: c.Bool("dry-run"), isNew: make([]bool, len(sheets))}
	if err := a.open(c, set); err != nil {
		return err
	}
	defer a.unlock()
	if err := a.all(sheets); err != nil {
		return err
	}
	a.say(sheets)
	return nil
}

// sheets reads the drops of one file.
func (p *program) sheets(name string, set settings.Settings, flags []notebook.Header) ([]notebook.Sheet, error) {
	o := set.Adding()
	o.Flags, o.Units = flags, "--units"
	if p.terminal {
		o.Ask = p.ask
	}
	if csvName(name) {
		return csvSheets(name, flags)
	}
	data, err := p.read(name)
	if err != nil {
		return nil, err
	}
	if o.Name = name; name == "-" {
		o.Name = "standard input"
	}
	sheets, err := notebook.Read(data, o)
	if err != nil {
		return nil, refused{err}
	}
	return sheets, nil
}

// csvName reports whether a file is a table of a spreadsheet, by its name.
func csvName(name string) bool {
	ending := strings.ToLower(filepath.Ext(name))
	return ending == ".csv" || ending == ".tsv"
}

// csvSheets reads the drops of a table.
func csvSheets(name string, flags []notebook.Header) ([]notebook.Sheet, error) {
	f, err := open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	drops, notes, err := exchange.ReadCSV(name, f)
	if err != nil {
		return nil, refused{err}
	}
	var sheets []notebook.Sheet
	for _, d := range drops {
		for _, h := range flags {
			if err := notebook.Set(&d, h.Key, h.Value); err != nil {
				return nil, refuse("%s: %w", h.From, err)
			}
		}
		d.Correct()
		sheets = append(sheets, notebook.Sheet{Name: name, Drop: d})
	}
	if len(sheets) > 0 {
		sheets[0].Notes = notes // of the whole file
	}
	return sheets, nil
}

// adding is one run of book add.
type adding struct {
	*program
	dry    bool
	book   *book.Book
	known  *book.Known
	unlock func()

	lines                 []string // what became of each drop
	isNew                 []bool   // whether it was added
	added, there, undated int
}

// open looks into the book, and unless nothing is to be added keeps others out of it.
func (a *adding) open(c *cli.Context, set settings.Settings) error {
	b, err := a.saves(c, set)
	if err != nil {
		return err
	}
	dir := plain.Line(b.Dir)
	a.unlock = func() {}
	if !a.dry {
		if b, err = book.Open(b.Dir, a.disk); err == nil {
			a.unlock, err = lockSoon(b)
		}
	}
	switch {
	case errors.Is(err, book.ErrInUse):
		return fmt.Errorf("%s: %w: end that one first; nothing was added", dir, err)
	case err != nil:
		return fmt.Errorf("%s: nothing can be added there: %s; use another folder with --book", dir, cause(err))
	}
	heads, err := b.Heads(set.Reading())
	if err != nil {
		a.unlock()
		return fmt.Errorf("%s: the saved drops cannot be read: %s", dir, cause(err))
	}
	a.book, a.known = b, b.Known(heads, set.Reading())
	return nil
}

// all adds the drops that are not in the book.
func (a *adding) all(sheets []notebook.Sheet) error {
	for i, s := range sheets {
		if number, has := a.known.Has(s.Drop); has {
			a.there++
			a.lines = append(a.lines, report.AlreadyIn(s.Drop, number))
			continue
		}
		line := report.WouldAdd(s.Drop)
		if !a.dry {
			path, err := a.book.Add(s.Drop)
			if err != nil {
				return fmt.Errorf("%s: %d of %d drops added, and the next cannot be saved: %s; mend that, then add the same files again", plain.Line(a.book.Dir), a.added, a.added+len(sheets)-i, cause(err))
			}
			line = report.Added(s.Drop, filepath.Base(path))
		}
		a.known.Added(s.Drop)
		a.isNew[i] = true
		a.added++
		if s.Drop.Date == "" {
			a.undated++
		}
		a.lines = append(a.lines, line)
	}
	return nil
}

// What is printed of a long list.
const (
	mostLines = 20
	mostNotes = 5
)

// say prints what became of each drop, and how the files were read where that took more
// than plain reading.
func (a *adding) say(sheets []notebook.Sheet) {
	line := func(text string) {
		if text != "" {
			fmt.Fprintln(&a.out, report.WrapTo(text, a.width()))
		}
	}
	if len(a.lines) <= mostLines {
		for _, l := range a.lines {
			line(l)
		}
	}
	line(report.AddedInAll(a.added, a.there, a.book.Dir, a.dry))
	line(report.Undated(a.undated, a.dry))
	var notes []string
	for i, s := range sheets {
		for _, n := range s.Notes {
			if text := report.ReadSo(filepath.Base(s.Name), n.Line, n.Text); a.isNew[i] && n.Text != notebook.SecondDrop && !slices.Contains(notes, text) {
				notes = append(notes, text)
			}
		}
	}
	for _, n := range notes[:min(len(notes), mostNotes)] {
		line(n)
	}
	line(report.MoreNotes(max(len(notes)-mostNotes, 0)))
}
