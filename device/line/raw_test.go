package line

import (
	"math"
	"testing"

	"coldseam/profile/water"
)

func TestCRC8(t *testing.T) {
	for _, c := range []struct {
		b    string
		want byte
	}{
		{"\x02\x1c\xb8\x01\x00\x00\x00", 0xA2}, // one-wire application note 27
		{"123456789", 0xA1},                    // common check of CRC-8/MAXIM
	} {
		if got := CRC8([]byte(c.b)); got != c.want {
			t.Errorf("%q: %02X, want %02X", c.b, got, c.want)
		}
	}
}

// Words of the DS18B20 data sheet, temperature/data relationship.
func TestWordTempC(t *testing.T) {
	for _, c := range []struct {
		hex  string
		want float64
		code Code
	}{
		{"0191", 25.0625, Fine}, {"00A2", 10.125, Fine}, {"0008", 0.5, Fine},
		{"0000", 0, Fine}, {"fff8", -0.5, Fine},
		{"0550", 85, Sentinel}, {"07D0", 125, OutOfRange}, {"FF5E", -10.125, OutOfRange},
		{"FC90", -55, OutOfRange},
		{"019", 0, BadForm}, {"01911", 0, BadForm}, {"", 0, BadForm}, {"01 9", 0, BadForm}, {"019x", 0, BadNumber},
	} {
		got, err := WordTempC([]byte(c.hex))
		if CodeOf(err) != c.code || got != c.want {
			t.Errorf("%s: %v, %v", c.hex, got, err)
		}
	}
}

func TestScratchpadTempC(t *testing.T) {
	for _, c := range []struct {
		hex  string
		want float64
		code Code
	}{
		{"91 01 4B 46 7F FF 0F 10 25", 25.0625, Fine},
		{"91014B467FFF0F1025", 25.0625, Fine},
		{"50 05 4B 46 7F FF 0C 10 1C", 85, Sentinel},
		{"91 01 4B 46 7F FF 0F 10 24", 0, BadChecksum},
		{"00 00 00 00 00 00 00 00 00", 0, Sentinel},
		{"91 01", 0, BadForm},
	} {
		got, err := ScratchpadTempC([]byte(c.hex))
		if CodeOf(err) != c.code || got != c.want {
			t.Errorf("%s: %v, %v", c.hex, got, err)
		}
	}
}

// A published table of a 10 kilohm part with these coefficients; the formula keeps to
// it within 0.006 C.
func TestThermistor(t *testing.T) {
	part := Thermistor{1.129241e-3, 2.341077e-4, 8.775468e-8}
	for _, c := range []struct{ ohms, want, tol float64 }{
		{42316.7, -5, 0.0025}, {32650.9, 0, 0.0025}, {31030.8, 1, 0.0025}, // data-logger manual
		{19900, 10, 0.006}, {12490, 20, 0.006}, {10000, 25, 0.006}, {8057, 30, 0.006}, // from memory
	} {
		got, err := part.TempC(c.ohms)
		if c.want == -5 {
			if CodeOf(err) != OutOfRange { // -5.0008
				t.Errorf("%v ohm: %v, %v", c.ohms, got, err)
			}
			continue
		}
		if err != nil || math.Abs(got-c.want) > c.tol {
			t.Errorf("%v ohm: %v, %v; want %v", c.ohms, got, err, c.want)
		}
	}
	for _, ohms := range []float64{0, -1, math.NaN(), math.Inf(1), 1, 1e9} {
		if _, err := part.TempC(ohms); CodeOf(err) != OutOfRange {
			t.Errorf("%v ohm: %v", ohms, err)
		}
	}
}

// 9.80665 m/s2 times 999.10 kg/m3 (IAPWS, 15 C) is 9797.8 Pa for each metre.
func TestDepthFromAbsoluteM(t *testing.T) {
	d, err := DepthFromAbsoluteM(101325+97978, 101325, 15)
	if err != nil || math.Abs(d-10) > 0.001 {
		t.Errorf("%v, %v", d, err)
	}
	if d, err = DepthFromAbsoluteM(water.AirPressure(500), water.AirPressure(500), 15); err != nil || d != 0 {
		t.Errorf("in air: %v, %v", d, err)
	}
	for _, c := range [][3]float64{{math.NaN(), 101325, 15}, {168000, 1013.25, 15}, {168000, 101325, 400}, {1000, 101325, 15}} {
		if _, err := DepthFromAbsoluteM(c[0], c[1], c[2]); CodeOf(err) != OutOfRange {
			t.Errorf("%v: %v", c, err)
		}
	}
}
