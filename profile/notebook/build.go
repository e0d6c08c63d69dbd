package notebook

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/unit"
	"coldseam/profile/water"
)

// build makes the drop's readings of its entries, in the order written.
func (b *builder) build() error {
	for _, e := range b.entries {
		before := len(b.d.Readings)
		if err := b.entry(e); err != nil {
			return err
		}
		if e.odd {
			b.r.note(e.line, "%s", b.echo(e, b.d.Readings[before:]))
		}
	}
	return nil
}

// echo says how an odd line was read.
func (b *builder) echo(e entry, made []profile.Reading) string {
	var parts []string
	for _, r := range made {
		s := exact(r.Depth) + " " + unitName(r.DepthUnit) + ", " + exact(r.Temp) + " " + r.TempUnit.String()
		if r.SpreadC > 0 {
			s += " give or take " + exact(math.Round(r.TempUnit.DiffFromC(r.SpreadC)*100)/100)
		}
		parts = append(parts, s)
	}
	if len(made) == 0 && e.missing {
		s := "no reading taken"
		if len(e.depths) == 1 {
			s += " at " + exact(e.depths[0].value.Value)
		}
		parts = append(parts, s)
	}
	for _, t := range e.depths {
		if t.approx {
			parts = append(parts, "the doubt about the depth is not used")
			break
		}
	}
	if e.bottom && b.d.Bottom.Known {
		parts = append(parts, "bottom at "+exact(math.Round(b.page.Depth.From(b.d.Bottom.Value)*100)/100)+" "+unitName(b.page.Depth))
	}
	if len(e.remarks) > 0 {
		parts = append(parts, "words not used: "+shown(strings.Join(e.remarks, " ")))
	}
	return quoted(e) + " read as " + strings.Join(parts, "; ")
}

func unitName(u unit.Length) string {
	if u == Pull {
		return "pulls"
	}
	return u.String()
}

// entry makes the readings of one entry.
func (b *builder) entry(e entry) error {
	bad := func(format string, args ...any) error {
		return b.r.fail(e.line, shown(e.text)+": "+fmt.Sprintf(format, args...))
	}
	if e.bottom {
		if done, err := b.bottom(&e); done || err != nil {
			return err
		}
	}
	depths := b.depths(e)
	if len(depths) == 0 {
		if len(e.temps) > 0 {
			return bad("a temperature with no depth: write e.g. \"15: 64\"")
		}
		return bad("one number alone: write a depth and a temperature, e.g. \"15: 64\"")
	}
	for _, t := range e.depths {
		if t.depth == Pull {
			return bad("only you know how long a pull is: measure one and write the depths in feet or metres")
		}
	}
	for _, o := range []*token{e.oxygen, e.percent} {
		if o != nil && o.value.Value < 0 {
			return bad("oxygen cannot be negative")
		}
	}
	if e.missing {
		e.odd = true
		return nil
	}
	temps, err := b.temps(e)
	if err != nil {
		return bad("%v", err)
	}
	if len(temps) == 0 && !e.same {
		n, err := b.depthAlone(e, depths)
		if err != nil || n != sameAsAbove {
			return err
		}
		e.same = true
	}
	if e.same && len(temps) == 0 {
		above := len(b.d.Readings) - 1
		if above < 0 {
			return bad("the same as above, but nothing stands above")
		}
		temps = []profile.Reading{b.d.Readings[above]}
		temps[0].Oxygen = profile.Optional{}
	}
	if e.same0 && len(b.d.Readings) == 0 {
		depths = append([]token{{depth: depths[0].depth}}, depths...)
	}
	for _, d := range depths {
		for i, t := range temps {
			t.Depth, t.DepthUnit = nano(d.value.Value), d.depth
			if t.DepthUnit == unit.NoLength {
				t.DepthUnit = b.page.Depth
			}
			t.Line, t.Text = e.line, e.text
			if t.Depth < 0 {
				return bad("a depth cannot be negative")
			}
			if t.DepthUnit.Metres(t.Depth) > 1000 {
				return bad("a depth of %s %s is deeper than any lake that is fished", exact(t.Depth), t.DepthUnit)
			}
			if i == 0 {
				if err := b.addOxygen(&t, e); err != nil {
					return bad("%v", err)
				}
			}
			b.d.Readings = append(b.d.Readings, t)
		}
	}
	if e.bottom {
		last := b.d.Readings[len(b.d.Readings)-1]
		return b.setBottom(&e, nano(last.DepthUnit.Metres(last.Depth)))
	}
	return nil
}

