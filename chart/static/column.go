package static

import (
	"io"
	"math"
	"slices"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// Column draws one drop: the answer to scale first, where there is one, then its readings, depth
// downward, temperature across. It writes nothing when it
// fails: for a format or size that is none, a figure without readings or with a number
// that is none, or a writer that fails.
func Column(w io.Writer, f Format, size Size, d chart.Drop) error {
	if err := check(d); err != nil {
		return err
	}
	return render(w, f, size, drawable(d.Title), func(p *page) { layColumn(p, d).draw(p) })
}

// column is where everything of a column's picture stands.
type column struct {
	d      chart.Drop
	u      unit.System
	title  string
	margin float64
	depth  axis // depth in the angler's unit, to the page
	temp   axis // temperature on the angler's scale, to the page
	oxygen axis // mg/L to the page; zero where none was read
	lanes  [3]lane
	beside float64 // x where the labels begin
	wide   float64 // their width
	legend []entry
	below  float64 // y of the legend's first line
	from   float64 // x where the readings' picture begins
	scene  frame
}

// frame is a part of the page; an empty one holds nothing.
type frame struct{ x0, y0, x1, y1 float64 }

// lane is a narrow strip beside the plot, in which zones are drawn.
type lane struct{ x0, x1 float64 }

// The lanes, from the plot outward.
const (
	layerLane = iota
	bandLane
	oxygenLane
)

func layColumn(p *page, d chart.Drop) *column {
	c := &column{d: d, u: d.Units.Shown(), title: drawable(d.Title), margin: 1.2 * p.em}
	c.depth.hi = c.z(d.DeepestM) * 1.04
	c.temp.lo, c.temp.hi = c.degrees()
	if o, any := c.mostOxygen(); any {
		c.oxygen.hi = math.Max(2*math.Ceil(o/2), 2)
	}
	c.legend = c.entries()

	c.depth.from = p.headed(c.title, c.margin) + 2*p.em
	for i, text := range c.says(p) {
		if i == 0 {
			c.depth.from += 0.3 * p.em
		}
		c.depth.from += (1.25*float64(len(text.lines)) + 0.3) * p.em
	}
	c.stage(p)
	room := p.w - c.from
	c.wide = 0.36 * room
	width := 0.035 * room
	if room > 60*p.em {
		c.wide, width = 22*p.em, 1.6*p.em
	}
	if len(d.Zones)+len(d.Marks) == 0 && !slices.ContainsFunc(d.Readings, func(r chart.Reading) bool { return r.Flag != "" }) {
		c.wide = p.em
	}
	x0 := c.from + p.besideDepths(c.depth, c.margin)
	c.beside = p.w - c.margin/2 - c.wide
	x := c.beside - 2
	for _, k := range []int{oxygenLane, bandLane, layerLane} {
		if slices.ContainsFunc(d.Zones, func(z chart.Zone) bool { return laneOf(z.Kind) == k }) {
			c.lanes[k] = lane{x - width, x}
			x -= width + 3
		}
	}
	c.temp.from, c.temp.to = x0, x-3
	if c.oxygen.hi > 0 {
		c.depth.from += 1.5 * p.em
		c.oxygen.from, c.oxygen.to = x0, x-3
	}
	c.below = p.legendTop(c.legend, c.margin)
	c.depth.to = c.below - 4.2*p.em
	return c
}

// stage finds the scene its place: beside the readings on a wide page, else above them.
func (c *column) stage(p *page) {
	top := c.depth.from - 1.4*p.em
	switch {
	case c.d.Scene == nil:
	case p.w > 60*p.em && p.w > p.h:
		c.from = 0.42 * p.w
		c.scene = frame{0, top, c.from - 0.5*p.em, top + 0.34*p.h}
	default:
		c.scene = frame{0, top, p.w, top + 13.5*p.em}
		c.depth.from = c.scene.y1 + 2*p.em
	}
}

func laneOf(k chart.ZoneKind) int {
	switch k {
	case chart.Band:
		return bandLane
	case chart.Unproven:
		return oxygenLane
	}
	return layerLane
}

// z is a depth in the angler's unit, t a temperature on the angler's scale.
func (c *column) z(metres float64) float64 { return c.u.Depth.From(metres) }
func (c *column) t(degC float64) float64   { return c.u.Temp.FromC(degC) }

// y is where a depth in metres stands, x a temperature in C, kept inside the plot.
func (c *column) y(metres float64) float64 { return c.depth.at(c.depth.inside(c.z(metres))) }
func (c *column) x(degC float64) float64   { return c.temp.at(c.temp.inside(c.t(degC))) }

// degrees is the range of the temperature scale, in whole degrees.
func (c *column) degrees() (lo, hi float64) {
	lo, hi = chart.TempRange(c.d)
	return math.Floor(c.t(lo)), math.Ceil(c.t(hi))
}

// hasOxygen reports whether a reading is a point of the curve of oxygen: one that was left
// out is not.
func hasOxygen(r chart.Reading) bool { return r.Used && r.Oxygen.Known && r.Oxygen.Value >= 0 }

// mostOxygen is the highest oxygen reading, and whether there is one.
func (c *column) mostOxygen() (most float64, any bool) {
	for _, r := range c.d.Readings {
		if hasOxygen(r) {
			most, any = math.Max(most, r.Oxygen.Value), true
		}
	}
	return most, any
}

// says is what stands under the title: the warnings and the answer, each in a sentence.
func (c *column) says(p *page) []said {
	var out []said
	for _, text := range c.d.Brief.Warnings {
		out = append(out, said{p.bold(), p.bold().wrap(drawable(text), p.w-2*c.margin, 8)})
	}
	if text := c.d.Brief.Sentence(); text != "" {
		out = append(out, said{p.plain(), p.plain().wrap(drawable(text), p.w-2*c.margin, 12)})
	}
	return out
}

// said is a paragraph under the title.
type said struct {
	style style
	lines []string
}

func (c *column) draw(p *page) {
	p.titled(c.title, c.margin)
	y := p.headed(c.title, c.margin) - 0.35*p.em
	for _, text := range c.says(p) {
		y += 0.3 * p.em
		for _, line := range text.lines {
			y += 1.25 * p.em
			p.text(pt{c.margin, y}, left, text.style, ink, line)
		}
	}
	if f := c.scene; f.x1 > f.x0 {
		p.part(f.x0, f.y0, f.x1, f.y1, func(p *page) { layScene(p, c.d).draw(p) })
	}
	if c.from > 0 {
		c.table(p)
	}
	c.ground(p)
	c.drawLimits(p)
	c.doubt(p)
	c.marks(p)
	c.curve(p)
	c.oxygens(p)
	c.points(p)
	c.oxygenNumbers(p)
	c.scales(p)
	c.zones(p)
	p.gutter(c.labels(), c.beside, c.wide, c.depth.from, c.depth.to+1.5*p.em, "flagged readings")
	p.legend(c.legend, c.below, c.margin, true)
}

// depthTicks are no finer than a line is marked.
func depthTicks(p *page, a axis, u unit.System) []float64 {
	finest := 0.5
	if u.Feet() {
		finest = 1
	}
	return ticks(0, a.hi, math.Max(finest, chart.Step(a.hi, (a.to-a.from)/(2.6*p.em))))
}

// tempTicks are whole degrees at the finest.
func tempTicks(p *page, a axis) []float64 {
	return ticks(a.lo, a.hi, math.Max(1, chart.Step(a.hi-a.lo, (a.to-a.from)/(3*p.em))))
}

// ground is the band's tint, hatched where its oxygen is unknown, and the grid.
func (c *column) ground(p *page) {
	for _, z := range c.d.Zones {
		if z.Kind == chart.Band {
			top, bottom := c.y(z.TopM), c.y(z.BottomM)
			p.fill(bandTint, box(c.temp.from, top, c.temp.to, bottom))
			if u, ok := c.d.BandUnknown(); ok {
				p.lines(stroke{0.8, bandInk, nil}, hatch(c.temp.from, c.y(u.TopM), c.temp.to, bottom, 1.2*p.em, false)...)
			}
			p.lines(stroke{0.9, bandInk, nil}, []pt{{c.temp.from, top}, {c.temp.to, top}}, []pt{{c.temp.from, bottom}, {c.temp.to, bottom}})
		}
	}
	p.grid(c.temp, c.depth, tempTicks(p, c.temp), depthTicks(p, c.depth, c.u))
}

// doubt is the 80 % interval about the curve.
func (c *column) doubt(p *page) {
	if len(c.d.Curve) == 0 {
		return
	}
	var low, high []pt
	for _, q := range c.d.Curve {
		low = append(low, pt{c.x(q.LowC), c.y(q.DepthM)})
		high = append(high, pt{c.x(q.HighC), c.y(q.DepthM)})
	}
	around := slices.Clone(high)
	for _, at := range slices.Backward(low) {
		around = append(around, at)
	}
	p.fill(ribbon, around)
	p.lines(stroke{0.7, ribbonInk, nil}, low, high)
}

// curve is the middle curve; what is assumed of it is dashed.
func (c *column) curve(p *page) {
	var read, assumed [][]pt
	for i := 1; i < len(c.d.Curve); i++ {
		a, b := c.d.Curve[i-1], c.d.Curve[i]
		run := &read
		if a.Extended || b.Extended {
			run = &assumed
		}
		to := pt{c.x(b.TempC), c.y(b.DepthM)}
		from := pt{c.x(a.TempC), c.y(a.DepthM)}
		if n := len(*run); n > 0 && (*run)[n-1][len((*run)[n-1])-1] == from {
			(*run)[n-1] = append((*run)[n-1], to)
		} else {
			*run = append(*run, []pt{from, to})
		}
	}
	p.lines(stroke{2, curveInk, nil}, read...)
	p.lines(stroke{1.6, curveInk, assumedDash}, assumed...)
}

var assumedDash = []float64{3, 2.5}

func (c *column) scales(p *page) {
	p.loops(stroke{0.8, ink, nil}, box(c.temp.from, c.depth.from, c.temp.to, c.depth.to))
	p.down(c.depth, c.temp.from, depthTicks(p, c.depth, c.u))
	up := 0.7 * p.em
	p.across(c.temp, c.depth.to, tempTicks(p, c.temp), "temperature, "+c.u.Temp.String(), false)
	if c.oxygen.hi > 0 {
		p.across(c.oxygen, c.depth.from, ticks(0, c.oxygen.hi, chart.Step(c.oxygen.hi, (c.oxygen.to-c.oxygen.from)/(4*p.em))), "oxygen, mg/L", true)
		up = 4 + 1.55*p.em
	}
	p.text(pt{c.from + c.margin, c.depth.from - up}, left, p.bold(), ink, "depth, "+c.u.Depth.String())
}
