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
	s.bed(p)
	p.text(at{s.x0 - 6, s.surface - 17}, right, true, s.u.Depth.String())
	p.down(s.depth, s.x0, s.depth.ticks(22, finest(s.u)))
	s.tackle(p)
	s.boat(p)
	p.beside(s.names, 2, s.high-2)
	return picture("scene", "The answer, drawn to scale from the side", d.Brief.Sentence(), s.high, p)
}

// scene is where everything of a scene stands.
type scene struct {
	chart.Scene
	d       chart.Drop
	u       unit.System
	depth   axis    // in the angler's unit, from the surface to the end of the water drawn
	x0, x1  float64 // ends of the water
	lane    float64 // x where the lane of the band begins, which ends with the water
	stern   float64 // x
	perM    float64 // pixels
	surface float64 // y
	high    float64
	names   []name
}

const (
	laneWide  = 12.0
	mostScene = 300.0 // how high a scene is, without what its names need
	bedHigh   = 18.0
)

func layScene(d chart.Drop) *scene {
	s := &scene{Scene: *d.Scene, d: d, u: d.Units.Shown(), x1: gutterBend - 6}
	s.x0 = besideDepths([]float64{math.Floor(s.u.Depth.From(s.DepthM)), finest(s.u) + 10}, s.u)
	s.lane = s.x1 - laneWide
	room := s.lane - 4 - s.x0
	s.perM = math.Min(room/s.WideM, mostScene/(s.HighM+s.DepthM))
	s.stern = s.x0 + 1 + (room-s.WideM*s.perM)/2
	above, below := math.Max(s.HighM*s.perM, 28)+2, 0.0
	if s.Bottom {
		below = bedHigh
	}
	for _, n := range d.SceneNames() {
		s.names = append(s.names, name{what: n.What, value: n.Value})
	}
	names, high := gutter(s.names, math.Inf(1))
	spare := math.Max(0, high+4-above-s.DepthM*s.perM-below)
	s.surface = above + spare/2
	foot := s.surface + s.DepthM*s.perM
	s.high = foot + below + spare/2
	if !s.Bottom { // water goes on to the picture's foot
		foot = s.high - 2
	}
	s.depth = axis{0, s.u.Depth.From((foot - s.surface) / s.perM), s.surface, foot}
	for i, n := range d.SceneNames() {
		names[i].to, names[i].dot = s.points(n)
	}
	s.names = names
	return s
}

// points is what the name of a thing points to, and whether that needs a dot.
func (s *scene) points(n chart.Name) (to at, dot bool) {
	to = s.at(n.At)
	switch n.What {
	case "leader":
		return to, true
	case "fly":
		return at{math.Min(to.x+11, s.x1), to.y}, false
	case "band":
		return at{s.lane + laneWide/2, math.Min(to.y, s.depth.to-2)}, true
	}
	return at{s.x1, math.Min(to.y, s.depth.to)}, false
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
		p.area("band", 0.3, box(s.lane, top, s.x1, bottom)...)
		if u, ok := s.d.BandUnknown(); ok {
			p.line("edge", 1, "", hatch(s.lane, down(u.TopM), s.x1, bottom, 8)...)
		}
		p.line("edge", 1, "", append(box(s.lane, top, s.x1, bottom), at{s.lane, top}))
	}
	if m, ok := s.d.Mark(chart.Thermocline); ok && s.y(m.At.Best) < s.depth.to {
		p.line("line", 1.4, "9 3", []at{{s.x0, s.y(m.At.Best)}, {s.x1, s.y(m.At.Best)}})
	}
}

// temps are temperatures at the left, as far apart as they are readable, where no line runs.
func (s *scene) temps(p *pen) {
	const gap, half = 30.0, 9.0
	under := 0.15 // of the boat, m
	if s.Ice {
		under = iceM
	}
	for y := s.y(under) + half + 2; y <= s.depth.to-half; y += gap {
		t, ok := s.d.TempAt((y-s.surface)/s.perM, 0)
		text := s.u.Degrees(t)
		x := s.x0 + 5 + width(text, false)
		clear := true
		if m, known := s.d.Mark(chart.Thermocline); known {
			clear = math.Abs(s.y(m.At.Best)-y) > half+1
		}
		for _, run := range [][]chart.Spot{s.Line, s.Leader} {
			for i := 1; i < len(run); i++ {
				a, b := s.at(run[i-1]), s.at(run[i])
				if math.Min(a.x, b.x) < x+4 && math.Min(a.y, b.y) < y+half && math.Max(a.y, b.y) > y-half {
					clear = false
				}
			}
		}
		if ok && clear {
			p.text(at{s.x0 + 5, y}, left, false, text)
		}
	}
}

func (s *scene) bed(p *pen) {
	if !s.Bottom {
		return
	}
	y, foot := s.depth.to, s.depth.to+bedHigh
	p.area("bed", 0.15, box(s.x0, y, s.x1, foot)...)
	p.line("pointer", 0.7, "", hatch(s.x0, y, s.x1, foot, 9)...)
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
	p.dot("paper", fly, 5)
	p.dot("dot", fly, 3.8)
	p.line("line", 1.2, "", []at{fly, {fly.x + 8, fly.y - 5.5}}, []at{fly, {fly.x + 9, fly.y}}, []at{fly, {fly.x + 8, fly.y + 5.5}})
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
	for _, b := range [][]at{box(s.x0, s.surface, l, s.y(iceM)), box(r, s.surface, s.lane, s.y(iceM))} {
		p.area("paper", 0, b...)
		p.line("curve", 1, "", append(b, b[0]))
	}
	by := chart.Spot{XM: hole - 1.2 - chart.Head.XM, DepthM: 0.4} // the angler sits on the ice
	p.area("dot", 1, s.spots(chart.Torso, by)...)
	p.dot("dot", s.at(chart.Spot{XM: chart.Head.XM + by.XM, DepthM: chart.Head.DepthM + by.DepthM}), chart.HeadM*s.perM)
	p.line("line", 1.4, "", []at{s.at(chart.Spot{XM: hole - 0.9, DepthM: -0.4}), s.at(s.Line[0])})
}
