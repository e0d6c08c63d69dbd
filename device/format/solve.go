package format

import (
	"fmt"
	"slices"
	"strings"
)

// answer is the meanings that a set of columns can have, likeliest first.
type answer struct {
	layouts []Layout
	why     string // where there is none
	doubt   string // why none is sure, even if it is the only one
	set     set
	byName  bool // names or units on the lines tell the columns apart
}

// known is a column with what its name and unit say.
type known struct {
	*column
	meaning
	bare   bool // nothing says what it is
	counts bool // it may count time, and is then:
	time   Part
}

// tier says how well a column is known for the temperature or the depth: the lowest
// tier that has a column decides, the others are not asked.
type tier uint8

const (
	byWord tier = iota
	byLetter
	byOther // a pressure for the depth, a resistance or a word for the temperature
	byOtherLetter
	byValue
	never
)

// answer finds what the columns can mean: the temperature first, then a depth beside it,
// each among the columns that are best known for it.
func (s set) answer(hex bool) answer {
	cols := make([]known, len(s.cols))
	for i, c := range s.cols {
		cols[i] = know(c)
	}
	a := answer{set: s}
	if slices.ContainsFunc(cols, known.onlyFaults) {
		a.doubt = "a value is a fault on every line so far"
	}
	times := timeColumns(cols, s.places)
	temps, tempTier := pick(cols, times, func(k *known) tier { return k.tempTier(hex) },
		func(k *known) bool { return len(k.tempParts(hex)) > 0 })
	if len(temps) == 0 {
		if k := &cols[0]; !s.places && len(cols) == 1 && !k.beside && k.sure == 0 && len(k.tempParts(hex)) > 0 {
			a.layouts = s.pairs(cols, times, []int{0}, nil, hex)
			a.doubt = "the name does not say whether it is a temperature"
			return a
		}
		a.why = "no value that can be a temperature of water"
		return a
	}
	depths, depthTier := pick(cols, times, (*known).depthTier, func(k *known) bool { return len(k.depthParts()) > 0 })
	a.byName = tempTier < byValue
	if depthTier == byValue && len(temps) == 1 {
		// One number a line is a temperature.
		depths = slices.DeleteFunc(depths, func(d int) bool { return d == temps[0] })
	}
	var scaled []int // whole numbers that could have been sent without their point
	if tempTier == byValue && depthTier == byValue && len(depths) > 0 {
		temps, scaled = plainTemps(cols, temps, depths)
	}
	a.layouts = s.pairs(cols, times, temps, depths, hex)
	if len(scaled) > 0 {
		a.layouts = append(a.layouts, s.pairs(cols, times, scaled, depths, hex)...)
	}
	if len(a.layouts) == 0 && depthTier == byValue {
		a.layouts = s.pairs(cols, times, temps, nil, hex)
	}
	if depthTier == byValue && tempTier < byValue && len(depths) > 0 {
		a.layouts = append(a.layouts[:min(len(a.layouts), maxChoices-1)], s.pairs(cols, times, temps, nil, hex)...)
	}
	if t := doubtfulTime(cols, times, s.places); t >= 0 && depthTier == byValue {
		only := map[int]Part{t: cols[t].time}
		rest := slices.DeleteFunc(slices.Clone(temps), func(i int) bool { return i == t })
		a.layouts = append(s.pairs(cols, only, rest, nil, hex), a.layouts...)
	}
	return a
}

// onlyFaults reports a column that may be the temperature or the depth, of which no line
// has had a number yet that stands for itself.
func (k known) onlyFaults() bool {
	if !k.bare && (k.sure == 0 || k.what == Skip || k.what == Time) {
		return false
	}
	return k.faults+len(k.nums) > 1 && len(usual(k.nums)) == 0
}

// know joins what the name and the unit on the lines say.
func know(c *column) known {
	k := known{column: c}
	if c.title != nil {
		k.meaning = meaningOf(c.title)
	}
	if c.mixed || c.lineUnit == foreign {
		if c.lineUnit == foreign {
			k.beside = true
		}
		return k
	}
	if c.lineUnit != noUnit && !k.beside {
		switch of := units[c.lineUnit].quantity; {
		case k.sure < 2:
			k.what, k.unit, k.sure = of, c.lineUnit, 2
		case of == k.what || of == Pressure && k.what == Gauge:
			k.unit = c.lineUnit
		default:
			k.meaning = meaning{beside: true} // the name and the unit contradict
		}
	}
	k.bare = k.sure == 0 && !k.beside && c.title == nil
	return k
}

func (k *known) tempTier(hex bool) tier {
	switch {
	case k.beside || k.clocks > 0:
		return never
	case k.sure == 2 && k.what == Temp:
		return byWord
	case k.sure == 1 && k.what == Temp:
		return byLetter
	case k.sure == 2 && (k.what == Ohms || k.what == Word):
		return byOther
	case hex && isWords(k.texts) && (k.bare || k.sure == 0):
		return byOther
	case k.sure == 1 && k.what == Ohms:
		return byOtherLetter
	case k.bare:
		return byValue
	}
	return never
}

