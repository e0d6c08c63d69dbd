package chart

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile/unit"
)

// Limits between which a strip fits itself to a terminal.
const (
	leastCols, mostCols = 40, 100
	leastRows, mostRows = 12, 40
)

// Strip draws a drop for a terminal with room for so many columns and lines: temperature to
// the right, the readings, the curve between them, the metalimnion and the band at the left,
// that of unknown oxygen with a sign of its own, the layers named at the right. Depth goes
// downward and to scale but that every reading, the bottom and the fly have rows of their own,
// in plain characters that survive a sunlit screen, no colour and a printer. What has no room
// beside its row stands on a line under it. Where there are more readings than lines they share
// rows. It is "" when no reading was used.
func Strip(d Drop, cols, rows int) string {
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
	s.cols = min(max(cols, leastCols), mostCols)
	s.nameCols = 20
	if s.cols < 64 {
		s.nameCols = 12
	}
	s.plotCols = min(s.cols-20-s.nameCols, 48)
	return strings.Join(s.fitted(min(max(rows, leastRows), mostRows)), "\n") + "\n"
}

// fitted are the lines with the finest steps that fit, with a row for each reading where
// that is possible at all.
func (s *strip) fitted(rows int) (lines []string) {
	for _, share := range []bool{false, true} {
		for _, step := range s.steps() {
			s.step, s.shared = step, share
			s.place()
			s.name()
			if lines = s.text(); len(lines) <= rows {
				return lines
			}
		}
	}
	return lines
}

// text are the lines of the strip as it is laid out.
func (s *strip) text() []string {
	left, right := s.u.Degrees(s.low), s.u.Degrees(s.high)
	out := []string{fmt.Sprintf("%5s %6s     %s%s%s", s.u.Depth, s.u.Temp, left, strings.Repeat(" ", max(1, s.plotCols-len(left)-len(right))), right)}
	if s.plotCols < 20 {
		out[0] = fmt.Sprintf("%5s %6s", s.u.Depth, s.u.Temp)
	}
	for _, r := range s.rows {
		for _, line := range s.lines(r) {
			out = append(out, strings.TrimRight(line, " "))
		}
	}
	indent := strings.Repeat(" ", min(12, (s.cols-leastCols)/2))
	for _, line := range s.legend(s.cols - len(indent)) {
		out = append(out, indent+line)
	}
	return out
}

// strip holds what a row needs.
type strip struct {
	Drop
	u         unit.System
	low, high float64 // ends of the temperature's scale, C

	cols, plotCols, nameCols int // of all, of the temperature's scale, of the names

	step   float64 // metres between even rows
	rows   []row   // from the surface down
	scaled int     // how many of them, from the first, are to scale
	shared bool    // rows hold several readings, and print the number of one
}

// lines are the line of a row, and those under it for names that have no room on it.
func (s *strip) lines(r row) []string {
	label, cells := s.cells(r)
	names := wrapped(r.names, s.nameCols)
	out := []string{fmt.Sprintf("%5s %7s %s|%s| %s", s.depth(r.depthM), label, r.gutter, cells, names[0])}
	for _, more := range names[1:] {
		out = append(out, fmt.Sprintf("%13s %s|%s| %s", "", r.gutter, strings.Repeat(" ", s.plotCols), more))
	}
	return out
}

// cells are a row of the plot, and the temperature that is printed before it: of the
// reading at its very depth.
func (s *strip) cells(r row) (label, cells string) {
	out := []byte(strings.Repeat(" ", s.plotCols))
	put := func(tempC float64, sign byte) {
		at := int(math.Round((tempC - s.low) / (s.high - s.low) * float64(s.plotCols-1)))
		if at >= 0 && at < s.plotCols {
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

// wrapped puts names into lines of a width that stand beside the rows, at least one; a name
// that is wider is broken at its blanks.
func wrapped(names []string, width int) []string {
	lines := []string{""}
	for _, n := range names {
		last := &lines[len(lines)-1]
		switch {
		case *last == "" && len(n) <= width:
			*last = n
			continue
		case *last != "" && len(*last)+len(", ")+len(n) <= width:
			*last += ", " + n
			continue
		}
		for i, word := range strings.Fields(n) {
			switch last := &lines[len(lines)-1]; {
			case *last == "":
				*last = word
			case i > 0 && len(*last)+1+len(word) <= width:
				*last += " " + word
			default:
				lines = append(lines, word)
			}
		}
	}
	return lines
}

func (s *strip) legend(room int) []string {
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
	lines := []string{words[0]}
	for _, w := range words[1:] {
		if last := &lines[len(lines)-1]; len(*last)+len("   ")+len(w) <= room {
			*last += "   " + w
		} else {
			lines = append(lines, w)
		}
	}
	if s.shared {
		lines = append(lines, fmt.Sprintf("%d readings, not every one printed", len(s.Readings)))
	}
	return lines
}
