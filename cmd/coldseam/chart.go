package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"coldseam/chart"
	"coldseam/chart/asset"
	"coldseam/chart/figure"
	htmlpage "coldseam/chart/page"
	"coldseam/chart/static"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/say"
)

func (p *program) chartCommand() *cli.Command {
	return &cli.Command{
		Name:      "chart",
		Usage:     "a picture of a drop, or of several to compare",
		ArgsUsage: "[flags] [FILE...]   (no file, or -, is standard input)",
		Description: `Without -o the strip is drawn in the terminal. -o x.html is a page for a phone
or a desk that asks for no network; -o x.svg, x.png and x.pdf are still pictures.`,
		Flags:  append([]cli.Flag{outFlag(), sizeFlag()}, headerFlags()...),
		Action: p.chart,
	}
}

func outFlag() cli.Flag {
	return &cli.StringFlag{Name: "o", Usage: "the file to write: x.html, x.svg, x.png or x.pdf"}
}

func sizeFlag() cli.Flag {
	return &cli.StringFlag{Name: "size", Usage: "of a still picture: desk, phone or half-sheet; desk if not said"}
}

func (p *program) chart(c *cli.Context) error {
	plans, drops, err := p.figures(c)
	if err != nil {
		return err
	}
	out := c.String("o")
	if out == "" {
		if c.IsSet("size") {
			return refuse("--size is of a still picture: say which with -o x.svg")
		}
		for i, made := range plans {
			if i > 0 {
				fmt.Fprintln(&p.out)
			}
			fmt.Fprintf(&p.out, "%s\n\n%s", say.Wrap(say.Title(made), ""), chart.Strip(made))
		}
		return nil
	}
	still := func(buf *bytes.Buffer, f static.Format, size static.Size) error {
		if len(drops) == 1 {
			return static.Column(buf, f, size, drops[0])
		}
		return static.Compare(buf, f, size, figure.Sorted(drops))
	}
	return p.draw(c, out, still, func(buf *bytes.Buffer) error {
		var upright bytes.Buffer
		if err := still(&upright, static.SVG, static.Phone); err != nil {
			return err
		}
		return htmlpage.Write(buf, htmlpage.Options{Script: asset.Script(), Licences: asset.Licences(), Still: upright.Bytes()}, figure.Sorted(drops))
	})
}

// figures are the plans of the pages of a command, and what a picture shows of them.
func (p *program) figures(c *cli.Context) ([]plan.Plan, []figure.Drop, error) {
	jobs, _, err := p.jobs(c, false)
	if err != nil {
		return nil, nil, err
	}
	var plans []plan.Plan
	var drops []figure.Drop
	for _, j := range jobs {
		made, err := plan.Make(j.input)
		if err != nil {
			return nil, nil, unusable(j.sheet.Name, made.Drop, err)
		}
		plans, drops = append(plans, made), append(drops, figure.Of(made))
	}
	return plans, drops, nil
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
	return p.write(c, out, buf.Bytes())
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

// write writes a file whole or not at all, and never over what was read.
func (p *program) write(c *cli.Context, out string, data []byte) error {
	for _, name := range c.Args().Slice() {
		if same(name, out) {
			return refuse("-o %s: that is the page that is read; give the picture a name of its own", out)
		}
	}
	part := out + ".part"
	if err := os.WriteFile(part, data, 0o644); err != nil {
		os.Remove(part) // what a full disk took of it
		return fmt.Errorf("%s: cannot be written: %s", out, cause(err))
	}
	if err := os.Rename(part, out); err != nil {
		os.Remove(part)
		return fmt.Errorf("%s: cannot be written: %s", out, cause(err))
	}
	fmt.Fprintf(p.err, "Wrote %s\n", plain.Line(out))
	return nil
}

func exists(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}

func same(a, b string) bool {
	x, err := os.Stat(a)
	if err != nil {
		return filepath.Clean(a) == filepath.Clean(b)
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}
