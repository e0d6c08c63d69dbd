// Package line reads one line of an instrument's text and says what it states: a
// sentence of NMEA 0183, or a raw word of a sensor.
//
// It keeps apart what must never be mixed: an echo sounder's depth is that of the
// bottom under the boat, a hull thermometer's reading that of the surface, and only
// a probe that states its own depth and temperature together has made a reading.
// A line that says nothing usable is refused with a reason.
//
// The package opens no port, keeps no state between lines, settles no noise and
// guesses no unit and no column: what a line leaves open, the caller must ask.
package line

import "coldseam/profile"

// Kind is what a line is about.
type Kind uint8

// The kinds of line. Nothing is the zero value, of a line that was refused.
const (
	Nothing Kind = iota
	Bottom       // depth of the bottom under the boat
	Surface      // temperature of the water at the boat's hull
	Probe        // a probe's temperature with its own depth or pressure
	Part         // one part of a reading alone; ask what it belongs to
)

// Datum is the point from which a depth of the bottom is measured.
type Datum uint8

// The points a sounder measures from.
const (
	FromTransducer Datum = iota
	FromSurface
	FromKeel
)

// Checksum is what became of a sentence's checksum.
type Checksum uint8

// The states of a checksum.
const (
	NoChecksum    Checksum = iota // none written, or a kind of line that has none
	RightChecksum                 // written and right
	WrongChecksum                 // written and wrong, taken all the same (NMEAUnchecked)
)

// Sentence is what one sentence states. The values are reached by methods that answer only
// for the right kind, so that a bottom depth and a surface temperature cannot be
// read as a probe's.
type Sentence struct {
	Kind      Kind
	Formatter string   // which of NMEA's: "MTW"
	Checksum  Checksum // its

	datum                 Datum
	depth, temp, pressure profile.Optional
}

// BottomDepthM is the depth in metres of the bottom under the boat, 0 to 11 000,
// and the point it is measured from; unknown for every kind but Bottom.
func (s Sentence) BottomDepthM() (profile.Optional, Datum) {
	if s.Kind != Bottom {
		return profile.Optional{}, 0
	}
	return s.depth, s.datum
}

// SurfaceTempC is the temperature in degrees Celsius of the water at the hull, -5
// to 50; unknown for every kind but Surface.
func (s Sentence) SurfaceTempC() profile.Optional {
	if s.Kind != Surface {
		return profile.Optional{}
	}
	return s.temp
}

// DepthM is the depth of the probe itself in metres, -2 (a pressure zero that is
// off, in air) to 1000; unknown where no probe stated its depth.
func (s Sentence) DepthM() profile.Optional { return s.own(s.depth) }

// TempC is the temperature in degrees Celsius, -5 to 50, that a probe stated; unknown
// where none did, and always for a surface temperature.
func (s Sentence) TempC() profile.Optional { return s.own(s.temp) }

// PressurePa is the pressure in Pa, 0 to 10 million, that a probe stated. Lines do
// not say whether it is absolute; a reading in air, near 100 000 or near 0, tells.
func (s Sentence) PressurePa() profile.Optional { return s.own(s.pressure) }

func (s Sentence) own(v profile.Optional) profile.Optional {
	if s.Kind != Probe && s.Kind != Part {
		return profile.Optional{}
	}
	return v
}

// classify gives the kind of a probe's line by the parts it has; it is false where
// the line has none.
func (s *Sentence) classify() bool {
	switch {
	case s.temp.Known && (s.depth.Known || s.pressure.Known):
		s.Kind = Probe
	case s.temp.Known || s.depth.Known || s.pressure.Known:
		s.Kind = Part
	default:
		return false
	}
	return true
}
