package notebook

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// Limits of a page that somebody wrote: beyond them it is something else.
const (
	maxDrops    = 100
	maxReadings = 1000 // of one drop
)

// chunk is the part of a page that belongs to one drop.
type chunk struct {
	headers []Header
	after   []Header // headers after its readings and a blank line: the next drop's, if there is one
	entries []entry
	first   int // its first line
	way     way
}

// drops parts the page into drops and builds each.
func (r *reader) drops() ([]Sheet, error) {
	chunks, err := r.chunks()
	if err != nil {
		return nil, err
	}
	var all []entry
	for _, c := range chunks {
		all = append(all, c.entries...)
	}
	var sheets []Sheet
	for i, c := range chunks {
		b := &builder{r: r, d: r.base, entries: c.entries}
		if err := b.drop(c.headers, all); err != nil {
			return nil, err
		}
		if len(b.d.Readings) == 0 && !r.o.Unread {
			return nil, r.fail(c.first, "this drop has no temperature in it")
		}
		end := len(r.raw) + 1
		if i+1 < len(chunks) {
			end = chunks[i+1].first
		}
		start := c.first
		if i == 0 {
			start = 0
		}
		sheets = append(sheets, Sheet{r.o.Name, b.d, r.notesFor(start, end)})
	}
	return sheets, nil
}

// drop makes the drop of its headers and entries; all are the entries of the page.
func (b *builder) drop(headers []Header, all []entry) error {
	if err := b.headers(headers, true); err != nil {
		return err
	}
	if err := b.units(all); err != nil {
		return err
	}
	if err := b.headers(headers, false); err != nil {
		return err
	}
	if err := b.build(); err != nil {
		return err
	}
	b.d.Correct()
	if err := b.oxygen(); err != nil {
		return err
	}
	return b.tooDeep()
}

// unread makes the one drop of a page without readings. Where no units are stated it
// is noted in feet if any of its lengths is, else in metres.
func (r *reader) unread() ([]Sheet, error) {
	chunks, err := r.chunks()
	if err != nil {
		return nil, err
	}
	b := &builder{r: r, d: r.base}
	for _, first := range []bool{true, false} {
		if err := b.headers(chunks[0].headers, first); err != nil {
			return nil, err
		}
		b.page = b.d.Units
	}
	if b.d.Units.Depth == unit.NoLength {
		b.d.Units.Depth = b.settings().Depth
	}
	if b.d.Units.Depth == unit.NoLength {
		b.d.Units.Depth = unit.Metre
		for _, h := range slices.Concat(chunks[0].headers, r.o.Flags, r.o.Defaults) {
			if _, length := lengthKeys[h.Key]; length && (strings.Contains(h.Value, "f") || strings.Contains(h.Value, "'")) {
				b.d.Units.Depth = unit.Foot
			}
		}
	}
	return []Sheet{{r.o.Name, b.d, r.notesFor(0, len(r.raw)+1)}}, nil
}

// lengthKeys are the header keys whose value tells how a lake is measured.
var lengthKeys = map[string]bool{"bottom": true, "deepest": true, "secchi": true}

// notesFor gives the notes of the lines from start up to end, and those about the
// whole page.
func (r *reader) notesFor(start, end int) []Note {
	var notes []Note
	for _, line := range slices.Sorted(maps.Keys(r.notes)) {
		if line == 0 || line >= start && line < end {
			for _, text := range r.notes[line] {
				if n := (Note{line, text}); !slices.Contains(notes, n) {
					notes = append(notes, n)
				}
			}
		}
	}
	return notes
}

// perDrop are the keys that a second drop of the page does not take over from the
// first.
var perDrop = []string{"date", "spot", "bottom", "note", "line angle", "caught"}

// chunks parts the page's items where a second drop begins: at a new water, spot or
// date, at a ruled line, or where the depths start again from the top.
func (r *reader) chunks() ([]chunk, error) {
	p := parting{r: r, chunks: []chunk{{first: 1}}}
	for i, it := range r.items {
		if it.kind == readings {
			p.final = i
		}
	}
	for i, it := range r.items {
		if len(p.chunks) > maxDrops {
			return nil, r.fail(it.line, fmt.Sprintf("more than %d drops on one page: split it into several", maxDrops))
		}
		switch it.kind {
		case blank:
			p.gap = true
		case ruler:
			p.gap = true
			if p.begun() && i < p.final {
				p.cut(it.line)
			}
		case header:
			p.header(i, it)
		case readings:
			if err := p.readings(i, it); err != nil {
				return nil, err
			}
		}
	}
	last := p.now()
	last.headers = append(last.headers, last.after...)
	return p.chunks, nil
}

// parting is a page while its items are parted into drops.
type parting struct {
	r      *reader
	chunks []chunk
	final  int  // the last item with readings: nothing begins after it
	gap    bool // a blank line, a rule or a title stands above
}

func (p *parting) now() *chunk { return &p.chunks[len(p.chunks)-1] }

// begun: a bottom alone, written on top, begins no drop.
func (p *parting) begun() bool { return p.now().way.n > 0 }

