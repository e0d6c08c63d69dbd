package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/chart"
	"coldseam/chart/asset"
	htmlpage "coldseam/chart/page"
	"coldseam/chart/seal"
	"coldseam/chart/static"
	"coldseam/profile/report"
)

func (p *program) chartCommand() *cli.Command {
	return &cli.Command{
		Name:      "chart",
		Usage:     "a picture of a drop, or of several to compare",
		ArgsUsage: "[flags] [FILE|last...]   (no file, or -: standard input)",
		Description: `Without -o the strip is drawn in the terminal. -o x.html is a page for a phone
or a desk that asks for no network; -o x.svg, x.png and x.pdf are still
pictures. The page that is read is never replaced, another file of yours only
with --force.`,
		Flags:  append(outFlags(), readFlags()...),
		Action: p.chart,
	}
}

// outFlags are the flags of a command that writes a picture.
func outFlags() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "o", Usage: "the file to write: x.html, x.svg, x.png or x.pdf"},
		&cli.BoolFlag{Name: "force", Usage: "replace a file that coldseam did not make, or that was changed since"},
		&cli.StringFlag{Name: "size", Usage: "of a still picture: desk (usual), phone, half-sheet"},
	}
}

func (p *program) chart(c *cli.Context) error {
	drops, err := p.figures(c)
	if err != nil {
		return err
	}
	out := c.String("o")
	if out == "" {
		if c.IsSet("size") {
			return refuse("--size is of a still picture: say which with -o x.svg")
		}
		for i, d := range drops {
			if i > 0 {
				fmt.Fprintln(&p.out)
			}
			fmt.Fprintf(&p.out, "%s\n\n%s", report.WrapTo(d.Title, p.width()), p.pictures(d))
		}
		return nil
	}
	still := func(buf *bytes.Buffer, f static.Format, size static.Size) error {
		if len(drops) == 1 {
			return static.Column(buf, f, size, drops[0])
		}
		return static.Compare(buf, f, size, chart.Sorted(drops))
	}
	return p.draw(c, out, still, func(buf *bytes.Buffer) error {
		sorted := chart.Sorted(drops)
		var upright, wide, narrow bytes.Buffer
		if err := still(&upright, static.SVG, static.Phone); err != nil {
			return err
		}
		if last := sorted[len(sorted)-1]; last.Scene != nil {
			if err := errors.Join(static.Scene(&wide, static.SVG, static.DeskScene, last), static.Scene(&narrow, static.SVG, static.PhoneScene, last)); err != nil {
				return err
			}
		}
		return htmlpage.Write(buf, htmlpage.Options{
			Script: asset.Script(), Licences: asset.Licences(), Still: upright.Bytes(), Scene: wide.Bytes(), Narrow: narrow.Bytes(),
		}, sorted)
	})
}

// pictures are those of the terminal, each of which fits it with the prompt: the scene and the
// column. A high terminal has room for the title and both.
func (p *program) pictures(d chart.Drop) string {
	const (
		titleRows = 3
		lowest    = 23 // rows of a column that can be read
		together  = 38 // rows that have room for all
	)
	cols, rows := columns(p.stdout)
	highest := rows - 2
	if rows >= together {
		highest = rows - titleRows - lowest - 1
	}
	scene := chart.Sketch(d, cols, highest)
	if scene != "" {
		scene += "\n"
	}
	left := rows - titleRows - strings.Count(scene, "\n") - 1
	return scene + chart.Strip(d, cols, max(left, min(rows-1, lowest)))
}

// figures are what a picture shows of the pages of a command.
func (p *program) figures(c *cli.Context) ([]chart.Drop, error) {
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return nil, err
	}
	plans, err := p.plansOf(jobs)
	if err != nil {
		return nil, err
	}
	var drops []chart.Drop
	for _, made := range plans {
		drops = append(drops, chart.Of(made))
	}
	return drops, nil
}

// stillPicture draws one of the still forms.
type stillPicture func(*bytes.Buffer, static.Format, static.Size) error

// draw writes a picture to the file named, in the form that its name asks for.
func (p *program) draw(c *cli.Context, out string, still stillPicture, html func(*bytes.Buffer) error) error {
	size, err := sizeOf(c)
	if err != nil {
		return err
	}
	var buf bytes.Buffer
	switch ext := strings.ToLower(filepath.Ext(out)); ext {
	case ".html", ".htm":
		if c.IsSet("size") {
			return refuse("--size is of a still picture; a page fits itself to the screen")
		}
		err = html(&buf)
	case ".svg", ".png", ".pdf":
		err = still(&buf, static.Format(ext[1:]), size)
	default:
		return refuse("-o %s: the name says the form: x.html, x.svg, x.png or x.pdf", out)
	}
	if err != nil {
		return refuse("-o %s: %w", out, err)
	}
	return p.write(out, c.Bool("force"), seal.Put(buf.Bytes()))
}

// sizeOf is the size of a still picture.
func sizeOf(c *cli.Context) (static.Size, error) {
	switch s := c.String("size"); s {
	case "", "desk":
		return static.Desk, nil
	case "phone":
		return static.Phone, nil
	case "half-sheet":
		return static.HalfSheet, nil
	default:
		return static.Size{}, refuse("--size: %q is none: desk, phone or half-sheet", s)
	}
}
