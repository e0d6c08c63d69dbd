package static

import (
	"math"

	"coldseam/profile/unit"
)

// axis carries values from lo to hi to places on the page from from to to.
type axis struct{ lo, hi, from, to float64 }

// at is the place of a value.
func (a axis) at(v float64) float64 { return a.from + (v-a.lo)/(a.hi-a.lo)*(a.to-a.from) }

// inside keeps a value on the axis.
func (a axis) inside(v float64) float64 { return math.Min(math.Max(v, a.lo), a.hi) }

// ticks are the multiples of a step from lo to hi.
func ticks(lo, hi, step float64) []float64 {
	var out []float64
	for i := math.Ceil(lo/step - 1e-6); i*step <= hi+1e-6*step && len(out) < 1000; i++ {
		out = append(out, unit.RoundTo(i*step, 6))
	}
	return out
}

// number prints a tick or a reading without digits that it has not.
func number(v float64) string { return unit.Digits(v, 1) }

// across draws the scale of a horizontal axis along y with its name, its ticks and their
// numbers below the line, or above it.
func (p *page) across(a axis, y float64, ticks []float64, name string, above bool) {
	s := stroke{0.8, ink, nil}
	p.line(s, pt{a.from, y}, pt{a.to, y})
	tick, number1, name1 := 4.0, 4+1.05*p.em, 4+2.35*p.em
	if above {
		tick, number1, name1 = -4, -4-0.35*p.em, -4-1.55*p.em
	}
	for _, v := range ticks {
		x := a.at(v)
		p.line(s, pt{x, y}, pt{x, y + tick})
		p.text(pt{x, y + number1}, centre, p.plain(), ink, number(v))
	}
	if above { // the name of the depths stands at the left
		p.text(pt{a.to, y + name1}, right, p.bold(), ink, name)
		return
	}
	p.text(pt{(a.from + a.to) / 2, y + name1}, centre, p.bold(), ink, name)
}

// besideDepths is the x of a plot that has its depths at its left, within the margin.
func (p *page) besideDepths(depth axis, margin float64) float64 {
	return margin + p.plain().width(number(math.Floor(depth.hi))) + 8
}

// down draws the scale of the depth axis along x.
func (p *page) down(a axis, x float64, ticks []float64) {
	p.line(stroke{0.8, ink, nil}, pt{x, a.from}, pt{x, a.to})
	for _, v := range ticks {
		y := a.at(v)
		p.line(stroke{0.8, ink, nil}, pt{x, y}, pt{x - 4, y})
		p.text(pt{x - 6, y + 0.35*p.em}, right, p.plain(), ink, number(v))
	}
}

// grid draws faint lines at ticks across and down.
func (p *page) grid(across, down axis, xs, ys []float64) {
	var grid [][]pt
	for _, v := range ys {
		grid = append(grid, []pt{{across.from, down.at(v)}, {across.to, down.at(v)}})
	}
	for _, v := range xs {
		grid = append(grid, []pt{{across.at(v), down.from}, {across.at(v), down.to}})
	}
	p.lines(stroke{0.5, faint, nil}, grid...)
}
