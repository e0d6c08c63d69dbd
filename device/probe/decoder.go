package probe

import (
	"fmt"

	"coldseam/device/format"
	"coldseam/device/line"
	"coldseam/profile/unit"
)

// Decoder reads a probe's lines, once it is known what they hold, and counts them.
type Decoder struct {
	Layout *format.Layout // nil until it is known
	Depths bool           // the probe states its own depth

	options format.Options
	reader  *format.Reader
	cut     []byte // the line within which the port was opened
	refused map[line.Code]int
	good    int
}

// NewDecoder makes a Decoder; l is nil where it is not known what the lines hold.
func NewDecoder(l *format.Layout, o format.Options) *Decoder {
	d := &Decoder{options: o, refused: map[line.Code]int{}}
	if l != nil {
		d.Use(*l)
	}
	return d
}

// Use reads lines by a layout from now on.
func (d *Decoder) Use(l format.Layout) {
	d.Layout, d.reader, d.Depths = &l, format.New(l, d.options), l.StatesDepth()
}

// Cut says within which line the port was opened. It may be a whole row of names.
func (d *Decoder) Cut(b []byte) { d.cut = b }

// Find finds the layout of the first lines. The line within which the port was opened
// counts only when it settles what the others leave open, with a depth.
func (d *Decoder) Find(first [][]byte) format.Found {
	f := format.Find(first)
	if f.Known || d.cut == nil {
		return f
	}
	if named := format.Find(append([][]byte{d.cut}, first...)); named.Known && named.Layout.StatesDepth() {
		return named
	}
	return f
}

// Read reads a line, and counts what became of it.
func (d *Decoder) Read(b []byte) (format.Sample, error) {
	s, err := d.reader.Line(b)
	if code := line.CodeOf(err); code == line.Fine {
		d.good++
	} else {
		d.refused[code]++
	}
	return s, err
}

// Counted says how many lines were read and how many were refused, and why.
func (d *Decoder) Counted() string {
	text := unit.Count(d.good, "line") + " read"
	for code := line.Fine; code <= line.Last; code++ {
		if n := d.refused[code]; n > 0 && !Aside(code) {
			text += fmt.Sprintf(", %d %s", n, code)
		}
	}
	return text
}

// Aside reports whether a line of this kind is none that was meant to be a reading.
func Aside(code line.Code) bool {
	return code == line.Blank || code == line.Waiting || code == line.Header
}
