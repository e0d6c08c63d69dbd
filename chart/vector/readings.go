package vector

import (
	"math"
	"slices"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// radius is how large a reading is drawn.
func (c *column) radius() float64 {
	switch n := len(c.d.Readings); {
	case n > 3*chart.Crowded:
		return 1.6
	case n > chart.Crowded:
		return 2.6
	}
	return 4
}

// points are the readings with the bars of their error.
func (c *column) points(p *pen) {
	var bars [][]at
	for _, r := range c.d.Readings {
		if off, _, _ := c.offScale(r); !r.Used || off || len(c.d.Readings) > chart.Crowded {
			continue
		}
		x, y := c.x(r.TempC), c.y(r.DepthM)
		bars = append(bars, []at{{c.x(r.TempC - chart.Within80*r.ErrC), y}, {c.x(r.TempC + chart.Within80*r.ErrC), y}},
			[]at{{x, c.y(r.DepthM - chart.Within80*r.ErrM)}, {x, c.y(r.DepthM + chart.Within80*r.ErrM)}})
	}
	p.line("line", 1, "", bars...)
	for _, r := range c.d.Readings {
		q := at{c.x(r.TempC), c.y(r.DepthM)}
		if r.Flag != "" {
			p.line("pointer", 0.8, "1.2 2", []at{q, {c.temp.to, q.y}})
		}
		if off, dx, dy := c.offScale(r); off {
			p.arrow(q, dx, dy)
			continue
		}
		p.reading(q, c.radius(), r.Flag != "", r.Used)
	}
}

// reading is the sign of a reading: a dot, a ring where it is odd, a crossed ring where it is
// not used.
func (p *pen) reading(q at, r float64, odd, used bool) {
	if used && !odd {
		p.dot("dot", q, r)
		return
	}
	r *= 1.15
	p.ring(q, r)
	if !used {
		d := 1.2 * r
		p.line("line", 1.3, "", []at{{q.x - d, q.y - d}, {q.x + d, q.y + d}}, []at{{q.x - d, q.y + d}, {q.x + d, q.y - d}})
	}
}

// offScale says whether a reading lies outside the plot, and where to.
func (c *column) offScale(r chart.Reading) (off bool, dx, dy float64) {
	return outside(c.temp, c.depth, c.u.Temp.FromC(r.TempC), c.u.Depth.From(r.DepthM))
}

// outside says whether a temperature at a depth lies outside two axes, and where to.
func outside(temp, depth axis, t, z float64) (off bool, dx, dy float64) {
	switch {
	case z > depth.hi:
		dy = 1
	case z < depth.lo:
		dy = -1
	case t < temp.lo:
		dx = -1
	case t > temp.hi:
		dx = 1
	}
	return dx != 0 || dy != 0, dx, dy
}

// arrow is the sign of a reading that lies outside: a hollow arrowhead at the edge.
func (p *pen) arrow(q at, dx, dy float64) {
	const r = 5
	back := at{q.x - r*1.6*dx, q.y - r*1.6*dy}
	head := []at{q, {back.x - r*dy, back.y + r*dx}, {back.x + r*dy, back.y - r*dx}, q}
	p.area("paper", 0, head...)
	p.line("line", 1.3, "", head)
}

// oxygens are the oxygen readings, joined by straight lines as they are read.
func (c *column) oxygens(p *pen) {
	run := c.oxygenRun()
	p.line("oxygen", 1.4, "1.5 2.5", run)
	for _, q := range run {
		p.area("float", 1, diamond(q)...)
	}
}

func (c *column) oxygenRun() []at {
	var run []at
	for _, r := range c.d.Readings {
		if hasOxygen(r) && c.u.Depth.From(r.DepthM) <= c.depth.hi {
			run = append(run, at{c.oxygen.at(r.Oxygen.Value), c.y(r.DepthM)})
		}
	}
	return run
}

func diamond(q at) []at {
	const r = 5.5
	return []at{{q.x, q.y - r}, {q.x + r, q.y}, {q.x, q.y + r}, {q.x - r, q.y}}
}

// oxygenNumbers writes the number of each oxygen reading beside it, where the curve of
// temperatures leaves room.
func (c *column) oxygenNumbers(p *pen) {
	last := math.Inf(-1)
	for _, r := range c.d.Readings {
		if !hasOxygen(r) || c.u.Depth.From(r.DepthM) > c.depth.hi {
			continue
		}
		q, t := at{c.oxygen.at(r.Oxygen.Value), c.y(r.DepthM)}, c.x(r.TempC)
		text := unit.Digits(r.Oxygen.Value, 1)
		w := width(text, false)
		free := func(x float64) bool {
			return x > c.oxygen.from+2 && x+w < c.oxygen.to-14 && (t < x-10 || t > x+w+10)
		}
		x := q.x + 9
		if !free(x) {
			x = q.x - 9 - w
		}
		if free(x) && q.y-last >= lineGap && q.y > c.depth.from+8 && q.y < c.depth.to-8 {
			last = q.y
			p.area("paper", 0, box(x-1, q.y-8, x+w+1, q.y+8)...)
			p.text(at{x, q.y}, left, false, text)
		}
	}
}

// sign is a sign of the picture and what it means.
type sign struct {
	draw func(p *pen, q at) // q is the middle of where it stands
	text string
}

const (
	signWide = 34.0
	signText = signWide + 6
)

// entries are the signs that this picture has.
func (c *column) entries() []sign {
	var out []sign
	add := func(some bool, text string, draw func(p *pen, q at)) {
		if some {
			out = append(out, sign{draw, text})
		}
	}
	any := func(is func(r chart.Reading, off bool) bool) bool {
		return slices.ContainsFunc(c.d.Readings, func(r chart.Reading) bool {
			off, _, _ := c.offScale(r)
			return is(r, off)
		})
	}
	plain := any(func(r chart.Reading, off bool) bool { return r.Used && r.Flag == "" && !off })
	crowded := len(c.d.Readings) > chart.Crowded
	add(plain && !crowded, chart.SaidReading, func(p *pen, q at) {
		p.line("line", 1, "", []at{{q.x - 9, q.y}, {q.x + 9, q.y}}, []at{{q.x, q.y - 6}, {q.x, q.y + 6}})
		p.reading(q, 4, false, true)
	})
	add(plain && crowded, chart.SaidCrowded, func(p *pen, q at) { p.reading(q, c.radius(), false, true) })
	add(any(func(r chart.Reading, off bool) bool { return r.Used && r.Flag != "" && !off }), chart.SaidOdd, func(p *pen, q at) { p.reading(q, 4, true, true) })
	add(any(func(r chart.Reading, off bool) bool { return !r.Used && !off }), chart.SaidUnused, func(p *pen, q at) { p.reading(q, 4, true, false) })
	add(any(func(_ chart.Reading, off bool) bool { return off }), chart.SaidOffScale, func(p *pen, q at) { p.arrow(at{q.x + 4, q.y}, 1, 0) })
	stroke := func(q at) []at { return []at{{q.x - signWide/2, q.y}, {q.x + signWide/2, q.y}} }
	add(slices.ContainsFunc(c.d.Curve, func(q chart.Point) bool { return q.LowC < q.HighC }), chart.SaidCurve, func(p *pen, q at) {
		p.area("doubt", 0.15, box(q.x-signWide/2, q.y-6, q.x+signWide/2, q.y+6)...)
		p.line("curve", 2.4, "", stroke(q))
	})
	add(slices.ContainsFunc(c.d.Curve, func(q chart.Point) bool { return q.Extended }), chart.SaidAssumed, func(p *pen, q at) { p.line("curve", 2, assumedDash, stroke(q)) })
	add(len(c.oxygenRun()) > 0, "oxygen, mg/L", func(p *pen, q at) {
		p.line("oxygen", 1.4, "1.5 2.5", stroke(q))
		p.area("float", 1, diamond(q)...)
	})
	return out
}

const signGap = 22.0

// legendHigh is how high the meaning of signs is, in lines that are as wide as the picture.
func legendHigh(signs []sign) float64 {
	high := 2.0
	for _, s := range signs {
		high += signGap + lineGap*float64(len(wrap(s.text, false, Wide-1-signText))-1)
	}
	return high
}

// legend says under the column what its signs mean.
func (c *column) legend(p *pen) {
	y := c.foot + signGap/2
	for _, s := range c.signs {
		s.draw(p, at{1 + signWide/2, y})
		for i, line := range wrap(s.text, false, Wide-1-signText) {
			if i > 0 {
				y += lineGap
			}
			p.text(at{signText, y}, left, false, line)
		}
		y += signGap
	}
}
