package format

import (
	"bytes"
	"strings"
)

// meaning is what a name says about its value.
type meaning struct {
	what   Quantity
	sure   uint8 // 0 nothing, 1 by a single letter or a unit alone, 2 by a word
	unit   unitID
	beside bool // of something else than the water at the probe, so sure that it is skipped
}

// besideWords mark a value that is not of the water at the probe (common practice:
// names are free text).
var besideWords = []string{"air", "atm", "atmos", "baro", "barometer", "ambient", "outside",
	"inside", "indoor", "outdoor", "cpu", "mcu", "chip", "board", "battery", "batt", "vbat", "room",
	"bottom", "target", "setpoint", "humidity", "hum", "altitude"}

var timeWords = []string{"time", "timestamp", "date", "datetime", "clock", "millis", "uptime",
	"epoch", "unix", "utc", "seconds", "secs"}

// meaningOf judges a name such as "Depth_m", "bufferTemp", "Temp (F)" or "t".
func meaningOf(name []byte) meaning {
	words, u := nameWords(name)
	has := func(list ...string) bool {
		for _, w := range words {
			for _, l := range list {
				if w == l {
					return true
				}
			}
		}
		return false
	}
	within := func(part string) bool {
		for _, w := range words {
			if strings.Contains(w, part) {
				return true
			}
		}
		return false
	}
	if has(besideWords...) || within("airtemp") {
		return meaning{what: Skip, sure: 2, beside: true}
	}
	var what Quantity
	families := 0
	add := func(w Quantity, yes bool) {
		if yes {
			what = w
			families++
		}
	}
	pressure := within("pressure") || has("press", "pres")
	depth := within("depth") || has("dep")
	gauge := has("gauge", "gage") || pressure && depth
	add(Gauge, gauge)
	add(Pressure, pressure && !gauge)
	add(Depth, depth && !gauge)
	add(Temp, within("temp") && !within("attempt") && !within("template") || has("ds"))
	add(Ohms, within("resistance") || has("res"))
	add(Time, has(timeWords...))
	add(Word, has("word", "scratchpad"))
	if families > 1 {
		return meaning{}
	}
	if families == 1 {
		return fitUnit(meaning{what: what, sure: 2, unit: u})
	}
	if len(words) == 1 {
		for _, l := range []struct {
			letter string
			what   Quantity
		}{{"t", Temp}, {"d", Depth}, {"z", Depth}, {"p", Pressure}, {"r", Ohms}} {
			if words[0] == l.letter {
				return fitUnit(meaning{what: l.what, sure: 1, unit: u})
			}
		}
	}
	if len(words) == 0 && u != noUnit && u != foreign {
		return meaning{what: units[u].quantity, sure: 1, unit: u}
	}
	return meaning{}
}

// fitUnit drops a unit that does not belong, and lets a unit of time win over a letter.
func fitUnit(m meaning) meaning {
	of := units[m.unit].quantity
	switch {
	case m.unit == noUnit || m.unit == foreign:
		m.unit = noUnit
	case of == m.what || of == Pressure && m.what == Gauge:
	case m.sure == 1:
		m.what = of
	default:
		m.unit = noUnit
	}
	return m
}

// nameWords splits a name into its words in lower case, without digits, and takes a
// unit out that stands behind them.
func nameWords(name []byte) (words []string, u unitID) {
	chunks := bytes.FieldsFunc(name, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '%')
	})
	for i, c := range chunks {
		if v := unitNamed(c); v != noUnit && (i > 0 || len(chunks) == 1) {
			u = v
			continue
		}
		for k, piece := range pieces(c) {
			if isDigit(piece[0]) {
				continue
			}
			if v := unitNamed(piece); v != noUnit && k > 0 {
				u = v
				continue
			}
			w := strings.ToLower(string(piece))
			for _, stem := range []string{"depth", "temp", "pressure"} {
				rest, ok := strings.CutPrefix(w, stem)
				if v := unitNamed([]byte(rest)); ok && v != noUnit {
					w, u = stem, v
				}
			}
			words = append(words, w)
		}
	}
	return words, u
}

// pieces splits "bufferTemp" and "temp2" where the case or the kind of character
// changes, but never inside hPa or kPa.
func pieces(c []byte) (out [][]byte) {
	start := 0
	for j := 1; j < len(c); j++ {
		camel := isLower(c[j-1]) && isUpper(c[j])
		if camel && string(c[j:]) == "Pa" && (c[j-1] == 'h' || c[j-1] == 'k') {
			if j-1 > start {
				out = append(out, c[start:j-1])
			}
			return append(out, c[j-1:])
		}
		if camel || isDigit(c[j]) != isDigit(c[j-1]) {
			out = append(out, c[start:j])
			start = j
		}
	}
	return append(out, c[start:])
}
