package format

import (
	"bytes"
	"cmp"
	"slices"

	"coldseam/device/line"
	"coldseam/profile"
	"coldseam/profile/water"
)

// Sample is what one line, or one block of lines, says. At least one field is known.
type Sample struct {
	DepthM        profile.Optional // depth of the probe, m, -2 to 1000
	TempC         profile.Optional // temperature at the probe, C, -5 to 50
	BottomM       profile.Optional // depth of the bottom by a sounder, m; never a depth of the probe
	SurfaceC      profile.Optional // temperature at the boat's hull, C; never that at the probe
	TimeS         profile.Optional // time by the board, s from any origin; goes back where the board started again
	WrongChecksum bool             // of a sentence taken because a person vouched for it
}

// Options is what a line does not say.
type Options struct {
	AirPa      float64         // pressure of the air at the lake, Pa, 40 000 to 120 000; 0: unknown
	Thermistor line.Thermistor // of a layout with ohms; zero: unknown
	Vouched    bool            // a person vouches for the text: wrong checksums are taken, and marked
}

// Reader reads lines of one layout. It is not safe for concurrent use.
type Reader struct {
	o      Options
	parts  []part
	err    error // of a layout that cannot be used
	places int   // parts without a name
	names  int   // parts with one
	s      scanner
	at     []int // for each value of the line its part, or -1
	block  block
	time   counter
	press  pressureKind
}

// New makes a Reader. With a Layout that Parse would refuse, every line is refused.
func New(l Layout, o Options) *Reader {
	r := &Reader{o: o}
	if len(l.Parts) > 0 {
		if err := l.check(); err != nil {
			r.err = refuse(line.AskWhich, "the layout cannot be used: "+err.Error())
			return r
		}
	}
	for _, p := range l.Parts {
		r.parts = append(r.parts, makePart(p))
		if p.Name != "" {
			r.names++
		} else {
			r.places++
		}
		switch p.Quantity {
		case Word:
			r.s.hex = true
		case Pressure:
			r.press = absolute
		case Gauge:
			r.press = overAir
		}
	}
	r.block.init(r.parts)
	r.s.vals = make([]value, 0, maxValues)
	r.at = make([]int, 0, maxValues)
	return r
}

// Line reads one line, with or without its line end. A line that gives no sample is
// refused with a *line.Refusal: line.Waiting for one part of a block, line.Header for
// names of columns, line.Blank for nothing, a comment or a rule between blocks. The
// slice is not kept.
func (r *Reader) Line(b []byte) (Sample, error) {
	if r.err != nil {
		return Sample{}, r.err
	}
	if len(b) > line.MaxBytes {
		return Sample{}, refuse(line.TooLong, "a line that is too long")
	}
	if b = trimLine(b); len(b) == 0 {
		r.block.gap()
		return Sample{}, refuse(line.Blank, "an empty line")
	}
	if isSentence(b) {
		return r.sentence(b)
	}
	if garbled(b) {
		return Sample{}, refuse(line.Garbled, "bytes that are not text: "+line.Shown(b))
	}
	if len(r.parts) == 0 {
		return Sample{}, refuse(line.Other, "not a sentence of NMEA 0183: "+line.Shown(b))
	}
	if isComment(b) {
		return Sample{}, refuse(line.Blank, "a comment")
	}
	if isRule(b) && len(r.parts) > 1 {
		r.block.drop()
		return Sample{}, refuse(line.Blank, "a rule between blocks")
	}
	if err := r.s.split(b); err != nil {
		return Sample{}, err
	}
	if len(r.s.vals) == 0 {
		return Sample{}, r.wordsOnly(b)
	}
	if err := r.assign(b); err != nil {
		r.block.pending = -1
		return Sample{}, err
	}
	return r.collect()
}

// wordsOnly judges a line without a value: the name of a value on the next line, a
// header row, or talk.
func (r *Reader) wordsOnly(b []byte) error {
	name, u, linked := r.s.tail()
	r.block.pending = -1
	for i := range r.parts {
		if r.s.words == 1 || linked {
			if p := &r.parts[i]; p.Name != "" && nameFits(name, p.Name) {
				r.block.pending, r.block.pendingUnit = i, u
				return refuse(line.Waiting, "the name of a value: more of the block to come")
			}
		}
	}
	if cells := headerCells(b); b[0] != '{' && isHeader(cells) && !(len(cells) == 1 && bytes.ContainsAny(b, "0123456789")) {
		return refuse(line.Header, "names of columns")
	}
	return refuse(line.Other, "no value on the line: "+line.Shown(b))
}

