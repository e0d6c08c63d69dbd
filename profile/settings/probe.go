package settings

import (
	"fmt"

	"coldseam/profile/unit"
)

// Probe is what was settled about the probe; zero where nothing was. What only package
// device can judge (the layout, the speed) is kept as it is written.
type Probe struct {
	Port       string
	Baud       int
	DataBits   int
	Parity     string
	Layout     string
	Thermistor []float64 // the three coefficients of Steinhart and Hart, or none
	AirPa      float64   // pressure of the air, Pa
}

type probe struct {
	Port, Parity, Layout, Air string
	Baud                      *int
	DataBits                  *int `toml:"data_bits"`
	Thermistor                []float64
}

func (p *parser) probe(f probe) {
	at := func(key string) place { return place{"probe", 0, key} }
	p.s.Probe = Probe{Port: f.Port, Parity: f.Parity, Layout: f.Layout, Thermistor: f.Thermistor}
	if f.Baud != nil {
		p.s.Probe.Baud = *f.Baud
	}
	if f.DataBits != nil {
		p.s.Probe.DataBits = *f.DataBits
	}
	if n := len(f.Thermistor); n != 0 && n != 3 {
		p.fail(at("thermistor"), fmt.Errorf("%d numbers: write the three coefficients of the data sheet, [a, b, c]", n))
	}
	if f.Air == "" {
		return
	}
	pa, err := unit.ParsePressure(f.Air)
	if err == nil && !(pa >= 40000 && pa <= 110000) {
		err = fmt.Errorf("%q is not a pressure of the air", f.Air)
	}
	if err != nil {
		p.fail(at("air"), err)
		return
	}
	p.s.Probe.AirPa = pa
}
