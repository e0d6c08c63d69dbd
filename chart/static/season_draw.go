package static

import (
	"math"
	"slices"

	"coldseam/chart"
)

func (s *season) draw(p *page) {
	p.titled(s.title, s.margin)
	for k := range len(s.drops) - 1 {
		if days(s.drops[k].When, s.drops[k+1].When) > chart.GapDays {
			p.gap(s.x(k), s.depth.from, s.x(k+1), s.depth.to)
		}
	}
	isotherms := s.water(p)
	s.bandFill(p)
	s.numbers(p, isotherms)
	s.ground(p)
	for _, l := range s.lines {
		p.lines(stroke{l.pen.width + 2, paper, nil}, l.runs...)
	}
	for _, l := range s.lines {
		p.lines(l.pen, l.runs...)
		for _, at := range l.at {
			if s.dense(p) && slices.ContainsFunc(l.runs, func(r []pt) bool { return len(r) > 1 }) {
				break // the line says it; signs would run into each other
			}
			p.fill(paper, l.sign(at, 0.42*p.em))
			p.fill(ink, l.sign(at, 0.32*p.em))
		}
	}
	s.scales(p)
	p.gutter(s.names, p.w-s.margin/2-s.wide, s.wide, s.depth.from, s.depth.to, "")
	s.colorKey(p)
	p.legend(s.legend, s.below, s.margin, true)
}

// dense reports whether the drops stand too near to each other for a sign on each.
func (s *season) dense(p *page) bool {
	n := len(s.drops) - 1
	return n > 0 && (s.x(n)-s.x(0))/float64(n) < 1.1*p.em
}

// water fills the field, coldest colour first and each warmer one over it, and draws the
// isotherms, which it returns.
func (s *season) water(p *page) [][][]pt {
	all, _ := s.field.trace(math.Inf(-1))
	if len(all) > 0 {
		p.fill(s.colors[0], all...)
	}
	isotherms := make([][][]pt, len(s.degrees))
	for i, v := range s.degrees {
		var loops [][]pt
		if loops, isotherms[i] = s.field.trace(s.u.Temp.ToC(v)); len(loops) > 0 {
			p.fill(s.colors[i+1], loops...)
		}
	}
	p.loops(stroke{0.8, ink, nil}, all...) // where what is known ends
	for _, lines := range isotherms {
		p.lines(stroke{0.6, ink, nil}, lines...)
	}
	return isotherms
}

// numbers writes their temperatures on the isotherms.
func (s *season) numbers(p *page, isotherms [][][]pt) {
	var taken []pt
	for i, lines := range isotherms {
		if at, ok := s.numberPlace(p, lines, taken); ok {
			taken = append(taken, at)
			text := number(s.degrees[i])
			half := p.small().width(text)/2 + 2
			p.fill(paper, box(at.x-half, at.y-0.55*p.em, at.x+half, at.y+0.55*p.em))
			p.text(pt{at.x, at.y + 0.33*p.em}, centre, p.small(), ink, text)
		}
	}
}

// numberPlace is where on an isotherm its number stands clear of other numbers and of
// the layers' lines, if anywhere.
func (s *season) numberPlace(p *page, lines [][]pt, taken []pt) (pt, bool) {
	for _, f := range []float64{0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.08, 0.92} {
		for _, l := range lines {
			long := length(l)
			if long < 5*p.em {
				continue
			}
			if at := along(l, f*long); s.free(p, at, taken) {
				return at, true
			}
		}
	}
	return pt{}, false
}

func (s *season) free(p *page, at pt, taken []pt) bool {
	if at.x < s.time.from+1.2*p.em || at.x > s.time.to-1.2*p.em || at.y < s.depth.from+0.8*p.em || at.y > s.depth.to-0.8*p.em {
		return false
	}
	for _, q := range taken {
		if math.Abs(q.x-at.x) < 2.4*p.em && math.Abs(q.y-at.y) < 1.3*p.em {
			return false
		}
	}
	for _, l := range s.lines {
		for _, run := range l.runs {
			for i := 1; i < len(run); i++ {
				if away(at, run[i-1], run[i]) < 1.4*p.em {
					return false
				}
			}
		}
		for _, q := range l.at {
			if math.Hypot(q.x-at.x, q.y-at.y) < 1.5*p.em {
				return false
			}
		}
	}
	return true
}

func length(l []pt) float64 {
	sum := 0.0
	for i := 1; i < len(l); i++ {
		sum += math.Hypot(l[i].x-l[i-1].x, l[i].y-l[i-1].y)
	}
	return sum
}

// along is the place a way along a line.
func along(l []pt, way float64) pt {
	for i := 1; i < len(l); i++ {
		d := math.Hypot(l[i].x-l[i-1].x, l[i].y-l[i-1].y)
		if d > 0 && way <= d {
			f := way / d
			return pt{l[i-1].x + f*(l[i].x-l[i-1].x), l[i-1].y + f*(l[i].y-l[i-1].y)}
		}
		way -= d
	}
	return l[len(l)-1]
}

func (s *season) scales(p *page) {
	p.loops(stroke{0.8, ink, nil}, box(s.time.from, s.depth.from, s.time.to, s.depth.to))
	p.down(s.depth, s.time.from, depthTicks(p, s.depth, s.u))
	p.text(pt{s.margin, s.depth.from - 1.6*p.em}, left, p.bold(), ink, "depth, "+s.u.Depth.String())
	for k := range s.drops {
		p.dropSign(pt{s.x(k), s.depth.from - 3})
	}
	perPoint := (s.time.hi - s.time.lo) / (s.time.to - s.time.from)
	for _, t := range dayTicks(s.drops[0].When, s.time.lo, s.time.hi, perPoint*p.plain().width("28 Aug")*1.35, perPoint*p.plain().width("May")*1.2) {
		if x := s.time.at(t.day); t.line {
			p.line(stroke{0.8, ink, nil}, pt{x, s.depth.to}, pt{x, s.depth.to + 4})
		}
		x := s.time.at(t.at)
		p.text(pt{x, s.depth.to + 4 + 1.05*p.em}, centre, p.plain(), ink, t.name)
		p.text(pt{x, s.depth.to + 4 + 2.2*p.em}, centre, p.bold(), ink, t.year)
	}
}

// colorKey is the scale of colours under the plot: its boxes, and under their borders
// the temperatures of the isotherms.
func (s *season) colorKey(p *page) {
	y := s.key
	if s.keyFrom > s.margin {
		p.text(pt{s.margin, y + 0.4*p.em}, left, p.bold(), ink, s.keyName)
	} else {
		p.text(pt{s.margin, y - 0.85*p.em}, left, p.bold(), ink, s.keyName)
	}
	wide := math.Min((p.w-s.margin-s.keyFrom)/float64(len(s.colors)), 3.4*p.em)
	for i, c := range s.colors {
		b := box(s.keyFrom+float64(i)*wide, y-0.45*p.em, s.keyFrom+float64(i+1)*wide, y+0.55*p.em)
		p.fill(c, b)
		p.loops(stroke{0.6, ink, nil}, b)
		if i < len(s.degrees) {
			p.text(pt{s.keyFrom + float64(i+1)*wide, y + 1.6*p.em}, centre, p.small(), ink, number(s.degrees[i]))
		}
	}
}
