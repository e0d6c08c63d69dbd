package report

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"unicode/utf8"

	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/layers"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// BookLine is one drop in the list of a book.
type BookLine struct {
	Number                    int // 0 of a page that cannot be read
	Date, Water, Spot, Caught string
	Thermocline, Band         string
	Instead                   string // what is said in the place of the thermocline and the band
}

// InBook is the line of a saved drop, and its plan, nil where there is none; input gives
// what a plan is made of.
func InBook(e book.Entry, input func(profile.Drop) (plan.Input, error)) (BookLine, *plan.Plan) {
	if e.Err != nil {
		return damagedLine(e.Date, filepath.Base(e.Path)), nil
	}
	made, why := planOf(e, input)
	return inBook(e.Number, e.Drop, made, why), made
}

// planOf makes the plan of a saved drop, or says why there is none.
func planOf(e book.Entry, input func(profile.Drop) (plan.Input, error)) (made *plan.Plan, why string) {
	switch {
	case e.Unended:
		return nil, notEnded(e.Drop)
	case len(e.Drop.Readings) == 0:
		return nil, noReadings
	}
	in, err := input(e.Drop)
	if err != nil { // a fish that nobody knows
		return nil, fishUnknown(e.Drop)
	}
	is, err := plan.Make(in)
	if err != nil {
		return nil, allOdd
	}
	return &is, ""
}

// inBook is the line of a drop; p is its plan, nil where why says that there is none.
func inBook(number int, d profile.Drop, p *plan.Plan, why string) BookLine {
	l := BookLine{Number: number, Date: d.Date, Water: plain.Line(d.Water), Spot: plain.Line(d.Spot), Instead: why}
	if n := fishTaken(d); n > 0 {
		l.Caught = strconv.Itoa(n)
	}
	if p == nil {
		return l
	}
	u := d.Units.Shown()
	switch p.Layers.Structure {
	case layers.TooFew:
		l.Thermocline = "not known"
	case layers.Layered:
		l.Thermocline = u.Span(p.Layers.Thermocline.Low, p.Layers.Thermocline.High)
	default:
		l.Thermocline = "none"
	}
	l.Band = "none"
	if p.Band.Found {
		top, bottom := p.Band.Safe(p.Column.Last().DepthM)
		l.Band = u.Span(max(top, 0), bottom)
	}
	return l
}

// fishTaken is how many fish were noted on a page.
func fishTaken(d profile.Drop) (n int) {
	for _, c := range d.Catches {
		n += c.Count
	}
	return n
}

// Why a line of the list has no thermocline and no band.
const (
	noReadings = "no readings"
	allOdd     = "no reading that can be used"
)

// fishUnknown says that the fish of a page is none that is known.
func fishUnknown(d profile.Drop) string { return "no fish is called " + plain.Cut(d.For, 24) }

// notEnded says that a drop has not ended.
func notEnded(d profile.Drop) string { return "not ended, " + unit.Count(len(d.Readings), "reading") }

// damagedLine is the line of a page that cannot be read.
func damagedLine(date, file string) BookLine {
	return BookLine{Date: date, Instead: "cannot be read: " + plain.Line(file)}
}

// Columns of a list.
const (
	bookGap    = 2
	leastWater = 12 // of its name
	leastSpot  = 8
	mostName   = 24
	dayOnly    = len("2026-07-18")
)

// bookTable is a list while it is laid out.
type bookTable struct {
	lines []BookLine
	width int
	// widths of the columns, 0 of one that is left out
	number, date, water, spot, thermocline, band, caught int
}

// BookTable prints the list, a line a drop. Where that is too wide, the time of day is
// left out, names are cut, and at last each drop has what is its own below its name.
func BookTable(lines []BookLine, width int) string {
	t := bookTable{lines: lines, width: width}
	t.measure()
	var b strings.Builder
	if t.water == 0 {
		for _, l := range lines {
			b.WriteString(t.broken(l))
		}
		return b.String()
	}
	b.WriteString(t.row("No", BookLine{Date: "Date", Water: "Water", Spot: "Spot", Thermocline: "Thermocline", Band: "Band", Caught: "Caught"}))
	for _, l := range lines {
		b.WriteString(t.row(bookNumber(l), l))
	}
	return b.String()
}

func bookNumber(l BookLine) string {
	if l.Number == 0 {
		return "-"
	}
	return strconv.Itoa(l.Number)
}