// addOxygen gives a reading its oxygen; percent waits until the altitude is known.
// A number with no unit beside it is in the page's unit.
func (b *builder) addOxygen(r *profile.Reading, e entry) error {
	mgl, percent := e.oxygen, e.percent
	if mgl != nil && percent == nil && !mgl.stated && b.r.oxygenUnit() == "%" {
		mgl, percent = nil, mgl
	}
	switch {
	case mgl != nil && mgl.value.Value > maxMgL:
		return fmt.Errorf("%s mg/L of oxygen is more than water holds: write %% after it if it is percent", exact(mgl.value.Value))
	case mgl != nil:
		r.Oxygen = profile.Some(nano(mgl.value.Value))
		if percent != nil {
			b.r.note(e.line, "the oxygen is taken in mg/L, %s %% is not used", exact(percent.value.Value))
		}
	case percent != nil && percent.value.Value > maxPercent:
		return fmt.Errorf("%s %% of oxygen is more than water holds", exact(percent.value.Value))
	case percent != nil:
		b.percent = append(b.percent, percentReading{len(b.d.Readings), percent.value.Value, e.line})
	}
	return nil
}

// depths gives an entry's depths; the surface is depth zero in the page's unit.
func (b *builder) depths(e entry) []token {
	if e.surface {
		return []token{{depth: b.page.Depth}}
	}
	if len(e.depths) == 0 && len(e.free) == 1 && !e.free[0].approx {
		return e.free
	}
	return e.depths
}

// metres is a depth of the page in metres.
func (b *builder) metres(t token) float64 {
	u := t.depth
	if u == unit.NoLength {
		u = b.page.Depth
	}
	return nano(u.Metres(t.value.Value))
}

// bottom reads the ways in which a page says where the bottom is. done is true when
// the entry holds no temperature.
func (b *builder) bottom(e *entry) (done bool, err error) {
	deepest := 0.0
	for _, r := range b.d.Readings {
		deepest = math.Max(deepest, r.DepthUnit.Metres(r.Depth))
	}
	atBottom := func() { // the temperature was taken on the bottom of the header
		u := b.page.Depth
		e.depths = []token{{depth: u, value: unit.Number{Value: nano(u.From(b.d.Bottom.Value)), Step: 1}}}
	}
	switch {
	case len(e.depths) == 1 && len(e.temps) == 0 && !e.same:
		return true, b.setBottom(e, b.metres(e.depths[0]))
	case len(e.depths) == 0 && len(e.temps) > 0:
		if !b.d.Bottom.Known {
			return true, b.r.fail(e.line, shown(e.text)+": how deep is the bottom? Write \"bottom 24 ft 52\"")
		}
		atBottom()
	case len(e.depths) == 0 && len(e.free) == 1:
		asDepth := b.metres(e.free[0])
		depthFits := asDepth >= deepest-profile.SameDepthM && (!b.d.Bottom.Known || math.Abs(asDepth-b.d.Bottom.Value) < 0.6)
		tempFits := b.d.Bottom.Known && b.tempFits(e.free[0].value.Value)
		if depthFits && !b.d.Bottom.Known && b.tempFits(e.free[0].value.Value) {
			n, err := b.r.ask(Question{Line: e.line, Text: e.text, What: "the number beside the bottom",
				Choices: []string{"its depth", "its temperature, with the depth missing"}, Instead: "write \"bottom 24 ft\" or \"bottom 24 ft 52 F\""})
			if err != nil {
				return true, err
			}
			depthFits = n == 0
		}
		switch {
		case depthFits && !tempFits:
			return true, b.setBottom(e, asDepth)
		case tempFits && !depthFits:
			e.temps, e.free = e.free, nil
			atBottom()
		default:
			return true, b.r.fail(e.line, shown(e.text)+": write the bottom's depth and temperature with units, e.g. \"bottom 24 ft 52 F\"")
		}
	}
	return false, nil
}

