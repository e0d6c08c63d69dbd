package line

import (
	"bytes"
	"fmt"
	"math"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// MaxBytes is the longest line that is looked at. NMEA 0183 allows 82 characters,
// which instruments overrun; a line beyond this one is noise.
const MaxBytes = 1024

// NMEA reads one sentence of NMEA 0183: MTW, DPT, DBT, DBS, DBK or XDR, of any
// talker, with or without line end. Text before the last "$" (a time stamp, the
// rest of a sentence that was cut off) is passed over. The checksum, the XOR of the
// bytes between "$" and "*", may be missing, and Sentence.Checksum then says so; a wrong
// one is refused with BadChecksum. It allocates nothing for a sentence it takes.
//
// Source: NMEA 0183, sentence formats and checksum (from memory).
func NMEA(b []byte) (Sentence, error) { return sentence(b, false) }

// NMEAUnchecked reads as NMEA does but takes a sentence with a wrong checksum too,
// saying so in Sentence.Checksum. It is for text that a person typed or pasted and vouches
// for, never for a live port.
func NMEAUnchecked(b []byte) (Sentence, error) { return sentence(b, true) }

func sentence(b []byte, lenient bool) (Sentence, error) {
	b, sum, err := body(b, lenient)
	if err != nil {
		return Sentence{}, err
	}
	head, rest, _ := cut(b)
	if len(head) != 5 {
		return Sentence{}, refuse(Other, "a sentence of another kind: "+Shown(head))
	}
	s := Sentence{Checksum: sum}
	switch string(head[2:]) {
	case "MTW":
		s.Formatter = "MTW"
		err = s.mtw(rest)
	case "DPT":
		s.Formatter = "DPT"
		err = s.dpt(rest)
	case "DBT":
		s.Formatter, s.datum = "DBT", FromTransducer
		err = s.below(rest)
	case "DBS":
		s.Formatter, s.datum = "DBS", FromSurface
		err = s.below(rest)
	case "DBK":
		s.Formatter, s.datum = "DBK", FromKeel
		err = s.below(rest)
	case "XDR":
		s.Formatter = "XDR"
		err = s.xdr(rest)
	default:
		err = refuse(Other, "a sentence of another kind: "+Shown(head))
	}
	if err != nil {
		return Sentence{}, err
	}
	return s, nil
}

// body finds the bytes between "$" and "*" and judges the checksum.
func body(b []byte, lenient bool) ([]byte, Checksum, error) {
	if len(b) > MaxBytes {
		return nil, 0, refuse(TooLong, fmt.Sprintf("a line of %d bytes, over %d", len(b), MaxBytes))
	}
	if b = trim(b); len(b) == 0 {
		return nil, 0, refuse(Blank, "an empty line")
	}
	start := bytes.LastIndexByte(b, '$')
	if start < 0 {
		return nil, 0, refuse(Other, "no $ starts a sentence in "+Shown(b))
	}
	b = b[start+1:]
	var sum byte
	end := len(b)
	for i, c := range b {
		if c == '*' {
			end = i
			break
		}
		if c < ' ' || c > '~' {
			return nil, 0, refuse(Garbled, "a byte that is not text in "+Shown(b))
		}
		sum ^= c
	}
	if end == len(b) {
		return b, NoChecksum, nil
	}
	hex := b[end+1:]
	if len(hex) != 2 {
		return nil, 0, refuse(BadChecksum, "the checksum is not two digits: "+Shown(hex))
	}
	hi, ok1 := hexDigit(hex[0])
	lo, ok2 := hexDigit(hex[1])
	if !ok1 || !ok2 {
		return nil, 0, refuse(BadChecksum, "the checksum is not hexadecimal: "+Shown(hex))
	}
	if hi<<4|lo == sum {
		return b[:end], RightChecksum, nil
	}
	if lenient {
		return b[:end], WrongChecksum, nil
	}
	return nil, 0, refuse(BadChecksum, fmt.Sprintf("the checksum says %02X, the sentence adds up to %02X", hi<<4|lo, sum))
}

// cut takes the first field off b; more is false when b had no comma.
func cut(b []byte) (first, rest []byte, more bool) {
	if i := bytes.IndexByte(b, ','); i >= 0 {
		return b[:i], b[i+1:], true
	}
	return b, nil, false
}

// mtw: temperature, C.
func (s *Sentence) mtw(b []byte) error {
	num, b, _ := cut(b)
	letter, _, _ := cut(b)
	t, err := field(num)
	if err != nil {
		return err
	}
	if !t.Known {
		return refuse(Empty, "the temperature is empty")
	}
	if string(trim(letter)) != "C" {
		return refuse(BadUnit, "the temperature is not in C but "+Shown(letter))
	}
	if err := CheckTempC(t.Value); err != nil {
		return err
	}
	s.Kind, s.temp = Surface, t
	return nil
}

// dpt: depth under the transducer in metres, offset, largest range. A positive
// offset reaches up to the waterline, a negative one down to the keel; that one is
// not taken off, since an angler asks for the water's depth.
func (s *Sentence) dpt(b []byte) error {
	num, b, _ := cut(b)
	off, _, _ := cut(b)
	d, err := field(num)
	if err != nil {
		return err
	}
	if !d.Known {
		return refuse(Empty, "the depth is empty")
	}
	if err := checkFill(d.Value); err != nil {
		return err
	}
	offset, err := field(off)
	if err != nil {
		return err
	}
	s.datum = FromTransducer
	if offset.Value > 0 {
		if err := within(offset.Value, 0, 50, "offset of the transducer"); err != nil {
			return err
		}
		d.Value += offset.Value
		s.datum = FromSurface
	}
	return s.bottom(d)
}

// checkFill refuses the numbers that a sounder which has lost the bottom fills in, as
// they are written: in whichever unit, and before an offset (common practice).
func checkFill(written float64) error {
	switch written {
	case 9999, 8888:
		return refuse(Sentinel, "the depth is a number that stands for a fault")
	}
	return nil
}

func (s *Sentence) bottom(d profile.Optional) error {
	if err := within(d.Value, 0, maxBottomM, "depth"); err != nil {
		return err
	}
	s.Kind, s.depth = Bottom, d
	return nil
}

// below: the same depth in feet (f), metres (M) and fathoms (F), any of them empty.
func (s *Sentence) below(b []byte) error {
	var got [3]profile.Optional // in the order of the sentence
	for i, u := range [3]struct {
		letter byte
		unit   unit.Length
	}{{'f', unit.Foot}, {'M', unit.Metre}, {'F', unit.Fathom}} {
		var num, letter []byte
		num, b, _ = cut(b)
		letter, b, _ = cut(b)
		v, err := field(num)
		if err != nil {
			return err
		}
		if !v.Known {
			continue
		}
		if err := checkFill(v.Value); err != nil {
			return err
		}
		if letter = trim(letter); len(letter) != 1 || letter[0] != u.letter {
			return refuse(BadUnit, fmt.Sprintf("%s where the unit %c belongs", Shown(letter), u.letter))
		}
		got[i] = profile.Some(u.unit.Metres(v.Value))
	}
	best := got[1]
	for _, i := range [2]int{0, 2} {
		switch {
		case !got[i].Known:
		case !best.Known:
			best = got[i]
		case math.Abs(got[i].Value-best.Value) > 0.2+0.05*math.Abs(best.Value):
			// Rounding to 0.1 fathom and careless factors stay well inside.
			return refuse(Disagree, "the depth differs between its units")
		}
	}
	if !best.Known {
		return refuse(Empty, "the depth is empty")
	}
	return s.bottom(best)
}
