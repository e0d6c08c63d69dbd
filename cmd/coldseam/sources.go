package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/exchange"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

// sources are the drops that a command is to carry out: of the files and numbers named, or
// of the whole book. What the settings say of the thermometer and the line holds for them,
// what the angler usually fishes with does not: nobody noted it.
func (p *program) sources(c *cli.Context, set settings.Settings) ([]exchange.Source, error) {
	set.Headers = slices.DeleteFunc(slices.Clone(set.Headers), func(h notebook.Header) bool {
		return slices.Contains([]string{"for", "fly weight", "retrieve"}, h.Key)
	})
	names := c.Args().Slice()
	var heads []book.Head
	var b *book.Book
	if len(names) == 0 || slices.ContainsFunc(names, inBook) {
		var err error
		if b, heads, err = p.heads(c, set, book.Query{}); err != nil {
			return nil, err
		}
	}
	if len(names) == 0 {
		if len(heads) == 0 {
			return nil, refuse("no drop is saved yet: take one with coldseam drop, or name a file")
		}
		read := slices.DeleteFunc(slices.Clone(heads), func(h book.Head) bool { return h.Err != nil })
		bad := heads[len(read):] // they stand last
		mine, err := ofWater(read, c.String("water"), func(h book.Head) string { return h.Water })
		if err != nil {
			return nil, err
		}
		return p.ofBook(b, append(mine, bad...), set)
	}
	var out []exchange.Source
	seen := map[string]bool{}
	for _, name := range names {
		more, err := p.namedSources(name, b, heads, set)
		if err != nil {
			return nil, err
		}
		for _, s := range more {
			if key := fmt.Sprint(s.Nth, " ", s.Page); s.Page == "" || !seen[key] { // named twice
				seen[key] = true
				out = append(out, s)
			}
		}
	}
	return ofWater(out, c.String("water"), func(s exchange.Source) string { return s.Drop.Water })
}

// ofWater keeps what is of a water, all where it is "".
func ofWater[T any](all []T, water string, waterOf func(T) string) ([]T, error) {
	if water == "" {
		return all, nil
	}
	var waters []string
	out := slices.DeleteFunc(slices.Clone(all), func(v T) bool {
		name := waterOf(v)
		if name != "" && !slices.Contains(waters, name) {
			waters = append(waters, name)
		}
		return !sameName(name, water)
	})
	if len(out) == 0 {
		const most = 5
		if len(waters) > most {
			waters = append(waters[:most], "...")
		}
		return nil, refuse("--water: no drop is of %q; there are drops of %s", water, strings.Join(waters, ", "))
	}
	return out, nil
}

// ofBook are drops of the book; pages that cannot be read are told.
func (p *program) ofBook(b *book.Book, heads []book.Head, set settings.Settings) ([]exchange.Source, error) {
	var out []exchange.Source
	for _, e := range b.Read(heads, set.Reading()) {
		if e.Err == nil {
			out = append(out, exchange.Source{Page: e.Path, Nth: e.Nth, Drop: e.Drop})
		}
	}
	bad := len(heads) - len(out)
	is, them := "are", "them"
	if bad == 1 {
		is, them = "is", "it"
	}
	told := fmt.Sprintf("%s of the book cannot be read and %s left out: coldseam book check names %s", unit.Count(bad, "page"), is, them)
	if len(out) == 0 {
		return nil, refuse("%s", told)
	}
	if bad > 0 {
		p.tell("%s.", told)
	}
	return out, nil
}

// namedSources are the drops of a file, CSV or a page, or one of the book.
func (p *program) namedSources(name string, b *book.Book, heads []book.Head, set settings.Settings) (out []exchange.Source, err error) {
	if inBook(name) {
		h, _, err := pick(heads, name)
		if err != nil {
			return nil, err
		}
		e := b.Read([]book.Head{h}, set.Reading())[0]
		if e.Err != nil {
			return nil, refuse("%s: %w", e.Path, e.Err)
		}
		return []exchange.Source{{Page: e.Path, Nth: e.Nth, Drop: e.Drop}}, nil
	}
	if ext := strings.ToLower(filepath.Ext(name)); ext == ".csv" || ext == ".tsv" {
		return p.tableSources(name)
	}
	data, err := p.read(name)
	if err != nil {
		return nil, err
	}
	o := set.Reading()
	if p.terminal {
		o.Ask = p.ask
	}
	if o.Name = name; name == "-" {
		o.Name, name = "standard input", ""
	}
	sheets, err := notebook.Read(data, o)
	if err != nil {
		return nil, refused{err}
	}
	for i, s := range sheets {
		out = append(out, exchange.Source{Page: name, Nth: i + 1, Drop: s.Drop})
	}
	return out, nil
}

// tableSources are the drops of a CSV; how it was read is told.
func (p *program) tableSources(name string) ([]exchange.Source, error) {
	f, err := open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil {
		p.wasRead = append(p.wasRead, info)
	}
	out, notes, err := exchange.ReadSources(name, f)
	if err != nil {
		return nil, refused{err}
	}
	for _, n := range notes {
		at := ""
		if n.Line > 0 {
			at = fmt.Sprintf(":%d", n.Line)
		}
		p.tell("%s%s: %s", plain.Line(name), at, plain.Line(n.Text))
	}
	return out, nil
}

// keep has a file not take the place of a page that is carried out.
func (p *program) keep(to string, sources []exchange.Source) {
	if !exists(to) {
		return
	}
	for _, s := range sources {
		if info, err := os.Stat(s.Page); err == nil {
			p.wasRead = append(p.wasRead, info)
		}
	}
}
