package exchange

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
	"coldseam/profile/water"
)

// builder gathers rows into drops.
type builder struct {
	in    *reader
	casts []*cast
	byID  map[id]*cast
	last  *cast
	when  dated // as last read
}

// dated are the cells of a date and a time, and what they say.
type dated struct {
	cells       [2]string
	date, clock string
}

// id is what tells a drop from others. own is the line of a row that is a drop of its own.
type id struct {
	drop, water, spot, date, clock string
	own                            int
}

// cast is a drop while its rows are read.
type cast struct {
	id      id
	line    int // its first row
	d       profile.Drop
	noted   map[string]noted
	remarks map[string]bool // cells of notes, taken
	percent []percentOf
	waiting []oxygenOf
}

type noted struct {
	text string
	line int
}

type percentOf struct {
	index, line int
	value       float64
}

// mostReadings bounds the readings of a drop: its page must stay one that can be read.
const mostReadings = 10_000

// cast finds the drop of a row, or begins it, and takes what the row says of it.
func (b *builder) cast(l line, own int) (*cast, error) {
	drop := l.of(ofDrop)
	profile := l.of(ofProfile)
	if drop == "" {
		drop = profile
	}
	k := id{drop: drop, water: l.key("water"), spot: l.key("spot"), own: own}
	if k.water == "" && profile != "" && !b.in.hasKey("water") {
		k.water = profile
		b.in.tell("no column names the lake: the profile's name is taken as the water's")
	}
	var err error
	if when := [2]string{l.of(ofDate), l.of(ofTime)}; when != b.when.cells { // mostly that of the row before
		if k.date, k.clock, err = dateOf(when[0], when[1]); err != nil {
			return nil, err
		}
		b.when = dated{when, k.date, k.clock}
	}
	k.date, k.clock = b.when.date, b.when.clock
	if k == (id{}) && b.last != nil { // what stands above holds on
		return b.last, b.last.take(l)
	}
	return b.begin(k, l)
}

// dated finds or begins the drop of a column that is named by its date.
func (b *builder) dated(l line, date string) (*cast, error) {
	day, clock, _ := strings.Cut(date, " ")
	return b.begin(id{drop: l.of(ofDrop), water: l.key("water"), spot: l.key("spot"), date: day, clock: clock}, l)
}

func (b *builder) begin(k id, l line) (*cast, error) {
	key := k
	if k.drop != "" {
		key = id{drop: k.drop, own: k.own}
	}
	c := b.byID[key]
	if c == nil {
		c = &cast{id: k, line: b.in.line, noted: map[string]noted{}, remarks: map[string]bool{}}
		if b.byID == nil {
			b.byID = map[id]*cast{}
		}
		b.byID[key] = c
		b.casts = append(b.casts, c)
		if k.water != "" && l.key("water") == "" {
			if err := c.note("water", k.water, b.in.line, unit.None); err != nil {
				return nil, err
			}
		}
		if date := strings.TrimSpace(k.date + " " + k.clock); date != "" {
			if err := notebook.Set(&c.d, "date", date); err != nil {
				return nil, err
			}
		}
	} else if k.date != c.id.date {
		return nil, fmt.Errorf("the drop %s is of %s here and of %s on line %d", quote(k.drop), whenOf(k), whenOf(c.id), c.line)
	} else if k.clock != c.id.clock {
		b.in.skip("the time of a drop's first row counts, that of a later one is passed over")
	}
	b.last = c
	return c, c.take(l)
}

func whenOf(k id) string {
	if k.date == "" {
		return "no date"
	}
	return strings.TrimSpace(k.date + " " + k.clock)
}

