package static

import (
	"errors"
	"image/color"
	"io"
	"math"
	"slices"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// Scene draws the answer alone, to scale, from the side: boat, line, leader, fly and bottom,
// behind them the water's temperature, the band and the thermocline. It is the first part of
// Column's picture. Its errors are those of Column; a drop without an answer is one too.
func Scene(w io.Writer, f Format, size Size, d chart.Drop) error {
	if err := check(d); err != nil {
		return err
	}
	if d.Scene == nil {
		return errors.New("no water to fish, so there is no scene to draw")
	}
	if err := size.checkFor(120, 12); err != nil {
		return err
	}
	return renderAny(w, f, size, drawable("To scale: "+d.Brief.Sentence()), func(p *page) { layScene(p, d).draw(p) })
}

// scene is where everything of a scene stands.
type scene struct {
	chart.Scene
	d       chart.Drop
	u       unit.System
	depth   axis    // in the angler's unit
	x0, x1  float64 // ends of the water
	perM    float64 // points
	surface float64 // y
	lane    lane    // of the band
	beside  float64 // x where the labels begin
	wide    float64
	lo, hi  float64 // of the temperatures, C
}

func layScene(p *page, d chart.Drop) *scene {
	s := &scene{Scene: *d.Scene, d: d, u: d.Units.Shown()}
	margin := 0.8 * p.em
	for _, n := range d.SceneNames() { // as wide as the widest name, or half of it
		s.wide = math.Max(s.wide, 16+p.bold().width(n.What+" ")+p.plain().width(n.Value))
	}
	if p.w < 45*p.em {
		s.wide = 16 + p.bold().width("thermocline ")
	}
	s.depth.lo, s.depth.hi = 0, s.u.Depth.From(s.DepthM)
	s.x0 = p.besideDepths(s.depth, margin/2)
	s.beside = p.w - margin/2 - s.wide
	s.x1 = s.beside - 4
	s.lane = lane{s.x1 - 0.9*p.em, s.x1}
	top, foot := 0.3*p.em, p.h-0.4*p.em
	bed := 0.0 // height of the bottom
	if s.Bottom {
		bed = 0.8 * p.em
	}
	s.perM = math.Min((s.lane.x0-4-s.x0)/s.WideM, (foot-bed-top)/(s.HighM+s.DepthM))
	spare := math.Max(0, foot-bed-top-(s.HighM+s.DepthM)*s.perM)
	if !s.Bottom { // water goes on to the picture's foot
		spare = 0
	}
	s.surface = math.Max(top+spare/2+s.HighM*s.perM, 1.5*p.em)
	s.depth.from, s.depth.to = s.surface, s.surface+s.DepthM*s.perM
	if !s.Bottom {
		m := (foot - s.surface) / s.perM
		s.depth.hi, s.depth.to = s.u.Depth.From(m), foot
	}
	s.lo, s.hi = chart.TempRange(d)
	return s
}

// at is a place of the scene on the page, y a depth.
func (s *scene) at(q chart.Spot) pt { return pt{s.x0 + 2 + q.XM*s.perM, s.y(q.DepthM)} }

func (s *scene) y(m float64) float64 { return s.surface + m*s.perM }

func (s *scene) spots(q []chart.Spot) []pt {
	var out []pt
	for _, v := range q {
		out = append(out, s.at(v))
	}
	return out
}

func (s *scene) draw(p *page) {
	s.water(p)
	s.layers(p)
	s.temps(p)
	s.bed(p)
	p.down(s.depth, s.x0, ticks(0, s.depth.hi, math.Max(1, chart.Step(s.depth.hi, (s.depth.to-s.depth.from)/(1.6*p.em)))))
	p.text(pt{s.x0 - 6, s.surface - 0.75*p.em}, right, p.bold(), ink, s.u.Depth.String())
	s.tackle(p)
	s.boat(p)
	p.gutter(s.labels(p), s.beside, s.wide, 0, p.h, "")
}

// shades is how many steps the water's colour has.
const shades = 12

// shade is the colour of water of a temperature: a pale one of the scale of temperatures.
func (s *scene) shade(tempC float64) color.RGBA {
	f := math.Min(math.Max((tempC-s.lo)/(s.hi-s.lo), 0), 1)
	c := heat(int(math.Min(f*shades, shades-1)), shades)
	pale := func(v uint8) uint8 { return uint8(math.Round(float64(v)*0.42 + 255*0.58)) }
	return color.RGBA{pale(c.R), pale(c.G), pale(c.B), 0xff}
}

// water is coloured by its temperature, from the surface down.
func (s *scene) water(p *page) {
	last := color.RGBA{}
	for y := s.depth.from; y < s.depth.to; y++ {
		t, ok := s.d.TempAt((y-s.surface)/s.perM, math.Inf(1))
		c := mixedTint
		if ok {
			c = s.shade(t)
		}
		if c != last { // down to the foot: what follows covers it, and no seam shows
			p.fill(c, box(s.x0, y, s.x1, s.depth.to))
			last = c
		}
	}
}

// layers are the band, in a lane with lines across, and the thermocline.
func (s *scene) layers(p *page) {
	down := func(m float64) float64 { return math.Min(math.Max(s.y(m), s.depth.from), s.depth.to) }
	if z, ok := s.d.Zone(chart.Band); ok {
		top, bottom := down(z.TopM), down(z.BottomM)
		p.fill(bandTint, box(s.lane.x0, top, s.lane.x1, bottom))
		if u, ok := s.d.BandUnknown(); ok {
			p.lines(stroke{0.8, bandInk, nil}, hatch(s.lane.x0, down(u.TopM), s.lane.x1, bottom, 0.45*p.em, false)...)
		}
		p.loops(stroke{0.9, bandInk, nil}, box(s.lane.x0, top, s.lane.x1, bottom))
		for _, m := range []float64{z.TopM, z.BottomM} {
			if y := s.y(m); y > s.depth.from+1 && y < s.depth.to-1 {
				p.line(stroke{1.1, bandInk, []float64{2, 2.5}}, pt{s.x0, y}, pt{s.lane.x0, y})
			}
		}
	}
	if m, ok := s.d.Mark(chart.Thermocline); ok && s.y(m.At.Best) < s.depth.to {
		y := s.y(m.At.Best)
		p.line(stroke{1.3, ink, []float64{9, 3}}, pt{s.x0, y}, pt{s.x1, y})
	}
}

// temps are temperatures at the left, as far apart as they are readable.
func (s *scene) temps(p *page) {
	gap := 2.2 * p.em
	lines := []float64{math.Inf(1)}
	if m, ok := s.d.Mark(chart.Thermocline); ok {
		lines = append(lines, s.y(m.At.Best))
	}
	if z, ok := s.d.Zone(chart.Band); ok {
		lines = append(lines, s.y(z.TopM), s.y(z.BottomM))
	}
	for y := s.y(0.15) + 0.75*p.em; y <= s.depth.to-0.4*p.em; y += gap {
		if slices.ContainsFunc(lines, func(l float64) bool { return math.Abs(l-y) < 0.6*p.em }) {
			continue
		}
		if t, ok := s.d.TempAt((y-s.surface)/s.perM, 0); ok {
			p.text(pt{s.x0 + 4, y + 0.33*p.em}, left, p.small(), ink, s.u.Degrees(t))
		}
	}
}

func (s *scene) bed(p *page) {
	if !s.Bottom {
		return
	}
	y, foot := s.depth.to, math.Min(s.depth.to+1.6*p.em, p.h-0.2*p.em)
	p.fill(mud, box(s.x0, y, s.x1, foot))
	p.lines(stroke{0.7, quiet, nil}, hatch(s.x0, y, s.x1, foot, 0.6*p.em, true)...)
	p.line(stroke{2, ink, nil}, pt{s.x0, y}, pt{s.x1, y})
}

// boat is the boat with its angler and the rod.
func (s *scene) boat(p *page) {
	if s.Ice {
		s.ice(p)
		return
	}
	p.line(stroke{1.2, curveInk, nil}, pt{s.x0, s.surface}, pt{s.x1, s.surface})
	p.fill(ink, s.spots(chart.Torso))
	p.fill(ink, circle(s.at(chart.Head), chart.HeadM*s.perM))
	p.fill(curveInk, s.spots(chart.Hull))
	p.line(stroke{1.3, ink, nil}, s.at(chart.RodEnd), s.at(chart.RodTip))
}

// ice is the ice with a hole, beside which the angler sits with a short rod.
func (s *scene) ice(p *page) {
	const thickM, holeM = 0.2, 0.15
	hole := s.Leader[0].XM
	l, r, foot := s.at(chart.Spot{XM: hole - holeM}).x, s.at(chart.Spot{XM: hole + holeM}).x, s.y(thickM)
	for _, b := range [][]pt{box(s.x0, s.surface, l, foot), box(r, s.surface, s.lane.x0, foot)} {
		p.fill(paper, b)
		p.loops(stroke{1, curveInk, nil}, b)
	}
	move := chart.Spot{XM: hole - 1.2 - chart.Head.XM, DepthM: 0.4}
	var torso []chart.Spot
	for _, q := range chart.Torso {
		torso = append(torso, chart.Spot{XM: q.XM + move.XM, DepthM: q.DepthM + move.DepthM})
	}
	p.fill(ink, s.spots(torso))
	p.fill(ink, circle(s.at(chart.Spot{XM: hole - 1.2, DepthM: chart.Head.DepthM + move.DepthM}), chart.HeadM*s.perM))
	p.line(stroke{1.3, ink, nil}, s.at(chart.Spot{XM: hole - 0.9, DepthM: -0.4}), s.at(s.Line[0]))
}

// tackle is the line, the leader and the fly, on a rim of paper that parts them from the water.
func (s *scene) tackle(p *page) {
	line, lead := s.spots(s.Line), s.spots(s.Leader)
	fly := lead[len(lead)-1]
	for _, run := range [][]pt{line, lead} {
		p.line(stroke{3.4, paper, nil}, run...)
	}
	p.line(stroke{1.8, oxygenInk, nil}, line...)
	p.line(stroke{1.3, ink, nil}, lead...)
	if s.Indicator {
		r := 0.3 * p.em
		p.fill(paper, circle(lead[0], r+1))
		p.fill(oxygenInk, circle(lead[0], r))
	}
	r := 0.3 * p.em
	p.fill(paper, circle(fly, r+1.2))
	p.fill(ink, circle(fly, r))
	p.lines(stroke{1, ink, nil}, []pt{fly, {fly.x + 2*r, fly.y - 1.6*r}}, []pt{fly, {fly.x + 2.2*r, fly.y}}, []pt{fly, {fly.x + 2*r, fly.y + 1.6*r}})
}

// labels are the names beside the scene, each with a line to what it names.
func (s *scene) labels(p *page) []label {
	var out []label
	for _, n := range s.d.SceneNames() {
		at := s.at(n.At)
		l := label{at: at.y, from: math.Min(at.x, s.x1), name: drawable(n.What), value: n.Value}
		switch n.What {
		case "leader":
			l.dot = true
		case "fly":
			l.from = math.Min(at.x+0.9*p.em, s.x1)
		case "band":
			l.dot, l.from = true, (s.lane.x0+s.lane.x1)/2
		default:
			l.from = s.x1
		}
		out = append(out, l)
	}
	slices.SortStableFunc(out, func(a, b label) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	return out
}
