package static

import "coldseam/chart"

// label is a name and a value that stand beside the picture at a depth. If they do not
// fit beside each other they stand under each other.
type label struct {
	at          float64 // where on the page it belongs, points from the top
	from        float64 // where its leader begins, points from the left
	name, value string
	dot         bool // the leader begins with a dot: it begins inside an area
	under       bool // the value always stands under the name
	minor       bool // may be left out where there is no room
}

// set is a label broken into lines.
type set struct {
	label
	lines []string
	bold  int // how many of the lines, or 0 for one line of which the name is bold
}

// setLabel breaks a label into lines of a width.
func (p *page) setLabel(l label, width float64) set {
	if l.value == "" {
		lines := p.bold().wrap(l.name, width, 2)
		return set{l, lines, len(lines)}
	}
	if !l.under && p.bold().width(l.name+" ")+p.plain().width(l.value) <= width {
		return set{l, nil, 0}
	}
	lines := p.bold().wrap(l.name, width, 2)
	n := len(lines)
	return set{l, append(lines, p.plain().wrap(l.value, width, 2)...), n}
}

const leading = 1.18 // distance of baselines, in sizes of text

func (s set) height(em float64) float64 {
	return em * (leading*float64(max(len(s.lines), 1)) + 0.35)
}

// gutter draws labels beside the picture from x to x+width, each with a leader to its
// depth. Minor ones that find no room are counted in a last line with a word for them.
// The labels are in rising order of at.
func (p *page) gutter(all []label, x, width, top, bottom float64, word string) {
	const lead = 16
	var sets []set
	room, more := bottom-top, 0
	for _, l := range all {
		if !l.minor {
			room -= p.setLabel(l, width-lead).height(p.em)
		}
	}
	last := 2 * leading * p.em // for the line that counts the rest
	for _, l := range all {
		s := p.setLabel(l, width-lead)
		if l.minor {
			if room-s.height(p.em) < last {
				more++
				continue
			}
			room -= s.height(p.em)
		}
		sets = append(sets, s)
	}
	if more > 0 {
		sets = append(sets, p.setLabel(label{at: bottom, from: -1, name: "and " + number(float64(more)) + " more " + word}, width-lead))
	}
	want, high := make([]float64, len(sets)), make([]float64, len(sets))
	for i, s := range sets {
		want[i], high[i] = s.at, s.height(p.em)
	}
	for i, y := range chart.PlaceLabels(want, high, top, bottom) {
		s := sets[i]
		if s.from >= 0 {
			p.line(stroke{0.6, quiet, nil}, pt{s.from, s.at}, pt{x + 3, s.at}, pt{x + lead - 5, y}, pt{x + lead - 2, y})
		}
		if s.dot {
			p.fill(ink, circle(pt{s.from, s.at}, 2))
		}
		base := y - float64(max(len(s.lines), 1))*leading*p.em/2 + 0.92*p.em
		p.setText(s, pt{x + lead, base})
	}
}

// setText writes the lines of a label, the first with its baseline at a place.
func (p *page) setText(s set, at pt) {
	if s.bold == 0 {
		p.text(at, left, p.bold(), ink, s.name)
		p.text(pt{at.x + p.bold().width(s.name+" "), at.y}, left, p.plain(), quiet, s.value)
		return
	}
	for k, line := range s.lines {
		st, c := p.plain(), quiet
		if k < s.bold {
			st, c = p.bold(), ink
		}
		p.text(pt{at.x, at.y + float64(k)*leading*p.em}, left, st, c, line)
	}
}
