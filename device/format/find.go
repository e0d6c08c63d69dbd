package format

import (
	"fmt"
	"slices"
	"strings"

	"coldseam/device/line"
	"coldseam/profile/plain"
)

// Found is what the first lines of a probe tell about their layout.
type Found struct {
	Layout  Layout   // when Known; that without parts where all is NMEA
	Known   bool     // one meaning only
	Choices []Layout // otherwise the meanings to ask about, at most six, the likeliest first; one alone is doubtful
	NMEA    bool     // sentences of NMEA 0183 were among the lines; a Reader takes them with any layout
	Why     string   // in plain words: by what it is known, or what is open; printable ASCII
	Example string   // one of the lines, printable ASCII
}

const (
	maxChoices = 6
	maxTried   = 24
	maxLines   = 500 // of more lines the first are looked at
)

// Find says how lines are laid out. Names on the lines or in a header row decide before
// units, and units before values. A layout needs two lines that agree, or a header row
// and one; what else is among the lines decides nothing.
func Find(lines [][]byte) Found {
	if len(lines) > maxLines {
		lines = lines[:maxLines]
	}
	f := Found{}
	var plain [][]byte
	sentences := 0
	for _, b := range lines {
		if len(b) > line.MaxBytes {
			continue
		}
		if b = trimLine(b); isSentence(b) {
			_, err := line.NMEA(b)
			if line.CodeOf(err) != line.Garbled {
				sentences++
			}
			continue
		}
		if len(b) == 0 || !garbled(b) && !isComment(b) {
			plain = append(plain, b) // empty lines divide blocks
		}
	}
	f.NMEA = sentences > 0
	if words := gather(plain, true); words != nil {
		f.resolve(words, plain, true)
		if hasWord(f) {
			return f
		}
		f = Found{NMEA: f.NMEA}
	}
	if sets := gather(plain, false); sets != nil {
		f.resolve(sets, plain, false)
	}
	switch {
	case f.Known || len(f.Choices) > 0:
	case sentences > 1:
		f.Known, f.Why = true, "sentences of NMEA 0183"
	case f.Why == "":
		f.Why = "no two lines agree on a layout"
	}
	return f
}

func hasWord(f Found) bool {
	all := f.Choices
	if f.Known {
		all = []Layout{f.Layout}
	}
	for _, l := range all {
		for _, p := range l.Parts {
			if p.Quantity == Word {
				return true
			}
		}
	}
	return false
}

// settle takes the first set of columns that gives a layout which reads the lines.
func (f *Found) resolve(sets []set, plain [][]byte, hex bool) {
	for _, s := range sets {
		a := s.answer(hex)
		var fit []Layout
		example := ""
		more := len(a.layouts) > maxTried
		if more {
			a.layouts = a.layouts[:maxTried]
		}
		for _, l := range a.layouts {
			n, first := reads(l, plain)
			if n >= 2 || n == 1 && s.header {
				fit = append(fit, l)
				if example == "" {
					example = first
				}
			}
		}
		if len(fit) == 0 {
			if f.Why == "" && len(a.layouts) == 0 && s.agrees() {
				f.Why = a.why
			}
			continue
		}
		f.Example = example
		if len(fit) == 1 && !more && a.doubt == "" {
			f.Known, f.Layout, f.Why = true, fit[0], a.because(fit[0])
			return
		}
		if len(fit) > maxChoices {
			fit = fit[:maxChoices]
		}
		f.Choices, f.Why = fit, open(fit, a.doubt)
		return
	}
}

// reads counts, up to two, the lines that give a sample, or would if the air's pressure
// and the thermistor were known, and shows the first of them.
func reads(l Layout, lines [][]byte) (n int, example string) {
	r := New(l, Options{})
	lacks := slices.ContainsFunc(l.Parts, func(p Part) bool { return p.Quantity == Ohms || p.Quantity == Pressure })
	for _, b := range lines {
		_, err := r.Line(b)
		if c := line.CodeOf(err); c != line.Fine && !(lacks && c == line.AskWhich) {
			continue
		}
		if n++; n == 2 {
			break
		}
		example = plain.Cut(string(b), longestExample)
	}
	return n, example
}

// longestExample is how much of a line is shown to ask what it holds.
const longestExample = 80

// agrees reports whether two lines have something in common.
func (s set) agrees() bool {
	return slices.ContainsFunc(s.cols, func(c *column) bool { return c.rows > 1 })
}

// open says in what the layouts differ.
func open(l []Layout, doubt string) string {
	if len(l) == 1 && doubt != "" {
		return doubt
	}
	var parts []string
	differ := func(text string, of func(Layout) string) {
		for _, x := range l[1:] {
			if of(x) != of(l[0]) {
				parts = append(parts, text)
				return
			}
		}
	}
	places := func(want ...Quantity) func(Layout) string {
		return func(x Layout) string {
			s := ""
			for i, p := range x.Parts {
				for _, w := range want {
					if p.Quantity == w {
						s += fmt.Sprint(i, p.Name, ";")
					}
				}
			}
			return s
		}
	}
	unit := func(want ...Quantity) func(Layout) string {
		return func(x Layout) string {
			for _, p := range x.Parts {
				for _, w := range want {
					if p.Quantity == w {
						return p.Unit
					}
				}
			}
			return ""
		}
	}
	differ("which value is the temperature", places(Temp, Ohms, Word))
	differ("which value is the depth", places(Depth, Pressure, Gauge))
	kinds := ""
	for _, x := range l {
		for _, p := range x.Parts {
			if p.Quantity == Pressure || p.Quantity == Gauge {
				kinds += p.Quantity.String()
			}
		}
	}
	if strings.Contains(kinds, "pressuregauge") {
		parts = append(parts, "whether the pressure holds the air's")
	}
	differ("the unit of the depth", unit(Depth, Pressure, Gauge))
	differ("the unit of the temperature", unit(Temp, Ohms, Word))
	if doubt != "" {
		parts = append(parts, doubt)
	}
	if len(parts) == 0 {
		return "more than one meaning is possible"
	}
	return "not said: " + strings.Join(parts, ", ")
}