// SecondDrop is the note where a drop begins below another.
const SecondDrop = "a second drop begins here"

// cut begins a drop, with what holds for the whole page and what stood above it.
func (p *parting) cut(line int) {
	prev, next := p.now(), chunk{first: line}
	for _, h := range prev.headers {
		if !slices.Contains(perDrop, h.Key) {
			next.headers = append(next.headers, h)
		}
	}
	for _, h := range prev.after {
		next.first = min(next.first, h.Line)
	}
	next.headers = append(next.headers, prev.after...)
	prev.after = nil
	p.chunks = append(p.chunks, next)
	p.r.note(line, SecondDrop)
}

// header takes a header into its drop. A key of a place or a day begins one, as do
// units of its own; a title of words does where the depths start again.
func (p *parting) header(i int, it item) {
	if slices.Contains([]string{"water", "spot", "date"}, it.header.Key) {
		if it.header.soft {
			p.gap = true
		} else if p.begun() && i < p.final {
			p.cut(it.line)
		}
	}
	if it.header.Key == "units" && p.begun() && i < p.final && p.otherUnits(it.header.Value) {
		p.cut(it.line)
	}
	now := p.now()
	if p.gap && p.begun() && !(it.header.Key == "caught" && len(now.after) == 0) { // fish are taken after the drop
		now.after = append(now.after, it.header)
	} else {
		now.headers = append(now.headers, it.header)
	}
}

// otherUnits reports whether the drop was given units before, and others than these.
func (p *parting) otherUnits(value string) bool {
	is, err := unit.ParseSystem(value)
	for _, h := range slices.Backward(p.now().headers) {
		if was, err1 := unit.ParseSystem(h.Value); h.Key == "units" {
			return err == nil && err1 == nil && was != is
		}
	}
	return false
}

// readings takes readings into their drop, a second one where the depths start again.
func (p *parting) readings(i int, it item) error {
	if p.begun() && p.gap && it.bottomOnly() && p.now().way.restarts(p.r.nextDepths(i+1)) { // a title, and the bottom of the drop below it
		p.cut(it.line)
	} else if p.begun() && p.now().way.restarts(p.r.nextDepths(i)) {
		second, err := p.second(it.line)
		if err != nil {
			return err
		}
		if second {
			p.cut(it.line)
		}
	}
	p.gap = false
	now := p.now()
	now.entries = append(now.entries, it.entries...)
	if !it.bottomOnly() {
		for _, e := range it.entries {
			now.way.add(e.writtenDepths())
		}
	}
	if len(now.entries) > maxReadings {
		return p.r.fail(it.line, fmt.Sprintf("more than %d readings in one drop: leave some out", maxReadings))
	}
	return nil
}

// second reports whether depths that start again are of a second drop: below a gap they
// are, else it is asked.
func (p *parting) second(line int) (bool, error) {
	if p.gap {
		return true, nil
	}
	n, err := p.r.ask(Question{Line: line, Text: p.r.raw[line-1], What: "the depths start again here",
		Choices: []string{"a second drop", "the same drop read again"}, Instead: "put a blank line or \"date:\" before a second drop"})
	return n == 0, err
}

// bottomOnly: "bottom 14 ft", without a temperature.
func (it *item) bottomOnly() bool {
	return !slices.ContainsFunc(it.entries, func(e entry) bool { return !e.bottom || len(e.temps) > 0 || e.same })
}

// nextDepths gives the next two depths from item i on, where there are two.
func (r *reader) nextDepths(i int) []float64 {
	var v []float64
	for ; i < len(r.items) && len(v) < 2; i++ {
		for _, e := range r.items[i].entries {
			v = append(v, e.writtenDepths()...)
		}
	}
	return v
}

// writtenDepths lists an entry's depths, in metres where the unit is written.
func (e *entry) writtenDepths() []float64 {
	if e.surface {
		return []float64{0}
	}
	var v []float64
	for _, t := range e.depths {
		if d := t.value.Value; t.depth == unit.NoLength || t.depth == Pull {
			v = append(v, d)
		} else {
			v = append(v, t.depth.Metres(d))
		}
	}
	return v
}

// way is how a drop's depths have gone so far.
type way struct {
	n                    int
	first, last, deepest float64
}

func (w *way) add(depths []float64) {
	for _, d := range depths {
		if w.n == 0 {
			w.first, w.deepest = d, d
		}
		w.n, w.last, w.deepest = w.n+1, d, max(w.deepest, d)
	}
}

// restarts: the drop has gone down from its first depth to its deepest, and what
// follows goes down again from that first depth.
func (w *way) restarts(next []float64) bool {
	return w.n >= 3 && len(next) > 1 && w.last == w.deepest && w.last > w.first && next[0] <= w.first && next[1] > next[0]
}

// builder makes one drop.
type builder struct {
	r       *reader
	d       profile.Drop
	entries []entry
	page    unit.System // units of bare numbers
	percent []percentReading
}

type percentReading struct {
	index int
	value float64
	line  int
}

func quoted(e entry) string { return strings.TrimSpace(shown(e.text)) }
