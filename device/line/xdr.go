package line

import (
	"bytes"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// The words by which a name in an XDR sentence tells what was measured (common
// practice: the names are free text).
var (
	otherNames = []string{"AIR", "ATMOS", "BARO", "DEW", "ENGINE", "OIL", "FUEL", "CABIN", "OUTSIDE", "INSIDE",
		"BOTTOM", "KEEL", "TRANSDUCER", "HULL"}
	waterNames = []string{"WATER", "WTR", "WTEMP", "SEA", "MTW", "PROBE"}
	depthNames = []string{"DEPTH", "PROBE"}
	pressNames = []string{"WPRES", "WATER", "WTR", "PROBE", "ABS", "DEPTH"}
)

// xdr: groups of type, value, unit and name. Only a name makes a temperature that of
// the water or a depth that of the probe; where names leave it open, the line is
// refused with AskWhich. A group too short shifts all that follow it, so a sentence
// whose fields are no multiple of four is refused whole.
func (s *Sentence) xdr(b []byte) error {
	if bytes.HasSuffix(b, []byte{','}) && fields(b)%4 == 1 {
		b = b[:len(b)-1] // one empty field too many at the end
	}
	if fields(b)%4 != 0 {
		return refuse(BadForm, "the fields of the sentence are not groups of four")
	}
	unnamed, empty := false, false
	for more := true; more; {
		var group [4][]byte
		for i := range group {
			group[i], b, more = cut(b)
		}
		nameless, void, err := s.take(group)
		if err != nil {
			return err
		}
		unnamed, empty = unnamed || nameless, empty || void
	}
	switch {
	case s.classify():
		return nil
	case empty:
		return refuse(Empty, "the values are empty")
	case unnamed:
		return refuse(AskWhich, "a temperature whose name does not say that it is the water's")
	}
	return refuse(Other, "nothing about water in the sentence")
}

// take takes the value of a group; unnamed is a temperature whose name does not say that it
// is the probe's, empty a value of the probe's that is missing.
func (s *Sentence) take(group [4][]byte) (unnamed, empty bool, err error) {
	kind, in, name := trim(group[0]), trim(group[2]), group[3]
	slot, names := s.slot(kind)
	switch {
	case slot == nil, containsAny(name, otherNames):
		return false, false, nil
	case !containsAny(name, names):
		return slot == &s.temp, false, nil
	}
	v, err := field(group[1])
	switch {
	case err != nil || !v.Known:
		return false, true, err
	case slot.Known:
		return false, false, refuse(AskWhich, "two values of one kind, and no name tells which is the probe's")
	}
	*slot, err = xdrValue(kind[0], v, in)
	return false, false, err
}

// slot is where a value of a kind goes, and the names by which it is the probe's; nil for
// a kind that is passed over.
func (s *Sentence) slot(kind []byte) (*profile.Optional, []string) {
	switch string(kind) {
	case "C":
		return &s.temp, waterNames
	case "D":
		return &s.depth, depthNames
	case "P":
		return &s.pressure, pressNames
	}
	return nil, nil
}

func xdrValue(kind byte, v profile.Optional, in []byte) (profile.Optional, error) {
	bad := func() (profile.Optional, error) {
		return profile.Optional{}, refuse(BadUnit, "an unknown unit "+Shown(in))
	}
	if len(in) != 1 {
		return bad()
	}
	switch {
	case kind == 'C' && in[0] == 'C':
		return v, CheckTempC(v.Value)
	case kind == 'C' && in[0] == 'K':
		v.Value = unit.Kelvin.SI(v.Value)
		return v, within(v.Value, minTempC, maxTempC, "temperature")
	case kind == 'D' && in[0] == 'M':
		return v, CheckDepthM(v.Value)
	case kind == 'P' && in[0] == 'B':
		v.Value = unit.Bar.SI(v.Value)
		return v, within(v.Value, 0, maxPressurePa, "pressure")
	case kind == 'P' && in[0] == 'P':
		return v, within(v.Value, 0, maxPressurePa, "pressure")
	}
	return bad()
}

// fields counts the fields of b.
func fields(b []byte) int { return bytes.Count(b, []byte{','}) + 1 }
