package static

import (
	"math"

	"coldseam/chart"
)

// reach is the band of one drop, m: below unknown nobody knows its oxygen.
type reach struct{ top, unknown, bottom float64 }

func bandOf(d chart.Drop) (b reach, ok bool) {
	z, ok := d.Zone(chart.Band)
	b = reach{z.TopM, z.BottomM, z.BottomM}
	if u, doubt := d.BandUnknown(); doubt {
		b.unknown = u.TopM
	}
	return b, ok
}

// What fills the band: upright lines, so that the colours of the water stay as they are,
// and where its oxygen is unknown rows of dots.
const bandEvery = 6.0 // points

var (
	bandLine    = stroke{0.7, ink, nil}
	unknownLine = stroke{1.1, ink, []float64{1.1, 4.4}}
)

// bandFill fills the band from its top to its bottom: between drops that are joined, and
// across the bar of one that stands alone.
func (s *season) bandFill(p *page) {
	var known, unknown [][]pt
	upright := func(x float64, b reach) {
		known = append(known, []pt{{x, s.y(b.top)}, {x, s.y(b.unknown)}})
		unknown = append(unknown, []pt{{x, s.y(b.unknown)}, {x, s.y(b.bottom)}})
	}
	for k := range s.drops {
		a, ok := bandOf(s.drops[k].Drop)
		if !ok {
			continue
		}
		if !s.joined(k-1) && !s.joined(k) {
			upright(s.x(k), a)
		}
		if !s.joined(k) {
			continue
		}
		b, ok := bandOf(s.drops[k+1].Drop)
		if !ok {
			continue
		}
		for x := math.Ceil(s.x(k)/bandEvery) * bandEvery; x < s.x(k+1); x += bandEvery {
			w := (x - s.x(k)) / (s.x(k+1) - s.x(k))
			upright(x, reach{a.top + w*(b.top-a.top), a.unknown + w*(b.unknown-a.unknown), a.bottom + w*(b.bottom-a.bottom)})
		}
	}
	p.lines(bandLine, known...)
	p.lines(unknownLine, unknown...)
}

// bandPatch is the sign of the band in the legend.
func bandPatch(p *page, at pt, known bool) {
	x0, y0, x1, y1 := patch(at)
	pen := unknownLine
	if known {
		pen = bandLine
	}
	for x := x0 + bandEvery/2; x < x1; x += bandEvery {
		p.line(pen, pt{x, y0}, pt{x, y1})
	}
	p.lines(stroke{0.9, ink, nil}, []pt{{x0, y0}, {x1, y0}}, []pt{{x0, y1}, {x1, y1}})
}

// ground is the bottom under the boat, where it is known.
func (s *season) ground(p *page) {
	var run []pt
	for k, d := range s.drops {
		m, ok := d.Drop.Mark(chart.Bottom)
		if !ok || !s.joined(k-1) {
			p.bed(run)
			run = nil
		}
		if !ok {
			continue
		}
		run = append(run, pt{s.x(k), s.y(m.At.Best)})
		if !s.joined(k-1) && !s.joined(k) {
			l, r := s.bar(k)
			run = []pt{{l, s.y(m.At.Best)}, {r, s.y(m.At.Best)}}
		}
	}
	p.bed(run)
}

// bed is the bottom along a line, with slanting strokes under it as for solid ground.
func (p *page) bed(line []pt) {
	p.line(stroke{2.4, ink, nil}, line...)
	var strokes [][]pt
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		for x := math.Ceil(a.x/bandEvery) * bandEvery; x <= b.x; x += bandEvery {
			y := a.y + (x-a.x)/(b.x-a.x)*(b.y-a.y)
			strokes = append(strokes, []pt{{x, y}, {x - 5, y + 5}})
		}
	}
	p.lines(stroke{0.7, quiet, nil}, strokes...)
}
