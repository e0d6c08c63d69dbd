package format

import (
	"slices"

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
	plain, sentences := sift(lines[:min(len(lines), maxLines)])
	f := Found{}
	if f.resolve(plain, true); !slices.ContainsFunc(append(f.Choices, f.Layout), func(l Layout) bool { return l.has(Word) }) {
		f = Found{}
		f.resolve(plain, false)
	}
	f.NMEA = sentences > 0
	switch {
	case f.Known || len(f.Choices) > 0:
	case sentences > 1:
		f.Known, f.Why = true, "sentences of NMEA 0183"
	case f.Why == "":
		f.Why = "no two lines agree on a layout"
	}
	return f
}

// sift gives the lines that may hold values, with the empty ones, which divide blocks,
// and counts the sentences of NMEA 0183.
func sift(lines [][]byte) (plain [][]byte, sentences int) {
	for _, b := range lines {
		if len(b) > line.MaxBytes {
			continue
		}
		switch b = trimLine(b); {
		case isSentence(b):
			if _, err := line.NMEA(b); line.CodeOf(err) != line.Garbled {
				sentences++
			}
		case len(b) == 0 || !garbled(b) && !isComment(b):
			plain = append(plain, b)
		}
	}
	return plain, sentences
}

// resolve takes the first set of columns that gives a layout which reads the lines.
func (f *Found) resolve(plain [][]byte, hex bool) {
	for _, s := range gather(plain, hex) {
		a := s.answer(hex)
		tried := a.layouts[:min(len(a.layouts), maxTried)]
		fit, example := s.readable(tried, plain)
		switch {
		case len(fit) == 0:
			if f.Why == "" && len(tried) == 0 && s.agrees() {
				f.Why = a.why
			}
			continue
		case len(fit) == 1 && len(tried) == len(a.layouts) && a.doubt == "":
			f.Known, f.Layout, f.Why = true, fit[0], s.because(a, fit[0])
		default:
			f.Choices = fit[:min(len(fit), maxChoices)]
			f.Why = open(f.Choices, a.doubt)
		}
		f.Example = example
		return
	}
}

// readable are the layouts that read two of the lines, or one below a header row, with
// the line that the first of them read first.
func (s *set) readable(layouts []Layout, plain [][]byte) (fit []Layout, example string) {
	for _, l := range layouts {
		n, first := reads(l, plain)
		if n >= 2 || n == 1 && s.header {
			if fit = append(fit, l); example == "" {
				example = first
			}
		}
	}
	return fit, example
}

// reads counts, up to two, the lines that give a sample, or would if the air's pressure
// and the thermistor were known, and shows the first of them.
func reads(l Layout, lines [][]byte) (n int, example string) {
	r := New(l, Options{})
	lacks := l.has(Ohms) || l.has(Pressure)
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
