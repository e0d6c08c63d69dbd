package format

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// Quantity is what one value of a line measures.
type Quantity uint8

// The things a value can be.
const (
	Skip     Quantity = iota // nothing of use
	Depth                    // depth of the probe
	Temp                     // temperature of the water
	Pressure                 // absolute pressure, the air's in it
	Gauge                    // pressure over the air's
	Ohms                     // resistance of a thermistor
	Word                     // temperature register or scratchpad of a DS18B20 in hexadecimal
	Time                     // time that counts up
)

var quantities = [...]struct {
	word, also string
	needsUnit  string // what to write, where a unit is needed
}{
	Skip:     {"skip", "ignore", ""},
	Depth:    {"depth", "z", "m, ft, cm, mm or in"},
	Temp:     {"temp", "temperature", "C, F or K, or C/100 where 1834 means 18.34"},
	Pressure: {"pressure", "absolute", "Pa, hPa, mbar, kPa, bar or psi"},
	Gauge:    {"gauge", "gage", "Pa, hPa, mbar, kPa, bar or psi"},
	Ohms:     {"ohms", "ohm", ""},
	Word:     {"word", "hex", ""},
	Time:     {"time", "clock", "ms, s, us or min"},
}

// String is the word of the settings.
func (q Quantity) String() string {
	if int(q) < len(quantities) {
		return quantities[q].word
	}
	return "?"
}

// Part is one value of a line.
type Part struct {
	Name     string // how the line names it, in any case; "" by its place among the line's values without a name
	Quantity Quantity
	Unit     string // as it is printed by String of a Layout: "m", "C/100"; "" for Skip, Word and ohms
}

// Layout says what the values of a line are. The zero Layout is that of a line with
// NMEA sentences only.
type Layout struct{ Parts []Part }

const (
	maxParts   = 32
	maxName    = 60
	maxDivisor = 100000
	// nmeaWord is the text of a Layout without parts.
	nmeaWord = "nmea"
)

// Parse reads a layout from the text of the settings or of a flag: parts divided by
// commas, each "[name:] what [unit]". Without a name the parts are the line's values in
// their order ("skip, depth ft, temp F"); with names they may come in any order and on
// several lines ("D: depth m, T: temp C"). A unit divided by a whole number is of
// numbers sent without their point ("temp C/100"). "nmea" is a Layout without parts. There
// must be one temperature (temp, word or ohms) and at most one depth, pressure or gauge.
// The error is one line that says what to write.
func Parse(text string) (Layout, error) {
	if strings.EqualFold(strings.TrimSpace(text), nmeaWord) {
		return Layout{}, nil
	}
	var l Layout
	for i, t := range strings.Split(text, ",") {
		if i == maxParts {
			return Layout{}, fmt.Errorf("a layout has at most %d parts", maxParts)
		}
		p, err := parsePart(t)
		if err != nil {
			return Layout{}, err
		}
		l.Parts = append(l.Parts, p)
	}
	if err := l.check(); err != nil {
		return Layout{}, err
	}
	return l, nil
}

func parsePart(t string) (Part, error) {
	var p Part
	name, rest, named := strings.Cut(t, ":")
	if !named {
		name, rest = "", t
	}
	if p.Name = strings.TrimSpace(name); named && p.Name == "" {
		return p, fmt.Errorf("no name before the colon in %s", plain.Quote(t, maxName))
	}
	words := strings.Fields(rest)
	if len(words) == 0 {
		return p, fmt.Errorf("an empty part in the layout: write skip for a value that is not needed")
	}
	found := false
	for i, w := range quantities {
		if strings.EqualFold(words[0], w.word) || strings.EqualFold(words[0], w.also) {
			p.Quantity, found = Quantity(i), true
		}
	}
	if !found {
		return p, fmt.Errorf("%s is no part of a layout: write depth, temp, pressure, gauge, ohms, word, time or skip", plain.Quote(words[0], maxName))
	}
	p.Unit = strings.Join(words[1:], "")
	if u, div, ok := unitText(p.Unit); ok {
		p.Unit = unitString(u, div)
	}
	if p.Quantity == Ohms && p.Unit == unit.Ohm.String() {
		p.Unit = ""
	}
	return p, nil
}

// unitText reads "C", "C/100" or nothing.
func unitText(s string) (u unit.Unit, div float64, ok bool) {
	if s == "" {
		return unit.None, 1, true
	}
	name, over, divided := strings.Cut(s, "/")
	div = 1
	if divided {
		n, err := strconv.Atoi(over)
		if err != nil || n < 2 || n > maxDivisor || over[0] == '+' {
			return unit.None, 0, false
		}
		div = float64(n)
	}
	u = unitNamed([]byte(name))
	return u, div, u != unit.None && u != unit.Other
}

