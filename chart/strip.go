// Package chart draws pictures for the terminal: the strip of a plan, and that of a drop
// while it is taken. Depth goes downward and to scale, in plain characters that survive
// a sunlit screen, no colour and a printer.
package chart

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

const (
	stripRows = 26 // rows at most, besides those of readings closer together
	stripCols = 40 // columns of the temperature's scale
	nameCols  = 20 // columns for names: 60 stand before them
	crowded   = 40 // readings, over which they share rows
)

// Strip draws the column of a plan: temperature to the right, the readings, the
// curve between them, the metalimnion and the band at the left, the layers named at
// the right. Every reading, the bottom and every name has its place; what has no room
// beside its row stands on a line under it. It returns lines no wider than 80 columns,
// "" when nothing was read.
func Strip(p plan.Plan) string {
	k := p.Layers.Curve
	if k == nil || len(k.Depths) == 0 {
		return ""
	}
	u := p.Drop.Units.Shown()
	s := strip{p: p, u: u}
	s.top, s.bottom = p.Band.Safe(p.Column.Last().DepthM)
	s.low, s.high = k.Temps[0], k.Temps[0]
	for _, r := range p.Drop.Readings { // where it is warmer below, readings leave the curve
		if r.Used() {
			s.low, s.high = min(s.low, r.TempC), max(s.high, r.TempC)
		}
	}
	if s.high-s.low < 2 { // a mixed column is a straight line, not noise blown up
		mid := (s.high + s.low) / 2
		s.low, s.high = mid-1, mid+1
	}
	s.place()
	s.name()
	var b strings.Builder
	left, right := u.Degrees(s.low), u.Degrees(s.high)
	fmt.Fprintf(&b, "%5s %6s     %s%s%s\n", u.Depth, u.Temp, left, strings.Repeat(" ", stripCols-len(left)-len(right)), right)
	for i := range s.rows {
		for _, line := range s.lines(i) {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
		}
	}
	for _, line := range s.legend() {
		b.WriteString("            " + line + "\n")
	}
	return b.String()
}

// strip holds what a row needs.
type strip struct {
	p         plan.Plan
	u         unit.System
	low, high float64 // ends of the temperature's scale, C

	top, bottom float64 // the band's edges as the text gives them, m

	step   float64 // metres between even rows
	rows   []row   // from the surface down
	scaled int     // how many of them, from the first, are to scale
	shared bool    // rows hold several readings, and print the number of one
}

// lines are the line of a row, and those under it for names that have no room on it.
func (s *strip) lines(i int) []string {
	r, k := s.rows[i], s.p.Layers.Curve
	cells := []rune(strings.Repeat(" ", stripCols))
	put := func(tempC float64, sign rune) {
		at := int(math.Round((tempC - s.low) / (s.high - s.low) * (stripCols - 1)))
		if at >= 0 && at < stripCols {
			cells[at] = sign
		}
	}
	label, used := "", false
	for _, q := range r.readings {
		used = used || q.Used()
	}
	if !used && i < s.scaled && r.depthM >= k.Top()-s.step/2 && r.depthM <= k.Bottom()+s.step/2 {
		put(k.At(min(max(r.depthM, k.Top()), k.Bottom())), '.')
	}
	for _, q := range r.readings {
		if q.Used() {
			put(q.TempC, 'o')
		}
		if q.DepthM == r.depthM {
			if label = clip(fmt.Sprintf("%.1f", s.u.Temp.FromC(q.TempC)), 6); !q.Used() && !strings.HasSuffix(label, "!") {
				label += "!"
			}
		}
	}
	gutter := []rune("   ")
	if s.p.Band.Found && i >= s.rowOf(s.top) && i <= s.rowOf(s.bottom) {
		gutter[0] = '#'
	}
	if l := s.p.Layers; l.MetalimnionTop != nil && i >= s.rowOf(l.MetalimnionTop.Best) && i <= s.rowOf(l.MetalimnionBottom.Best) {
		gutter[1] = '='
	}
	names := wrapped(r.names)
	out := []string{fmt.Sprintf("%5s %7s %s|%s| %s", s.depth(r.depthM), label, string(gutter), string(cells), names[0])}
	for _, more := range names[1:] {
		out = append(out, fmt.Sprintf("%13s %s|%s| %s", "", string(gutter), strings.Repeat(" ", stripCols), more))
	}
	return out
}

// depth prints a depth in five columns, to a hundredth where there is room.
func (s *strip) depth(metres float64) string {
	v := s.u.Depth.From(metres)
	for _, k := range []float64{100, 10, 1} {
		if text := unit.Exact(math.Round(v*k) / k); len(text) <= 5 {
			return text
		}
	}
	return clip(unit.Exact(math.Round(v)), 5)
}

// wrapped puts names into lines that fit beside the rows, at least one.
func wrapped(names []string) []string {
	lines := []string{""}
	for _, n := range names {
		last := &lines[len(lines)-1]
		switch {
		case *last == "":
			*last = n
		case len(*last)+len(", ")+len(n) <= nameCols:
			*last += ", " + n
		default:
			lines = append(lines, n)
		}
	}
	return lines
}

func (s *strip) legend() []string {
	words := []string{"o reading", ". between"}
	if s.p.Band.Found {
		words = append([]string{"# band"}, words...)
	}
	if s.p.Layers.MetalimnionTop != nil {
		words = append(words, "= break (metalimnion)")
	}
	if _, unused := s.p.Flagged(); unused > 0 {
		words = append(words, "! not used")
	}
	lines := []string{strings.Join(words, "   ")}
	if s.shared {
		lines = append(lines, fmt.Sprintf("%d readings, not every number is printed", len(s.p.Drop.Readings)))
	}
	return lines
}
