package format

import (
	"bytes"

	"coldseam/device/line"
	"coldseam/profile"
)

// pressureKind is how a pressure in NMEA sentences is meant, which they do not say.
type pressureKind uint8

const (
	untold pressureKind = iota
	absolute
	overAir
)

// isSentence reports "$", five letters or digits and a comma: NMEA 0183. A sentence of
// ships' reports, which begins with "!", is one too.
func isSentence(b []byte) bool {
	i := bytes.LastIndexByte(b, '$')
	if i < 0 {
		i = bytes.LastIndexByte(b, '!')
	}
	if i < 0 || len(b) < i+7 || b[i+6] != ',' {
		return false
	}
	for _, c := range b[i+1 : i+6] {
		if !isDigit(c) && !isUpper(c) {
			return false
		}
	}
	return true
}

// sentence reads a sentence of NMEA 0183, whatever the layout.
func (r *Reader) sentence(b []byte) (Sample, error) {
	read := line.NMEA
	if r.o.Vouched {
		read = line.NMEAUnchecked
	}
	told, err := read(b)
	if err != nil {
		return Sample{}, err
	}
	s := Sample{
		DepthM: told.DepthM(), TempC: told.TempC(), SurfaceC: told.SurfaceTempC(),
		WrongChecksum: told.Checksum == line.WrongChecksum,
	}
	s.BottomM, _ = told.BottomDepthM()
	pa := told.PressurePa()
	switch {
	case s.DepthM.Known || !pa.Known:
		return s, nil
	case !s.TempC.Known:
		return Sample{}, refuse(line.Empty, "a pressure without the temperature of its water")
	}
	d, err := r.toldDepthM(pa.Value, s.TempC.Value)
	if err != nil {
		return Sample{}, err
	}
	s.DepthM = profile.Some(d)
	return s, nil
}

// toldDepthM is the depth at a pressure of a sentence. A pressure well under the air's
// can only be one over the air's; one that equals the air's is taken as absolute, read
// in air. Until one of them has come, it is not known which.
func (r *Reader) toldDepthM(pa, tempC float64) (float64, error) {
	if r.press == untold && r.o.AirPa == 0 {
		return 0, refuse(line.AskWhich, "a pressure: give the air pressure or the altitude of the lake")
	}
	if r.press == untold {
		switch at := pa / r.o.AirPa; {
		case at < 0.9:
			r.press = overAir
		case at < 1.05:
			r.press = absolute
		default:
			return 0, refuse(line.AskWhich, "a pressure that may or may not hold the air's: let the probe read in air once")
		}
	}
	return r.depthM(pa, r.press == overAir, tempC)
}
