package notebook

import (
	"bytes"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// Glance is what the head of a page says of its one drop.
type Glance struct{ Water, Spot, Date, For string }

// GlanceOf is the glance at a drop that was read.
func GlanceOf(d profile.Drop) Glance { return Glance{d.Water, d.Spot, d.Date, d.For} }

// Glancer looks at many pages, each in a hundredth of the time that Read takes. It knows
// the pages that Write makes, and no others: what it says of one is what Read says, and of
// all others it says nothing. Not for several goroutines at once.
type Glancer struct {
	defaults Glance
	none     bool            // flags win over pages: each is to be read
	holds    map[string]bool // lines that were looked at: whether Read takes each as it stands
	texts    map[string]string
	own      []fish.Fish
}

// NewGlancer makes a Glancer of pages that are read with these options.
func NewGlancer(o Options) *Glancer {
	var d profile.Drop
	for _, h := range o.Defaults {
		if err := set(&d, h.Key, h.Value, unit.System{}); err != nil {
			return &Glancer{none: true}
		}
	}
	return &Glancer{defaults: GlanceOf(d), none: len(o.Flags) > 0, holds: map[string]bool{}, texts: map[string]string{}, own: o.Fish}
}

// mostHeld bounds what is remembered.
const mostHeld = 1 << 15

// Look looks at a page. ok is false where only Read can tell.
func (g *Glancer) Look(data []byte) (is Glance, ok bool) {
	if g.none || len(data) > MaxPage || !utf8.Valid(data) || !bytes.HasSuffix(data, []byte("\n")) {
		return is, false
	}
	if len(g.holds) > mostHeld || len(g.texts) > mostHeld {
		clear(g.holds)
		clear(g.texts)
	}
	p := glancing{g: g, is: g.defaults}
	for len(data) > 0 {
		line, rest, _ := bytes.Cut(data, []byte("\n"))
		if !p.line(line) {
			return is, false
		}
		data = rest
	}
	return p.is, p.readings > 0
}

// glancing is a page while it is looked at.
type glancing struct {
	g        *Glancer
	is       Glance
	seen     []string // keys above
	notes    int
	catches  int
	readings int
	deepest  float64 // so far, m
}

// line looks at the next line; false where Read may take it otherwise than Write meant it.
func (p *glancing) line(line []byte) bool {
	switch {
	case len(line) == 0 || bytes.ContainsFunc(line, unicode.IsControl):
		return false
	case line[0] >= '0' && line[0] <= '9':
		return p.reading(line)
	case line[0] == '#':
		return !bytes.HasPrefix(line, []byte(pageMark))
	}
	return p.header(line)
}

// header looks at a line with a key.
func (p *glancing) header(line []byte) bool {
	name, value, found := bytes.Cut(line, []byte(": "))
	if !found || len(value) == 0 {
		return false
	}
	k := find(string(name))
	if k == nil {
		return false
	}
	switch k.name {
	case "note":
		p.notes++
		return p.notes <= maxNotes && len(value) <= maxNote && p.g.text(value) != ""
	case "caught":
		p.catches++
		text := p.g.text(value)
		return p.catches <= maxNotes && len(value) <= maxText && text != "" && !noCatch().MatchString(text)
	}
	if p.readings > 0 || slices.Contains(p.seen, k.name) {
		return false
	}
	p.seen = append(p.seen, k.name)
	switch k.name {
	case "water", "spot", "for", "weight", "sky", "colour", "anchor":
		text := p.g.text(value)
		switch k.name {
		case "water":
			p.is.Water = text
		case "spot":
			p.is.Spot = text
		case "for":
			p.is.For = text
		}
		return text != "" && len(value) <= maxText
	case "date":
		p.is.Date = string(value)
		return writtenDate(p.is.Date)
	}
	return p.g.held(line, headerHolds)
}

// text is the value of a key of text, "" where there is none but a comment.
func (g *Glancer) text(value []byte) string {
	if t, ok := g.texts[string(value)]; ok {
		return t
	}
	t := strings.TrimSpace(withoutComment(string(value)))
	g.texts[string(value)] = t
	return t
}

// Catches are those of a page at which a glance was enough.
func (g *Glancer) Catches(data []byte) (out []profile.Catch) {
	for line := range bytes.Lines(data) {
		if value, ok := bytes.CutPrefix(bytes.TrimSuffix(line, []byte("\n")), []byte("caught: ")); ok {
			if c, err := ReadCatch(g.text(value), g.own...); err == nil {
				out = append(out, c)
			}
		}
	}
	return out
}

// held asks once about a line.
func (g *Glancer) held(line []byte, holds func(line string) bool) bool {
	is, ok := g.holds[string(line)]
	if !ok {
		is = holds(string(line))
		g.holds[string(line)] = is
	}
	return is
}

// headerHolds reports whether a line with a key is read without a question or a note.
func headerHolds(line string) bool {
	r := &reader{raw: []string{line}}
	m := keyLine().FindStringSubmatch(clean(line))
	if m == nil || r.spelled(1, line) != line {
		return false
	}
	h, ok := headerOf(m, line, 1)
	if !ok || h.Value == "" {
		return false
	}
	its, err := r.key(h)
	if err != nil || len(r.notes) > 0 || len(its) != 1 || its[0].header.Key != h.Key {
		return false
	}
	var d profile.Drop
	return set(&d, h.Key, h.Value, unit.System{}) == nil
}

// writtenDate reports whether a date is in the one form that is written, "2026-07-18 14:20"
// or without the time.
func writtenDate(date string) bool {
	form := "2006-01-02 15:04"
	if len(date) == len("2006-01-02") {
		form = form[:len(date)]
	}
	t, err := time.Parse(form, date)
	return err == nil && len(date) == len(form) && t.Format(form) == date
}

// reading looks at a line such as "10 ft: 72.5 F". Each goes deeper than the one above.
func (p *glancing) reading(line []byte) bool {
	depth, rest, ok := plainNumber(line)
	var u unit.Length
	switch {
	case !ok:
		return false
	case bytes.HasPrefix(rest, []byte(" ft: ")):
		u, rest = unit.Foot, rest[5:]
	case bytes.HasPrefix(rest, []byte(" m: ")):
		u, rest = unit.Metre, rest[4:]
	default:
		return false
	}
	m := u.Metres(depth)
	if p.readings++; m < p.deepest || p.readings > maxReadings {
		return false
	}
	p.deepest = m
	temp, end, ok := plainNumber(rest)
	if ok && m < 1000 && temp < 100 && (string(end) == " F" || string(end) == " C") {
		return true
	}
	return withUnits(rest) && p.g.held(line, readingHolds)
}

// withUnits reports whether the numbers of a reading all have their units, whatever
// stands above and below it.
func withUnits(rest []byte) bool { return unitsBeside().Match(rest) }

var unitsBeside = lazy(`^-?\d{1,9}(?:\.\d{1,9})?(?: \d{1,2}/\d{1,2})? [FC](?: \+-\d{1,9}(?:\.\d{1,9})? [FC])?(?:  DO \d{1,9}(?:\.\d{1,9})? mg/L)?$`)

// readingHolds reports whether a line is read as one reading.
func readingHolds(line string) bool {
	sheets, err := Read([]byte(line), Options{})
	return err == nil && len(sheets) == 1 && len(sheets[0].Drop.Readings) == 1
}

// plainNumber reads a number of up to three digits, and up to three behind a point.
func plainNumber(b []byte) (v float64, rest []byte, ok bool) {
	digits, scale := 0, 0.0
	for i, c := range b {
		switch {
		case c >= '0' && c <= '9':
			digits++
			v, scale = v*10+float64(c-'0'), scale*10
		case c == '.' && scale == 0 && digits > 0 && digits < 4:
			digits, scale = 0, 1
		default:
			if scale > 0 {
				v /= scale
			}
			return v, b[i:], digits > 0 && digits < 4
		}
	}
	return v, nil, false
}
