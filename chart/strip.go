// Package chart draws pictures of a plan. So far: the strip for the terminal, depth
// downward and to scale, in plain characters that survive a sunlit screen, no colour
// and a printer.
package chart

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

const (
	stripRows = 26 // rows at most
	stripCols = 40 // columns of the temperature's scale
)

// Strip draws the column of a plan: temperature to the right, the readings, the
// curve between them, the metalimnion and the band at the left, the layers named at
// the right. It returns lines no wider than 80 columns, "" when nothing was read.
func Strip(p plan.Plan) string {
	k := p.Layers.Curve
	if k == nil || len(k.Depths) == 0 {
		return ""
	}
	u := p.Drop.Units.Shown()
	s := strip{p: p, u: u}
	deepest := k.Bottom()
	for _, r := range p.Drop.Readings {
		if r.DepthM < 2*k.Bottom()+1 {
			deepest = math.Max(deepest, r.DepthM)
		}
	}
	deepest = math.Max(deepest, p.Drop.Bottom.Or(0))
	if p.Band.Found {
		deepest = math.Max(deepest, p.Band.Bottom.Best)
	}
	s.top, s.bottom = p.Band.Safe(p.Column.Last().DepthM)
	s.step = stepFor(deepest, u)
	s.low, s.high = k.Temps[0], k.Temps[0]
	for _, q := range p.Column.Points() {
		s.low, s.high = math.Min(s.low, q.TempC), math.Max(s.high, q.TempC)
	}
	if s.high-s.low < 2 { // a mixed column is a straight line, not noise blown up
		mid := (s.high + s.low) / 2
		s.low, s.high = mid-1, mid+1
	}
	var b strings.Builder
	left, right := u.Degrees(s.low), u.Degrees(s.high)
	fmt.Fprintf(&b, "%5s %6s     %s%s%s\n", u.Depth, u.Temp, left, strings.Repeat(" ", stripCols-len(left)-len(right)), right)
	rows := int(math.Round(deepest/s.step)) + 1
	for i := range rows {
		b.WriteString(strings.TrimRight(s.row(float64(i)*s.step), " ") + "\n")
	}
	b.WriteString("            " + s.legend() + "\n")
	return b.String()
}

// strip holds what a row needs.
type strip struct {
	p         plan.Plan
	u         unit.System
	step      float64 // metres a row
	low, high float64 // ends of the temperature's scale, C

	top, bottom float64 // the band's edges as the text gives them, m
}

// stepFor picks whole marks so that the picture fits the rows.
func stepFor(deepest float64, u unit.System) float64 {
	steps := []float64{0.25, 0.5, 1, 2, 5, 10, 20, 50}
	mark := 1.0
	if u.Feet() {
		steps, mark = []float64{1, 2, 5, 10, 20, 50, 100}, 0.3048
	}
	for _, n := range steps {
		if deepest/(n*mark) <= stripRows-1 {
			return n * mark
		}
	}
	return deepest / (stripRows - 1)
}

// in reports whether a depth belongs to the row at z.
func (s strip) in(z, depthM float64) bool {
	return depthM >= z-s.step/2-1e-9 && depthM < z+s.step/2-1e-9
}

func (s strip) row(z float64) string {
	p := s.p
	k := p.Layers.Curve
	cells := []rune(strings.Repeat(" ", stripCols))
	put := func(tempC float64, r rune) {
		i := int(math.Round((tempC - s.low) / (s.high - s.low) * (stripCols - 1)))
		if i >= 0 && i < stripCols {
			cells[i] = r
		}
	}
	depth := z
	read := false
	for _, r := range p.Drop.Readings {
		if s.in(z, r.DepthM) && (!read || r.Used()) {
			depth, read = r.DepthM, read || r.Used()
		}
	}
	if !read && z >= k.Top()-s.step/2 && z <= k.Bottom()+s.step/2 {
		put(k.At(math.Min(math.Max(z, k.Top()), k.Bottom())), '.')
	}
	label := ""
	for _, r := range p.Drop.Readings {
		if !s.in(z, r.DepthM) {
			continue
		}
		if r.Used() { // its row carries its own depth
			put(r.TempC, 'o')
			label = s.temp(r.TempC)
		} else if label == "" {
			label = s.temp(r.TempC) + "!"
		}
	}
	if len(label) > 7 {
		label = label[:6] + "!"
	}
	gutter := []rune("   ")
	if top, bottom := s.top, s.bottom; p.Band.Found && z >= top-s.step/2 && z <= bottom+s.step/2+1e-9 {
		gutter[0] = '#'
	}
	if l := p.Layers; l.MetaTop != nil && z >= l.MetaTop.Best-s.step/2 && z <= l.MetaBottom.Best+s.step/2-1e-9 {
		gutter[1] = '='
	}
	mark := fmt.Sprintf("%g", math.Round(s.u.Depth.From(depth)*10)/10)
	return fmt.Sprintf("%5s %7s %s|%s| %s", mark, label, string(gutter), string(cells), s.names(z))
}

func (s strip) temp(c float64) string { return fmt.Sprintf("%.1f", s.u.Temp.FromC(c)) }

// names are the layers that begin or end in this row.
func (s strip) names(z float64) string {
	p := s.p
	var words []string
	add := func(ok bool, depthM float64, w string) {
		if ok && s.in(z, depthM) {
			words = append(words, w)
		}
	}
	l, b := p.Layers, p.Band
	add(l.SkinM > 0, l.SkinM, "skin to here")
	add(b.Found && !b.ToSurface, s.top, "band top")
	add(b.Found, b.Start.Best, "start")
	add(b.Found && !b.Suspended, b.WaterM, "cast over")
	if l.MetaTop != nil {
		add(true, l.MetaTop.Best, "break top")
		add(true, l.Thermocline.Best, "thermocline")
		add(!l.BottomReached, l.MetaBottom.Best, "break end")
	}
	add(b.Found && !b.ToDeepest, s.bottom, "band end")
	add(p.Drop.Bottom.Known, p.Drop.Bottom.Value, "BOTTOM")
	out := strings.Join(words, ", ")
	if len(out) > 20 { // 60 columns stand before the names
		out = out[:20]
		if i := strings.LastIndex(out, ","); i > 0 {
			out = out[:i]
		}
	}
	return out
}

func (s strip) legend() string {
	words := []string{"o reading", ". between"}
	if s.p.Band.Found {
		words = append([]string{"# band"}, words...)
	}
	if s.p.Layers.MetaTop != nil {
		words = append(words, "= break (metalimnion)")
	}
	if _, unused := s.p.Flagged(); unused > 0 {
		words = append(words, "! not used")
	}
	return strings.Join(words, "   ")
}
