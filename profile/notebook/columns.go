package notebook

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// columns settles what only the whole page can: which of two bare numbers is the
// depth, and what a third one is.
func (r *reader) columns() error {
	tempFirst := r.tempFirst()
	if tempFirst {
		r.note(0, "read as temperature first, depth second")
	}
	for i := range r.items {
		var out []entry
		for _, e := range r.items[i].entries {
			es, err := r.assign(e, tempFirst)
			if err != nil {
				return err
			}
			out = append(out, es...)
		}
		r.items[i].entries = out
	}
	return r.third()
}

// tempFirst decides the order of two bare numbers by the page: depths begin near
// the surface and go one way. A page of depths from 66 to 74 with temperatures from
// 0 to 15 is written the other way round. Of several drops each is looked at by itself,
// and one that begins with its depths speaks for all.
func (r *reader) tempFirst() bool {
	tempFirst := false
	for _, part := range r.parts() {
		a, b := firstAndSecond(part)
		switch {
		case len(a) < 2:
		case likelyDepths(a):
			return false
		case likelyDepths(b):
			tempFirst = true
		}
	}
	return tempFirst
}

// parts are the page's items between rules and keys that begin a drop, or give it units
// of its own.
func (r *reader) parts() (parts [][]item) {
	from := 0
	for i, it := range r.items {
		if it.kind == ruler || it.kind == header && !it.header.soft && slices.Contains([]string{"water", "spot", "date", "units"}, it.header.Key) {
			parts = append(parts, r.items[from:i])
			from = i
		}
	}
	return append(parts, r.items[from:])
}

// firstAndSecond are the first and the second of two bare numbers, line by line.
func firstAndSecond(items []item) (a, b []float64) {
	for _, it := range items {
		for _, e := range it.entries {
			if e.surface && len(e.temps) == 1 { // "74 top" is written like "73 5", "top 74" like "5 73"
				first, second := 0.0, e.temps[0].value.Value
				if e.surfaceAt > e.temps[0].at {
					first, second = second, first
				}
				a, b = append(a, first), append(b, second)
			}
			if e.open() && len(e.free) < 4 {
				a = append(a, e.free[0].value.Value)
				b = append(b, e.free[1].value.Value)
			}
		}
	}
	return a, b
}

// likelyDepths: rising or falling, and reaching up towards the surface.
func likelyDepths(v []float64) bool {
	if slices.Min(v) > 0.4*slices.Max(v) {
		return false
	}
	return slices.IsSorted(v) || slices.IsSortedFunc(v, func(x, y float64) int {
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
}

// open reports whether two bare numbers wait for the order of the columns.
func (e *entry) open() bool {
	return !e.surface && len(e.depths) == 0 && len(e.temps) == 0 && len(e.free) >= 2
}

// assign makes depth and temperature of an entry's bare numbers. Four or more may
// be pairs ("0 74 5 73 10 72") or repeats ("17 61 62 61").
func (r *reader) assign(e entry, tempFirst bool) ([]entry, error) {
	if err := r.minusOrDash(&e); err != nil {
		return nil, err
	}
	if !e.open() {
		return []entry{e}, nil
	}
	if n := len(e.free); n >= 4 && n%2 == 0 && !e.repeats {
		pairs, err := r.pairs(e, tempFirst)
		if err != nil || pairs != nil {
			return pairs, err
		}
	}
	e.take(tempFirst)
	return []entry{e}, nil
}

// minusOrDash asks what a dash before a small number is.
func (r *reader) minusOrDash(e *entry) error {
	n := e.free
	if len(n) == 0 {
		n = e.temps
	}
	if !e.unsure || len(n) == 0 {
		return nil
	}
	last := &n[len(n)-1]
	v := last.value.Value
	choice, err := r.ask(Question{Line: e.line, Text: e.text, What: "the dash",
		Choices: []string{fmt.Sprintf("%v with a dash before it", v), fmt.Sprintf("minus %v", v)},
		Instead: fmt.Sprintf("write \"5: %v\" or \"5: -%v\"", v, v)})
	if err == nil && choice == 1 {
		last.value.Value = -v
	}
	return err
}

// pairs reads four bare numbers or more as depth and temperature in turn, and asks where
// they may be one depth read several times; nil where they are that.
func (r *reader) pairs(e entry, tempFirst bool) ([]entry, error) {
	pairs, ok := e.pairs(tempFirst)
	switch {
	case !ok:
		return nil, nil
	case !likeRepeats(e):
		return pairs, nil
	case e.free[2].value.Value > farJump*e.free[0].value.Value: // "17 61 62 61" goes to no 62 ft
		return nil, nil
	}
	choice, err := r.ask(Question{Line: e.line, Text: e.text, What: "the numbers",
		Choices: []string{"several readings, depth and temperature in turn", "one depth read several times"},
		Instead: "write one reading a line"})
	if err != nil || choice == 1 {
		return nil, err
	}
	return pairs, nil
}

// Two readings of one line seldom lie farTemps degrees apart, nor the second more
// than farJump times as deep as the first.
const (
	farTemps = 40
	farJump  = 2.5
)

// pairs reads an entry's bare numbers as depth and temperature in turn. ok is false
// when the depths do not go down, or the temperatures are no lake's.
func (e *entry) pairs(tempFirst bool) (pairs []entry, ok bool) {
	for i := 0; i < len(e.free); i += 2 {
		p := entry{line: e.line, text: e.text, odd: true, free: e.free[i : i+2]}
		p.take(tempFirst)
		if i > 0 {
			above := pairs[len(pairs)-1]
			if p.depths[0].value.Value <= above.depths[0].value.Value || math.Abs(p.temps[0].value.Value-above.temps[0].value.Value) > farTemps {
				return nil, false
			}
		}
		pairs = append(pairs, p)
	}
	pairs[len(pairs)-1].bottom = e.bottom
	return pairs, true
}

// likeRepeats: further numbers near enough to the first temperature to be it again.
func likeRepeats(e entry) bool {
	for _, f := range e.free[2:] {
		if math.Abs(f.value.Value-e.free[1].value.Value) > 5 {
			return false
		}
	}
	return true
}

// take gives the first two bare numbers their roles.
func (e *entry) take(tempFirst bool) {
	first, second := e.free[:1:1], e.free[1:2:2]
	if tempFirst {
		first, second = second, first
	}
	e.depths, e.temps, e.free = first, second, e.free[2:]
}

// describe says in words what a reading of a line takes it for.
func describe(entries []entry) string {
	var all []string
	for _, e := range entries {
		var parts []string
		list := func(label string, ts []token) {
			var v []string
			for _, t := range ts {
				v = append(v, exact(t.value.Value))
			}
			if len(v) > 0 {
				parts = append(parts, label+strings.Join(v, " and "))
			}
		}
		if e.surface {
			parts = append(parts, "the surface")
		}
		list("depth ", e.depths)
		list("temperature ", e.temps)
		list("", e.free)
		all = append(all, strings.Join(parts, ", "))
	}
	return strings.Join(all, "; ")
}
