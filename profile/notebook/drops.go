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
		b := &builder{r: r, entries: c.entries}
		if err := b.headers(c.headers, true); err != nil {
			return nil, err
		}
		if err := b.units(all); err != nil {
			return nil, err
		}
		if err := b.headers(c.headers, false); err != nil {
			return nil, err
		}
		if err := b.build(); err != nil {
			return nil, err
		}
		b.d.Correct()
		if len(b.d.Readings) == 0 {
			return nil, r.fail(c.first, "this drop has no temperature in it")
		}
		b.oxygen()
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
var perDrop = []string{"date", "spot", "bottom", "note", "line angle"}

// chunks parts the page's items where a second drop begins: at a new water, spot or
// date, at a ruled line, or where the depths start again from the top.
func (r *reader) chunks() ([]chunk, error) {
	chunks := []chunk{{first: 1}}
	cut := func(line int) {
		prev := &chunks[len(chunks)-1]
		next := chunk{first: line}
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
		chunks = append(chunks, next)
		r.note(line, "a second drop begins here")
	}
	final := 0 // the last item with readings: nothing begins after it
	for i, it := range r.items {
		if it.kind == readings {
			final = i
		}
	}
	gap := false
	for i, it := range r.items {
		now := &chunks[len(chunks)-1]
		begun := len(now.entries) > 0
		if len(chunks) > maxDrops {
			return nil, r.fail(it.line, fmt.Sprintf("more than %d drops on one page: part it into several", maxDrops))
		}
		switch it.kind {
		case blank:
			gap = true
			continue
		case ruler:
			gap = true
			if begun && i < final {
				cut(it.line)
			}
			continue
		case header:
			if slices.Contains([]string{"water", "spot", "date"}, it.header.Key) && begun && i < final {
				cut(it.line)
				now = &chunks[len(chunks)-1]
			}
			if begun && gap && len(now.entries) > 0 {
				now.after = append(now.after, it.header)
			} else {
				now.headers = append(now.headers, it.header)
			}
			continue
		case readings:
			if begun && now.way.restarts(r.nextDepths(i)) {
				second := gap
				if !gap {
					n, err := r.ask(Question{Line: it.line, Text: r.raw[it.line-1], What: "the depths start again here",
						Choices: []string{"a second drop", "the same drop read again"}, Instead: "put a blank line or \"date:\" before a second drop"})
					if err != nil {
						return nil, err
					}
					second = n == 0
				}
				if second {
					cut(it.line)
					now = &chunks[len(chunks)-1]
				}
			}
			now.entries = append(now.entries, it.entries...)
			for _, e := range it.entries {
				now.way.add(e.writtenDepths())
			}
			if len(now.entries) > maxReadings {
				return nil, r.fail(it.line, fmt.Sprintf("more than %d readings in one drop: leave some out", maxReadings))
			}
		}
		gap = false
	}
	last := &chunks[len(chunks)-1]
	last.headers = append(last.headers, last.after...)
	return chunks, nil
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

// headers applies the settings, then the page's keys, then the flags: first the
// units, then, once the page's units are settled, all other keys, since a bare
// number on the page is in those units.
func (b *builder) headers(page []Header, units bool) error {
	for _, h := range slices.Concat(b.r.o.Defaults, page, b.r.o.Flags) {
		// the settings' units wait until the page itself has spoken
		if h.Value == "" || (h.Key == "units") != units || h.From == "settings" && units {
			continue
		}
		bare := b.page
		if h.From != "" {
			bare = unit.System{}
		}
		k := find(h.Key)
		err := fmt.Errorf("%q is not a key", h.Key)
		if k != nil {
			err = k.set(&b.d, h.Value, bare)
		}
		switch {
		case err == nil:
		case h.From != "":
			return &Error{Name: h.From, Msg: err.Error()}
		default:
			return b.r.fail(h.Line, h.Key+": "+err.Error())
		}
	}
	return nil
}

// settings gives the units to fall back on: what the angler said when asked about
// this page, else the settings'.
func (b *builder) settings() unit.System {
	said := b.r.said
	for _, h := range b.r.o.Defaults {
		s, err := unit.ParseSystem(h.Value)
		if h.Key != "units" || err != nil {
			continue
		}
		if said.Depth == unit.NoLength {
			said.Depth = s.Depth
		}
		if said.Temp == unit.NoTemperature {
			said.Temp = s.Temp
		}
	}
	return said
}

// units settles the units of bare numbers. all is every entry of the page, since
// the temperature's scale is decided once for a page.
func (b *builder) units(all []entry) error {
	b.page = b.d.Units
	if b.page.Depth == unit.NoLength {
		if err := b.depthUnit(all); err != nil {
			return err
		}
	}
	if b.page.Temp == unit.NoTemperature {
		if err := b.scale(all); err != nil {
			return err
		}
	}
	b.d.Units = b.page
	switch b.page.Depth { // a drop is not noted in these, whatever single depths were
	case unit.Inch:
		b.d.Units.Depth = unit.Foot
	case unit.Millimetre:
		b.d.Units.Depth = unit.Metre
	}
	return nil
}

func (b *builder) depthUnit(all []entry) error {
	stated := map[unit.Length]bool{}
	var bare *entry
	for i, e := range all {
		for _, t := range e.depths {
			if t.depth == unit.NoLength {
				if bare == nil {
					bare = &all[i]
				}
			} else if t.depth != Pull {
				stated[t.depth] = true
			}
		}
	}
	if len(stated) == 0 { // "bottom: 31 ft" states it too
		for _, u := range b.r.headerUnits() {
			stated[u] = true
		}
	}
	if len(stated) == 1 {
		for u := range stated {
			b.page.Depth = u
		}
		if bare != nil {
			b.r.note(0, "bare depths read in %s, as the others are written", b.page.Depth)
		}
		return nil
	}
	if b.page.Depth = b.settings().Depth; b.page.Depth != unit.NoLength || bare == nil {
		if b.page.Depth == unit.NoLength { // several units, each depth with its own
			b.page.Depth = unit.Metre
		}
		return nil
	}
	n, err := b.r.ask(Question{Line: bare.line, Text: bare.text, What: "the depths' unit is not stated",
		Choices: []string{"feet", "metres"}, Instead: "add the line \"units: ft F\" or \"units: m C\", or --units"})
	if err != nil {
		return err
	}
	b.page.Depth = []unit.Length{unit.Foot, unit.Metre}[n]
	b.r.said.Depth = b.page.Depth
	return nil
}

// headerUnits lists the units in which the page's header gives depths of the lake.
func (r *reader) headerUnits() []unit.Length {
	var out []unit.Length
	for _, it := range r.items {
		if it.kind == header && slices.Contains([]string{"bottom", "deepest"}, it.header.Key) {
			if _, u, err := unit.ParseLength(clean(it.header.Value)); err == nil {
				out = append(out, u)
			}
		}
	}
	return out
}

// scale decides Fahrenheit or Celsius by the page's warmest bare value: no lake is
// over 40 C, and none that is fished is all under 31 F. A value over 110 is a slip
// in either, and does not decide while there are others.
func (b *builder) scale(all []entry) error {
	warmest, line, text, found := 0.0, 0, "", false
	for _, limit := range []float64{110, 1e12} {
		for _, e := range all {
			temps := e.temps
			if e.bottom && len(temps) == 0 {
				temps = e.free // "bottom 52"
			}
			for _, t := range temps {
				if v := t.value.Value; t.temp == unit.NoTemperature && v <= limit && (!found || v > warmest) {
					warmest, line, text, found = v, e.line, e.text, true
				}
			}
		}
		if found {
			break
		}
	}
	switch {
	case !found: // every temperature has its own scale
		b.page.Temp = b.settings().Temp
		if b.page.Temp == unit.NoTemperature {
			for _, e := range all {
				if len(e.temps) > 0 {
					b.page.Temp = e.temps[0].temp
					break
				}
			}
		}
	case warmest > 40:
		b.page.Temp = unit.Fahrenheit
	case warmest <= 31:
		b.page.Temp = unit.Celsius
	case b.settings().Temp != unit.NoTemperature:
		b.page.Temp = b.settings().Temp
	default:
		n, err := b.r.ask(Question{Line: line, Text: text, What: "the temperatures' scale is not stated",
			Choices: []string{"Fahrenheit", "Celsius"}, Instead: "add the line \"units: ft F\" or \"units: m C\", or --units"})
		if err != nil {
			return err
		}
		b.page.Temp = []unit.Temperature{unit.Fahrenheit, unit.Celsius}[n]
		b.r.said.Temp = b.page.Temp
		return nil
	}
	if found {
		b.r.note(0, "temperatures read as %s: the warmest is %s", map[unit.Temperature]string{unit.Fahrenheit: "Fahrenheit", unit.Celsius: "Celsius"}[b.page.Temp], exact(warmest))
	}
	return nil
}

// quoted shortens a line's text for a note.
func quoted(e entry) string { return strings.TrimSpace(shown(e.text)) }
