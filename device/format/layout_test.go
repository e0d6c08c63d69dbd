package format

import (
	"reflect"
	"strings"
	"testing"
	"unicode"

	"coldseam/profile/unit"

	"pgregory.net/rapid"
)

func TestParse(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"depth m, temp C", "depth m, temp C"},
		{" Depth Feet ,TEMPERATURE celsius", "depth ft, temp C"},
		{"skip,depth ft,temp F", "skip, depth ft, temp F"},
		{"D: depth m, T: temp C", "D: depth m, T: temp C"},
		{"Water temp : temp degF", "Water temp: temp F"},
		{"temp C/100", "temp C/100"}, {"temp C / 16", "temp C/16"},
		{"time ms, depth mm, temp K", "time ms, depth mm, temp K"},
		{"pressure hPa, ohms", "pressure hPa, ohms"}, {"gauge psi, ohms kohm", "gauge psi, ohms kohm"}, {"ohms ohm", "ohms"},
		{"word, depth cm", "word, depth cm"}, {"NMEA", "nmea"},
	} {
		l, err := Parse(c.text)
		if err != nil || l.String() != c.want {
			t.Errorf("%s: %v, %v", c.text, l, err)
		}
	}
}

func TestParseErrors(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "an empty part"}, {"depth m,,temp C", "an empty part"},
		{"deep m, temp C", `"deep" is not a part of a layout: write depth, temp, pressure, gauge, ohms, word, time or skip`},
		{"depth, temp C", "depth needs its unit: write m, ft"}, {"temp", "temp needs its unit: write C, F or K"},
		{"depth C, temp C", `"C" is not a unit of depth: write m`}, {"temp X", `"X" is not a unit of temp: write C`},
		{"temp C/0", "not a unit of temp"}, {"temp C/1", "not a unit of temp"}, {"temp C/x", "not a unit of temp"}, {"temp C/+16", "not a unit"},
		{"temp %", "not a unit of temp"}, {"skip m, temp C", `"m" is not a unit of skip`}, {"word m", "not a unit of word"},
		{"depth m", "no temperature in the layout"}, {"temp C, word", "two temperatures"}, {"temp C, ohms", "two temperatures"},
		{"depth m, pressure bar, temp C", "two depths"}, {"time ms, time s, temp C", "two times"},
		{": temp C", "no name before the colon"}, {"T: temp C, t: skip", `the name "t" stands twice`},
		{"a\x1b: temp C", "cannot be a name"}, {strings.Repeat("a", 61) + ": temp C", "cannot be a name"},
		{"temp C" + strings.Repeat(",skip", 40), "at most 32 parts"},
		{"\x1b[2J m, temp C", `"�[2J" is not a part`},
	} {
		l, err := Parse(c.text)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, %v; want %q", c.text, l, err, c.want)
			continue
		}
		for _, b := range err.Error() {
			if !unicode.IsGraphic(b) {
				t.Errorf("%q: unprintable error %q", c.text, err)
			}
		}
	}
}

// drawLayout draws a layout that is valid, with parts named and not.
func drawLayout(t *rapid.T) Layout {
	unitOf := func(w Quantity) string {
		var names []string
		for u := unit.Metre; u < unit.Other; u++ {
			if of := quantityOf(u); unit.Printed([]byte(u.String())) == u && (of == w || of == Pressure && w == Gauge) {
				names = append(names, u.String())
			}
		}
		if w == Ohms {
			return rapid.SampledFrom([]string{"", "kohm"}).Draw(t, "unit")
		}
		if len(names) == 0 {
			return ""
		}
		u := rapid.SampledFrom(names).Draw(t, "unit")
		return u + rapid.SampledFrom([]string{"", "/100", "/16", "/99999"}).Draw(t, "divisor")
	}
	quantities := []Quantity{rapid.SampledFrom([]Quantity{Temp, Ohms, Word}).Draw(t, "warm")}
	if rapid.Bool().Draw(t, "deep") {
		quantities = append(quantities, rapid.SampledFrom([]Quantity{Depth, Pressure, Gauge}).Draw(t, "depth"))
	}
	if rapid.Bool().Draw(t, "timed") {
		quantities = append(quantities, Time)
	}
	for range rapid.IntRange(0, 4).Draw(t, "skips") {
		quantities = append(quantities, Skip)
	}
	quantities = rapid.Permutation(quantities).Draw(t, "order")
	names := rapid.SliceOfNDistinct(rapid.StringMatching(`[A-Za-z0-9é_.]{1,8}( [a-z/()]{1,5})?`), len(quantities), len(quantities), strings.ToLower).Draw(t, "names")
	var l Layout
	for i, w := range quantities {
		p := Part{Quantity: w, Unit: unitOf(w)}
		if rapid.Bool().Draw(t, "named") {
			p.Name = names[i]
		}
		l.Parts = append(l.Parts, p)
	}
	return l
}

func TestStringRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		back, err := Parse(l.String())
		if err != nil || !reflect.DeepEqual(l, back) {
			t.Fatalf("%v: %v, %v", l, back, err)
		}
	})
}