// dateOf puts the cells of a date and a time together, and parts them anew.
func dateOf(date, clock string) (string, string, error) {
	if missing(date) {
		if !missing(clock) {
			return "", "", fmt.Errorf("the time %s stands without a date", quote(clock))
		}
		return "", "", nil
	}
	text, err := notebook.ParseDate(date)
	if notebook.TwoDates(err) {
		err = fmt.Errorf("%w; in a spreadsheet, show the whole column so", err)
	}
	if err != nil {
		return "", "", err
	}
	day, hour, _ := strings.Cut(text, " ")
	if missing(clock) {
		return day, hour, nil
	}
	if hour != "" && hour != "00:00" { // spreadsheets give a day a midnight
		return "", "", fmt.Errorf("the date %s has a time, and so has its row: %s", quote(date), quote(clock))
	}
	if text, err = notebook.ParseDate(day + " " + clock); err != nil {
		return "", "", fmt.Errorf("%s is not a time of day: write e.g. 14:20", quote(clock))
	}
	day, hour, _ = strings.Cut(text, " ")
	return day, hour, nil
}

func (in *reader) hasKey(key string) bool {
	for _, c := range in.columns {
		if c.what == ofKey && c.key == key {
			return true
		}
	}
	return false
}

// key is the cell of a header key's column, "" where there is none.
func (l line) key(key string) string {
	for i, c := range l.columns {
		if c.what == ofKey && c.key == key {
			return l.cells[i]
		}
	}
	return ""
}

// take takes the header keys of a row. What an earlier row of the drop said must be the
// same; remarks are gathered.
func (c *cast) take(l line) error {
	var usual unit.Length
	for _, col := range l.columns {
		if col.what == ofDepth {
			usual = first(col.unit, l.unit(ofDepthUnit))
		}
	}
	for i, col := range l.columns {
		text := l.cells[i]
		if col.what != ofKey || text == "" {
			continue
		}
		if col.unit != unit.None {
			if n, rest, ok := number(text, true); ok && rest == "" {
				text = fmt.Sprint(unit.Digits(n.Value, 9), " ", col.sign)
			}
		}
		for j, of := range l.columns {
			if of.what == ofKeyUnit && of.key == col.key && l.cells[j] != "" {
				text += " " + l.cells[j]
			}
		}
		if err := c.note(col.key, text, l.number, usual); err != nil {
			return fmt.Errorf("%s: %w", col.name, err)
		}
	}
	return nil
}

// note takes the value of a header key; a bare length is in the unit of the depths.
func (c *cast) note(key, text string, at int, usual unit.Length) error {
	if notebook.Several(key) {
		if c.remarks[key+"\n"+text] {
			return nil
		}
		c.remarks[key+"\n"+text] = true
		for _, one := range strings.Split(text, "\n") {
			if err := notebook.Set(&c.d, key, one); err != nil {
				return err
			}
		}
		return nil
	}
	if was, ok := c.noted[key]; ok {
		if was.text != text {
			return fmt.Errorf("%s here and %s on line %d, in one drop: give each drop a date, time or site of its own", quote(text), quote(was.text), was.line)
		}
		return nil
	}
	err := notebook.Set(&c.d, key, text)
	if err != nil && usual != unit.NoLength && bare(text) {
		if notebook.Set(&c.d, key, text+" "+usual.String()) == nil {
			err = nil
		}
	}
	if err != nil && missing(text) {
		return nil
	}
	c.noted[key] = noted{text, at}
	return err
}

func bare(text string) bool {
	_, rest, ok := number(text, true)
	return ok && rest == ""
}

// add adds a reading and the oxygen at its depth.
func (b *builder) add(c *cast, r profile.Reading, oxygen, percent cell) error {
	if len(c.d.Readings) == mostReadings {
		return fmt.Errorf("more than %d readings in one drop: a column drop, or dates and times, parts them", mostReadings)
	}
	if oxygen.known && oxygen.col.what == ofPercent || oxygen.known && oxygen.col.unit == unit.None && c.d.OxygenUnit == "%" {
		oxygen, percent = cell{}, oxygen
	}
	switch {
	case oxygen.known && oxygen.value > notebook.MaxMgL:
		return fmt.Errorf("%s mg/L of oxygen is more than water holds: name the column do_pct if it is percent", unit.Exact(oxygen.value))
	case percent.known && percent.value > notebook.MaxPercent:
		return fmt.Errorf("%s %% of oxygen is more than water holds", unit.Exact(percent.value))
	case oxygen.known:
		if r.Oxygen = profile.Some(oxygen.value); oxygen.col.unit == unit.None {
			b.in.skip("oxygen without a unit is read as mg/L")
		}
		if percent.known {
			b.in.skip("oxygen is taken in mg/L, the percent beside it are not used")
		}
	case percent.known:
		c.percent = append(c.percent, percentOf{len(c.d.Readings), b.in.line, percent.value})
	}
	c.d.Readings = append(c.d.Readings, r)
	return nil
}

