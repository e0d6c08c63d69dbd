package static

import (
	"math"

	"coldseam/profile/unit"
)

// The pens of the fish's limits: of temperature and of oxygen.
var (
	warmLimit   = stroke{1.3, curveInk, []float64{6, 2, 1.5, 2}}
	oxygenLimit = stroke{1.3, oxygenInk, []float64{6, 2, 1.5, 2, 1.5, 2}}
)

// limit is a limit of the fish, where it stands on the page and what it says.
type limit struct {
	pen  stroke
	x    float64
	text string
}

// limits are the fish's limits that lie inside the plot: warmest, coldest and oxygen.
func (c *column) limits() []limit {
	var out []limit
	add := func(pen stroke, known bool, a axis, at float64, text string) {
		if known && at > a.lo && at < a.hi {
			out = append(out, limit{pen, a.at(at), text})
		}
	}
	l := c.d.Limits
	add(warmLimit, l.ColdC.Known, c.temp, c.t(l.ColdC.Value), c.u.Degrees(l.ColdC.Value)+", the fish's limit")
	add(warmLimit, l.WarmC.Known, c.temp, c.t(l.WarmC.Value), c.u.Degrees(l.WarmC.Value)+", the fish's limit")
	add(oxygenLimit, l.OxygenMgL.Known, c.oxygen, l.OxygenMgL.Value, unit.Digits(l.OxygenMgL.Value, 1)+" mg/L, its limit of oxygen")
	return out
}

// drawLimits draws them down the plot.
func (c *column) drawLimits(p *page) {
	for _, l := range c.limits() {
		p.line(l.pen, pt{l.x, c.depth.from}, pt{l.x, c.depth.to})
	}
}

// limitEntries explain them, each with its number.
func (c *column) limitEntries() []entry {
	var out []entry
	for _, l := range c.limits() {
		out = append(out, sample(l.pen, l.text))
	}
	return out
}

// table is the answer's numbers under the scene, as many as there is room for.
func (c *column) table(p *page) {
	y := c.scene.y1 + 1.6*p.em
	label, value, to := c.margin, c.margin+7*p.em, c.from-p.em
	for _, r := range c.d.Brief.Rows {
		lines := p.plain().wrap(drawable(r.Detail), to-value, 5)
		high := (1.35*float64(len(lines)+1) + 0.3) * p.em
		if y+high > c.below-p.em {
			return
		}
		p.text(pt{label, y}, left, p.plain(), quiet, p.plain().cut(drawable(r.Label), value-label-4))
		p.text(pt{value, y}, left, p.bold(), ink, p.bold().cut(drawable(r.Value), to-value))
		for i, line := range lines {
			p.text(pt{value, y + 1.25*p.em*float64(i+1)}, left, p.plain(), quiet, line)
		}
		y += high
	}
}

// oxygenNumbers writes the number of each oxygen reading beside it, on the side away from the
// curve of temperatures, as far as there is room.
func (c *column) oxygenNumbers(p *page) {
	last := math.Inf(-1)
	for _, r := range c.d.Readings {
		if c.oxygen.hi == 0 || !hasOxygen(r) || c.z(r.DepthM) > c.depth.hi {
			continue
		}
		at := pt{c.oxygen.at(r.Oxygen.Value), c.y(r.DepthM)}
		text := unit.Digits(r.Oxygen.Value, 1)
		w, gap, clear := p.small().width(text), 0.6*p.em, 0.5*p.em
		free := func(x float64) bool {
			t := c.x(r.TempC)
			return x > c.oxygen.from+2 && x+w < c.oxygen.to-2 && (t < x-clear || t > x+w+clear)
		}
		x := at.x + gap
		if !free(x) {
			x = at.x - gap - w
		}
		if !free(x) || at.y-last < 1.1*p.em || at.y < c.depth.from+0.4*p.em {
			continue
		}
		last = at.y
		p.fill(paper, box(x-1, at.y-0.45*p.em, x+w+1, at.y+0.5*p.em))
		p.text(pt{x, at.y + 0.33*p.em}, left, p.small(), oxygenInk, text)
	}
}
