package notebook

import (
	"errors"
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
			parts = append(parts, "the doubt about the depth is left aside")
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

// refuse is the error of an entry that cannot be read.
func (b *builder) refuse(e *entry, text string) error {
	return b.r.fail(e.line, shown(e.text)+": "+text)
}

// entry makes the readings of one entry.
func (b *builder) entry(e entry) error {
	if e.bottom {
		if done, err := b.bottom(&e); done || err != nil {
			return err
		}
	}
	depths := b.depths(e)
	if err := b.unreadable(&e, depths); err != nil || e.missing {
		return err
	}
	temps, err := b.tempsOrSame(&e, depths)
	if err != nil || temps == nil {
		return err
	}
	if e.same0 && len(b.d.Readings) == 0 {
		depths = append([]token{{depth: depths[0].depth}}, depths...)
	}
	for _, d := range depths {
		for i, t := range temps {
			if err := b.add(&e, d, t, i == 0); err != nil {
				return b.r.failed(e.line, shown(e.text), err)
			}
		}
	}
	if e.bottom {
		last := b.d.Readings[len(b.d.Readings)-1]
		return b.setBottom(&e, rounded(last.DepthUnit.Metres(last.Depth)))
	}
	return nil
}

// tempsOrSame gives an entry's temperatures, or that of the reading above where it is the
// same; nil where no reading was taken.
func (b *builder) tempsOrSame(e *entry, depths []token) ([]profile.Reading, error) {
	temps, err := b.temps(*e)
	switch {
	case err != nil:
		return nil, b.r.failed(e.line, shown(e.text), err)
	case len(temps) > 0:
		return temps, nil
	case !e.same:
		if is, err := b.depthAlone(*e, depths); err != nil || is != sameAsAbove {
			return nil, err
		}
	}
	if len(b.d.Readings) == 0 {
		return nil, b.refuse(e, "the same as above, but there is nothing above")
	}
	same := b.d.Readings[len(b.d.Readings)-1]
	same.Oxygen = profile.Optional{}
	return []profile.Reading{same}, nil
}

// unreadable refuses an entry whose depth or oxygen is none.
func (b *builder) unreadable(e *entry, depths []token) error {
	switch {
	case len(depths) == 0 && len(e.temps) > 0:
		return b.refuse(e, "a temperature with no depth: write e.g. \"15: 64\"")
	case len(depths) == 0:
		return b.refuse(e, "one number alone: write a depth and a temperature, e.g. \"15: 64\"")
	case slices.ContainsFunc(e.depths, func(t token) bool { return t.depth == Pull }):
		return b.refuse(e, "only you know how long a pull is: measure one and write the depths in feet or metres")
	}
	for _, o := range []*token{e.oxygen, e.percent} {
		if o != nil && o.value.Value < 0 {
			return b.refuse(e, "oxygen cannot be negative")
		}
	}
	return nil
}

// add adds a reading of a depth and a temperature; the first of an entry has its oxygen.
func (b *builder) add(e *entry, depth token, r profile.Reading, first bool) error {
	r.Depth, r.DepthUnit = rounded(depth.value.Value), depth.depth
	if r.DepthUnit == unit.NoLength {
		r.DepthUnit = b.page.Depth
	}
	r.Line, r.Text = e.line, e.text
	switch {
	case r.Depth < 0:
		return errors.New("a depth cannot be negative")
	case r.DepthUnit.Metres(r.Depth) > MaxDepthM:
		return fmt.Errorf("a depth of %s %s is deeper than any lake that is fished", exact(r.Depth), r.DepthUnit)
	}
	if first {
		if err := b.addOxygen(&r, *e); err != nil {
			return err
		}
	}
	b.d.Readings = append(b.d.Readings, r)
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
	case mgl != nil && mgl.value.Value > MaxMgL:
		return fmt.Errorf("%s mg/L of oxygen is more than water holds: write %% after it if it is percent", exact(mgl.value.Value))
	case mgl != nil:
		r.Oxygen = profile.Some(rounded(mgl.value.Value))
		if percent != nil {
			b.r.note(e.line, "the oxygen is taken in mg/L, %s %% is not used", exact(percent.value.Value))
		}
	case percent != nil && percent.value.Value > MaxPercent:
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
	return rounded(u.Metres(t.value.Value))
}

// bottom reads the ways in which a page says where the bottom is. done is true when
// the entry holds no temperature.
func (b *builder) bottom(e *entry) (done bool, err error) {
	switch {
	case len(e.depths) == 1 && len(e.temps) == 0 && !e.same:
		return true, b.setBottom(e, b.metres(e.depths[0]))
	case len(e.depths) == 0 && len(e.temps) > 0:
		if !b.d.Bottom.Known {
			return true, b.refuse(e, "how deep is the bottom? Write \"bottom 24 ft 52\"")
		}
		b.atBottom(e)
	case len(e.depths) == 0 && len(e.free) == 1:
		return b.bottomNumber(e)
	}
	return false, nil
}

// atBottom gives a temperature that was taken on the bottom the depth of the header.
func (b *builder) atBottom(e *entry) {
	u := b.page.Depth
	e.depths = []token{{depth: u, value: unit.Number{Value: rounded(u.From(b.d.Bottom.Value)), Step: 1}}}
}

// bottomNumber decides whether the one number beside the bottom is its depth or its
// temperature.
func (b *builder) bottomNumber(e *entry) (done bool, err error) {
	deepest := 0.0
	for _, r := range b.d.Readings {
		deepest = math.Max(deepest, r.DepthUnit.Metres(r.Depth))
	}
	asDepth, known := b.metres(e.free[0]), b.d.Bottom.Known
	depthFits := asDepth >= deepest-profile.SameDepthM && (!known || math.Abs(asDepth-b.d.Bottom.Value) < 0.6)
	tempFits := b.tempFits(e.free[0].value.Value)
	if depthFits && !known && tempFits {
		n, err := b.r.ask(Question{Line: e.line, Text: e.text, What: "the number beside the bottom",
			Choices: []string{"its depth", "its temperature, with the depth missing"}, Instead: "write \"bottom 24 ft\" or \"bottom 24 ft 52 F\""})
		if err != nil {
			return true, err
		}
		depthFits = n == 0
	}
	switch tempFits = tempFits && known; {
	case depthFits && !tempFits:
		return true, b.setBottom(e, asDepth)
	case tempFits && !depthFits:
		e.temps, e.free = e.free, nil
		b.atBottom(e)
		return false, nil
	}
	return true, b.refuse(e, "write the bottom's depth and temperature with units, e.g. \"bottom 24 ft 52 F\"")
}

func (b *builder) setBottom(e *entry, m float64) error {
	if m <= 0 || m > MaxDepthM {
		return b.refuse(e, "that is not the depth of a lake: write e.g. \"bottom 24 ft\"")
	}
	switch {
	case !b.d.Bottom.Known, b.r.typed: // what is typed now corrects what was noted before
		b.d.Bottom = profile.Some(m)
	case math.Abs(b.d.Bottom.Value-m) <= 0.6:
	case slices.ContainsFunc(b.r.o.Flags, func(h Header) bool { return h.Key == "bottom" }):
		b.r.note(e.line, "--bottom is used, not the bottom of this line")
	default:
		return b.refuse(e, "the page has another depth for the bottom: leave one of them out")
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
	for i, t := range e.temps {
		u := t.temp
		if u == unit.NoTemperature && i > 0 {
			u = e.temps[0].temp
		}
		if u == unit.NoTemperature {
			u = b.page.Temp
		}
		r := profile.Reading{Temp: rounded(t.value.Value), TempUnit: u, Step: t.value.Step}
		if t.approx {
			r.SpreadC = rounded(u.DiffToC(aboutDegrees[u]))
		}
		out = append(out, r)
	}
	if e.spread != nil && len(out) == 1 {
		u := e.spread.temp
		if u == unit.NoTemperature {
			u = out[0].TempUnit
		}
		out[0].SpreadC = rounded(u.DiffToC(e.spread.value.Value))
	}
	switch {
	case len(out) == 2 && e.between:
		return []profile.Reading{middle(out[0], out[1])}, nil
	case len(out) == 2 && out[0].TempUnit != out[1].TempUnit:
		return b.twoScales(out[0], out[1])
	}
	return out, nil
}

// aboutDegrees is how far off a temperature is taken to be that was called about right, on
// its own scale.
var aboutDegrees = map[unit.Temperature]float64{unit.Fahrenheit: 2, unit.Celsius: 1}

// middle is the middle of a range of temperatures, with half of it as the spread.
func middle(low, high profile.Reading) profile.Reading {
	m := low
	m.SpreadC = rounded(low.TempUnit.DiffToC((high.Temp - low.Temp) / 2))
	m.Temp = rounded((low.Temp + high.Temp) / 2)
	m.Step = middleStep(m.Temp, math.Min(low.Step, high.Step))
	return m
}

// twoScales keeps the one of two temperatures that is on the page's scale; as they were
// written, they must be the same.
func (b *builder) twoScales(x, y profile.Reading) ([]profile.Reading, error) {
	apart := math.Abs(x.TempUnit.ToC(x.Temp) - y.TempUnit.ToC(y.Temp))
	if steps := x.TempUnit.DiffToC(x.Step) + y.TempUnit.DiffToC(y.Step); apart > steps/2+0.05 {
		return nil, fmt.Errorf("%s %s and %s %s are not the same temperature: keep one", exact(x.Temp), x.TempUnit, exact(y.Temp), y.TempUnit)
	}
	if y.TempUnit == b.page.Temp {
		x = y
	}
	return []profile.Reading{x}, nil
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
		if mgl > MaxMgL {
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