func unitString(u unit.Unit, div float64) string {
	if u == unit.None {
		return ""
	}
	if div == 1 {
		return u.String()
	}
	return u.String() + "/" + strconv.Itoa(int(div))
}

// check reports the first thing that is wrong with a layout of at least one part.
func (l Layout) check() error {
	if len(l.Parts) > maxParts {
		return fmt.Errorf("a layout has at most %d parts", maxParts)
	}
	var temps, depths, times int
	names := map[string]bool{}
	for _, p := range l.Parts {
		if int(p.Quantity) >= len(quantities) {
			return fmt.Errorf("a part of the layout that is not known")
		}
		if !validName(p.Name) {
			return fmt.Errorf("%s cannot be a name: no comma, no colon, at most %d bytes", plain.Quote(p.Name, maxName), maxName)
		}
		if key := strings.ToLower(p.Name); p.Name != "" {
			if names[key] {
				return fmt.Errorf("the name %s stands twice in the layout", plain.Quote(p.Name, maxName))
			}
			names[key] = true
		}
		if err := p.checkUnit(); err != nil {
			return err
		}
		switch p.Quantity {
		case Temp, Ohms, Word:
			temps++
		case Depth, Pressure, Gauge:
			depths++
		case Time:
			times++
		}
	}
	switch {
	case temps == 0:
		return fmt.Errorf("no temperature in the layout: add temp with its unit, word or ohms")
	case temps > 1:
		return fmt.Errorf("two temperatures in the layout: leave one of temp, word and ohms, and write skip for the other")
	case depths > 1:
		return fmt.Errorf("two depths in the layout: leave one of depth, pressure and gauge, and write skip for the other")
	case times > 1:
		return fmt.Errorf("two times in the layout: write skip for one")
	}
	return nil
}

func (p Part) checkUnit() error {
	need := quantities[p.Quantity].needsUnit
	u, div, ok := unitText(p.Unit)
	switch {
	case ok && p.Unit != unitString(u, div), !ok && need == "":
		return fmt.Errorf("%s is not a unit of %v", plain.Quote(p.Unit, maxName), p.Quantity)
	case !ok:
		return fmt.Errorf("%s is not a unit of %v: write %s", plain.Quote(p.Unit, maxName), p.Quantity, need)
	case u == unit.None && need != "":
		return fmt.Errorf("%v needs its unit: write %s", p.Quantity, need)
	case u == unit.None:
		return nil
	}
	want := p.Quantity
	if want == Gauge {
		want = Pressure
	}
	if quantityOf(u) != want || want == Skip {
		if need == "" {
			need = "none"
		}
		return fmt.Errorf("%s is not a unit of %v: write %s", plain.Quote(p.Unit, maxName), p.Quantity, need)
	}
	return nil
}

// validName: a name can be written in a layout and printed.
func validName(s string) bool {
	if len(s) > maxName || strings.TrimSpace(s) != s || !utf8.ValidString(s) {
		return false
	}
	for _, c := range s {
		if c == ',' || c == ':' || !plain.Graphic(c) {
			return false
		}
	}
	return true
}

// String is the text from which Parse makes the Layout again.
func (l Layout) String() string {
	if len(l.Parts) == 0 {
		return nmeaWord
	}
	var b strings.Builder
	for i, p := range l.Parts {
		if i > 0 {
			b.WriteString(", ")
		}
		if p.Name != "" {
			b.WriteString(p.Name + ": ")
		}
		b.WriteString(p.Quantity.String())
		if p.Unit != "" {
			b.WriteString(" " + p.Unit)
		}
	}
	return b.String()
}

// StatesDepth reports whether the lines state the probe's depth, or a pressure from
// which it follows. Of NMEA sentences only the lines themselves tell.
func (l Layout) StatesDepth() bool {
	i, _ := l.find(Depth, Pressure, Gauge)
	return i >= 0
}

// find is the part that is one of some quantities, -1 for none.
func (l Layout) find(any ...Quantity) (int, Part) {
	for i, p := range l.Parts {
		if slices.Contains(any, p.Quantity) {
			return i, p
		}
	}
	return -1, Part{}
}

func (l Layout) has(q Quantity) bool {
	i, _ := l.find(q)
	return i >= 0
}
