package vector

import (
	"fmt"
	"strings"

	"coldseam/profile/plain"
)

// Where a text stands from its place.
const (
	left   = "start"
	centre = "middle"
	right  = "end"
)

// text writes a line, its middle at y; bold for a name.
func (p *pen) text(q at, anchor string, bold bool, s string) {
	class, weight := "v-text", ""
	if bold {
		class, weight = "v-name", ` font-weight="700"`
	}
	fmt.Fprintf(&p.b, `<text class="%s" fill="currentColor"%s text-anchor="%s" x="%s" y="%s">%s</text>`,
		class, weight, anchor, num(q.x), num(q.y+0.35*font), safe(s))
}

// named writes a line of a name, its name in bold.
func (p *pen) named(q at, l words) {
	if l.what == "" || l.value == "" {
		p.text(q, left, l.value == "", l.what+l.value)
		return
	}
	fmt.Fprintf(&p.b, `<text class="v-text" fill="currentColor" x="%s" y="%s"><tspan class="v-name" font-weight="700">%s</tspan> %s</text>`,
		num(q.x), num(q.y+0.35*font), safe(l.what), safe(l.value))
}

// width is how wide a line is at most. Which font it will have is the phone's choice: these are
// the widths of a wide one (DejaVu Sans Bold, in thousandths of its size, rounded up; the words
// of the plain one are narrower by a twelfth).
func width(s string, bold bool) float64 {
	sum := 0
	for _, r := range s {
		sum += wide(r)
	}
	w := float64(sum) / 1000 * font
	if !bold {
		w *= 0.92
	}
	return w
}

func wide(r rune) int {
	for _, g := range widths {
		if strings.ContainsRune(g.of, r) {
			return g.wide
		}
	}
	if r < 0x1100 {
		return 1110
	}
	return 1500
}

var widths = []struct {
	of   string
	wide int
}{
	{"ijl ", 348}, {"/\\|IJ", 372}, {",.:;-", 415}, {"f!()[]", 457}, {"t", 478}, {"rt_`\"*'", 523}, {"cs?z", 596}, {"vxyL", 652},
	{"kaeTEFo", 688}, {"0123456789", 696}, {"hnu{}bdgpq", 716}, {"SYZPCBRXAVK", 775}, {"UGDHN#+<=>^~$", 838}, {"OQ&w", 924}, {"mM@%", 1042},
}

// cut is a line that is no wider than most: what does not fit gives way to an ellipsis.
func cut(s string, bold bool, most float64) string {
	s = plain.Line(s)
	if width(s, bold) <= most {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		if c := strings.TrimRight(string(runes[:n]), " ") + "…"; width(c, bold) <= most {
			return c
		}
	}
	return ""
}

// wrap breaks a line at its blanks so that no part is wider than most; a unit stays with its
// number.
func wrap(s string, bold bool, most float64) []string {
	words := strings.Fields(plain.Line(s))
	if n := len(words); n > 2 && len(words[n-1]) <= 2 {
		words = append(words[:n-2], words[n-2]+" "+words[n-1])
	}
	var lines []string
	for _, word := range words {
		if n := len(lines); n > 0 && width(lines[n-1]+" "+word, bold) <= most {
			lines[n-1] += " " + word
			continue
		}
		lines = append(lines, cut(word, bold, most))
	}
	return lines
}
