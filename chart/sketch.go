package chart

import (
	"fmt"
	"math"
	"strings"
)

// mostSketch is how many lines a sketch takes at most.
const mostSketch = 20

// Sketch draws the scene of a drop for a terminal with room for so many columns and lines, to
// scale (a line is as high as two columns are wide): boat, line, leader, fly and bottom, behind
// them the depths, the temperatures, the band and the thermocline, the names at the right. It
// is "" where there is no water to fish.
func Sketch(d Drop, cols, rows int) string {
	if d.Scene == nil {
		return ""
	}
	k := layOutSketch(d, min(max(cols, leastCols), mostCols), min(max(rows, leastRows), mostSketch))
	k.layers()
	k.tackle()
	k.boat()
	return k.text()
}

// sketch is a drawing of characters.
type sketch struct {
	Scene
	d       Drop
	perRow  float64 // metres
	surface int     // row
	cells   [][]byte
	names   []string // beside the rows; nil where they stand under the drawing
	under   []string
	width   int
}

const (
	besideSketch = 17 // columns of depth, temperature and band before it
	sketchNames  = 29 // columns of names behind it
)

func layOutSketch(d Drop, cols, rows int) *sketch {
	k := &sketch{Scene: *d.Scene, d: d, width: cols - besideSketch - sketchNames}
	if cols < 64 { // the names stand under the drawing
		k.width = cols - besideSketch
	}
	most := rows - 4 // for the head, the bottom and the legend
	if cols < 64 {
		most -= len(d.SceneNames())
	}
	k.perRow = math.Max((k.HighM+k.DepthM)/float64(max(most, 4)), 2*k.WideM/float64(k.width-1))
	k.surface = 3 // the boat and its angler, which are drawn too large where the water is deep
	for range k.surface + int(math.Round(k.DepthM/k.perRow)) + 1 {
		k.cells = append(k.cells, []byte(strings.Repeat(" ", k.width)))
	}
	k.place(cols)
	return k
}

// place puts each name beside a row of its own near its depth, or all of them under the drawing
// where there is no room.
func (k *sketch) place(cols int) {
	all := k.d.SceneNames()
	if cols < 64 || len(all) > len(k.cells) {
		for _, n := range all {
			k.under = append(k.under, n.What+" "+n.Value)
		}
		return
	}
	k.names = make([]string, len(k.cells))
	free := len(k.cells) - 1
	for i := len(all) - 1; i >= 0; i-- { // from the bottom up: there they are closest
		row := max(min(k.row(all[i].At.DepthM), free), i)
		k.names[row] = all[i].What + " " + all[i].Value
		free = row - 1
	}
}

// at is the cell of a place.
func (k *sketch) at(q Spot) (col, row int) {
	return int(math.Round(2 * q.XM / k.perRow)), k.row(q.DepthM)
}

// row is that of a depth; what is deeper than the drawing is in its last, which only the bottom
// shares with it where there is one.
func (k *sketch) row(m float64) int {
	last := len(k.cells) - 1
	if k.Bottom && m < k.DepthM-1e-6 {
		last--
	}
	return min(k.surface+int(math.Round(m/k.perRow)), last)
}

func (k *sketch) put(col, row int, sign byte) {
	if row >= 0 && row < len(k.cells) && col >= 0 && col < k.width {
		k.cells[row][col] = sign
	}
}

// layers are the surface, the thermocline, and the bottom.
func (k *sketch) layers() {
	fill := func(row int, signs string) {
		for col := range k.width {
			k.put(col, row, signs[col%len(signs)])
		}
	}
	fill(k.surface, "~")
	if m, ok := k.d.Mark(Thermocline); ok && m.At.Best < k.DepthM {
		fill(k.row(m.At.Best), "- ")
	}
	if k.Bottom {
		fill(len(k.cells)-1, "_")
	}
}

