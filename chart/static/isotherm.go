package static

import "math"

// field is temperatures over times across and depths down, on a grid of columns and
// rows. Between the nodes of a cell's side the temperature is linear, so that a line of
// equal temperature crosses the side where a ruler would put it.
type field struct {
	xs, ys []float64   // places of columns and rows on the page
	t      [][]float64 // temperature, by column and row
	known  [][]bool    // whether there is one
	open   []bool      // whether the field may be filled between column i and i+1
}

// column adds a column at its right.
func (f *field) column(x float64, t []float64, known []bool, open bool) {
	f.xs, f.t, f.known, f.open = append(f.xs, x), append(f.t, t), append(f.known, known), append(f.open, open)
}

// cell reports whether the cell right of column i and below row j may be filled.
func (f *field) cell(i, j int) bool {
	return i >= 0 && j >= 0 && i+1 < len(f.xs) && j+1 < len(f.ys) && f.open[i] &&
		f.known[i][j] && f.known[i+1][j] && f.known[i][j+1] && f.known[i+1][j+1]
}

// knot is a point of an outline: a node of the grid, or the crossing on the side that
// goes right or down from it.
type knot struct {
	kind byte // 'n', 'r' or 'd'
	i, j int
}

// edge is a piece of an outline with the warmer water at its right hand (y grows
// downward). It is an isotherm where it crosses a cell, and a mere border where it runs
// along the end of what is known.
type edge struct {
	from, to knot
	isotherm bool
}

// edges are the outline of all water of a level or warmer, cell by cell.
func (f *field) edges(level float64) []edge {
	var out []edge
	for i := range len(f.xs) - 1 {
		for j := range len(f.ys) - 1 {
			if f.cell(i, j) {
				c := f.square(i, j, level)
				out = append(append(out, c.borders()...), c.crossings()...)
			}
		}
	}
	return out
}

// square is one cell: its corners clockwise from the upper left, and for side k, from
// corner k to the next, the crossing on it and whether there is no neighbour beyond it.
type square struct {
	corner, side [4]knot
	bare         [4]bool
	warm         [4]bool // corners
	joined       bool    // where two opposite corners are warm, the middle is warm too
}

func (f *field) square(i, j int, level float64) square {
	s := square{
		corner: [4]knot{{'n', i, j}, {'n', i + 1, j}, {'n', i + 1, j + 1}, {'n', i, j + 1}},
		side:   [4]knot{{'r', i, j}, {'d', i + 1, j}, {'r', i, j + 1}, {'d', i, j}},
		bare:   [4]bool{!f.cell(i, j-1), !f.cell(i+1, j), !f.cell(i, j+1), !f.cell(i-1, j)},
		joined: (f.t[i][j]+f.t[i+1][j]+f.t[i+1][j+1]+f.t[i][j+1])/4 >= level,
	}
	for k, c := range s.corner {
		s.warm[k] = f.t[c.i][c.j] >= level
	}
	return s
}

// borders are the warm parts of the sides that no neighbour takes up.
func (s *square) borders() []edge {
	var out []edge
	for k := range 4 {
		next := (k + 1) % 4
		if !s.bare[k] || !s.warm[k] && !s.warm[next] {
			continue
		}
		a, b := s.corner[k], s.corner[next]
		if !s.warm[k] {
			a = s.side[k]
		}
		if !s.warm[next] {
			b = s.side[k]
		}
		out = append(out, edge{a, b, false})
	}
	return out
}

// crossings are the pieces of isotherms: each from where a walk around the cell leaves the
// warm part to where it comes back, or past a warm corner that stands alone.
func (s *square) crossings() []edge {
	saddle := s.warm[0] == s.warm[2] && s.warm[1] == s.warm[3] && s.warm[0] != s.warm[1]
	var out []edge
	for k := range 4 {
		if !s.warm[k] || s.warm[(k+1)%4] {
			continue
		}
		back := (k + 3) % 4 // a corner that stands alone
		if !saddle || s.joined {
			for back = (k + 1) % 4; !s.warm[(back+1)%4]; {
				back = (back + 1) % 4
			}
		}
		out = append(out, edge{s.side[k], s.side[back], true})
	}
	return out
}

// place is where a knot stands on the page.
func (f *field) place(k knot, level float64) pt {
	at := pt{f.xs[k.i], f.ys[k.j]}
	share := func(a, b float64) float64 {
		if a == b {
			return 0
		}
		return math.Min(math.Max((level-a)/(b-a), 0), 1)
	}
	switch k.kind {
	case 'r':
		at.x += share(f.t[k.i][k.j], f.t[k.i+1][k.j]) * (f.xs[k.i+1] - at.x)
	case 'd':
		at.y += share(f.t[k.i][k.j], f.t[k.i][k.j+1]) * (f.ys[k.j+1] - at.y)
	}
	return at
}

// trace gives the outline of all water of a level or warmer as closed loops, and its
// isotherms as lines.
func (f *field) trace(level float64) (loops, isotherms [][]pt) {
	all := f.edges(level)
	var lines []edge
	for _, e := range all {
		if e.isotherm {
			lines = append(lines, e)
		}
	}
	loops, isotherms = f.chain(all, level), f.chain(lines, level)
	for _, set := range [][][]pt{loops, isotherms} {
		for i := range set {
			set[i] = thin(set[i])
		}
	}
	return loops, isotherms
}

// chain joins edges end to end.
func (f *field) chain(edges []edge, level float64) [][]pt {
	leaving := make(map[knot][]int, len(edges))
	arriving := make(map[knot]int, len(edges))
	for n, e := range edges {
		leaving[e.from] = append(leaving[e.from], n)
		arriving[e.to]++
	}
	done := make([]bool, len(edges))
	var out [][]pt
	walk := func(n int) {
		line := []pt{f.place(edges[n].from, level)}
		for n >= 0 {
			done[n] = true
			line = append(line, f.place(edges[n].to, level))
			on := -1
			for _, m := range leaving[edges[n].to] {
				if !done[m] {
					on = m
					break
				}
			}
			n = on
		}
		out = append(out, line)
	}
	for n, e := range edges { // open lines from their beginning
		if !done[n] && arriving[e.from] == 0 {
			walk(n)
		}
	}
	for n := range edges { // then rings
		if !done[n] {
			walk(n)
		}
	}
	return out
}

// thin leaves out points that lie within a thirtieth of a point of the straight line
// between those kept, so that the file is small.
func thin(line []pt) []pt {
	const near = 1.0 / 30
	if len(line) < 3 {
		return line
	}
	out := line[:1:1]
	from := 0
	for i := 2; i < len(line); i++ {
		for k := from + 1; k < i; k++ {
			if away(line[k], line[from], line[i]) > near {
				from = i - 1
				out = append(out, line[from])
				break
			}
		}
		if i-from > 400 { // keeps the work linear
			from = i
			out = append(out, line[from])
		}
	}
	if from < len(line)-1 {
		out = append(out, line[len(line)-1])
	}
	return out
}

// away is how far q lies from the piece between a and b.
func away(q, a, b pt) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	f := 0.0
	if d := dx*dx + dy*dy; d > 0 {
		f = math.Min(math.Max(((q.x-a.x)*dx+(q.y-a.y)*dy)/d, 0), 1)
	}
	return math.Hypot(q.x-a.x-f*dx, q.y-a.y-f*dy)
}
