package static

import (
	"math"
	"slices"

	"coldseam/chart"
)

// zones are drawn in lanes beside the plot, so that one does not hide the other.
func (c *column) zones(p *page) {
	for _, z := range c.d.Zones {
		l := c.lanes[laneOf(z.Kind)]
		top, bottom := c.y(z.TopM), c.y(z.BottomM)
		switch z.Kind {
		case chart.MixedLayer:
			p.fill(mixedTint, box(l.x0, top, l.x1, bottom))
		case chart.Band:
			p.fill(bandTint, box(l.x0, top, l.x1, bottom))
		case chart.Metalimnion, chart.Unproven:
			p.lines(stroke{0.8, quiet, nil}, hatch(l.x0, top, l.x1, bottom, 0.55*p.em, z.Kind == chart.Metalimnion)...)
		}
		p.loops(stroke{0.9, ink, nil}, box(l.x0, top, l.x1, bottom))
	}
}

// line is how a mark's line is drawn.
func (c *column) line(k chart.MarkKind) stroke {
	switch k {
	case chart.Thermocline:
		return stroke{1.3, ink, []float64{9, 3}}
	case chart.Water:
		return stroke{1.3, ink, []float64{9, 2.5, 1.5, 2.5}}
	case chart.Bottom:
		return stroke{2.4, ink, nil}
	case chart.Secchi, chart.Weeds:
		return stroke{0.9, quiet, []float64{1.5, 3}}
	}
	return stroke{1.3, ink, nil}
}

// marks are lines across the plot, each with the bar of its 80 % interval.
func (c *column) marks(p *page) {
	bar := c.temp.to - 7
	for _, m := range c.d.Marks {
		y := c.y(m.At.Best)
		p.line(c.line(m.Kind), pt{c.temp.from, y}, pt{c.temp.to, y})
		switch m.Kind {
		case chart.Bottom:
			p.lines(stroke{0.7, quiet, nil}, hatch(c.temp.from, y, c.temp.to, c.depth.to, 0.6*p.em, true)...)
			continue
		case chart.Secchi: // the disk, its quarters black and white
			c.disk(p, pt{c.temp.from + 0.9*p.em, y})
		case chart.Start: // an arrowhead, as a line with a fly on it
			p.fill(ink, []pt{{c.temp.from, y - 4.5}, {c.temp.from + 9, y}, {c.temp.from, y + 4.5}})
		}
		if low, high := c.y(m.At.Low), c.y(m.At.High); high-low > 2 && m.Kind != chart.Weeds {
			s := stroke{1.1, ink, nil}
			p.lines(s, []pt{{bar, low}, {bar, high}}, []pt{{bar - 3, low}, {bar + 3, low}}, []pt{{bar - 3, high}, {bar + 3, high}})
			bar -= 10
		}
	}
}

// disk is the sign of a Secchi disk.
func (c *column) disk(p *page, at pt) {
	r := 0.45 * p.em
	round := circle(at, r)
	p.fill(paper, round)
	n := len(round) / 4
	p.fill(ink, append([]pt{at}, round[:n+1]...), append([]pt{at}, round[2*n:3*n+1]...))
	p.loops(stroke{0.9, ink, nil}, round)
}

// labels are the names of zones and marks, and of flagged readings, from the surface
// down.
func (c *column) labels() []label {
	var out []label
	var taken []float64 // where leaders run already
	for _, m := range c.d.Marks {
		taken = append(taken, c.y(m.At.Best))
	}
	for _, z := range c.d.Zones {
		l := c.lanes[laneOf(z.Kind)]
		at := clear(c.y(z.TopM), c.y(z.BottomM), taken)
		taken = append(taken, at)
		out = append(out, label{at: at, from: (l.x0 + l.x1) / 2, name: drawable(z.Name), value: z.Said(c.u), dot: true})
	}
	for _, m := range c.d.Marks {
		out = append(out, label{at: c.y(m.At.Best), from: c.temp.to, name: drawable(m.Name), value: m.Said(c.u)})
	}
	for _, r := range c.d.Readings {
		if r.Flag == "" {
			continue
		}
		value := c.u.Temp.String() + " at " + number(c.z(r.DepthM)) + " " + c.u.Depth.String()
		if value = number(c.t(r.TempC)) + " " + value; !r.Used {
			value += ", not used"
		}
		out = append(out, label{at: c.y(r.DepthM), from: c.temp.to, name: drawable(r.Flag), value: value, minor: true})
	}
	slices.SortStableFunc(out, func(a, b label) int {
		switch d := a.at - b.at; {
		case math.Abs(d) < 1e-9:
			return 0
		case d < 0:
			return -1
		}
		return 1
	})
	return out
}

// clear is a place between two for a leader, near the middle but away from those taken.
func clear(from, to float64, taken []float64) float64 {
	best, most := (from+to)/2, -1.0
	for _, f := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		at, room := from+f*(to-from), 26.0 // more room is no better
		for _, t := range taken {
			room = math.Min(room, math.Abs(t-at))
		}
		if room > most+1e-9 {
			best, most = at, room
		}
	}
	return best
}
