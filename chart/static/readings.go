package static

import (
	"slices"

	"coldseam/chart"
)

// radius is how large a reading is drawn, in points.
func (c *column) radius(p *page) float64 {
	switch n := len(c.d.Readings); {
	case n > 3*chart.Crowded:
		return 0.13 * p.em
	case n > chart.Crowded:
		return 0.2 * p.em
	}
	return 0.32 * p.em
}

// points are the readings with the bars of their error.
func (c *column) points(p *page) {
	var bars [][]pt
	for _, r := range c.d.Readings {
		if !r.Used || len(c.d.Readings) > chart.Crowded {
			continue
		}
		x, y := c.x(r.TempC), c.y(r.DepthM)
		bars = append(bars, []pt{{c.x(r.TempC - chart.Within80*r.ErrC), y}, {c.x(r.TempC + chart.Within80*r.ErrC), y}},
			[]pt{{x, c.y(r.DepthM - chart.Within80*r.ErrM)}, {x, c.y(r.DepthM + chart.Within80*r.ErrM)}})
	}
	p.lines(stroke{0.9, ink, nil}, bars...)
	for _, r := range c.d.Readings {
		at := pt{c.x(r.TempC), c.y(r.DepthM)}
		if r.Flag != "" {
			p.line(stroke{0.7, quiet, []float64{1.2, 2}}, at, pt{c.temp.to, at.y})
		}
		if off, dx, dy := c.offScale(r); off {
			p.offScale(at, dx, dy)
			continue
		}
		p.reading(at, c.radius(p), r)
	}
}

// reading is the sign of a reading: a dot, a ring where it is flagged, a crossed ring
// where it is not used either.
func (p *page) reading(at pt, r float64, of chart.Reading) {
	if of.Flag == "" && of.Used {
		p.fill(ink, circle(at, r))
		return
	}
	r *= 1.15
	p.fill(paper, circle(at, r))
	p.loops(stroke{1.2, ink, nil}, circle(at, r))
	if !of.Used {
		d := 1.2 * r
		p.lines(stroke{1.1, ink, nil}, []pt{{at.x - d, at.y - d}, {at.x + d, at.y + d}}, []pt{{at.x - d, at.y + d}, {at.x + d, at.y - d}})
	}
}

// offScale says whether a reading lies outside the plot, and where to.
func (c *column) offScale(r chart.Reading) (off bool, dx, dy float64) {
	if t := c.t(r.TempC); t < c.temp.lo {
		dx = -1
	} else if t > c.temp.hi {
		dx = 1
	}
	if z := c.z(r.DepthM); z < c.depth.lo {
		dy = -1
	} else if z > c.depth.hi {
		dy = 1
	}
	if dy != 0 {
		dx = 0
	}
	return dx != 0 || dy != 0, dx, dy
}

// offScale is the sign of a reading that lies outside: a hollow arrowhead at the edge.
func (p *page) offScale(at pt, dx, dy float64) {
	const r = 5
	back := pt{at.x - r*1.6*dx, at.y - r*1.6*dy}
	head := []pt{at, {back.x - r*dy, back.y + r*dx}, {back.x + r*dy, back.y - r*dx}}
	p.fill(paper, head)
	p.loops(stroke{1.2, ink, nil}, head)
}

// oxygens are the oxygen readings, joined by straight lines as they are read.
func (c *column) oxygens(p *page) {
	if c.oxygen.hi == 0 {
		return
	}
	var run []pt
	for _, r := range c.d.Readings {
		if hasOxygen(r) && c.z(r.DepthM) <= c.depth.hi {
			run = append(run, pt{c.oxygen.at(r.Oxygen.Value), c.y(r.DepthM)})
		}
	}
	p.line(oxygenLine, run...)
	for _, at := range run {
		p.fill(oxygenInk, diamond(at, 0.4*p.em))
	}
}

var oxygenLine = stroke{1.3, oxygenInk, []float64{1.5, 2.5}}

func diamond(at pt, r float64) []pt {
	return []pt{{at.x, at.y - r}, {at.x + r, at.y}, {at.x, at.y + r}, {at.x - r, at.y}}
}

// entries are the signs that this picture has.
func (c *column) entries() []entry {
	out := append(c.readingEntries(), c.curveEntries()...)
	if _, any := c.mostOxygen(); any {
		out = append(out, entry{func(p *page, at pt) {
			p.line(oxygenLine, at, pt{at.x + sign, at.y})
			p.fill(oxygenInk, diamond(pt{at.x + sign/2, at.y}, 0.4*p.em))
		}, "oxygen"})
	}
	return append(out, c.limitEntries()...)
}

// readingEntries are the signs of readings.
func (c *column) readingEntries() []entry {
	var out []entry
	add := func(r chart.Reading, text string) {
		out = append(out, entry{func(p *page, at pt) { p.reading(pt{at.x + sign/2, at.y}, 0.32*p.em, r) }, text})
	}
	some := func(is func(r chart.Reading, off bool) bool) bool {
		return slices.ContainsFunc(c.d.Readings, func(r chart.Reading) bool {
			off, _, _ := c.offScale(r)
			return is(r, off)
		})
	}
	if some(func(r chart.Reading, _ bool) bool { return r.Used && r.Flag == "" }) {
		if len(c.d.Readings) > chart.Crowded {
			add(chart.Reading{Used: true}, chart.SaidCrowded)
		} else {
			out = append(out, entry{barredReading, chart.SaidReading})
		}
	}
	if some(func(r chart.Reading, _ bool) bool { return r.Used && r.Flag != "" }) {
		add(chart.Reading{Used: true, Flag: "odd"}, chart.SaidOdd)
	}
	if some(func(r chart.Reading, off bool) bool { return !r.Used && !off }) {
		add(chart.Reading{Flag: "odd"}, chart.SaidUnused)
	}
	if some(func(_ chart.Reading, off bool) bool { return off }) {
		out = append(out, entry{func(p *page, at pt) { p.offScale(pt{at.x + sign/2 + 4, at.y}, 1, 0) }, chart.SaidOffScale})
	}
	return out
}

// barredReading is the sign of a reading with the bars of its error.
func barredReading(p *page, at pt) {
	m := pt{at.x + sign/2, at.y}
	p.lines(stroke{0.9, ink, nil}, []pt{{m.x - 9, m.y}, {m.x + 9, m.y}}, []pt{{m.x, m.y - 5}, {m.x, m.y + 5}})
	p.reading(m, 0.32*p.em, chart.Reading{Used: true})
}

// curveEntries are the signs of the curve and of its doubt.
func (c *column) curveEntries() []entry {
	var out []entry
	if slices.ContainsFunc(c.d.Curve, func(q chart.Point) bool { return q.LowC < q.HighC }) {
		out = append(out, entry{func(p *page, at pt) {
			x0, y0, x1, y1 := patch(at)
			p.fill(ribbon, box(x0, y0, x1, y1))
			p.lines(stroke{0.7, ribbonInk, nil}, []pt{{x0, y0}, {x1, y0}}, []pt{{x0, y1}, {x1, y1}})
			p.line(stroke{2, curveInk, nil}, at, pt{x1, at.y})
		}, chart.SaidCurve})
	}
	if slices.ContainsFunc(c.d.Curve, func(q chart.Point) bool { return q.Extended }) {
		out = append(out, sample(stroke{1.6, curveInk, assumedDash}, chart.SaidAssumed))
	}
	return out
}
