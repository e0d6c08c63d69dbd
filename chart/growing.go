package chart

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/unit"
)

const growingCols = 40 // columns of the temperature's scale

// Growing draws a drop that is being taken, a line a reading from the surface down:
// its depth, its temperature and a bar as long as it is warm. The last one taken is
// marked, and flagged ones carry their flag. It returns lines no wider than 80
// columns, "" when nothing was read.
func Growing(d profile.Drop) string {
	n := len(d.Readings)
	if n == 0 {
		return ""
	}
	u := d.Units.Shown()
	order := make([]int, n)
	low, high := math.Inf(1), math.Inf(-1)
	for i, r := range d.Readings {
		order[i] = i
		if r.Used() {
			low, high = min(low, r.TempC), max(high, r.TempC)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(d.Readings[a].DepthM, d.Readings[b].DepthM) })
	low = min(low, high-2) // a mixed column is a straight edge, not noise blown up
	var b strings.Builder
	fmt.Fprintf(&b, "%6s %7s\n", u.Depth, u.Temp)
	for _, i := range order {
		r := d.Readings[i]
		bar, note := "", ""
		if r.Used() {
			bar = strings.Repeat("-", 1+int(math.Round((r.TempC-low)/(high-low)*(growingCols-2)))) + "o"
		}
		if r.Flag != "" {
			note = " " + string(r.Flag)
		}
		if i == n-1 {
			note += " < new"
		}
		b.WriteString(strings.TrimRight(fmt.Sprintf("%6s %7s |%s%s", clip(unit.Exact(math.Round(u.Depth.From(r.DepthM)*100)/100), 6),
			clip(fmt.Sprintf("%.1f", u.Temp.FromC(r.TempC)), 7), bar, note), " ") + "\n")
	}
	return b.String()
}

// clip keeps a number that is wildly off from breaking the picture.
func clip(s string, most int) string {
	if len(s) > most {
		return s[:most-1] + "!"
	}
	return s
}
