package settings

import "fmt"

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

func (p *parser) probe(f probe) {
	p.s.Probe = Probe{Port: f.Port, Parity: f.Parity, Layout: f.Layout, Thermistor: f.Thermistor, AirPa: float64(f.Air)}
	if f.Baud != nil {
		p.s.Probe.Baud = *f.Baud
	}
	if f.DataBits != nil {
		p.s.Probe.DataBits = *f.DataBits
	}
	if n := len(f.Thermistor); n != 0 && n != 3 {
		p.fail("probe.thermistor", fmt.Errorf("%d numbers: write the three coefficients of the data sheet, [a, b, c]", n))
	}
}
