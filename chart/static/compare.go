package static

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// mostCompared is how many curves can be told apart in one picture.
const mostCompared = 8

// Compare draws two to eight drops over each other, in the units of the first, each with
// a letter on its curve that the list beside the picture explains. Its errors are those
// of Column, and it refuses other numbers of drops.
func Compare(w io.Writer, f Format, size Size, drops []chart.Drop) error {
	switch n := len(drops); {
	case n < 2:
		return errors.New("nothing to compare: give two drops or more")
	case n > mostCompared:
		return fmt.Errorf("%d drops are too many for one picture: give %d at most, or draw a season", n, mostCompared)
	}
	for i, d := range drops {
		if err := check(d); err != nil {
			return fmt.Errorf("drop %d: %w", i+1, err)
		}
	}
	title := common(drops)
	return render(w, f, size, title, func(p *page) { layCompared(p, title, drops).draw(p) })
}

// common is a title for several drops: what their own titles begin with alike, in whole
// parts, and their number.
func common(drops []chart.Drop) string {
	parts := strings.Split(drops[0].Title, ", ")
	for _, d := range drops[1:] {
		other := strings.Split(d.Title, ", ")
		n := 0
		for n < min(len(parts), len(other)) && parts[n] == other[n] {
			n++
		}
		parts = parts[:n]
	}
	count := fmt.Sprintf("%d drops compared", len(drops))
	if len(parts) == 0 {
		return count
	}
	return drawable(strings.Join(parts, ", ")) + ": " + count
}

// compared is where everything of a comparison stands.
type compared struct {
	title  string
	drops  []chart.Drop
	u      unit.System
	margin float64
	depth  axis
	temp   axis
	beside bool // the list of drops stands beside the plot, not under it
	list   pt   // where it begins
	wide   float64
	legend []entry
	below  float64
}

func name(d chart.Drop, i int) string {
	if s := drawable(d.Short); s != "" {
		return s
	}
	return fmt.Sprintf("drop %d", i+1)
}

// said is what the list says of a drop under its name.
func (c *compared) said(d chart.Drop) string {
	var words []string
	if m, ok := d.Mark(chart.Thermocline); ok {
		words = append(words, drawable(m.Name)+" "+m.Said(c.u))
	}
	if z, ok := d.Zone(chart.Band); ok {
		words = append(words, drawable(z.Name)+" "+z.Said(c.u))
	} else {
		words = append(words, "no band")
	}
	return strings.Join(words, ", ")
}

func layCompared(p *page, title string, drops []chart.Drop) *compared {
	c := &compared{title: title, drops: drops, u: drops[0].Units.Shown(), margin: 1.2 * p.em}
	lo, hi, most := math.Inf(1), math.Inf(-1), 0.0
	bars := false
	read := "readings used"
	for _, d := range drops {
		if len(d.Readings) > chart.Crowded {
			read = "readings used (left out where they are many)"
		}
		one := column{d: d, u: c.u}
		a, b := one.degrees()
		lo, hi = math.Min(lo, a), math.Max(hi, b)
		most = math.Max(most, c.u.Depth.From(d.DeepestM))
		_, bar := thermocline(d)
		bars = bars || bar
	}
	c.temp.lo, c.temp.hi = lo, hi
	c.depth.hi = 1.04 * most
	c.legend = []entry{{func(p *page, at pt) {
		for k := range 4 {
			_, sign := penOf(k)
			p.fill(ink, sign(pt{at.x + 3 + 6*float64(k), at.y}, 0.28*p.em))
		}
	}, read}}
	if bars {
		c.legend = append(c.legend, entry{func(p *page, at pt) { p.bar(pt{at.x + sign/2, at.y}, ink) }, "thermocline"})
	}
	c.depth.from = p.headed(title, c.margin) + 2*p.em
	c.temp.from = p.besideDepths(c.depth, c.margin)
	c.below = p.legendTop(c.legend, c.margin)
	c.depth.to = c.below - 4.2*p.em
	if c.beside = p.w > 60*p.em; c.beside {
		c.wide = 24 * p.em
		c.list = pt{p.w - c.margin/2 - c.wide, c.depth.from}
		c.temp.to = c.list.x - 1.2*p.em
		return c
	}
	c.wide = p.w - 2*c.margin
	c.list = pt{c.margin, c.below - 0.7*p.em}
	for i, d := range drops {
		c.list.y -= c.height(p, d, i)
	}
	c.depth.to = c.list.y - 3.6*p.em
	c.temp.to = p.w - c.margin
	return c
}