// drops settles what only all rows together can settle.
func (b *builder) drops() ([]Source, error) {
	b.joinTimes()
	for _, c := range b.casts {
		if err := c.settle(b.in); err != nil {
			return nil, err
		}
	}
	if err := b.scale(); err != nil {
		return nil, err
	}
	var out []Source
	for _, c := range b.casts {
		if len(c.d.Readings) == 0 && len(c.noted) == 0 && c.d.Date == "" && len(c.remarks) == 0 {
			continue
		}
		if !b.in.hasKey("units") && len(c.d.Readings) > 0 {
			c.d.Units = unit.System{Depth: c.d.Readings[0].DepthUnit, Temp: c.d.Readings[0].TempUnit}
			switch c.d.Units.Depth {
			case unit.Inch:
				c.d.Units.Depth = unit.Foot
			case unit.Millimetre:
				c.d.Units.Depth = unit.Metre
			}
		}
		c.d.Correct()
		if err := c.oxygen(b.in); err != nil {
			return nil, err
		}
		out = append(out, Source{Page: b.in.name, Nth: len(out) + 1, Drop: c.d, ID: c.id.drop})
	}
	return out, nil
}

// oxygen turns percent of saturation into mg/L, by the water's temperature and the lake's
// altitude.
func (c *cast) oxygen(in *reader) error {
	for _, p := range c.percent {
		r := &c.d.Readings[p.index]
		mgl := unit.RoundTo(water.OxygenFromPercent(p.value, r.TempC, water.AirPressure(c.d.Altitude.Or(0))), 3)
		switch {
		case math.IsNaN(mgl) || math.IsInf(mgl, 0):
			in.line = p.line
			in.skip("oxygen in percent is passed over at a temperature that no lake has")
			continue
		case mgl > notebook.MaxMgL:
			return in.fail(p.line, fmt.Sprintf("%s %% of oxygen in water of %s C is more than water holds", unit.Exact(p.value), unit.Digits(r.TempC, 1)))
		}
		r.Oxygen = profile.Some(mgl)
		in.line = p.line
		if c.d.Altitude.Known {
			in.skip("oxygen in percent is turned into mg/L at the lake's altitude")
		} else {
			in.skip("oxygen in percent is turned into mg/L at sea level: add a column altitude_m for a high lake")
		}
	}
	return nil
}

// scale settles the scale of temperatures without one, by the warmest of the whole file as
// on a page: no lake is over 40 C, and none that is fished is all under 31 F.
func (b *builder) scale() error {
	warmest, at := math.Inf(-1), 0
	for _, c := range b.casts {
		for i := range c.d.Readings {
			r := &c.d.Readings[i]
			if r.TempUnit == unit.NoTemperature {
				r.TempUnit = c.d.Units.Temp
			}
			if r.TempUnit == unit.NoTemperature && r.Temp > warmest {
				warmest, at = r.Temp, r.Line
			}
		}
	}
	var scale unit.Temperature
	switch {
	case at == 0:
		return nil
	case warmest > 40:
		scale = unit.Fahrenheit
	case warmest <= 31:
		scale = unit.Celsius
	default:
		return b.in.fail(at, fmt.Sprintf("the temperatures' scale is not stated, and the warmest, %s, may be Fahrenheit or Celsius: name the column temp_f or temp_c", unit.Exact(warmest)))
	}
	for _, c := range b.casts {
		for i := range c.d.Readings {
			if r := &c.d.Readings[i]; r.TempUnit == unit.NoTemperature {
				r.TempUnit = scale
			}
		}
	}
	b.in.note(0, "temperatures read as %s: the warmest is %s", map[unit.Unit]string{unit.Celsius: "Celsius", unit.Fahrenheit: "Fahrenheit"}[scale], unit.Exact(warmest))
	return nil
}
