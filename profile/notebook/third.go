package notebook

import (
	"math"
	"strings"
)

// thirdColumn is what a page has behind depth and temperature.
type thirdColumn struct {
	open   []*entry // the readings with one number more
	all    int      // how many readings there are
	oxygen bool     // every third number may be oxygen in mg/L,
	again  bool     // or the temperature again
}

// often: most readings have the third number.
func (c *thirdColumn) often() bool { return 2*len(c.open) > c.all }

// thirdIs is what the third number of every line is.
type thirdIs int

const (
	thirdOxygen thirdIs = iota // in mg/L
	thirdPercent
	thirdAgain
	thirdNothing
)

// third resolves what a number after depth and temperature is: dissolved oxygen or
// the temperature taken again.
func (r *reader) third() error {
	c := thirdColumn{oxygen: true, again: true}
	for i := range r.items {
		for j := range r.items[i].entries {
			if err := r.classifyThird(&r.items[i].entries[j], &c); err != nil {
				return err
			}
		}
	}
	if len(c.open) == 0 {
		return nil
	}
	is, err := r.meaningOfThird(c)
	if err != nil {
		return err
	}
	for _, e := range c.open {
		e.takeThird(is)
	}
	if is == thirdOxygen && r.oxygenUnit() == "" {
		r.note(0, "third column read as dissolved oxygen in mg/L")
	}
	return nil
}

// classifyThird counts a reading in; what is beyond doubt in it is taken at once.
func (r *reader) classifyThird(e *entry, c *thirdColumn) error {
	if !e.missing {
		c.all++
	}
	if len(e.free) == 0 || len(e.temps) == 0 || len(e.depths) == 0 && !e.surface {
		return nil
	}
	near := true
	for _, f := range e.free {
		if f.worded {
			return r.fail(e.line, shown(e.text)+": what is the number "+exact(f.value.Value)+" before a word? Put anything that is not a reading after #, or in a line that begins with \"note:\"")
		}
		near = near && math.Abs(f.value.Value-e.temps[0].value.Value) < 5
	}
	switch {
	case e.repeats || len(e.free) > 1 && near:
		e.temps, e.free, e.odd = append(e.temps, e.free...), nil, true
	case len(e.free) > 1:
		return r.fail(e.line, shown(e.text)+": more numbers than a depth, a temperature and the oxygen: write one reading a line, or a row of column names above")
	default:
		c.open = append(c.open, e)
		c.oxygen = c.oxygen && e.free[0].value.Value <= maxLikelyMgL
		c.again = c.again && near
	}
	return nil
}

// meaningOfThird decides what the third numbers are by what is stated, by what they may
// be and by how many lines have one, and asks where that leaves it open.
func (r *reader) meaningOfThird(c thirdColumn) (thirdIs, error) {
	first := c.open[0]
	ask := func(what, yes, no, instead string) (first bool, err error) {
		n, err := r.ask(Question{Line: c.open[0].line, Text: c.open[0].text, What: what, Choices: []string{yes, no}, Instead: instead})
		return n == 0, err
	}
	switch unit := r.oxygenUnit(); {
	case unit == "mg/L" && !c.oxygen && c.again: // more than water holds: not oxygen
		return thirdAgain, nil
	case unit == "%":
		return thirdPercent, nil
	case unit != "":
		return thirdOxygen, nil
	case c.oxygen && c.again:
		oxygen, err := ask("the third number", "dissolved oxygen in mg/L", "the temperature read again", "add the line \"oxygen: mg/L\", or write \"DO 7.8\"")
		if oxygen {
			return thirdOxygen, err
		}
		return thirdAgain, err
	case c.oxygen && c.often():
		return thirdOxygen, nil
	case c.oxygen: // a slip, more likely than oxygen
		oxygen, err := ask("the third number, which most lines do not have", "dissolved oxygen in mg/L", "left out", "write \"DO 7.8\" if it is oxygen, else leave it out")
		if oxygen {
			return thirdOxygen, err
		}
		return thirdNothing, err
	case c.again && c.often() && len(c.open) >= 3: // on most lines: hardly read again each time
		again, err := ask("the two temperatures on most lines", "each depth read twice", "two drops side by side", "write each drop on its own, with a line ---- between them")
		if err == nil && !again {
			err = r.fail(first.line, "two drops side by side: write each on its own, with a line ---- between them")
		}
		return thirdAgain, err
	case c.again:
		return thirdAgain, nil
	}
	return 0, r.fail(first.line, shown(first.text)+": what is the third number? Add the line \"oxygen: mg/L\" or \"oxygen: %\", or write \"DO 7.8\"")
}

// takeThird gives the third number of a reading its place.
func (e *entry) takeThird(is thirdIs) {
	switch is {
	case thirdOxygen:
		e.oxygen = &e.free[0]
	case thirdPercent:
		e.percent = &e.free[0]
	case thirdAgain:
		e.temps = append(e.temps, e.free[0])
	}
	e.odd = e.odd || is == thirdAgain || is == thirdNothing
	e.free = nil
}

// maxLikelyMgL is the most dissolved oxygen that a bare number is taken for, MaxMgL
// and MaxPercent the most that is read: water in a bloom holds up to about twice
// what it would in balance with the air (common practice).
const (
	maxLikelyMgL = 20.0
	MaxMgL       = 40.0
	MaxPercent   = 400.0
)

// MaxDepthM is deeper than any lake that is fished.
const MaxDepthM = 1000

// oxygenUnit is the unit of the oxygen column, where a flag, the page or the
// settings state it.
func (r *reader) oxygenUnit() string {
	value := ""
	take := func(h Header) {
		if h.Key == "oxygen" {
			value = h.Value
		}
	}
	for _, h := range r.o.Defaults {
		take(h)
	}
	if r.base.OxygenUnit != "" {
		value = r.base.OxygenUnit
	}
	for _, it := range r.items {
		take(it.header)
	}
	for _, h := range r.o.Flags {
		take(h)
	}
	switch v := strings.ToLower(value); {
	case strings.Contains(v, "%"), strings.Contains(v, "percent"):
		return "%"
	case v != "":
		return "mg/L"
	}
	return ""
}
