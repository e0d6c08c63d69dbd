package static

import (
	"image/color"
	"math"

	"coldseam/chart"
)

// penOf gives the pen of drop i: dash and sign change from one to the next, so that
// neighbours in the list differ in both, and no two drops have colour and dash alike.
func penOf(i int) (stroke, func(at pt, r float64) []pt) {
	dashes := [][]float64{nil, {7, 2.5}, {2, 2}, {9, 2, 2, 2}}
	signs := []func(at pt, r float64) []pt{
		circle, diamond,
		func(at pt, r float64) []pt { return box(at.x-0.85*r, at.y-0.85*r, at.x+0.85*r, at.y+0.85*r) },
		triangle(true),
	}
	c := compareInks[i%len(compareInks)]
	return stroke{1.7, c, dashes[(i+i/4)%4]}, signs[(i+2*(i/4))%4]
}

func letter(i int) string { return string(rune('A' + i)) }

// letters finds a place for each letter on its curve: where the other curves are
// farthest, no reading is covered and no other letter stands.
func (c *compared) letters(p *page, curves [][]pt) []pt {
	out := make([]pt, len(curves))
	signs := c.signs()
	for i, own := range curves {
		out[i] = pt{c.temp.from + 1.5*p.em*(float64(i)+1), c.depth.from + p.em} // a drop without a curve
		best := -1.0
		for k, at := range own {
			if len(own) > 20 && (k%4 != 0 || at.y < c.depth.from+1.2*p.em) {
				continue
			}
			room := 5 * p.em
			for j, other := range curves {
				if j != i && len(other) > 0 {
					room = math.Min(room, math.Abs(xAt(other, at.y)-at.x))
				}
			}
			room = math.Min(room, clearOf(signs, at, 1.3*p.em, 0))
			room = math.Min(room, clearOf(out[:i], at, 2.2*p.em, 2.2*p.em))
			if room > best+1e-9 {
				best, out[i] = room, at
			}
		}
	}
	return out
}

// signs are where readings are drawn, of drops in which they are few enough to be told
// apart.
func (c *compared) signs() []pt {
	var out []pt
	for _, d := range c.drops {
		for _, r := range d.Readings {
			if r.Used && len(d.Readings) <= chart.Crowded {
				out = append(out, c.place(r.DepthM, r.TempC))
			}
		}
	}
	return out
}

// clearOf is how far a place is from the nearest of others that are within reach, less
// what they take up themselves; no bound where none is.
func clearOf(others []pt, at pt, reach, taken float64) float64 {
	room := math.Inf(1)
	for _, q := range others {
		if d := math.Hypot(q.x-at.x, q.y-at.y); d < reach {
			room = math.Min(room, d-taken)
		}
	}
	return room
}

// xAt is where a curve that goes down the page is at y; its ends hold beyond. The curve
// has a point at least.
func xAt(curve []pt, y float64) float64 {
	for i, b := range curve {
		if b.y >= y {
			if i == 0 {
				return b.x
			}
			a := curve[i-1]
			return a.x + (b.x-a.x)*(y-a.y)/(b.y-a.y)
		}
	}
	return curve[len(curve)-1].x
}

// bar is the sign of a thermocline on a curve.
func (p *page) bar(at pt, c color.RGBA) {
	p.line(stroke{2.6, c, nil}, pt{at.x - 9, at.y}, pt{at.x + 9, at.y})
}

// badge is a letter on a plate of paper.
func (p *page) badge(at pt, text string, c color.RGBA) {
	p.fill(paper, circle(at, 0.72*p.em))
	p.loops(stroke{1, c, nil}, circle(at, 0.72*p.em))
	p.text(pt{at.x, at.y + 0.35*p.em}, centre, p.bold(), ink, text)
}
