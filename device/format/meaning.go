package format

import (
	"bytes"
	"slices"
	"strings"

	"coldseam/profile/unit"
)

// meaning is what a name says about its value.
type meaning struct {
	quantity Quantity // Skip where sure is 0
	sure     uint8    // 0 nothing, 1 by a single letter or a unit alone, 2 by a word
	unit     unit.Unit
	beside   bool // of something else than the water at the probe, so sure that it is skipped
}

// besideSigns mark a value that is not of the water at the probe (common practice:
// names are free text). A sign with blanks is a whole word, one without also a part of it.
var besideSigns = []string{" air ", " atm ", " atmos ", " baro ", " barometer ", " ambient ", " outside ",
	" inside ", " indoor ", " outdoor ", " cpu ", " mcu ", " chip ", " board ", " battery ", " batt ", " vbat ", " room ",
	" bottom ", " target ", " setpoint ", " humidity ", " hum ", " altitude ", "airtemp"}

// quantitySigns say what a value measures.
var quantitySigns = [...][]string{
	Depth:    {"depth", " dep "},
	Temp:     {"temp", " ds "},
	Pressure: {"pressure", " press ", " pres "},
	Gauge:    {" gauge ", " gage "},
	Ohms:     {"resistance", " res "},
	Word:     {" word ", " scratchpad "},
	Time: {" time ", " timestamp ", " date ", " datetime ", " clock ", " millis ", " uptime ",
		" epoch ", " unix ", " utc ", " seconds ", " secs "},
}

// letters say so where they are the whole name.
var letters = map[string]Quantity{"t": Temp, "d": Depth, "z": Depth, "p": Pressure, "r": Ohms}

// meaningOf judges a name such as "Depth_m", "bufferTemp", "Temp (F)" or "t".
func meaningOf(name []byte) meaning {
	words, u := nameWords(name)
	text := " " + strings.Join(words, " ") + " "
	has := func(sign string) bool { return strings.Contains(text, sign) }
	if slices.ContainsFunc(besideSigns, has) {
		return meaning{sure: 2, beside: true}
	}
	if has("attempt") || has("template") {
		text = strings.ReplaceAll(text, "temp", "")
	}
	var said []Quantity
	for q, signs := range quantitySigns {
		if slices.ContainsFunc(signs, has) {
			said = append(said, Quantity(q))
		}
	}
	switch {
	case slices.Contains(said, Gauge), slices.Contains(said, Pressure) && slices.Contains(said, Depth):
		others := slices.DeleteFunc(said, func(q Quantity) bool { return q == Depth || q == Pressure || q == Gauge })
		said = append(others, Gauge)
	case len(said) > 0:
	case len(words) == 0 && u != unit.Other:
		return fitUnit(meaning{quantity: quantityOf(u), sure: 1, unit: u})
	case len(words) == 1:
		return fitUnit(meaning{quantity: letters[words[0]], sure: 1, unit: u})
	}
	if len(said) != 1 {
		return meaning{}
	}
	return fitUnit(meaning{quantity: said[0], sure: 2, unit: u})
}

// fitUnit drops a unit that does not belong, and lets a unit of time win over a letter.
func fitUnit(m meaning) meaning {
	switch {
	case m.quantity == Skip:
		return meaning{}
	case m.unit == unit.None || m.unit == unit.Other:
		m.unit = unit.None
	case m.quantity.isIn(m.unit):
	case m.sure == 1:
		m.quantity = quantityOf(m.unit)
	default:
		m.unit = unit.None
	}
	return m
}

// nameWords splits a name into its words in lower case, without digits, and takes a
// unit out that stands behind them.
func nameWords(name []byte) (words []string, u unit.Unit) {
	chunks := bytes.FieldsFunc(name, func(r rune) bool {
		return !(r < 0x80 && (isLetter(byte(r)) || isDigit(byte(r))) || r == '%')
	})
	for i, c := range chunks {
		if v := unitNamed(c); v != unit.None && (i > 0 || len(chunks) == 1) {
			u = v
			continue
		}
		for k, piece := range pieces(c) {
			if isDigit(piece[0]) {
				continue
			}
			if v := unitNamed(piece); v != unit.None && k > 0 {
				u = v
				continue
			}
			w, v := stem(strings.ToLower(string(piece)))
			if v != unit.None {
				u = v
			}
			words = append(words, w)
		}
	}
	return words, u
}

// stem takes a unit off that stands behind a word without a gap: "depthm".
func stem(w string) (string, unit.Unit) {
	for _, stem := range []string{"depth", "temp", "pressure"} {
		rest, ok := strings.CutPrefix(w, stem)
		if v := unitNamed([]byte(rest)); ok && v != unit.None {
			return stem, v
		}
	}
	return w, unit.None
}

// pieces splits "bufferTemp" and "temp2" where the case or the kind of character
// changes, but never inside hPa or kPa.
func pieces(c []byte) (out [][]byte) {
	start := 0
	for j := 1; j < len(c); j++ {
		camel := isLower(c[j-1]) && isUpper(c[j])
		if camel && string(c[j:]) == "Pa" && isAny(c[j-1], "hk") {
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
