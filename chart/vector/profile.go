package vector

import (
	"math"
	"slices"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// Profile draws the column of a drop: depth down, temperature to the right, the readings with
// the bars of their error, the curve between them with its doubt, the metalimnion, the band and
// the part of unknown oxygen, the thermocline, the fly and the bottom with their numbers, and
// oxygen where it was measured. Under it stands what its signs mean. It is "" where nothing was
// read.
func Profile(d chart.Drop) string {
	if len(d.Readings) == 0 {
		return ""
	}
	c, p := layColumn(d), &pen{}
	c.ground(p)
	c.doubt(p)
	c.marks(p)
	c.curve(p)
	c.oxygens(p)
	c.points(p)
	c.oxygenNumbers(p)
	c.scales(p)
	c.lanes(p)
	p.beside(c.names, c.depth.from-6, c.foot)
	c.legend(p)
	return picture("profile", "The column: temperature by depth", says(d), c.high, p)
}

// says is what one sees in the column, for those who do not.
func says(d chart.Drop) string {
	used, odd := 0, 0
	for _, r := range d.Readings {
		if r.Used {
			used++
		}
		if r.Flag != "" {
			odd++
		}
	}
	text := unit.Count(used, "reading") + " used"
	if odd > 0 {
		text += ", " + unit.Count(odd, "odd one")
	}
	return text + ". " + d.Brief.Sentence()
}

// column is where everything of a column stands.
type column struct {
	d           chart.Drop
	u           unit.System
	depth       axis    // in the angler's unit
	temp        axis    // on the angler's scale
	oxygen      axis    // mg/L; hi 0 where none was read
	layer, lack float64 // x where the lanes of the metalimnion and of unknown oxygen begin; 0: there is none
	foot        float64 // y under the scale of temperatures
	signs       []sign
	high        float64
	names       []name
}

const (
	leastColumn, mostColumn = 300.0, 420.0 // how high the plot is
	column1                 = 10.0         // how wide a lane is
)

func layColumn(d chart.Drop) *column {
	c := &column{d: d, u: d.Units.Shown()}
	c.depth.hi = c.u.Depth.From(d.DeepestM) * 1.03
	lo, hi := chart.TempRange(d)
	c.temp.lo, c.temp.hi = math.Floor(c.u.Temp.FromC(lo)), math.Ceil(c.u.Temp.FromC(hi))
	for _, r := range d.Readings {
		if hasOxygen(r) {
			c.oxygen.hi = math.Max(c.oxygen.hi, math.Max(2, 2*math.Ceil(r.Oxygen.Value/2)))
		}
	}
	x := gutterBend - 6
	lane := func(k chart.ZoneKind) float64 {
		if _, ok := d.Zone(k); !ok {
			return 0
		}
		x -= column1 + 3
		return x
	}
	c.lack, c.layer = lane(chart.Unproven), lane(chart.Metalimnion)
	c.depth.from = 26
	if c.oxygen.hi > 0 {
		c.depth.from += 18
	}
	c.temp.from, c.temp.to = besideDepths([]float64{math.Floor(c.depth.hi), finest(c.u) + 10}, c.u), x-3
	c.oxygen.from, c.oxygen.to = c.temp.from, c.temp.to
	names, high := gutter(c.named(), mostColumn)
	c.depth.to = c.depth.from + math.Min(math.Max(leastColumn, high-40), mostColumn)
	for i := range names {
		names[i].to.y = c.depth.at(names[i].to.y)
	}
	c.names = names
	c.foot = c.depth.to + 42
	c.signs = c.entries()
	c.high = c.foot + legendHigh(c.signs)
	return c
}

// y is where a depth in metres stands, x a temperature in C, kept inside the plot.
func (c *column) y(metres float64) float64 { return c.depth.at(c.u.Depth.From(metres)) }
func (c *column) x(degC float64) float64   { return c.temp.at(c.u.Temp.FromC(degC)) }

// hasOxygen reports whether a reading is a point of the curve of oxygen: one that was left out
// is not.
func hasOxygen(r chart.Reading) bool { return r.Used && r.Oxygen.Known && r.Oxygen.Value >= 0 }

// named are the names of zones and marks, and of odd readings; what they point to is a depth
// yet, in the angler's unit.
func (c *column) named() []name {
	var out []name
	add := func(what, value string, x, m float64, dot, minor bool) {
		out = append(out, name{what: what, value: value, to: at{x, c.u.Depth.From(math.Max(m, 0))}, dot: dot, minor: minor})
	}
	middle := func(z chart.Zone) float64 { return (math.Max(z.TopM, 0) + math.Min(z.BottomM, c.d.DeepestM)) / 2 }
	for _, z := range c.d.Zones {
		switch z.Kind {
		case chart.Metalimnion:
			add(z.Name, z.Said(c.u), c.layer+column1/2, z.TopM+0.8*(math.Min(z.BottomM, c.d.DeepestM)-z.TopM), true, false)
		case chart.Unproven:
			add(z.Name, z.Said(c.u), c.lack+column1/2, middle(z), true, false)
		case chart.Band:
			add(z.Name, z.Said(c.u), c.temp.to-8, z.TopM+0.65*(math.Min(z.BottomM, c.d.DeepestM)-math.Max(z.TopM, 0)), true, false)
		}
	}
	for _, m := range c.d.Marks {
		switch m.Kind {
		case chart.Thermocline, chart.Start, chart.Bottom:
			add(m.Name, m.Said(c.u), c.temp.to, m.At.Best, false, false)
		}
	}
	for _, r := range c.d.Readings {
		if r.Flag != "" && !r.Far && r.DepthM <= c.d.DeepestM {
			add(r.Flag, depthSaid(r.DepthM, c.u), c.temp.to, r.DepthM, false, true)
		}
	}
	return out
}

// ground is the band's tint, hatched where its oxygen is unknown, and the grid.
func (c *column) ground(p *pen) {
	if z, ok := c.d.Zone(chart.Band); ok {
		top, bottom := c.y(z.TopM), c.y(z.BottomM)
		p.area("band", 0.12, box(c.temp.from, top, c.temp.to, bottom)...)
		if u, ok := c.d.BandUnknown(); ok {
			p.line("edge", 0.8, "", hatch(c.temp.from, c.y(u.TopM), c.temp.to, bottom, 20)...)
		}
		p.line("edge", 1, "", []at{{c.temp.from, top}, {c.temp.to, top}}, []at{{c.temp.from, bottom}, {c.temp.to, bottom}})
	}
	var grid [][]at
	for _, v := range c.depths() {
		grid = append(grid, []at{{c.temp.from, c.depth.at(v)}, {c.temp.to, c.depth.at(v)}})
	}
	for _, v := range c.degrees() {
		grid = append(grid, []at{{c.temp.at(v), c.depth.from}, {c.temp.at(v), c.depth.to}})
	}
	p.line("grid", 0.6, "", grid...)
}

func (c *column) depths() []float64  { return c.depth.ticks(28, finest(c.u)) }
func (c *column) degrees() []float64 { return c.temp.ticks(40, 1) }

// doubt is the 80 % interval about the curve.
func (c *column) doubt(p *pen) {
	var low, high []at
	for _, q := range c.d.Curve {
		low = append(low, at{c.x(q.LowC), c.y(q.DepthM)})
		high = append(high, at{c.x(q.HighC), c.y(q.DepthM)})
	}
	if len(low) > 1 {
		around := slices.Clone(low)
		slices.Reverse(around)
		p.area("doubt", 0.15, append(slices.Clone(high), around...)...)
		p.line("rib", 0.7, "", low, high)
	}
}

// curve is the middle curve; what is assumed of it is dashed.
func (c *column) curve(p *pen) {
	var read, assumed [][]at
	was := false
	for i, q := range c.d.Curve {
		if i == 0 {
			continue
		}
		a := c.d.Curve[i-1]
		run, guessed := &read, a.Extended || q.Extended
		if guessed {
			run = &assumed
		}
		if i == 1 || guessed != was {
			*run = append(*run, []at{{c.x(a.TempC), c.y(a.DepthM)}})
		}
		last := &(*run)[len(*run)-1]
		*last = append(*last, at{c.x(q.TempC), c.y(q.DepthM)})
		was = guessed
	}
	p.line("curve", 2.4, "", read...)
	p.line("curve", 2, assumedDash, assumed...)
}

const assumedDash = "3 2.5"

// marks are lines across the plot: the thermocline with the bar of its interval, the fly, the
// bottom.
func (c *column) marks(p *pen) {
	for _, m := range c.d.Marks {
		y := c.y(m.At.Best)
		across := []at{{c.temp.from, y}, {c.temp.to, y}}
		switch m.Kind {
		case chart.Thermocline:
			p.line("line", 1.4, "9 3", across)
			x, low, high := c.temp.to-7, c.y(m.At.Low), c.y(m.At.High)
			p.line("line", 1.2, "", []at{{x, low}, {x, high}}, []at{{x - 3, low}, {x + 3, low}}, []at{{x - 3, high}, {x + 3, high}})
		case chart.Start: // an arrowhead, as a line with a fly on it
			p.line("line", 1.4, "", across)
			p.area("dot", 1, at{c.temp.from, y - 5}, at{c.temp.from + 10, y}, at{c.temp.from, y + 5})
		case chart.Bottom:
			p.line("line", 2.4, "", across)
			p.line("pointer", 0.7, "", hatch(c.temp.from, y, c.temp.to, c.depth.to, 9)...)
		}
	}
}

// lanes are the metalimnion and the water of unknown oxygen, beside the plot.
func (c *column) lanes(p *pen) {
	for _, z := range c.d.Zones {
		x, gap := c.layer, 5.0
		switch z.Kind {
		case chart.Metalimnion:
		case chart.Unproven:
			x, gap = c.lack, 10
		default:
			continue
		}
		top, bottom := c.y(z.TopM), c.y(z.BottomM)
		p.line("pointer", 0.8, "", hatch(x, top, x+column1, bottom, gap)...)
		p.line("line", 1, "", append(box(x, top, x+column1, bottom), at{x, top}))
	}
}

func (c *column) scales(p *pen) {
	p.line("line", 1, "", []at{{c.temp.from, c.depth.from}, {c.temp.to, c.depth.from}, {c.temp.to, c.depth.to}})
	p.down(c.depth, c.temp.from, c.depths())
	p.across(c.temp, c.depth.to, c.degrees())
	p.text(at{(c.temp.from + c.temp.to) / 2, c.depth.to + 32}, centre, true, "temperature, "+c.u.Temp.String())
	p.text(at{1, 9}, left, true, "depth, "+c.u.Depth.String())
	if c.oxygen.hi > 0 {
		p.text(at{c.oxygen.to, 9}, right, true, "oxygen, mg/L")
		var runs [][]at
		for _, v := range c.oxygen.ticks(44, 1) {
			x := c.oxygen.at(v)
			runs = append(runs, []at{{x, c.depth.from}, {x, c.depth.from - 4}})
			p.text(at{x, c.depth.from - 12}, centre, false, unit.Digits(v, 1))
		}
		p.line("line", 1, "", runs...)
	}
}
