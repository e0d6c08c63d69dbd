package page

import (
	"slices"
	"strings"

	"coldseam/chart"
)

// spread gives the middles of names, which are in order of where they want to be, so that
// none covers another and all stay between 0 and room, as near as can be to where they
// want to be; where they do not fit at all, they are evenly pressed together.
func spread(want, high []float64, room float64) []float64 {
	total := 0.0
	for _, h := range high {
		total += h
	}
	if total > room {
		high = slices.Clone(high)
		for i, h := range high {
			high[i] = h * room / total
		}
		room = 0 // all of it is taken: one under the other from the top
	}
	return chart.PlaceLabels(want, high, 0, room)
}

// folded breaks a name into lines of at most width letters, at blanks alone.
func folded(name string, width int) []string {
	var lines []string
	for _, w := range strings.Fields(name) {
		if n := len(lines); n > 0 && len([]rune(lines[n-1]))+1+len([]rune(w)) <= width {
			lines[n-1] += " " + w
			continue
		}
		lines = append(lines, w)
	}
	return lines
}
