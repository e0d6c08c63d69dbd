package chart

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile/unit"
)

const (
	stripRows = 26 // rows at most, besides those of readings closer together
	stripCols = 40 // columns of the temperature's scale
	nameCols  = 20 // columns for names: 60 stand before them
	crowded   = 40 // readings, over which they share rows
)

// Strip draws a drop for the terminal: temperature to the right, the readings, the
// curve between them, the metalimnion and the band at the left, that of unknown oxygen with a
// sign of its own, the layers named at the right. Depth goes downward and to scale, in plain characters that survive a sunlit
// screen, no colour and a printer. Every reading, the bottom and every name has its
// place; what has no room beside its row stands on a line under it. It returns lines no
// wider than 80 columns, "" when no reading was used.
func Strip(d Drop) string {
	s := strip{Drop: d, u: d.Units.Shown(), low: math.Inf(1), high: math.Inf(-1)}
	for _, r := range d.Readings {
		if r.Used {
			s.low, s.high = min(s.low, r.TempC), max(s.high, r.TempC)
		}
	}
	if s.low > s.high {
		return ""
	}
	if s.high-s.low < 2 { // a mixed column is a straight line, not noise blown up
		mid := (s.high + s.low) / 2
		s.low, s.high = mid-1, mid+1
	}
	s.place()
	s.name()
	var b strings.Builder
	left, right := s.u.Degrees(s.low), s.u.Degrees(s.high)
	fmt.Fprintf(&b, "%5s %6s     %s%s%s\n", s.u.Depth, s.u.Temp, left, strings.Repeat(" ", stripCols-len(left)-len(right)), right)
	for _, r := range s.rows {
		for _, line := range s.lines(r) {
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
	Drop
	u         unit.System
	low, high float64 // ends of the temperature's scale, C

	step   float64 // metres between even rows
	rows   []row   // from the surface down
	scaled int     // how many of them, from the first, are to scale
	shared bool    // rows hold several readings, and print the number of one
}

// lines are the line of a row, and those under it for names that have no room on it.
func (s *strip) lines(r row) []string {
	label, cells := s.cells(r)
	names := wrapped(r.names)
	out := []string{fmt.Sprintf("%5s %7s %s|%s| %s", s.depth(r.depthM), label, r.gutter, cells, names[0])}
	for _, more := range names[1:] {
		out = append(out, fmt.Sprintf("%13s %s|%s| %s", "", r.gutter, strings.Repeat(" ", stripCols), more))
	}
	return out
}

// cells are a row of the plot, and the temperature that is printed before it: of the
// reading at its very depth.
func (s *strip) cells(r row) (label, cells string) {
	out := []byte(strings.Repeat(" ", stripCols))
	put := func(tempC float64, sign byte) {
		at := int(math.Round((tempC - s.low) / (s.high - s.low) * (stripCols - 1)))
		if at >= 0 && at < stripCols {
			out[at] = sign
		}
	}
	used := false
	for _, q := range r.readings {
		if q.Used {
			used = true
			put(q.TempC, 'o')
		}
		if q.DepthM == r.depthM {
			if label = clip(fmt.Sprintf("%.1f", s.u.Temp.FromC(q.TempC)), 6); !q.Used && !strings.HasSuffix(label, "!") {
				label += "!"
			}
		}
	}
	if !used && !r.far {
		if t, ok := s.TempAt(r.depthM, s.step/2); ok {
			put(t, '.')
		}
	}
	return label, string(out)
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
	band, ok := s.Zone(Band)
	unknown, doubt := s.BandUnknown()
	switch {
	case doubt && unknown.TopM == band.TopM:
		words = append([]string{"? band, oxygen unknown"}, words...)
	case doubt:
		words = append([]string{"# band", "? oxygen unknown"}, words...)
	case ok:
		words = append([]string{"# band"}, words...)
	}
	if _, ok := s.Zone(Metalimnion); ok {
		words = append(words, "= metalimnion")
	}
	for _, r := range s.Readings {
		if !r.Used {
			words = append(words, "! not used")
			break
		}
	}
	const room = 80 - 12
	lines := []string{words[0]}
	for _, w := range words[1:] {
		if last := &lines[len(lines)-1]; len(*last)+len("   ")+len(w) <= room {
			*last += "   " + w
		} else {
			lines = append(lines, w)
		}
	}
	if s.shared {
		lines = append(lines, fmt.Sprintf("%d readings, not every number is printed", len(s.Readings)))
	}
	return lines
}