const listIndent = 2*sign + 4

// listed is the text of one entry of the list.
func (c *compared) listed(p *page, d chart.Drop, i int) set {
	return p.setLabel(label{name: name(d, i), value: c.said(d), under: c.beside}, c.wide-listIndent)
}

func (c *compared) height(p *page, d chart.Drop, i int) float64 {
	return c.listed(p, d, i).height(p.em) + 0.15*p.em
}

func (c *compared) draw(p *page) {
	p.titled(c.title, c.margin)
	depths := depthTicks(p, c.depth, c.u)
	temps := tempTicks(p, c.temp)
	p.grid(c.temp, c.depth, temps, depths)
	curves := make([][]pt, len(c.drops))
	for i, d := range c.drops {
		curves[i] = c.curve(d)
		s, sign := penOf(i)
		p.line(s, curves[i]...)
		for _, q := range d.Readings {
			if q.Used && len(d.Readings) <= chart.Crowded { // more would hide the dashes of the curve
				p.fill(s.color, sign(c.place(q.DepthM, q.TempC), 0.33*p.em))
			}
		}
		if z, ok := thermocline(d); ok && len(curves[i]) > 0 {
			y := c.place(z, 0).y
			p.bar(pt{xAt(curves[i], y), y}, s.color)
		}
	}
	p.loops(stroke{0.8, ink, nil}, box(c.temp.from, c.depth.from, c.temp.to, c.depth.to))
	p.down(c.depth, c.temp.from, depths)
	p.across(c.temp, c.depth.to, temps, "temperature, "+c.u.Temp.String(), false)
	p.text(pt{c.margin, c.depth.from - 0.7*p.em}, left, p.bold(), ink, "depth, "+c.u.Depth.String())
	for i, at := range c.letters(p, curves) {
		s, _ := penOf(i)
		p.badge(at, letter(i), s.color)
	}
	at := c.list
	for i, d := range c.drops {
		c.item(p, at, d, i)
		at.y += c.height(p, d, i)
	}
	p.legend(c.legend, c.below, c.margin, true)
}

// place is where a depth and a temperature stand, kept inside the plot.
func (c *compared) place(depthM, tempC float64) pt {
	return pt{c.temp.at(c.temp.inside(c.u.Temp.FromC(tempC))), c.depth.at(c.depth.inside(c.u.Depth.From(depthM)))}
}

// curve is a drop's curve on the page, as far as it was read; of a drop without one it is
// the readings used.
func (c *compared) curve(d chart.Drop) []pt {
	var out []pt
	for _, q := range d.Curve {
		if !q.Extended {
			out = append(out, c.place(q.DepthM, q.TempC))
		}
	}
	if len(out) > 1 {
		return out
	}
	out = nil
	for _, r := range d.Readings {
		if r.Used {
			out = append(out, c.place(r.DepthM, r.TempC))
		}
	}
	return out
}

// item is one entry of the list: badge, line with its sign, name, and what is said.
func (c *compared) item(p *page, at pt, d chart.Drop, i int) {
	s, mark := penOf(i)
	y := at.y + leading*p.em/2
	p.badge(pt{at.x + 0.75*p.em, y}, letter(i), s.color)
	p.line(s, pt{at.x + 1.7*p.em, y}, pt{at.x + listIndent - 4, y})
	p.fill(s.color, mark(pt{(at.x + 1.7*p.em + at.x + listIndent - 4) / 2, y}, 0.33*p.em))
	p.setText(c.listed(p, d, i), pt{at.x + listIndent, at.y + 0.92*p.em})
}
