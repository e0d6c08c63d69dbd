package main

import (
	"fmt"

	"coldseam/device/format"
	"coldseam/device/line"
)

// decoder reads a probe's lines, once it is known what they hold, and counts them.
type decoder struct {
	layout  *format.Layout // nil until it is known
	options format.Options
	reader  *format.Reader
	depths  bool   // the probe states its own depth
	cut     []byte // the line within which the port was opened
	refused map[line.Code]int
	good    int
}

func newDecoder(l *format.Layout, o format.Options) decoder {
	d := decoder{options: o, refused: map[line.Code]int{}}
	if l != nil {
		d.use(*l)
	}
	return d
}

// use reads lines by a layout from now on.
func (d *decoder) use(l format.Layout) {
	d.layout, d.reader, d.depths = &l, format.New(l, d.options), l.StatesDepth()
}

// find finds the layout of the first lines. The line within which the port was opened
// may be a whole row of names: it counts only when it settles what the others leave open,
// with a depth.
func (d *decoder) find(first [][]byte) format.Found {
	f := format.Find(first)
	if f.Known || d.cut == nil {
		return f
	}
	if named := format.Find(append([][]byte{d.cut}, first...)); named.Known && named.Layout.StatesDepth() {
		return named
	}
	return f
}

// decode reads a line, and counts what became of it.
func (d *decoder) decode(b []byte) (format.Sample, error) {
	s, err := d.reader.Line(b)
	if code := line.CodeOf(err); code == line.Fine {
		d.good++
	} else {
		d.refused[code]++
	}
	return s, err
}

// counted says how many lines were read and how many were refused, and why.
func (d *decoder) counted() string {
	text := counted(d.good, "line") + " read"
	for code := line.Fine; code <= line.Last; code++ {
		if n := d.refused[code]; n > 0 && !aside(code) {
			text += fmt.Sprintf(", %d %s", n, code)
		}
	}
	return text
}

// aside reports whether a line of this kind is none that was meant to be a reading.
func aside(code line.Code) bool {
	return code == line.Blank || code == line.Waiting || code == line.Header
}
