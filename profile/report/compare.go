package report

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"coldseam/profile/compare"
	"coldseam/profile/layers"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// compared says which of several drops to fish.
type compared struct {
	a     compare.Answer
	s     []speaker // all in one system of units
	names []string  // of their pages
}

// Compare says for a terminal of a width which drop to fish and why, with the numbers of
// each; names are those of their pages.
func Compare(plans []plan.Plan, names []string, width int) string {
	c := newCompared(plans, names)
	title := ""
	for i := range c.s {
		title += Wrap(letter(i)+": "+c.place(i), "   ", width) + "\n"
	}
	out := strings.TrimSuffix(laid(width, "", c.warnings(), c.answer(), nil, nil), "\n")
	out = title + strings.TrimPrefix(out, "\n") + "\n" + c.table(width)
	for i, t := range c.notes() {
		if i == 0 {
			out += "\n"
		}
		out += WrapTo(t, width) + "\n"
	}
	return out
}

func newCompared(plans []plan.Plan, names []string) compared {
	c := compared{a: compare.Of(plans), names: names}
	for _, p := range plans {
		c.s = append(c.s, speak(p))
	}
	return c
}

// letter is what a drop is called: A, B, C.
func letter(i int) string { return string(rune('A' + i)) }

// place names a drop by its water, spot and date, else by its page, and by its fish where
// they differ.
func (c compared) place(i int) string {
	t := WhereWhen(c.s[i].p.Drop)
	if t == "" {
		t = c.names[i]
	}
	if !c.a.OneFish {
		t += ", for " + c.s[i].p.Fish.Name
	}
	return t
}

// warnings are those of all drops, each once, as its first drop has it.
func (c compared) warnings() (out []string) {
	said, of := map[plan.Caution]string{}, map[plan.Caution][]string{}
	var order []plan.Caution
	for i, s := range c.s {
		for _, code := range s.p.Cautions {
			text := s.today(code)
			if text == "" || !cautionOf(code).first {
				continue
			}
			if said[code] == "" {
				said[code] = text
				order = append(order, code)
			}
			of[code] = append(of[code], letter(i))
		}
	}
	for _, code := range order {
		at := list(of[code]) + ": "
		if len(of[code]) == len(c.s) {
			at = ""
		}
		out = append(out, at+said[code])
	}
	return out
}

// answer says which to fish, and why.
func (c compared) answer() string {
	if !c.a.OneFish {
		return "They are for different fish: name one for all of them, e.g. --for " + quoted(c.s[0].p.Fish.Key) + "."
	}
	i, j := c.a.Order[0], c.a.Order[1]
	var why, but []string
	for _, r := range c.a.Why {
		why = append(why, c.reason(r, i, j))
	}
	for _, r := range c.a.But {
		but = append(but, c.reason(r, j, i))
	}
	t := strings.Join(why, ", and ")
	if len(but) > 0 {
		t += ". But " + strings.Join(but, ", and ")
	}
	switch c.a.Why[0] {
	case compare.NoWater:
	case compare.NoDifference:
		switch {
		case len(but) > 0:
		case c.a.DaysApart == 0:
			t += ": fish the one that is nearer"
		case c.a.OneWater:
			t += ": nothing has changed that would move you"
		}
	default:
		t = "Fish " + letter(i) + ": " + t
	}
	t = sentence(t)
	if len(c.a.Order) > 2 && c.a.Why[0] != compare.NoWater {
		var rest []string
		for _, k := range c.a.Order {
			rest = append(rest, letter(k))
		}
		t += " In order: " + strings.Join(rest, ", ") + "."
	}
	return t
}

// quoted is a word as a shell takes it.
func quoted(word string) string {
	if strings.Contains(word, " ") {
		return fmt.Sprintf("%q", word)
	}
	return word
}

// reason says what speaks for drop i against drop j.
func (c compared) reason(r compare.Reason, i, j int) string {
	s, other := c.s[i], letter(j)
	f := s.p.Fish
	switch r {
	case compare.OnlyWater:
		if len(c.s) > 2 {
			return fmt.Sprintf("only there the water suits %s", f.Name)
		}
		return fmt.Sprintf("it has water that suits %s, and %s has none", f.Name, other)
	case compare.SuitsBetter:
		return fmt.Sprintf("its water suits %s, while that of %s is not what they like best", f.Name, other)
	case compare.SurerOxygen:
		return fmt.Sprintf("oxygen is %s where the fly starts; at %s it is unknown and may be too low", s.p.Oxygen.Level, other)
	case compare.ReadOxygen:
		return fmt.Sprintf("oxygen was measured there, and at %s it is only likely", other)
	case compare.Shallower:
		return fmt.Sprintf("%s begins about %s shallower at %s than at %s", s.coolWater(), s.span(abs(c.a.TopM)), letter(i), other)
	case compare.Warmer:
		return fmt.Sprintf("it is warmer there by about %s, and %s like it warmer", s.differ(abs(c.a.WarmC)), f.Name)
	case compare.NoDifference:
		return fmt.Sprintf("no difference between %s and %s that the readings can show", letter(min(i, j)), letter(max(i, j)))
	case compare.NoWater:
		return fmt.Sprintf("none of them has water that suits %s, as far as it was read", f.Name)
	}
	return string(r)
}

func abs(v float64) float64 { return max(v, -v) }

// differ prints a difference of temperature.
func (s speaker) differ(c float64) string {
	return unit.Digits(s.u.Temp.DiffFromC(c), 0) + " " + s.u.Temp.String()
}

