package line

import (
	"fmt"
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

// All ten words of the DS18B20 data sheet (rev. 042208), temperature/data relationship.
func TestWordTempC(t *testing.T) {
	for _, c := range []struct {
		hex  string
		want float64
		code Code
	}{
		{"0191", 25.0625, Fine}, {"00A2", 10.125, Fine}, {"0008", 0.5, Fine},
		{"0000", 0, Fine}, {"fff8", -0.5, Fine},
		{"0550", 85, Sentinel}, {"07D0", 125, OutOfRange}, {"FF5E", -10.125, OutOfRange},
		{"FE6F", -25.0625, OutOfRange}, {"FC90", -55, OutOfRange},
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

// Bits that a coarser resolution leaves undefined (data sheet: three at 9 bits, none at
// 12) must not count, whatever they hold.
func TestScratchpadResolution(t *testing.T) {
	for _, c := range []struct {
		config byte // bits 5 and 6 are the resolution less 9
		want   float64
	}{{0x1F, 25.5}, {0x3F, 25.75}, {0x5F, 25.875}, {0x7F, 25.9375}} {
		b := []byte{0x9F, 0x01, 0x4B, 0x46, c.config, 0xFF, 0x0F, 0x10}
		hex := fmt.Sprintf("% X %02X", b, CRC8(b))
		if got, err := ScratchpadTempC([]byte(hex)); err != nil || got != c.want {
			t.Errorf("%s: %v, %v; want %v", hex, got, err, c.want)
		}
	}
}

// A published table of a 10 kilohm part with these coefficients (10K3MCD1, manual of a
// data logger: -40 to 1 C); the formula keeps to it within 0.0025 C there. Most of it is
// too cold for a lake and refused.
func TestThermistor(t *testing.T) {
	part := Thermistor{1.129241e-3, 2.341077e-4, 8.775468e-8}
	for _, c := range []struct{ ohms, want, tol float64 }{
		{336103.2, -40, 0}, {176804.8, -30, 0}, {97006.9, -20, 0}, {55303.9, -10, 0}, {42316.7, -5, 0}, // the manual
		{32650.9, 0, 0.0025}, {31030.8, 1, 0.0025}, // the manual
		{25390, 5, 0.006}, {19900, 10, 0.006}, {15710, 15, 0.006}, {12490, 20, 0.006}, // from memory
		{10000, 25, 0.006}, {8057, 30, 0.006}, // from memory
	} {
		got, err := part.TempC(c.ohms)
		if c.want <= -5 {
			if CodeOf(err) != OutOfRange { // the warmest comes to -5.0008
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

// The formula with C = 0 is the B equation, R = R0 exp(B (1/T - 1/298.15 K)), closed form.
// A part described by another B reads wrong where it looks right: the table's 0 C as 0.55.
func TestThermistorOfB(t *testing.T) {
	for _, c := range []struct{ b, ohms, want float64 }{
		{3950, 33620.6, 0}, {3950, 20174.6, 10}, {3950, 12535.3, 20}, {3950, 10000, 25}, {3950, 8037.1, 30},
		{3435, 28704.3, 0}, {3435, 18410.4, 10}, {3435, 12171.4, 20},
		{3950, 32650.9, 0.55},
	} {
		part := Thermistor{A: 1/298.15 - math.Log(10000)/c.b, B: 1 / c.b}
		k := c.want + 273.15
		tol := 0.051 / c.ohms * k * k / c.b // resistances are rounded to 0.1 ohm
		if c.want == 0.55 {
			tol = 0.005
		}
		if got, err := part.TempC(c.ohms); err != nil || math.Abs(got-c.want) > tol {
			t.Errorf("B %v, %v ohm: %v, %v; want %v", c.b, c.ohms, got, err, c.want)
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
