package page

import (
	"math"
	"strings"
)

// tag is a name beside the plot: where it belongs and how tall it is, in one unit.
type tag struct{ at, height float64 }

// spread gives the middles of tags, which are in order of where they belong, so that
// none covers another and all stay between 0 and room, as near as can be to where they
// belong (least squares; where they do not fit at all, evenly pressed together).
func spread(tags []tag, room float64) []float64 {
	total := 0.0
	for _, t := range tags {
		total += t.height
	}
	if total > room && total > 0 {
		pressed := make([]tag, len(tags))
		for i, t := range tags {
			pressed[i] = tag{t.at, t.height * room / total}
		}
		tags, total = pressed, room
	}
	// With each tag's start less the heights before it as the unknown, "in order" is
	// all that is asked, and neighbours out of order share their mean.
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	before := 0.0
	for _, t := range tags {
		pools = append(pools, pool{t.at - t.height/2 - before, 1})
		before += t.height
		for k := len(pools) - 1; k > 0 && pools[k].sum/float64(pools[k].n) < pools[k-1].sum/float64(pools[k-1].n); k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].n += pools[k].n
			pools = pools[:k]
		}
	}
	out := make([]float64, 0, len(tags))
	before = 0
	for _, q := range pools {
		start := math.Max(0, math.Min(q.sum/float64(q.n), room-total))
		for range q.n {
			h := tags[len(out)].height
			out = append(out, start+before+h/2)
			before += h
		}
	}
	return out
}

// joined puts a depth behind the last line where it fits there whole, else below it.
func joined(lines []string, depth string, width int) []string {
	if n := len(lines); n > 0 && len([]rune(lines[n-1]))+1+len([]rune(depth)) <= width {
		lines[n-1] += " " + depth
		return lines
	}
	return append(lines, depth)
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
