package format

import (
	"slices"
	"strings"
)

// answer is the meanings that a set of columns can have, likeliest first.
type answer struct {
	layouts []Layout
	why     string // where there is none
	doubt   string // why none is sure, even if it is the only one
	byName  bool   // names or units on the lines tell the columns apart
}

// answer finds what the columns can mean: the temperature first, then a depth beside it,
// each among the columns that are best known for it.
func (s *set) answer(hex bool) (a answer) {
	for _, c := range s.cols {
		c.judge(hex)
	}
	s.findTime()
	if slices.ContainsFunc(s.cols, (*column).onlyFaults) {
		a.doubt = "a value is a fault on every line so far"
	}
	temps, tempTier := s.best(func(c *column) tier { return c.tempTier })
	a.byName = tempTier < byValue
	if tempTier == byValue && slices.ContainsFunc(s.cols, (*column).saysTemp) {
		a.doubt = "a value that should be the temperature by its name or unit cannot be that of water"
	}
	if len(temps) == 0 {
		if c := s.cols[0]; s.places || len(s.cols) > 1 || c.beside || c.sure > 0 || len(c.temps) == 0 {
			a.why = "no value that can be a temperature of water"
			return a
		}
		a.layouts = s.alone([]int{0}, hex)
		a.doubt = "the name does not say whether it is a temperature"
		return a
	}
	depths, depthTier := s.best(func(c *column) tier { return c.depthTier })
	if depthTier != byValue {
		if len(depths) == 0 {
			a.layouts = s.alone(temps, hex)
		} else {
			a.layouts = s.pairs(temps, depths)
		}
		return a
	}
	a.layouts = s.besideValues(temps, tempTier, depths, hex)
	return a
}

// besideValues are the layouts where nothing but its numbers says which column is the
// depth: there may be none.
func (s *set) besideValues(temps []int, tempTier tier, depths []int, hex bool) (layouts []Layout) {
	if len(temps) == 1 { // one number a line is a temperature
		depths = slices.DeleteFunc(depths, func(d int) bool { return d == temps[0] })
	}
	switch {
	case len(depths) == 0:
	case tempTier < byValue:
		layouts = s.pairs(temps, depths)
		layouts = append(layouts[:min(len(layouts), maxChoices-1)], s.alone(temps, hex)...)
	default:
		var scaled []int
		temps, scaled = s.plainTemps(temps, depths)
		layouts = append(s.pairs(temps, depths), s.pairs(scaled, depths)...)
	}
	if len(layouts) == 0 {
		layouts = s.alone(temps, hex)
	}
	if t := s.mayBeTime; t >= 0 {
		timed := *s
		timed.time = t
		rest := slices.DeleteFunc(slices.Clone(temps), func(i int) bool { return i == t })
		layouts = append(timed.alone(rest, hex), layouts...)
	}
	return layouts
}

// best takes the columns of the best tier that has any.
func (s *set) best(of func(*column) tier) (cols []int, t tier) {
	t = never
	for i, c := range s.cols {
		switch k := of(c); {
		case i == s.time || k == never || k > t:
		case k < t:
			cols, t = []int{i}, k
		default:
			cols = append(cols, i)
		}
	}
	return cols, t
}

// plainTemps parts the columns that are a temperature as they stand, with another that
// can be the depth, from those that would be one only divided by ten or a hundred. Who
// prints a temperature with its point does not print another without.
func (s *set) plainTemps(temps, depths []int) (plain, scaled []int) {
	pointed := false
	for _, t := range temps {
		if c := s.cols[t]; isScaled(c.temps[0]) {
			scaled = append(scaled, t)
		} else {
			plain = append(plain, t)
			beside := slices.ContainsFunc(depths, func(d int) bool { return d != t })
			pointed = pointed || beside && !c.whole
		}
	}
	if pointed {
		scaled = nil
	}
	return plain, scaled
}

// isScaled reports numbers sent without their point.
func isScaled(p Part) bool { return strings.Contains(p.Unit, "/") }

// leastOhms is the least resistance that a whole number of its own is offered as.
const leastOhms = 400

// alone makes a layout of each temperature without a depth.
func (s *set) alone(temps []int, hex bool) (out []Layout) {
	for _, t := range temps {
		c := s.cols[t]
		for _, p := range c.temps {
			out = append(out, s.layout(map[int]Part{t: p}))
		}
		if c.bare && len(temps) == 1 && c.whole && len(c.nums) > 0 && slices.Min(c.nums) >= leastOhms && !hex {
			out = append(out, s.layout(map[int]Part{t: {Quantity: Ohms}}))
		}
	}
	return out
}

// pairs makes a layout of each temperature with each depth, the usual order and unit
// first.
func (s *set) pairs(temps, depths []int) (out []Layout) {
	var before, behind [][2]int // the depth before the temperature, and behind it
	for _, d := range depths {
		for _, t := range temps {
			switch {
			case d < t:
				before = append(before, [2]int{d, t})
			case d > t:
				behind = append(behind, [2]int{d, t})
			}
		}
	}
	for rank := range maxChoices {
		for _, pair := range append(before, behind...) {
			d, t := pair[0], pair[1]
			if rank >= len(s.cols[d].depths) {
				continue
			}
			for _, p := range s.cols[t].temps {
				out = append(out, s.layout(map[int]Part{t: p, d: s.cols[d].depths[rank]}))
			}
		}
	}
	return out
}

// layout writes the parts in the order of the columns.
func (s *set) layout(chosen map[int]Part) Layout {
	var l Layout
	for i, c := range s.cols {
		p, is := chosen[i]
		if !is && i == s.time {
			p, is = c.time, true
		}
		if is || s.places {
			p.Name = c.name
			l.Parts = append(l.Parts, p)
		}
	}
	return l
}
