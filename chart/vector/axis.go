package vector

import (
	"math"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// axis carries values from lo to hi to places from from to to.
type axis struct{ lo, hi, from, to float64 }

// at is the place of a value, kept on the axis.
func (a axis) at(v float64) float64 {
	if !(a.hi > a.lo) || math.IsNaN(v) {
		return a.from
	}
	return a.from + (math.Min(math.Max(v, a.lo), a.hi)-a.lo)/(a.hi-a.lo)*(a.to-a.from)
}

// ticks are the multiples of a step on an axis, so far apart that each has its room, and no
// finer than least.
func (a axis) ticks(room, least float64) []float64 {
	if !(a.hi > a.lo) {
		return nil
	}
	step := math.Max(least, chart.Step(a.hi-a.lo, math.Max(math.Abs(a.to-a.from), 1)/room))
	var out []float64
	for i := math.Ceil(a.lo/step - 1e-6); i*step <= a.hi+1e-6*step && len(out) < 100; i++ {
		out = append(out, unit.RoundTo(i*step, 6))
	}
	return out
}

// finest is the least step of a scale of depths: as fine as a line is marked.
func finest(u unit.System) float64 {
	if u.Feet() {
		return 1
	}
	return 0.5
}

// down draws a scale of depths, its line at x, its numbers at the left of it.
func (p *pen) down(a axis, x float64, ticks []float64) {
	runs := [][]at{{{x, a.from}, {x, a.to}}}
	for _, v := range ticks {
		y := a.at(v)
		runs = append(runs, []at{{x, y}, {x - 4, y}})
		p.text(at{x - 6, y}, right, false, unit.Digits(v, 1))
	}
	p.line("line", 1, "", runs...)
}

// besideDepths is how wide a scale of depths is, down to the deepest in the angler's unit.
func besideDepths(ticks []float64, u unit.System) float64 {
	w := width(u.Depth.String(), true)
	for _, v := range ticks {
		w = math.Max(w, width(unit.Digits(v, 1), false))
	}
	return w + 8
}

// across draws a scale along y with its numbers under it, each whole within the picture.
func (p *pen) across(a axis, y float64, ticks []float64) {
	runs := [][]at{{{a.from, y}, {a.to, y}}}
	for _, v := range ticks {
		x := a.at(v)
		runs = append(runs, []at{{x, y}, {x, y + 4}})
		p.text(at{x, y + 14.5}, centre, false, unit.Digits(v, 1))
	}
	p.line("line", 1, "", runs...)
}
