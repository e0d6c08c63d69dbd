package notebook

import (
	"math"
	"slices"

	"coldseam/profile/unit"
)

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
			b.r.note(0, "depths without a unit read in %s, like the others", b.page.Depth)
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
		Choices: []string{"feet", "metres"}, Instead: b.r.unitsInstead()})
	if err != nil {
		return err
	}
	b.page.Depth = []unit.Length{unit.Foot, unit.Metre}[n]
	b.r.said.Depth = b.page.Depth
	return nil
}

// unitsInstead says how to give the units where nobody is asked.
func (r *reader) unitsInstead() string {
	text := "add the line \"units: ft F\" or \"units: m C\""
	if r.o.Units != "" {
		text += ", or " + r.o.Units
	}
	return text
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
// over 40 C, and none that is fished is all under 31 F.
func (b *builder) scale(all []entry) error {
	warmest, at := warmestBare(all)
	usual := b.settings().Temp
	switch {
	case at == nil: // every temperature has its own scale
		if usual == unit.NoTemperature {
			usual = firstScale(all)
		}
		b.page.Temp = usual
		return nil
	case warmest > 40:
		b.page.Temp = unit.Fahrenheit
	case warmest <= 31:
		b.page.Temp = unit.Celsius
	case usual != unit.NoTemperature:
		b.page.Temp = usual
	default:
		n, err := b.r.ask(Question{Line: at.line, Text: at.text, What: "the temperatures' scale is not stated",
			Choices: []string{"Fahrenheit", "Celsius"}, Instead: b.r.unitsInstead()})
		if err != nil {
			return err
		}
		b.page.Temp = []unit.Temperature{unit.Fahrenheit, unit.Celsius}[n]
		b.r.said.Temp = b.page.Temp
		return nil
	}
	name := "Celsius"
	if b.page.Temp == unit.Fahrenheit {
		name = "Fahrenheit"
	}
	b.r.note(0, "temperatures read as %s: the warmest is %s", name, exact(warmest))
	return nil
}

// warmestBare is the highest temperature without a scale, and the first entry that has it;
// nil where there is none. A value over 110 is a slip in either scale, and does not count
// while there are others.
func warmestBare(all []entry) (warmest float64, at *entry) {
	measured := slices.ContainsFunc(all, func(e entry) bool { return len(e.temps) > 0 })
	for _, limit := range []float64{110, math.Inf(1)} {
		for i, e := range all {
			temps := e.temps
			if e.bottom && len(temps) == 0 && !measured {
				temps = e.free // "bottom 52", which may be a depth too
			}
			for _, t := range temps {
				if v := t.value.Value; t.temp == unit.NoTemperature && v <= limit && (at == nil || v > warmest) {
					warmest, at = v, &all[i]
				}
			}
		}
		if at != nil {
			break
		}
	}
	return warmest, at
}

// firstScale is the scale of the first reading with a temperature.
func firstScale(all []entry) unit.Temperature {
	for _, e := range all {
		if len(e.temps) > 0 {
			return e.temps[0].temp
		}
	}
	return unit.NoTemperature
}