func (k *known) depthTier() tier {
	switch {
	case k.beside || k.clocks > 0:
		return never
	case k.sure == 2 && k.what == Depth:
		return byWord
	case k.sure == 1 && k.what == Depth:
		return byLetter
	case k.sure == 2 && (k.what == Pressure || k.what == Gauge):
		return byOther
	case k.sure == 1 && k.what == Pressure:
		return byOtherLetter
	case k.bare:
		return byValue
	}
	return never
}

// pick takes the columns of the best tier that has any which can be read.
func pick(cols []known, times map[int]Part, of func(*known) tier, can func(*known) bool) (best []int, t tier) {
	t = never
	for i := range cols {
		k := &cols[i]
		if _, counts := times[i]; counts {
			continue
		}
		switch of := of(k); {
		case of == never || of > t || !can(k):
		case of < t:
			best, t = []int{i}, of
		default:
			best = append(best, i)
		}
	}
	return best, t
}

// plainTemps parts the columns that are a temperature as they stand, with another that
// can be the depth, from those that would be one only divided by ten or a hundred. Who
// prints a temperature with its point does not print another without.
func plainTemps(cols []known, temps, depths []int) (plain, scaled []int) {
	pointed := false
	for _, t := range temps {
		if strings.Contains(cols[t].tempParts(false)[0].Unit, "/") {
			scaled = append(scaled, t)
			continue
		}
		plain = append(plain, t)
		beside := slices.ContainsFunc(depths, func(d int) bool { return d != t })
		pointed = pointed || beside && !cols[t].whole
	}
	if pointed {
		scaled = nil
	}
	return plain, scaled
}

// pairs makes a layout of each temperature with each depth, the usual order and unit
// first.
func (s set) pairs(cols []known, times map[int]Part, temps, depths []int, hex bool) (out []Layout) {
	if len(depths) == 0 {
		for _, t := range temps {
			for _, tp := range cols[t].tempParts(hex) {
				out = append(out, s.layout(cols, times, map[int]Part{t: tp}))
			}
			if c := &cols[t]; c.bare && len(temps) == 1 && c.whole && len(c.nums) > 0 && slices.Min(c.nums) >= 400 && !hex {
				out = append(out, s.layout(cols, times, map[int]Part{t: {Quantity: Ohms}}))
			}
		}
		return out
	}
	for rank := range maxChoices {
		for _, depthFirst := range []bool{true, false} {
			for _, d := range depths {
				parts := cols[d].depthParts()
				if rank >= len(parts) {
					continue
				}
				for _, t := range temps {
					if t == d || d < t != depthFirst {
						continue
					}
					for _, tp := range cols[t].tempParts(hex) {
						out = append(out, s.layout(cols, times, map[int]Part{t: tp, d: parts[rank]}))
					}
				}
			}
		}
	}
	return out
}

// layout writes the parts in the order of the columns.
func (s set) layout(cols []known, times, chosen map[int]Part) Layout {
	var l Layout
	for i := range cols {
		p, is := chosen[i]
		if !is {
			p, is = times[i]
		}
		if !is && !s.places {
			continue
		}
		p.Name = cols[i].name
		l.Parts = append(l.Parts, p)
	}
	return l
}

// because says by what a layout is known.
func (a answer) because(l Layout) string {
	var parts []string
	switch {
	case slices.ContainsFunc(l.Parts, func(p Part) bool { return p.Quantity == Word }):
		parts = append(parts, "hexadecimal words of a DS18B20")
	case a.set.header:
		parts = append(parts, "the header row names the columns")
	case a.byName && !a.set.places:
		parts = append(parts, "the lines name their values")
	case a.byName:
		parts = append(parts, "by the units on the lines")
	case len(l.Parts) == 1:
		parts = append(parts, "one number a line is a temperature")
	default:
		parts = append(parts, "the values can be read in one way only")
	}
	for i, p := range l.Parts {
		c := a.set.cols[min(i, len(a.set.cols)-1)]
		for _, x := range a.set.cols {
			if p.Name != "" && x.name == p.Name {
				c = x
			}
		}
		k := know(c)
		switch nums := usual(c.nums); {
		case p.Quantity == Temp && strings.Contains(p.Unit, "/") && len(nums) > 0:
			_, div, _ := unitText(p.Unit)
			parts = append(parts, fmt.Sprintf("%v is read as %v, as no other reading is possible", nums[0], nums[0]/div))
		case p.Quantity == Temp && k.unit == noUnit && len(nums) > 0:
			parts = append(parts, fmt.Sprintf("the temperatures, up to %v, can only be in %s", slices.Max(nums), p.Unit))
		case p.Quantity == Pressure:
			parts = append(parts, "the pressure is near the air's, so absolute")
		case p.Quantity == Gauge && k.what != Gauge:
			parts = append(parts, "the pressure is near zero, so over the air's")
		case p.Quantity == Time && k.bare:
			parts = append(parts, "a column that counts up is taken as time in "+p.Unit)
		}
	}
	return strings.Join(parts, "; ")
}