// assign finds the part of each value, -1 for none.
func (r *Reader) assign(b []byte) error {
	vals := r.s.vals
	r.at = r.at[:0]
	free := 0
	for i := range vals {
		v := &vals[i]
		at, err := r.named(v)
		if err != nil {
			return err
		}
		if at < 0 {
			v.dropState()
		}
		free += one(len(v.name) == 0)
		r.at = append(r.at, at)
	}
	pending := r.block.pending
	r.block.pending = -1
	switch {
	case pending >= 0 && len(vals) == 1 && free == 1:
		r.at[0] = pending
		vals[0].unit = cmp.Or(vals[0].unit, r.block.pendingUnit)
		return nil
	case r.names == 0, r.places > 0 && free > 0:
		return r.byPlace(b, free)
	case slices.ContainsFunc(r.at, func(p int) bool { return p >= 0 }):
		return nil
	}
	return refuse(line.Other, "nothing that the layout names: "+line.Shown(b))
}

// named is the part of the value's name, -1 for none.
func (r *Reader) named(v *value) (at int, err error) {
	at = -1
	if len(v.name) == 0 {
		return at, nil
	}
	for k, p := range r.parts {
		if p.Name == "" || !nameFits(v.name, p.Name) {
			continue
		}
		if at >= 0 || slices.Contains(r.at, k) {
			return at, refuse(line.AskWhich, "two values of one name: "+line.Shown(v.name))
		}
		at = k
	}
	return at, nil
}

// byPlace gives the values without a name to the parts without one, in their order. In
// a layout without names a value may have one that says what the part does.
func (r *Reader) byPlace(b []byte, free int) error {
	vals := r.s.vals
	have := free
	if r.names == 0 {
		have = len(vals)
	}
	if have > r.places {
		have = max(have-(len(vals)-filled(vals)), r.places)
	}
	if have != r.places {
		return refuse(line.BadForm, "not the number of values that the layout has: "+line.Shown(b))
	}
	next := 0 // part without a name
	for i := range vals {
		v := &vals[i]
		if r.at[i] >= 0 || r.names > 0 && len(v.name) > 0 {
			continue
		}
		for next < len(r.parts) && r.parts[next].Name != "" {
			next++
		}
		if next == len(r.parts) {
			break
		}
		if p := &r.parts[next]; len(v.name) > 0 && !p.agrees(meaningOf(v.name)) {
			return refuse(line.Other, "a value with a name that the layout does not know: "+line.Shown(v.name))
		}
		r.at[i] = next
		next++
	}
	return nil
}

// agrees reports whether a name means what the part is.
func (p *part) agrees(m meaning) bool {
	switch {
	case p.Quantity == Skip:
		return true
	case m.sure == 0 || m.beside:
		return false
	case p.Quantity == Gauge && m.quantity == Pressure, (p.Quantity == Word || p.Quantity == Ohms) && m.quantity == Temp:
		return true
	}
	return m.quantity == p.Quantity
}

// nameFits compares a name of the line with that of a part; of a path as JSON gives it
// the last word is enough.
func nameFits(name []byte, part string) bool {
	if foldEqual(name, part) {
		return true
	}
	i := bytes.LastIndexByte(name, '.')
	return i >= 0 && foldEqual(name[i+1:], part)
}

// sample makes the Sample of a whole set of parts in SI.
func (r *Reader) sample(si []float64, known []bool) (Sample, error) {
	var s Sample
	var pressurePa float64
	var pressure Quantity
	for i := range r.parts {
		if !known[i] {
			continue
		}
		switch p := &r.parts[i]; p.Quantity {
		case Temp, Word, Ohms:
			s.TempC = profile.Some(si[i])
		case Depth:
			s.DepthM = profile.Some(si[i])
		case Pressure, Gauge:
			pressurePa, pressure = si[i], p.Quantity
		case Time:
			s.TimeS = profile.Some(r.time.seconds(si[i], p.unit))
		}
	}
	if pressure == Skip {
		return s, nil
	}
	d, err := r.depthM(pressurePa, pressure == Gauge, s.TempC.Value)
	if err != nil {
		return Sample{}, err
	}
	s.DepthM = profile.Some(d)
	return s, nil
}

// depthM is the depth at a pressure in water of the sample's own temperature.
func (r *Reader) depthM(pa float64, gauge bool, tempC float64) (float64, error) {
	if gauge {
		d := water.DepthFromPressure(pa, tempC)
		return d, line.CheckDepthM(d)
	}
	if r.o.AirPa == 0 {
		return 0, refuse(line.AskWhich, "an absolute pressure: give the air pressure or the altitude of the lake")
	}
	return line.DepthFromAbsoluteM(pa, r.o.AirPa, tempC)
}