// tackle is the line in the water and the leader, each cell with the sign of its slope.
func (k *sketch) tackle() {
	spots := append(k.Line[1:len(k.Line):len(k.Line)], k.Leader...)
	for i := 1; i < len(spots); i++ {
		a, b := spots[i-1], spots[i]
		const fine = 24
		dx, dz := b.XM-a.XM, b.DepthM-a.DepthM
		sign := byte('\\')
		switch {
		case math.Abs(dx) < 0.35*math.Abs(dz):
			sign = '|'
		case math.Abs(dz) < 0.25*math.Abs(dx):
			sign = '.'
		}
		for f := range fine + 1 {
			t := float64(f) / fine
			col, row := k.at(Spot{a.XM + t*dx, a.DepthM + t*dz})
			if row > k.surface {
				k.put(col, row, sign)
			}
		}
	}
	if k.Indicator {
		col, row := k.at(k.Leader[0])
		k.put(col, row, 'O')
	}
	col, row := k.at(k.Fly())
	k.put(col, row, '*')
}

// boat is the boat with its angler, the rod, and the line down to the water.
func (k *sketch) boat() {
	if k.Ice {
		hole, _ := k.at(k.Leader[0])
		for col := range k.width {
			k.put(col, k.surface, '=')
		}
		k.put(hole, k.surface, '|')
		k.put(hole, k.surface-1, '.')
		for col := hole - 5; col < hole; col++ {
			k.put(col, k.surface-1, '-')
		}
		k.put(hole-6, k.surface-1, '|')
		k.put(hole-6, k.surface-2, 'o')
		return
	}
	end, _ := k.at(Hull[len(Hull)-1])
	end = max(end, 6)
	hull := `\` + strings.Repeat("_", end-1) + "/"
	for i := range hull {
		k.put(i, k.surface, hull[i])
	}
	k.put(end/2, k.surface-2, 'o')
	k.put(end/2, k.surface-1, '|')
	tip, _ := k.at(RodTip)
	tip = max(tip, end+2)
	for col := end/2 + 1; col < tip; col++ {
		k.put(col, k.surface-1, '-')
	}
	to, _ := k.at(k.Line[min(1, len(k.Line)-1)])
	for col := tip; col <= to; col++ {
		k.put(col, k.surface-1, '.')
	}
}

// text is the drawing with what stands beside and under it.
func (k *sketch) text() string {
	u := k.d.Units.Shown()
	var b strings.Builder
	fmt.Fprintf(&b, "%5s %6s\n", u.Depth, u.Temp)
	for row, cells := range k.cells {
		head := strings.Repeat(" ", besideSketch)
		if row >= k.surface {
			m, temp := k.depthOf(row), ""
			if t, ok := k.d.TempAt(m, 1); ok {
				temp = fmt.Sprintf("%.0f", u.Temp.FromC(t))
			}
			head = fmt.Sprintf("%5s %6s  %s ", u.Mark(m), temp, k.band(row))
		}
		line := fmt.Sprintf("%-*s%s", besideSketch, head, cells)
		if k.names != nil {
			line += "  " + k.names[row]
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	for _, line := range wrapped(k.under, besideSketch+k.width) {
		if line != "" {
			b.WriteString(line + "\n")
		}
	}
	return b.String()
}

// depthOf is the depth that is printed beside a row: the fly's and the bottom's own beside theirs.
func (k *sketch) depthOf(row int) float64 {
	switch {
	case row == len(k.cells)-1:
		return k.DepthM
	case row == k.row(k.Fly().DepthM):
		return k.Fly().DepthM
	}
	return float64(row-k.surface) * k.perRow
}

// band is the sign of the band in a row.
func (k *sketch) band(row int) string {
	z, ok := k.d.Zone(Band)
	if !ok || row < k.row(z.TopM) || row > k.row(z.BottomM) {
		return " "
	}
	if u, ok := k.d.BandUnknown(); ok && row > k.row(u.TopM) {
		return "?"
	}
	return "#"
}
