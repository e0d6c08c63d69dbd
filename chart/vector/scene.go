package vector

import (
	"fmt"
	"math"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// Scene draws the answer of a drop to scale, from the side: the boat or the ice, the line, the
// leader, the fly and the bottom, behind them the water's temperature, the band and the
// thermocline, and the names with the numbers that the answer prints. A metre is as long across
// as down. It is "" where there is no water to fish.
func Scene(d chart.Drop) string {
	if d.Scene == nil {
		return ""
	}
	s, p := layScene(d), &pen{}
	s.water(p)
	s.layers(p)
	s.temps(p)
	s.ground(p)
	p.text(at{s.x0 - 6, s.surface - 17}, right, true, s.u.Depth.String())
	p.down(s.depth, s.x0, s.depth.ticks(22, finest(s.u)))
	s.tackle(p)
	s.boat(p)
	s.named(p)
	return picture("scene", "The answer, drawn to scale from the side", d.Brief.Sentence(), s.high, p)
}

// scene is where everything of a scene stands.
type scene struct {
	chart.Scene
	d       chart.Drop
	u       unit.System
	depth   axis    // in the angler's unit, from the surface to the end of the water drawn
	x0, x1  float64 // ends of the water
	lane    float64 // x where the lane of the band ends, which begins with the water
	stern   float64 // x
	perM    float64 // pixels
	surface float64 // y
	bed     float64 // how high the bottom is drawn; 0: it is not
	high    float64
	names   []name
	inside  bool // the names stand in the water, else under the drawing
}

const (
	laneWide  = 12.0
	mostScene = 300.0 // how high a scene is, without what stands under it
	bedHigh   = 20.0
)

// layScene makes the drawing as large as the picture allows. The names stand in it where they
// have room there, else under it.
func layScene(d chart.Drop) *scene {
	s := &scene{Scene: *d.Scene, d: d, u: d.Units.Shown(), x1: Wide - 2}
	s.x0 = besideDepths([]float64{math.Floor(s.u.Depth.From(s.DepthM)), finest(s.u) + 10}, s.u)
	s.lane = s.x0 + laneWide
	room := s.x1 - s.lane - 6
	s.perM = math.Min(room/s.WideM, mostScene/(s.HighM+s.DepthM))
	s.stern = s.x1 - 2 - s.WideM*s.perM
	s.surface = math.Max(s.HighM*s.perM, 28) + 2
	foot := s.surface + s.DepthM*s.perM
	if s.Bottom {
		s.bed = bedHigh
	}
	s.high = foot + s.bed + 2
	s.depth = axis{0, s.u.Depth.From((foot - s.surface) / s.perM), s.surface, foot}
	if s.inside = s.fitWithin(); !s.inside {
		s.fitUnder()
	}
	return s
}

// at is a place of the scene in the picture.
func (s *scene) at(q chart.Spot) at { return at{s.stern + q.XM*s.perM, s.y(q.DepthM)} }

func (s *scene) y(m float64) float64 { return s.surface + m*s.perM }

// spots are places of the scene, moved by so much.
func (s *scene) spots(q []chart.Spot, by chart.Spot) []at {
	var out []at
	for _, v := range q {
		out = append(out, s.at(chart.Spot{XM: v.XM + by.XM, DepthM: v.DepthM + by.DepthM}))
	}
	return out
}

// shades is how many steps the colour of the water has, from cold to warm.
const shades = 6

// water is coloured by its temperature, from the surface down.
func (s *scene) water(p *pen) {
	lo, hi := chart.TempRange(s.d)
	last := -1
	for y := s.depth.from; y < s.depth.to; y++ {
		shade := shades - 1
		if t, ok := s.d.TempAt((y-s.surface)/s.perM, math.Inf(1)); ok {
			shade = int(math.Min(math.Max((t-lo)/(hi-lo)*shades, 0), shades-1))
		}
		if shade != last { // down to the foot: what follows covers it, and no seam shows
			p.area(fmt.Sprintf("t%d", shade), 0.02, box(s.x0, y, s.x1, s.depth.to)...)
			last = shade
		}
	}
}

// layers are the band, in a lane with lines across where its oxygen is unknown, and the
// thermocline.
func (s *scene) layers(p *pen) {
	down := func(m float64) float64 { return math.Min(math.Max(s.y(m), s.depth.from), s.depth.to) }
	if z, ok := s.d.Zone(chart.Band); ok {
		top, bottom := down(z.TopM), down(z.BottomM)
		p.area("band", 0.3, box(s.x0, top, s.lane, bottom)...)
		if u, ok := s.d.BandUnknown(); ok {
			p.line("edge", 1, "", hatch(s.x0, down(u.TopM), s.lane, bottom, 8)...)
		}
		p.line("edge", 1, "", append(box(s.x0, top, s.lane, bottom), at{s.x0, top}))
	}
	if m, ok := s.d.Mark(chart.Thermocline); ok && s.y(m.At.Best) < s.depth.to {
		p.line("line", 1.4, "9 3", []at{{s.clear(), s.y(m.At.Best)}, {s.x1, s.y(m.At.Best)}})
	}
}

// temps are temperatures at the right, as far apart as they are readable, where no line runs.
func (s *scene) temps(p *pen) {
	const gap, half = 30.0, 9.0
	for y := s.under() + half + 2; y <= s.depth.to-half; y += gap {
		t, ok := s.d.TempAt((y-s.surface)/s.perM, 0)
		text := s.u.Degrees(t)
		room := frame{s.x1 - 9 - width(text, false), y - half, s.x1, y + half}
		if m, known := s.d.Mark(chart.Thermocline); known && math.Abs(s.y(m.At.Best)-y) < half+1 {
			ok = false
		}
		if ok && !room.crossed(s.spots(s.Line, chart.Spot{})) && !room.crossed(s.spots(s.Leader, chart.Spot{})) {
			p.text(at{s.x1 - 5, y}, right, false, text)
		}
	}
}

// under is the y of where the water is free of the boat, or of the ice.
func (s *scene) under() float64 {
	if s.Ice {
		return s.y(iceM)
	}
	return s.y(chart.Hull[1].DepthM)
}

// ground is the bottom.
func (s *scene) ground(p *pen) {
	if !s.Bottom {
		return
	}
	y, foot := s.depth.to, s.depth.to+s.bed
	p.area("bed", 0.15, box(s.x0, y, s.x1, foot)...)
	p.line("line", 2.2, "", []at{{s.x0, y}, {s.x1, y}})
}

// tackle is the line, the leader and the fly, on a rim that parts them from the water.
func (s *scene) tackle(p *pen) {
	line, lead := s.spots(s.Line, chart.Spot{}), s.spots(s.Leader, chart.Spot{})
	fly := lead[len(lead)-1]
	p.line("rim", 4, "", line, lead)
	p.line("flyline", 2.2, "", line)
	p.line("line", 1.5, "", lead)
	if s.Indicator {
		p.dot("paper", lead[0], 5.5)
		p.dot("float", lead[0], 4.5)
	}
	r := 3.8
	if s.Bottom { // does not touch it
		r = math.Min(math.Max(s.depth.to-fly.y-1.5, 2), r)
	}
	p.dot("paper", fly, r+1.2)
	p.fly(fly, r)
}

// fly is the fly, its hackle to the right.
func (p *pen) fly(q at, r float64) {
	p.dot("dot", q, r)
	p.line("line", 1.2, "", []at{q, {q.x + 2.1*r, q.y - 1.4*r}}, []at{q, {q.x + 2.3*r, q.y}}, []at{q, {q.x + 2.1*r, q.y + 1.4*r}})
}

// boat is the boat with its angler and the rod.
func (s *scene) boat(p *pen) {
	if s.Ice {
		s.ice(p)
		return
	}
	p.line("curve", 1.4, "", []at{{s.x0, s.surface}, {s.x1, s.surface}})
	p.area("dot", 1, s.spots(chart.Torso, chart.Spot{})...)
	p.dot("dot", s.at(chart.Head), chart.HeadM*s.perM)
	p.area("hull", 1, s.spots(chart.Hull, chart.Spot{})...)
	p.line("line", 1.4, "", []at{s.at(chart.RodEnd), s.at(chart.RodTip)})
}

const iceM = 0.2 // how thick ice is drawn

// ice is the ice with a hole, beside which the angler sits with a short rod.
func (s *scene) ice(p *pen) {
	const holeM = 0.15
	hole := s.Leader[0].XM
	l, r := s.at(chart.Spot{XM: hole - holeM}).x, s.at(chart.Spot{XM: hole + holeM}).x
	for _, b := range [][]at{box(s.lane, s.surface, l, s.y(iceM)), box(r, s.surface, s.x1, s.y(iceM))} {
		p.area("paper", 0, b...)
		p.line("curve", 1, "", append(b, b[0]))
	}
	by := chart.Spot{XM: hole - 1.2 - chart.Head.XM, DepthM: 0.4} // the angler sits on the ice
	p.area("dot", 1, s.spots(chart.Torso, by)...)
	p.dot("dot", s.at(chart.Spot{XM: chart.Head.XM + by.XM, DepthM: chart.Head.DepthM + by.DepthM}), chart.HeadM*s.perM)
	p.line("line", 1.4, "", []at{s.at(chart.Spot{XM: hole - 0.9, DepthM: -0.4}), s.at(s.Line[0])})
}
