package vector

import (
	"math"

	"coldseam/chart"
)

// frame is a rectangle.
type frame struct{ x0, y0, x1, y1 float64 }

// crossed reports whether a run of places goes through it.
func (f frame) crossed(run []at) bool {
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		steps := math.Ceil(math.Max(math.Abs(b.x-a.x), math.Abs(b.y-a.y))/2) + 1
		for k := range int(steps) + 1 {
			g := float64(k) / steps
			if x, y := a.x+g*(b.x-a.x), a.y+g*(b.y-a.y); x > f.x0 && x < f.x1 && y > f.y0 && y < f.y1 {
				return true
			}
		}
	}
	return false
}

const (
	besideLane = 10.0 // from the lane of the band to the names in the water
	bend       = 14.0 // how long the bent part of their pointers is
)

// fitWithin puts the names into the water, left of the tackle, and the bottom's name into the
// bottom. It returns false where they have no room there.
func (s *scene) fitWithin() bool {
	s.inside = true
	var want, high []float64
	for _, n := range s.d.SceneNames() {
		m := name{what: n.What, value: n.Value, to: s.at(n.At), dot: n.What == "leader" || n.What == "band"}
		switch n.What {
		case "band":
			m.to = at{s.lane - laneWide/2, math.Min(m.to.y, s.depth.to-2)}
		case "fly":
			m.to.x -= 9
		}
		m.at.x = s.lane + besideLane
		if s.names = append(s.names, m); s.isBottom(n) {
			s.names[len(s.names)-1].at.y = s.depth.to + s.bed/2
			continue
		}
		want, high = append(want, m.to.y), append(high, lineGap+nameGap)
	}
	top, bottom := s.under()+2, s.depth.to-2
	if float64(len(want))*(lineGap+nameGap) > bottom-top {
		return false
	}
	for i, y := range chart.PlaceLabels(want, high, top, bottom) { // the bottom is the last of them
		s.names[i].at.y = y
	}
	return s.isClear()
}

func (s *scene) isBottom(n chart.Name) bool {
	return s.Bottom && n.At.DepthM == s.BottomM && n.At.XM == s.WideM
}

// end is where a name in the water ends.
func (n name) end() float64 { return n.at.x + width(n.what+" ", true) + width(n.value, false) }

// clear is how far the names in the water reach, behind which lines across may begin.
func (s *scene) clear() float64 {
	x := s.x0
	if !s.inside {
		return x
	}
	for _, n := range s.names {
		x = math.Max(x, n.end()+bend+3)
	}
	return x
}

// pointer is the line from a name in the water to what it names.
func (s *scene) pointer(n name) []at {
	switch n.what {
	case "band":
		return []at{n.to, {n.at.x - 3, n.at.y}}
	case "leader", "fly":
		return []at{{n.end() + 3, n.at.y}, {n.end() + 3 + bend, n.to.y}, n.to}
	}
	if n.at.y > s.depth.to { // in the bottom
		return nil
	}
	return []at{{n.end() + 3, n.at.y}, {s.clear(), n.to.y}}
}

// isClear reports whether the names in the water cross neither the tackle nor the pointer of
// another, and each can point to the right.
func (s *scene) isClear() bool {
	line, lead := s.spots(s.Line, chart.Spot{}), s.spots(s.Leader, chart.Spot{})
	for i, n := range s.names {
		room := frame{n.at.x - 1, n.at.y - lineGap/2, n.end() + 6, n.at.y + lineGap/2}
		if room.x1 > s.x1 || room.crossed(line) || room.crossed(lead) {
			return false
		}
		pointer := s.pointer(n)
		if k := len(pointer); k == 3 && pointer[1].x > pointer[2].x {
			return false
		}
		for j := range s.names {
			if j != i && room.crossed(s.pointer(s.names[j])) {
				return false
			}
		}
	}
	return true
}

// fitUnder puts the names under the drawing, each behind its sign, as many on a line as fit.
func (s *scene) fitUnder() {
	const sign, apart = 30.0, 16.0
	x, y := sign, s.high+10
	for i := range s.names {
		n := &s.names[i]
		n.what = cut(n.what, true, Wide-1-sign-width(" "+n.value, true))
		if n.at.x = 0; x > sign && x+n.end() > Wide-1 {
			x, y = sign, y+signGap
		}
		n.at = at{x, y}
		x = n.end() + apart + sign
	}
	s.high = y + 12
}

// named writes the names.
func (s *scene) named(p *pen) {
	for _, n := range s.names {
		if !s.inside {
			s.sign(p, n.what, at{n.at.x - 17, n.at.y})
		} else {
			p.line("pointer", 0.9, "", s.pointer(n))
			if n.dot {
				p.dot("dot", n.to, 2.4)
			}
		}
		p.named(n.at, words{n.what, n.value})
	}
}

// sign is how a thing is drawn.
func (s *scene) sign(p *pen, what string, q at) {
	const half = 12.0
	across := []at{{q.x - half, q.y}, {q.x + half, q.y}}
	switch what {
	case "fly":
		p.fly(q, 3.8)
	case "leader":
		p.line("line", 1.5, "", across)
	case "thermocline":
		p.line("line", 1.4, "9 3", across)
	case "band":
		p.area("band", 0.3, box(q.x-half, q.y-6, q.x+half, q.y+6)...)
		if _, ok := s.d.BandUnknown(); ok {
			p.line("edge", 1, "", hatch(q.x-half, q.y-6, q.x+half, q.y+6, 8)...)
		}
		p.line("edge", 1, "", append(box(q.x-half, q.y-6, q.x+half, q.y+6), at{q.x - half, q.y - 6}))
	default:
		p.area("bed", 0.15, box(q.x-half, q.y-3, q.x+half, q.y+6)...)
		p.line("line", 2.2, "", []at{{q.x - half, q.y - 3}, {q.x + half, q.y - 3}})
	}
}
