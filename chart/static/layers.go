package static

import (
	"cmp"
	"fmt"
	"slices"

	"coldseam/chart"
)

// layerLine is the depth of one edge of a layer through the season.
type layerLine struct {
	name string
	of   func(chart.Drop) (depthM float64, ok bool)
	pen  stroke
	sign func(at pt, r float64) []pt
	runs [][]pt // unbroken pieces on the page
	at   []pt   // every drop that has it
}

// top, bottom and thermocline are depths that a drop may have.
func top(k chart.ZoneKind) func(chart.Drop) (float64, bool) {
	return func(d chart.Drop) (float64, bool) {
		z, ok := d.Zone(k)
		return z.TopM, ok
	}
}

func bottom(k chart.ZoneKind) func(chart.Drop) (float64, bool) {
	return func(d chart.Drop) (float64, bool) {
		z, ok := d.Zone(k)
		return z.BottomM, ok
	}
}

func thermocline(d chart.Drop) (float64, bool) {
	m, ok := d.Mark(chart.Thermocline)
	return m.At.Best, ok
}

func triangle(up bool) func(at pt, r float64) []pt {
	return func(at pt, r float64) []pt {
		if !up {
			return []pt{{at.x, at.y + 1.1*r}, {at.x - 1.1*r, at.y - 0.8*r}, {at.x + 1.1*r, at.y - 0.8*r}}
		}
		return []pt{{at.x, at.y - 1.1*r}, {at.x + 1.1*r, at.y + 0.8*r}, {at.x - 1.1*r, at.y + 0.8*r}}
	}
}

func block(at pt, r float64) []pt { return box(at.x-0.85*r, at.y-0.85*r, at.x+0.85*r, at.y+0.85*r) }

var bandPen = stroke{1.6, ink, []float64{9, 2.5, 1.5, 2.5}}

func layerLines() []layerLine {
	return []layerLine{
		{name: "metalimnion top", of: top(chart.Metalimnion), pen: stroke{1.3, ink, []float64{4, 3}}, sign: triangle(true)},
		{name: "thermocline", of: thermocline, pen: stroke{2.2, ink, nil}, sign: circle},
		{name: "metalimnion bottom", of: bottom(chart.Metalimnion), pen: stroke{1.3, ink, []float64{4, 3}}, sign: triangle(false)},
		{name: "band top", of: top(chart.Band), pen: bandPen, sign: diamond},
		{name: "band bottom", of: bottom(chart.Band), pen: bandPen, sign: block},
	}
}

// layers are the lines that this season has.
func (s *season) layers() []layerLine {
	var out []layerLine
	for _, l := range layerLines() {
		var run []pt
		for k, d := range s.drops {
			z, ok := l.of(d.Drop)
			if !ok || !s.joined(k-1) {
				l.runs, run = append(l.runs, run), nil
			}
			if ok {
				run = append(run, pt{s.x(k), s.y(z)})
				l.at = append(l.at, run[len(run)-1])
			}
		}
		l.runs = append(l.runs, run)
		if len(l.at) > 0 {
			out = append(out, l)
		}
	}
	return out
}

// ends are the names of lines beside the last drop.
func (s *season) ends() []label {
	last := s.drops[len(s.drops)-1]
	var out []label
	for _, l := range s.lines {
		if z, ok := l.of(last.Drop); ok {
			out = append(out, label{at: s.y(z), from: s.x(len(s.drops) - 1), name: l.name, value: s.u.Length(z)})
		}
	}
	slices.SortStableFunc(out, func(a, b label) int { return cmp.Compare(a.at, b.at) })
	return out
}

func (s *season) entries() []entry {
	out := []entry{{func(p *page, at pt) { p.dropSign(pt{at.x + sign/2, at.y + 3}) }, "drop"}}
	for _, l := range layerLines() {
		if slices.ContainsFunc(s.drops, func(d chart.Dated) bool { _, ok := l.of(d.Drop); return ok }) {
			out = append(out, entry{func(p *page, at pt) {
				p.line(l.pen, at, pt{at.x + sign, at.y})
				p.fill(ink, l.sign(pt{at.x + sign/2, at.y}, 0.32*p.em))
			}, l.name})
		}
	}
	has := func(is func(chart.Drop) bool) bool {
		return slices.ContainsFunc(s.drops, func(d chart.Dated) bool { return is(d.Drop) })
	}
	if has(func(d chart.Drop) bool { b, ok := bandOf(d); return ok && b.unknown > b.top }) {
		out = append(out, entry{func(p *page, at pt) { bandPatch(p, at, true) }, "band"})
	}
	if has(func(d chart.Drop) bool { b, ok := bandOf(d); return ok && b.unknown < b.bottom }) {
		out = append(out, entry{func(p *page, at pt) { bandPatch(p, at, false) }, "band, oxygen unknown"})
	}
	if has(func(d chart.Drop) bool { _, ok := d.Mark(chart.Bottom); return ok }) {
		out = append(out, entry{func(p *page, at pt) { p.bed([]pt{{at.x, at.y - 2}, {at.x + sign, at.y - 2}}) }, "bottom"})
	}
	for k := range len(s.drops) - 1 {
		if d := days(s.drops[k].When, s.drops[k+1].When); d > chart.GapDays {
			out = append(out, entry{func(p *page, at pt) {
				x0, y0, x1, y1 := patch(at)
				p.gap(x0, y0, x1, y1)
				p.loops(stroke{0.6, quiet, nil}, box(x0, y0, x1, y1))
			}, fmt.Sprintf("more than %.0f days without a drop: not filled", chart.GapDays)})
			break
		}
	}
	return append(out, entry{func(p *page, at pt) {
		x0, y0, x1, y1 := patch(at)
		p.loops(stroke{0.6, quiet, nil}, box(x0, y0, x1, y1))
	}, "not read"})
}

// dropSign points down at a place: a drop was taken here.
func (p *page) dropSign(at pt) { p.fill(ink, []pt{{at.x - 4, at.y - 7}, {at.x + 4, at.y - 7}, at}) }

// gap is time of which nothing is known.
func (p *page) gap(x0, y0, x1, y1 float64) {
	p.lines(stroke{0.5, quiet, nil}, hatch(x0, y0, x1, y1, 9, false)...)
}
