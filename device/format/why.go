package format

import (
	"fmt"
	"slices"
	"strings"

	"coldseam/profile/unit"
)

// because says by what a layout of the columns is known.
func (s *set) because(a answer, l Layout) string {
	parts := []string{s.knownBy(a, l)}
	for i, p := range l.Parts {
		if text := s.column(l, i).chose(p); text != "" {
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, "; ")
}

func (s *set) knownBy(a answer, l Layout) string {
	switch {
	case l.has(Word):
		return "hexadecimal words of a DS18B20"
	case s.header:
		return "the header row names the columns"
	case a.byName && !s.places:
		return "the lines name their values"
	case a.byName:
		return "by the units on the lines"
	case len(l.Parts) == 1:
		return "one number a line is a temperature"
	}
	return "the values can be read in one way only"
}

// column is the column of a part.
func (s *set) column(l Layout, i int) *column {
	if named := slices.IndexFunc(s.cols, func(c *column) bool { return l.Parts[i].Name != "" && c.name == l.Parts[i].Name }); named >= 0 {
		return s.cols[named]
	}
	return s.cols[i]
}

// chose says what made a column that part, where neither name nor unit said so.
func (c *column) chose(p Part) string {
	switch {
	case p.Quantity == Temp && isScaled(p) && len(c.usual) > 0:
		_, div, _ := unitText(p.Unit)
		return fmt.Sprintf("%v is read as %v, as no other reading is possible", c.usual[0], c.usual[0]/div)
	case p.Quantity == Temp && c.unit == unit.None && len(c.usual) > 0:
		return fmt.Sprintf("the temperatures, up to %v, can only be in %s", c.hi, p.Unit)
	case p.Quantity == Pressure:
		return "the pressure is near the air's, so absolute"
	case p.Quantity == Gauge && c.quantity != Gauge:
		return "the pressure is near zero, so over the air's"
	case p.Quantity == Time && c.bare:
		return "a column that counts up is taken as time in " + p.Unit
	}
	return ""
}

// open says in what the layouts differ.
func open(l []Layout, doubt string) string {
	if len(l) == 1 && doubt != "" {
		return doubt
	}
	temp := func(x Layout) (int, Part) { return x.giving(Temp) }
	depth := func(x Layout) (int, Part) { return x.giving(Depth) }
	place := func(i int, p Part) string { return fmt.Sprint(i, p.Name) }
	in := func(_ int, p Part) string { return p.Unit }
	offers := func(q Quantity) bool { return slices.ContainsFunc(l, func(x Layout) bool { return x.has(q) }) }
	var parts []string
	say := func(is bool, text string) {
		if is {
			parts = append(parts, text)
		}
	}
	say(differ(l, temp, place), "which value is the temperature")
	say(differ(l, depth, place), "which value is the depth")
	say(offers(Pressure) && offers(Gauge), "whether the pressure holds the air's")
	say(differ(l, depth, in), "the unit of the depth")
	say(differ(l, temp, in), "the unit of the temperature")
	say(doubt != "", doubt)
	if len(parts) == 0 {
		return "more than one meaning is possible"
	}
	return "not said: " + strings.Join(parts, ", ")
}

// differ reports layouts that do not agree on something of a part.
func differ(l []Layout, part func(Layout) (int, Part), of func(int, Part) string) bool {
	return slices.ContainsFunc(l, func(x Layout) bool { return of(part(x)) != of(part(l[0])) })
}