// measure finds the widths of the columns; that of the water is 0 where there is no room
// for a table.
func (t *bookTable) measure() {
	fit := func(column *int, text, head string) {
		if text != "" {
			*column = max(*column, utf8.RuneCountInString(text), len(head))
		}
	}
	t.thermocline, t.band = len("Thermocline"), len("Band")
	for _, l := range t.lines {
		fit(&t.number, bookNumber(l), "No")
		fit(&t.date, bookDate(l), "Date")
		fit(&t.water, l.Water, "Water")
		fit(&t.spot, l.Spot, "Spot")
		fit(&t.thermocline, l.Thermocline, "Thermocline")
		fit(&t.band, l.Band, "Band")
		fit(&t.caught, l.Caught, "Caught")
	}
	for _, l := range t.lines {
		if l.Number > 0 {
			t.band = max(t.band, utf8.RuneCountInString(l.Instead)-t.thermocline-bookGap)
		}
	}
	t.water, t.spot = max(min(t.water, mostName), len("Water")), min(t.spot, mostName)
	room := func() (left int) { // for names
		left = t.width
		for _, column := range []int{t.number, t.date, t.thermocline, t.band, t.caught} {
			if column > 0 {
				left -= column + bookGap
			}
		}
		if t.spot > 0 {
			left -= bookGap
		}
		return left
	}
	if room() < t.water+t.spot {
		t.date = min(t.date, dayOnly)
	}
	if room() < min(t.water, leastWater)+min(t.spot, leastSpot) {
		t.spot = 0
	}
	over := max(t.water+t.spot-room(), 0) // the spot's name gives way first
	cut := min(over, max(t.spot-leastSpot, 0))
	t.spot, t.water = t.spot-cut, t.water-(over-cut)
	if t.water < leastWater && over > cut {
		t.water = 0
	}
}

func bookDate(l BookLine) string {
	if l.Date == "" {
		return "no date"
	}
	return l.Date
}

// row prints a drop in a line.
func (t *bookTable) row(number string, l BookLine) string {
	gap := strings.Repeat(" ", bookGap)
	line := fmt.Sprintf("%*s", t.number, number) + gap + padded(shortDate(bookDate(l), t.date), t.date) + gap
	if l.Number == 0 && l.Instead != "" { // a page that cannot be read has no names
		return line + plain.Cut(l.Instead, t.width-len(line)-len("...")) + "\n"
	}
	names := padded(l.Water, t.water) + gap
	if t.spot > 0 {
		names += padded(l.Spot, t.spot) + gap
	}
	line += names
	switch {
	case l.Instead != "":
		line += padded(l.Instead, t.thermocline+bookGap+t.band)
	default:
		line += padded(l.Thermocline, t.thermocline) + gap + padded(l.Band, t.band)
	}
	if t.caught > 0 {
		line += gap + fmt.Sprintf("%*s", t.caught, l.Caught)
	}
	return strings.TrimRight(line, " ") + "\n"
}

// shortDate is a date without its time of day where there is no room for it.
func shortDate(date string, room int) string {
	if len(date) > room && room >= dayOnly {
		return date[:dayOnly]
	}
	return date
}

// padded is a text in a column, its end left out where it is longer.
func padded(text string, column int) string {
	if n := utf8.RuneCountInString(text); n > column {
		text = plain.Cut(text, max(column-len("..."), 1))
	}
	return text + strings.Repeat(" ", max(column-utf8.RuneCountInString(text), 0))
}

// broken prints a drop over several lines, its number in the margin.
func (t *bookTable) broken(l BookLine) string {
	column := t.number + bookGap
	var names, rest []string
	for _, s := range []string{bookDate(l), plain.Cut(l.Water, mostName), plain.Cut(l.Spot, mostName)} {
		if s != "" {
			names = append(names, s)
		}
	}
	if l.Instead != "" {
		rest = append(rest, plain.Cut(l.Instead, t.width-column-len("...")))
	} else {
		rest = append(rest, "thermocline "+l.Thermocline, "band "+l.Band)
	}
	if l.Caught != "" {
		rest = append(rest, "caught "+l.Caught)
	}
	text := under(strings.Join(names, ", "), t.width, column) + strings.Repeat(" ", column) + under(strings.Join(rest, ", "), t.width, column)
	return fmt.Sprintf("%*s", t.number, bookNumber(l)) + strings.Repeat(" ", bookGap) + text
}

// The lines under a list, and in the place of one.
const (
	EmptyBook = "No drops are saved yet: take one with coldseam drop, or bring pages in with coldseam book add FILE."
	NoneFound = "No drop of the book is like that: coldseam book lists what there is."
)

// SharedPage stands above a page that holds other drops than the one that was asked for.
const SharedPage = "# The page holds other drops too."

// MoreDrops says how many drops were not listed; "" for none.
func MoreDrops(n int) string {
	if n == 0 {
		return ""
	}
	return unit.Count(n, "older drop") + " not shown: --all shows all, --most 50 the newest 50."
}

// DamagedPages says that pages of the book cannot be read; "" for none.
func DamagedPages(n int) string {
	if n == 0 {
		return ""
	}
	return unit.Count(n, "page") + " of the book cannot be read: coldseam book check says why."
}
