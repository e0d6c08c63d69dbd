package static

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
)

// pt is a place on the page: points from its left edge and from its top, downward as
// depth goes.
type pt struct{ x, y float64 }

// stroke is how a line is drawn; lengths in points.
type stroke struct {
	width float64
	color color.RGBA
	dash  []float64
}

// page is what a picture is drawn on. It turns y upside down for the canvas, and it is
// the one gate that keeps a number that is none out of the file: the first sets err.
type page struct {
	canvas vg.Canvas
	w, h   float64
	em     float64 // size of the plain text
	from   pt      // of a part of a page: where it begins on the whole
	foot   float64 // height of the whole
	err    error
}

// part draws on a part of a page as on one of its own.
func (p *page) part(x0, y0, x1, y1 float64, draw func(*page)) {
	q := *p
	q.from, q.w, q.h = pt{p.from.x + x0, p.from.y + y0}, x1-x0, y1-y0
	draw(&q)
	p.err = q.err
}

func (p *page) plain() style { return style{size: p.em} }
func (p *page) bold() style  { return style{size: p.em, bold: true} }
func (p *page) head() style  { return style{size: 1.3 * p.em, bold: true} }
func (p *page) small() style { return style{size: 0.92 * p.em} }

func (p *page) point(at pt) vg.Point {
	if d := math.Abs(at.x) + math.Abs(at.y); !(d < 1e6) && p.err == nil {
		p.err = fmt.Errorf("a picture cannot be drawn at %v, %v", at.x, at.y)
	}
	return vg.Point{X: vg.Length(p.from.x + at.x), Y: vg.Length(p.foot - p.from.y - at.y)}
}

func (p *page) path(loops [][]pt, closed bool) vg.Path {
	var path vg.Path
	for _, loop := range loops {
		for i, at := range loop {
			if q := p.point(at); i == 0 {
				path.Move(q)
			} else {
				path.Line(q)
			}
		}
		if closed {
			path.Close()
		}
	}
	return path
}

// lines strokes open lines; ones of fewer than two points are nothing.
func (p *page) lines(s stroke, lines ...[]pt) {
	var drawn [][]pt
	for _, l := range lines {
		if len(l) > 1 {
			drawn = append(drawn, l)
		}
	}
	p.stroke(s, p.path(drawn, false))
}

func (p *page) line(s stroke, points ...pt) { p.lines(s, points) }

// loops strokes closed lines.
func (p *page) loops(s stroke, loops ...[]pt) { p.stroke(s, p.path(loops, true)) }

func (p *page) stroke(s stroke, path vg.Path) {
	if len(path) == 0 || p.err != nil {
		return
	}
	dash := make([]vg.Length, len(s.dash))
	for i, d := range s.dash {
		dash[i] = vg.Length(d)
	}
	p.canvas.SetColor(s.color)
	p.canvas.SetLineWidth(vg.Length(s.width))
	p.canvas.SetLineDash(dash, 0)
	p.canvas.Stroke(path)
}

// fill fills closed loops; a loop that turns the other way inside one is a hole.
func (p *page) fill(c color.RGBA, loops ...[]pt) {
	path := p.path(loops, true)
	if len(path) == 0 || p.err != nil {
		return
	}
	p.canvas.SetColor(c)
	p.canvas.Fill(path)
}

// align says which end of a text stands at its place.
type align float64

const (
	left   align = 0
	centre align = 0.5
	right  align = 1
)

// text writes one line with its baseline at a place.
func (p *page) text(at pt, a align, s style, c color.RGBA, text string) {
	if text == "" {
		return
	}
	at.x -= float64(a) * s.width(text)
	q := p.point(at)
	if p.err != nil {
		return
	}
	p.canvas.SetColor(c)
	p.canvas.FillString(s.face(), q, text)
}

// box is the corners of an upright rectangle.
func box(x0, y0, x1, y1 float64) []pt { return []pt{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }

// circle is a circle as a polygon that no eye tells from one at the sizes used here.
func circle(at pt, r float64) []pt {
	const n = 20
	loop := make([]pt, n)
	for i := range loop {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		loop[i] = pt{at.x + r*cos, at.y + r*sin}
	}
	return loop
}

// hatch gives slanting lines inside a rectangle, rising to the right, or falling.
func hatch(x0, y0, x1, y1, gap float64, rising bool) [][]pt {
	var lines [][]pt
	w, h := x1-x0, y1-y0
	if !(w > 0 && h > 0 && gap > 0) || (w+h)/gap > 5000 {
		return nil
	}
	for s := gap / 2; s < w+h; s += gap { // x+y, counted from the corner
		a, b := pt{math.Min(s, w), math.Max(s-w, 0)}, pt{math.Max(s-h, 0), math.Min(s, h)}
		if !rising {
			a.x, b.x = w-a.x, w-b.x
		}
		lines = append(lines, []pt{{x0 + a.x, y0 + a.y}, {x0 + b.x, y0 + b.y}})
	}
	return lines
}
