package static

import (
	"bytes"
	"fmt"
	"html"
	"io"
	"math"
	"regexp"
	"strconv"
	"sync"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// render draws on a page of the format and writes it in one go, so that a picture that
// fails leaves nothing behind.
func render(w io.Writer, f Format, size Size, title string, draw func(*page)) error {
	if err := size.check(); err != nil {
		return err
	}
	return renderAny(w, f, size, title, draw)
}

// renderAny is render for a size that was checked.
func renderAny(w io.Writer, f Format, size Size, title string, draw func(*page)) error {
	var canvas vg.CanvasWriterTo
	width, height := vg.Length(size.WidthPt), vg.Length(size.HeightPt)
	switch f {
	case SVG:
		canvas = vgsvg.New(width, height)
	case PNG:
		canvas = dots{vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(width, height), vgimg.UseDPI(size.DPI))}}
	case PDF:
		canvas = newPDF(width, height)
	default:
		return fmt.Errorf("no picture can be written as %q: use svg, png or pdf", string(f))
	}
	out, err := paint(canvas, size, draw)
	if err != nil {
		return err
	}
	if f == SVG {
		if out, err = finishSVG(out, size, title); err != nil {
			return err
		}
	}
	_, err = w.Write(out)
	return err
}

// dots is the library's canvas of dots with text as the outlines of its letters: the library
// kerns by whole dots, which at 96 to the inch pushes a comma or a full stop into its letter.
type dots struct{ vgimg.PngCanvas }

// FillString writes a text.
func (c dots) FillString(f font.Face, at vg.Point, text string) { c.Fill(outlines(f, at, text)) }

// paint draws and gives the file's bytes.
func paint(canvas vg.CanvasWriterTo, size Size, draw func(*page)) ([]byte, error) {
	p := &page{canvas: canvas, w: size.WidthPt, h: size.HeightPt, foot: size.HeightPt, em: size.TextPt}
	p.fill(paper, box(0, 0, p.w, p.h))
	draw(p)
	if p.err != nil {
		return nil, p.err
	}
	var b bytes.Buffer
	_, err := canvas.WriteTo(&b)
	return b.Bytes(), err
}

// paths and decimals find the outlines in an SVG and the numbers in one of them.
var (
	paths    = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`<path d="[^"]*"`) })
	decimals = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`-?\d+\.\d+`) })
)

// tenth writes a number to one decimal, or none where that is a nought.
func tenth(number []byte) []byte {
	v, err := strconv.ParseFloat(string(number), 64)
	if err != nil {
		return number
	}
	return strconv.AppendFloat(nil, math.Round(v*10)/10+0, 'f', -1, 64)
}

// finishSVG gives the library's SVG a head of our own: a title for those who listen to a
// page, no XML declaration (so that it can stand inside a page), and a font to fall back
// on where the Liberation fonts are not installed.
func finishSVG(svg []byte, size Size, title string) ([]byte, error) {
	_, body, found := bytes.Cut(svg, []byte("<svg "))
	_, body, ended := bytes.Cut(body, []byte(">\n"))
	if !found || !ended {
		return nil, fmt.Errorf("the SVG could not be made: its head is not where it was")
	}
	// a quote in a text is escaped, so that only the library's own words match
	body = bytes.ReplaceAll(body, []byte(`style="font-family:Liberation Sans;`), []byte(`style="font-family:'Liberation Sans',sans-serif;`))
	for _, usual := range []string{"font-variant:normal;", "font-weight:normal;", "font-style:normal;"} {
		body = bytes.ReplaceAll(body, []byte(usual), nil)
	}
	// a tenth of a point is less than a pixel shows, and a season has many thousand
	body = paths().ReplaceAllFunc(body, func(d []byte) []byte { return decimals().ReplaceAllFunc(d, tenth) })
	head := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" role="img" width="%gpt" height="%gpt" viewBox="0 0 %g %g">`+"\n<title>%s</title>\n",
		size.WidthPt, size.HeightPt, size.WidthPt, size.HeightPt, html.EscapeString(title))
	return append([]byte(head), body...), nil
}
