// Package vector draws pictures as SVG that stands within a page: small, without a library,
// so that a program which computes in a browser can draw them.
//
// They obey a page that forbids styles, scripts and anything from elsewhere: no style
// attribute, no <style>, no script, no reference, nothing but shapes and texts with classes.
// Style holds the colours of these classes, for a light page and a dark one; without it all is
// drawn in the page's own colour. Sizes are those of a phone held upright: 360 across, and
// texts of 15.5 (Wide, font). Bytes are the same each time.
package vector

import (
	"fmt"
	"html"
	"math"
	"strings"

	"coldseam/profile/plain"
)

// Wide is how wide each picture is, in its own units: pixels of a phone held upright.
const Wide = 360.0

const (
	font    = 15.5 // size of texts: 14 pixels where the phone is 360 wide and the page has margins
	lineGap = 17.0 // from one line of text to the next
)

// at is a place in a picture: to the right of its left edge, below its top.
type at struct{ x, y float64 }

// pen writes the shapes of a picture.
type pen struct{ b strings.Builder }

// picture is the whole of one: what it is for those who do not see it, and its shapes. The ids
// are made of its name, so that a page may hold one of each.
func picture(name, title, says string, high float64, p *pen) string {
	return fmt.Sprintf(`<svg class="picture picture-%[1]s" viewBox="0 0 %[2]s %[3]s" width="%[2]s" height="%[3]s" role="img" aria-labelledby="%[1]s-title %[1]s-says" `+
		`fill="none" stroke="none" font-size="%[4]s"><title id="%[1]s-title">%[5]s</title><desc id="%[1]s-says">%[6]s</desc>%[7]s</svg>`,
		name, num(Wide), num(high), num(font), safe(title), safe(says), p.b.String())
}

// safe is a text for a picture: nothing in it is read as markup.
func safe(s string) string { return html.EscapeString(plain.Line(s)) }

// num writes a coordinate, to a tenth of a pixel. What is no number or absurdly far is kept
// from spoiling the picture.
func num(v float64) string {
	const far = 1e5
	if math.IsNaN(v) {
		v = 0
	}
	v = math.Round(10*math.Min(math.Max(v, -far), far)) / 10
	return strings.TrimSuffix(fmt.Sprintf("%.1f", v+0), ".0") // +0: a nought has no sign
}

// path are the commands of places, joined by lines.
func path(run []at) string {
	var b strings.Builder
	for i, q := range run {
		b.WriteString([]string{"M", "L"}[min(i, 1)] + num(q.x) + " " + num(q.y))
	}
	return b.String()
}

// area fills what a run of places encloses. seen is how much of it one sees where the page
// gives the class no colour of its own.
func (p *pen) area(class string, seen float64, run ...at) {
	fmt.Fprintf(&p.b, `<path class="v-%s" fill="currentColor" fill-opacity="%.2f" d="%sZ"/>`, class, seen, path(run))
}

// box is the run around a rectangle.
func box(x0, y0, x1, y1 float64) []at { return []at{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }

// line draws runs of places, with a dash ("" for none).
func (p *pen) line(class string, width float64, dash string, runs ...[]at) {
	var d strings.Builder
	for _, run := range runs {
		if len(run) > 1 {
			d.WriteString(path(run))
		}
	}
	if d.Len() == 0 {
		return
	}
	if dash != "" {
		dash = ` stroke-dasharray="` + dash + `"`
	}
	colour := "currentColor"
	if class == "rim" { // would hide what it is to part
		colour = "none"
	}
	fmt.Fprintf(&p.b, `<path class="v-%s" stroke="%s" stroke-width="%s"%s stroke-linejoin="round" d="%s"/>`, class, colour, num(width), dash, d.String())
}

// dot is a full circle.
func (p *pen) dot(class string, c at, r float64) {
	fmt.Fprintf(&p.b, `<circle class="v-%s" fill="currentColor" cx="%s" cy="%s" r="%s"/>`, class, num(c.x), num(c.y), num(r))
}

// ring is a circle with the page showing in it.
func (p *pen) ring(c at, r float64) {
	fmt.Fprintf(&p.b, `<circle class="v-ring" stroke="currentColor" stroke-width="1.4" cx="%s" cy="%s" r="%s"/>`, num(c.x), num(c.y), num(r))
}

// hatch are slanted lines that fill a rectangle, so far apart.
func hatch(x0, y0, x1, y1, gap float64) [][]at {
	var out [][]at
	if y1-y0 < 0.5 || x1-x0 < 0.5 {
		return nil
	}
	for c := math.Ceil((x0+y0)/gap) * gap; c < x1+y1; c += gap { // along x + y = c
		from, to := math.Max(x0, c-y1), math.Min(x1, c-y0)
		if to > from {
			out = append(out, []at{{from, c - from}, {to, c - to}})
		}
	}
	return out
}