// notes say what makes the comparison doubtful, and what may have caused the difference.
func (c compared) notes() (out []string) {
	a := c.a
	switch {
	case !a.OneWater && a.DaysApart > 0:
		out = append(out, fmt.Sprintf("These are different waters, %s apart.", count(a.DaysApart, "day")))
	case !a.OneWater:
		out = append(out, "These are different waters.")
	case a.DaysApart > 0:
		out = append(out, fmt.Sprintf("The drops are %s apart: the water may have changed more from day to day than from spot to spot.", count(a.DaysApart, "day")))
	}
	if a.OneFish && slices.Contains(a.Why, compare.SurerOxygen) && len(a.But) > 0 {
		other := a.Order[1]
		out = append(out, fmt.Sprintf("Enough oxygen read at %s, %s down, would turn this round.", letter(other), c.s[other].u.Length(c.s[other].p.FlyM())))
	}
	if t := c.cause(); t != "" {
		out = append(out, t)
	}
	return out
}

// cause says whether wind alone may be why the thermoclines differ.
func (c compared) cause() string {
	a := c.a
	s := c.s[a.High]
	differ := fmt.Sprintf("The thermocline lies about %s shallower at %s than at %s", s.span(a.Apart.Best), letter(a.High), letter(a.Low))
	most := s.span(2 * a.Tilt.Steady.High)
	switch a.Cause {
	case compare.NoThermocline:
		for i := range c.s {
			if l := c.s[i].p.Layers; l.Thermocline == nil {
				return fmt.Sprintf("%s has no thermocline: %s.", letter(i), notLayered(l.Structure))
			}
		}
	case compare.OtherWater:
		return differ + "."
	case compare.WithinDoubt:
		return "The thermoclines differ by less than the readings can tell."
	case compare.WindNotKnown:
		var give []string
		if a.NeedsWind {
			give = append(give, "--wind")
		}
		if a.NeedsLength {
			give = append(give, "--lake-length")
		}
		return fmt.Sprintf("%s; whether wind alone did it can be told with %s.", differ, list(give))
	case compare.TooShallow:
		return differ + "; whether wind alone did it cannot be told: hardly any water is known below it."
	case compare.WindCan:
		return fmt.Sprintf("%s, and this wind alone can do that: it sets the ends about %s apart, %s at most. Then it turns round about %s after the wind drops.", differ, s.span(2*a.Tilt.Steady.Best), most, lapse(a.Tilt.Period.Best/2))
	case compare.WindCannot:
		return fmt.Sprintf("%s, more than this wind alone can do: at most %s between the ends.", differ, most)
	case compare.NoWindToTiltIt:
		return differ + ", and there is no wind to do that; it may still rock from an earlier one."
	}
	return string(a.Cause)
}

// compareRows are the numbers of a drop, by the labels of the table.
func (s speaker) compareRows() []Row {
	p, l := s.p, s.p.Layers
	out := []Row{{"Fish", "none", ""}, {"Fly", "-", ""}, {"Cast over", "-", ""}, {"Leader", "-", ""}}
	if p.Band.Found {
		rows := s.depthRows()
		out[0].Value, out[1].Value = rows[0].Value, s.u.Length(p.FlyM())
		out[2].Value = s.u.Marked(p.Band.WaterM)
		if p.Band.Suspended {
			out[2].Value = "open water"
		}
		if p.Rig != nil && len(p.Rig.Parts) > 0 {
			out[3].Value = s.u.Piece(p.Rig.LeaderM)
		}
	}
	thermocline := "none"
	switch {
	case l.Thermocline != nil:
		thermocline = s.u.Span(l.Thermocline.Low, l.Thermocline.High)
	case l.Structure == layers.TooFew:
		thermocline = "not known"
	}
	return append(out, Row{"Thermocline", thermocline, ""}, Row{"Warm layer", s.u.Degrees(l.MixedTempC), ""},
		Row{"Confidence", string(p.Depths.Level), ""}, Row{"Oxygen", string(p.Oxygen.Level), ""})
}

// table puts the drops side by side, or below one another where the terminal is too narrow.
func (c compared) table(width int) string {
	columns := make([][]Row, len(c.s))
	wide := make([]int, len(c.s))
	total := labelColumns
	for i, s := range c.s {
		columns[i] = s.compareRows()
		for _, r := range columns[i] {
			wide[i] = max(wide[i], utf8.RuneCountInString(r.Value)+2)
		}
		total += wide[i]
	}
	if total-2 > width {
		return c.below(columns, width)
	}
	line := func(label string, value func(i int) string) string {
		t := fmt.Sprintf("%-*s", labelColumns, label)
		for i := range c.s {
			t += fmt.Sprintf("%-*s", wide[i], value(i))
		}
		return strings.TrimRight(t, " ") + "\n"
	}
	out := line("", letter)
	for k, r := range columns[0] {
		out += line(r.Label, func(i int) string { return columns[i][k].Value })
	}
	return out
}

// below gives each drop a paragraph.
func (c compared) below(columns [][]Row, width int) (out string) {
	for i, rows := range columns {
		var parts []string
		for _, r := range rows {
			parts = append(parts, strings.ToLower(r.Label[:1])+r.Label[1:]+" "+r.Value)
		}
		out += Wrap(letter(i)+": "+strings.Join(parts, ", "), "   ", width) + "\n"
	}
	return out
}
