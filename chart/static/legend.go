package static

// entry explains one sign of a picture. draw shows the sign in a place of width sign by
// about one line, given the place's left middle.
type entry struct {
	draw func(p *page, at pt)
	text string
}

const sign = 24 // points

// legendTop is the y of a legend's first line, so that its last stands at the foot of the
// page.
func (p *page) legendTop(entries []entry, margin float64) float64 {
	lines := p.legend(entries, 0, margin, false)
	return p.h - 0.6*margin - (float64(lines)-0.5)*1.45*p.em
}

// legend writes entries between the margins from a y downward, or only counts their
// lines; it returns how many they take.
func (p *page) legend(entries []entry, top, margin float64, draw bool) int {
	width := p.w - 2*margin
	lines, x := 1, 0.0
	for _, e := range entries {
		text := p.small().cut(e.text, width-sign-5)
		w := sign + 5 + p.small().width(text)
		if x > 0 && x+w > width {
			lines, x = lines+1, 0
		}
		if draw {
			at := pt{margin + x, top + float64(lines-1)*1.45*p.em}
			e.draw(p, at)
			p.text(pt{at.x + sign + 5, at.y + 0.33*p.em}, left, p.small(), ink, text)
		}
		x += w + 1.4*p.em
	}
	return lines
}

// sample is an entry for a line.
func sample(s stroke, text string) entry {
	return entry{func(p *page, at pt) { p.line(s, at, pt{at.x + sign, at.y}) }, text}
}

// patch is the outline of a sign for a filled area.
func patch(at pt) (x0, y0, x1, y1 float64) { return at.x, at.y - 4.5, at.x + sign, at.y + 4.5 }

// headed is the y under a title of at most so many lines; titled writes it.
const titleLines = 3

func (p *page) headed(title string, margin float64) float64 {
	s := p.head()
	return margin + 1.2*s.size*float64(len(s.wrap(title, p.w-2*margin, titleLines)))
}

func (p *page) titled(title string, margin float64) {
	s := p.head()
	for i, line := range s.wrap(title, p.w-2*margin, titleLines) {
		p.text(pt{margin, margin + s.size*(1.2*float64(i)+0.95)}, left, s, ink, line)
	}
}
