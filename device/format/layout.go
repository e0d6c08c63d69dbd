package format

import (
	"slices"
	"strings"
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
	gives      Quantity // the depth, the temperature or the time, itself or found from it
	called     string   // in a message
	needsUnit  string   // what to write, where a unit is needed
}{
	Skip:     {word: "skip", also: "ignore"},
	Depth:    {"depth", "z", Depth, "the depth", "m, ft, cm, mm or in"},
	Temp:     {"temp", "temperature", Temp, "the temperature", "C, F or K, or C/100 where 1834 means 18.34"},
	Pressure: {"pressure", "absolute", Depth, "the pressure", "Pa, hPa, mbar, kPa, bar or psi"},
	Gauge:    {"gauge", "gage", Depth, "the pressure", "Pa, hPa, mbar, kPa, bar or psi"},
	Ohms:     {"ohms", "ohm", Temp, "the resistance", ""},
	Word:     {"word", "hex", Temp, "the temperature", ""},
	Time:     {"time", "clock", Time, "the time", "ms, s, us or min"},
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
	i, _ := l.giving(Depth)
	return i >= 0
}

// giving is the part that gives the depth or the temperature, -1 for none.
func (l Layout) giving(q Quantity) (int, Part) {
	for i, p := range l.Parts {
		if int(p.Quantity) < len(quantities) && quantities[p.Quantity].gives == q {
			return i, p
		}
	}
	return -1, Part{}
}

func (l Layout) has(q Quantity) bool {
	return slices.ContainsFunc(l.Parts, func(p Part) bool { return p.Quantity == q })
}
