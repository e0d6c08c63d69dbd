package main

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

func (p *program) caughtCommand() *cli.Command {
	return &cli.Command{
		Name:      "caught",
		Usage:     "note a fish with today's drop: caught \"rainbow 16 ft\"",
		ArgsUsage: "[flags] \"[TIME] [HOW MANY] FISH DEPTH, FLY\"",
		Description: `It goes on the page of today's last drop, with the time of day, and is saved
before it says so. The depth is that of the fly, with its unit: 16 ft.
--undo takes away the catch noted last, then the one before.`,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "drop", Usage: "another drop than today's: its number in the book, or last"},
			&cli.BoolFlag{Name: "undo", Usage: "take away the catch noted last"},
			bookFlag(),
		},
		Action: p.caught,
	}
}

func (p *program) caught(c *cli.Context) error {
	text, undo := strings.TrimSpace(strings.Join(c.Args().Slice(), " ")), c.Bool("undo")
	switch {
	case undo && text != "":
		return refuse("--undo takes away the catch noted last: say nothing else with it")
	case !undo && text == "":
		return refuse("say what was caught, e.g. coldseam caught \"rainbow 16 ft, black midge\"")
	}
	set, err := settings.Load()
	if err != nil {
		return refused{err}
	}
	if !undo { // before anything is looked for
		if _, err := notebook.ReadCatch(text, set.Fish...); err != nil {
			return refused{err}
		}
	}
	dir, err := p.bookDir(c, set)
	if err != nil {
		return err
	}
	if !exists(dir) {
		return noDrop
	}
	b, unlock, err := p.lockFor(dir)
	if err != nil {
		return err
	}
	defer unlock()
	e, timed, err := p.dropOf(c, set)
	if err != nil {
		return err
	}
	if undo {
		return p.uncatch(b, e, set)
	}
	if timed {
		text = notebook.CatchNow(text, p.now(), set.Fish...)
	}
	is, err := b.AddCatch(e, text, set.Reading())
	if err != nil {
		return notNoted(e, err)
	}
	fmt.Fprintln(&p.out, report.WrapTo(report.CatchNoted(e.Number, e.Drop, is), p.width()))
	return nil
}

var noDrop = refuse("no drop is saved yet: take one with coldseam drop, then note what is caught")

// uncatch takes the last catch of a drop away.
func (p *program) uncatch(b *book.Book, e book.Entry, set settings.Settings) error {
	is, err := b.TakeCatch(e, set.Reading())
	if errors.Is(err, book.ErrNoCatch) {
		return refuse("drop %d (%s): %w: --drop N for another", e.Number, report.WhereWhen(e.Drop), err)
	}
	if err != nil {
		return notNoted(e, err)
	}
	fmt.Fprintln(&p.out, report.WrapTo(report.CatchTaken(e.Number, e.Drop, is), p.width()))
	return nil
}

func notNoted(e book.Entry, err error) error {
	return fmt.Errorf("%s: nothing was changed: %s", plain.Line(e.Path), cause(err))
}

// lockFor opens the book and keeps others out; one that notes a catch at the same time is
// waited for.
func (p *program) lockFor(dir string) (*book.Book, func(), error) {
	b := book.At(dir, p.disk)
	unlock, err := lockSoon(b)
	switch {
	case errors.Is(err, book.ErrInUse):
		return nil, nil, refuse("a drop is being taken: type it there, \"caught rainbow 16 ft\", or end that drop first")
	case err != nil:
		return nil, nil, fmt.Errorf("%s: catches cannot be noted there: %s", plain.Line(dir), cause(err))
	}
	return b, unlock, nil
}

// lockSoon locks a book; a program that is soon done with it is waited for.
func lockSoon(b *book.Book) (unlock func(), err error) {
	for range lockTries {
		if unlock, err = b.Lock(); !errors.Is(err, book.ErrInUse) {
			return unlock, err
		}
		time.Sleep(lockPause)
	}
	return nil, err
}

// How long another program is waited for.
const (
	lockTries = 60
	lockPause = 50 * time.Millisecond
)

// dropOf is the drop that is meant, and whether what is caught now is of its time.
func (p *program) dropOf(c *cli.Context, set settings.Settings) (e book.Entry, timed bool, err error) {
	b, heads, err := p.heads(c, set, book.Query{})
	if err != nil {
		return e, false, err
	}
	heads = slices.DeleteFunc(heads, func(h book.Head) bool { return h.Err != nil })
	if len(heads) == 0 {
		return e, false, noDrop
	}
	last, named := heads[len(heads)-1], c.IsSet("drop")
	switch {
	case named && c.String("drop") == "last":
	case named:
		i := slices.IndexFunc(heads, func(h book.Head) bool { return strconv.Itoa(h.Number) == strings.TrimSpace(c.String("drop")) })
		if i < 0 {
			return e, false, refuse("--drop %s: the drops of the book are 1 to %d: coldseam book lists them", c.String("drop"), len(heads))
		}
		last = heads[i]
	case last.Date == "":
		return e, false, refuse("the last drop, number %d, has no date, so it may not be of today: give --drop %d for that one", last.Number, last.Number)
	case !notebook.OfNow(last.Date, p.now()) && c.Bool("undo"):
		return e, false, refuse("the last drop, number %d, is of %s and not of today: give --drop %d for that one", last.Number, last.Date, last.Number)
	case !notebook.OfNow(last.Date, p.now()):
		return e, false, refuse("the last drop, number %d, is of %s and not of today: take one with coldseam drop, or give --drop %d for that one", last.Number, last.Date, last.Number)
	}
	e = b.Read([]book.Head{last}, set.Reading())[0]
	if e.Err != nil {
		return e, false, fmt.Errorf("%s: %s", plain.Line(e.Path), cause(e.Err))
	}
	return e, notebook.OfNow(last.Date, p.now()), nil
}
