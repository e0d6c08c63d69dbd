package vector

import (
	"cmp"
	"slices"

	"coldseam/chart"
)

// name is a name beside a picture, with its value and what it belongs to.
type name struct {
	what, value string
	to          at   // what it names
	dot         bool // marks that place, which no line of the picture does
	minor       bool // may be left out where there is no room
	lines       []words
	at          at // where it stands, within a scene
}

// words are a line of a name: its name first, then its value.
type words struct{ what, value string }

// nameGap is the least between a name and the next.
const nameGap = 5.0

// broken sets the lines of a name, no wider than most.
func (n *name) broken(most float64) {
	n.lines = nil
	for _, l := range wrap(n.what, true, most) {
		n.lines = append(n.lines, words{what: l})
	}
	if n.value == "" {
		return
	}
	if k := len(n.lines); k > 0 && width(n.lines[k-1].what+" ", true)+width(n.value, false) <= most {
		n.lines[k-1].value = n.value
		return
	}
	for _, l := range wrap(n.value, false, most) {
		n.lines = append(n.lines, words{value: l})
	}
}

func (n name) high() float64 { return float64(len(n.lines))*lineGap + nameGap }

// The gutter of names at the right of a picture: where their pointers bend, and where they begin.
const (
	gutterBend = Wide - 120
	gutterText = Wide - 112
)

// gutter sets the lines of names that are to stand one under the other, as many as there is room
// for, and returns them with how high they are together.
func gutter(names []name, most float64) (out []name, high float64) {
	for _, n := range names {
		n.broken(Wide - 1 - gutterText)
		out = append(out, n)
		high += n.high()
	}
	for i := len(out) - 1; i >= 0 && high > most; i-- {
		if out[i].minor {
			high -= out[i].high()
			out = slices.Delete(out, i, i+1)
		}
	}
	return out, high
}

// beside writes names in the gutter between top and bottom, each with a pointer to what it names.
func (p *pen) beside(names []name, top, bottom float64) {
	slices.SortStableFunc(names, func(a, b name) int { return cmp.Compare(a.to.y, b.to.y) })
	var want, high []float64
	for _, n := range names {
		want, high = append(want, n.to.y), append(high, n.high())
	}
	for i, y := range chart.PlaceLabels(want, high, top, bottom) {
		n := names[i]
		first := y - float64(len(n.lines)-1)*lineGap/2
		if n.to.x < gutterBend {
			p.line("pointer", 0.8, "", []at{n.to, {gutterBend - 8, n.to.y}, {gutterBend, y}, {gutterText - 3, y}})
		}
		if n.dot {
			p.dot("dot", n.to, 2.2)
		}
		for k, l := range n.lines {
			p.named(at{gutterText, first + float64(k)*lineGap}, l)
		}
	}
}