func (b *builder) setBottom(e *entry, m float64) error {
	if m <= 0 || m > 1000 {
		return b.r.fail(e.line, shown(e.text)+": that is no lake's depth: write e.g. \"bottom 24 ft\"")
	}
	switch {
	case !b.d.Bottom.Known:
		b.d.Bottom = profile.Some(m)
	case math.Abs(b.d.Bottom.Value-m) <= 0.6:
	case slices.ContainsFunc(b.r.o.Flags, func(h Header) bool { return h.Key == "bottom" }):
		b.r.note(e.line, "--bottom is used, not the bottom of this line")
	default:
		return b.r.fail(e.line, shown(e.text)+": the page has another depth for the bottom: leave one of them out")
	}
	return nil
}

// tempFits: a value that could be the temperature below the readings so far.
func (b *builder) tempFits(v float64) bool {
	if len(b.d.Readings) == 0 {
		return b.page.Temp != unit.Fahrenheit || v > 30
	}
	last := b.d.Readings[len(b.d.Readings)-1]
	return v <= last.Temp+2 && v >= last.Temp-30 && (b.page.Temp == unit.Celsius || v > 30)
}

// temps gives an entry's temperatures as readings without depths: one, the middle
// of a range, or several taken at one depth. Two in different scales must agree.
func (b *builder) temps(e entry) ([]profile.Reading, error) {
	var out []profile.Reading
	for _, t := range e.temps {
		u := t.temp
		if u == unit.NoTemperature {
			u = b.page.Temp
			if len(out) > 0 && e.temps[0].temp != unit.NoTemperature {
				u = e.temps[0].temp
			}
		}
		r := profile.Reading{Temp: nano(t.value.Value), TempUnit: u, Step: t.value.Step}
		if t.approx {
			r.SpreadC = nano(u.DiffToC(map[unit.Temperature]float64{unit.Fahrenheit: 2, unit.Celsius: 1}[u]))
		}
		out = append(out, r)
	}
	if e.spread != nil && len(out) == 1 {
		u := e.spread.temp
		if u == unit.NoTemperature {
			u = out[0].TempUnit
		}
		out[0].SpreadC = nano(u.DiffToC(e.spread.value.Value))
	}
	if len(out) == 2 && e.between {
		a, c := out[0], out[1]
		a.SpreadC = nano(a.TempUnit.DiffToC((c.Temp - a.Temp) / 2))
		a.Temp = nano((a.Temp + c.Temp) / 2)
		a.Step = middleStep(a.Temp, math.Min(a.Step, c.Step))
		return []profile.Reading{a}, nil
	}
	if len(out) == 2 && out[0].TempUnit != out[1].TempUnit {
		a, c := out[0], out[1]
		if d := math.Abs(a.TempUnit.ToC(a.Temp) - c.TempUnit.ToC(c.Temp)); d > (a.TempUnit.DiffToC(a.Step)+c.TempUnit.DiffToC(c.Step))/2+0.05 {
			return nil, fmt.Errorf("%s %s and %s %s are not the same temperature: keep one", exact(a.Temp), a.TempUnit, exact(c.Temp), c.TempUnit)
		}
		if c.TempUnit == b.page.Temp {
			a = c
		}
		return []profile.Reading{a}, nil
	}
	return out, nil
}

// middleStep is the step in which the middle of a range would be written: that of
// its ends when the middle falls on it, else half a degree, or the next decimal.
func middleStep(middle, step float64) float64 {
	switch n := middle / step; {
	case math.Abs(n-math.Round(n)) < 1e-6:
		return step
	case step >= 1, step == 0.5, step == 0.25, step == 0.125:
		return step / 2
	}
	return step / 10
}

// oxygen turns percent of saturation into mg/L, by the water's own temperature and
// the lake's altitude.
func (b *builder) oxygen() error {
	pressure := water.AirPressure(b.d.Altitude.Or(0))
	for _, p := range b.percent {
		r := &b.d.Readings[p.index]
		mgl := math.Round(water.OxygenFromPercent(p.value, r.TempC, pressure)*1000) / 1000
		if math.IsNaN(mgl) || math.IsInf(mgl, 0) {
			continue
		}
		if mgl > maxMgL {
			return b.r.fail(p.line, fmt.Sprintf("%s %% of oxygen in water of %s C is more than water holds", exact(p.value), exact(math.Round(r.TempC*10)/10)))
		}
		r.Oxygen = profile.Some(mgl)
		at := "at sea level: add altitude: for a high lake"
		if b.d.Altitude.Known {
			at = "at the lake's altitude"
		}
		b.r.note(p.line, "oxygen of %s %% read as %s mg/L (%s)", exact(p.value), exact(math.Round(mgl*10)/10), at)
	}
	return nil
}
