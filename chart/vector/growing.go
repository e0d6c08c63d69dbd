package vector

import (
	"cmp"
	"math"
	"slices"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// growingHigh is how high the picture of a drop that is being taken is.
const growingHigh = 150.0

// Growing draws a drop that is being taken: its readings as dots at depth and temperature,
// joined as far as they are used, the last one taken in a ring, those off the scale as arrows
// at its edge, and the next depth to read, which is none where it is below 0 or no number.
// It is "" where nothing was read.
func Growing(d profile.Drop, nextM float64) string {
	g := layGrowing(d, nextM)
	if len(g.readings) == 0 {
		return ""
	}
	p := &pen{}
	p.down(g.depth, g.temp.from, g.depth.ticks(26, finest(g.u)))
	p.text(at{g.temp.from - 6, 7.5}, right, true, g.u.Depth.String())
	p.across(g.temp, g.depth.to, g.temp.ticks(44, 1))
	p.text(at{g.temp.to + 14, g.depth.to + 14.5}, left, true, g.u.Temp.String())
	var names []name
	add := func(what string, m float64) {
		y := g.depth.at(g.u.Depth.From(m))
		names = append(names, name{what: what, value: depthSaid(m, g.u), to: at{g.temp.to, y}})
	}
	if b := d.Bottom; b.Known && g.u.Depth.From(b.Value) <= g.depth.hi {
		y := g.depth.at(g.u.Depth.From(b.Value))
		p.line("line", 2.4, "", []at{{g.temp.from, y}, {g.temp.to, y}})
		add("bottom", b.Value)
	}
	if g.next {
		y := g.depth.at(g.u.Depth.From(nextM))
		p.line("flyline", 2.4, "7 4", []at{{g.temp.from, y}, {g.temp.to, y}})
		add("next", nextM)
	}
	g.points(p)
	names, _ = gutter(names, growingHigh)
	p.beside(names, 0, growingHigh)
	return picture("growing", "The readings so far", g.says(nextM), growingHigh, p)
}

// growing is where everything of such a picture stands.
type growing struct {
	u        unit.System
	readings []profile.Reading // from the surface down
	last     int               // which of them was taken last
	next     bool
	depth    axis // in the angler's unit
	temp     axis // on the angler's scale
}

func layGrowing(d profile.Drop, nextM float64) *growing {
	g := &growing{u: d.Units.Shown(), next: nextM >= 0 && nextM < 1e4}
	deepest, low, high := 0.5, math.Inf(1), math.Inf(-1)
	var order []int
	for i, r := range d.Readings {
		if !(math.Abs(r.DepthM) < 1e4 && math.Abs(r.TempC) < 1e4) {
			continue
		}
		order = append(order, i)
		if r.Used() {
			deepest, low, high = math.Max(deepest, r.DepthM), math.Min(low, r.TempC), math.Max(high, r.TempC)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(d.Readings[a].DepthM, d.Readings[b].DepthM) })
	for i, k := range order {
		g.readings = append(g.readings, d.Readings[k])
		if k == len(d.Readings)-1 {
			g.last = i
		}
	}
	if low > high {
		low, high = 0, 25
	}
	if high-low < 2 { // a mixed column is a straight line, not noise blown up
		low, high = (low+high)/2-1, (low+high)/2+1
	}
	if g.next {
		deepest = math.Max(deepest, nextM)
	}
	if b := d.Bottom; b.Known && b.Value < 4*deepest+5 {
		deepest = math.Max(deepest, b.Value)
	}
	g.depth = axis{0, g.u.Depth.From(deepest), 22, growingHigh - 24}
	g.temp = axis{math.Floor(g.u.Temp.FromC(low)), math.Ceil(g.u.Temp.FromC(high)), 0, gutterBend - 30}
	g.temp.from = besideDepths([]float64{math.Floor(g.depth.hi), finest(g.u) + 10}, g.u)
	return g
}

// points are the readings, and the line through those that are used.
func (g *growing) points(p *pen) {
	place := func(r profile.Reading) at {
		return at{g.temp.at(g.u.Temp.FromC(r.TempC)), g.depth.at(g.u.Depth.From(r.DepthM))}
	}
	var run []at
	for _, r := range g.readings {
		if r.Used() {
			run = append(run, place(r))
		}
	}
	p.line("curve", 2, "", run)
	for i, r := range g.readings {
		if off, dx, dy := outside(g.temp, g.depth, g.u.Temp.FromC(r.TempC), g.u.Depth.From(r.DepthM)); off {
			p.arrow(place(r), dx, dy)
			continue
		}
		if i == g.last {
			p.ring(place(r), 7)
		}
		p.reading(place(r), 3.6, r.Flag != "", r.Used())
	}
}

// says is what one sees, for those who do not.
func (g *growing) says(nextM float64) string {
	one := func(r profile.Reading) string {
		return unit.Digits(g.u.Temp.FromC(r.TempC), 1) + " " + g.u.Temp.String() + " at " + depthSaid(r.DepthM, g.u)
	}
	text := unit.Count(len(g.readings), "reading") + ", the last one " + one(g.readings[g.last]) + "."
	if g.next {
		text += " Next: " + depthSaid(nextM, g.u) + "."
	}
	return text
}

// depthSaid is a depth that was read or is to be read, as it stands on a marked line: in
// quarters of a metre.
func depthSaid(m float64, u unit.System) string {
	decimals := 2
	if u.Feet() {
		decimals = 1
	}
	return unit.Digits(u.Depth.From(m), decimals) + " " + u.Depth.String()
}
