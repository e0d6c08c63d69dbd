package format

import (
	"math"

	"coldseam/device/line"
	"coldseam/profile/unit"
)

func refuse(c line.Code, text string) error { return &line.Refusal{Code: c, Text: text} }

// part is a Part made ready.
type part struct {
	Part
	unit unit.Unit
	div  float64 // of numbers sent without their point
}

func makePart(p Part) part {
	u, div, _ := unitText(p.Unit)
	if p.Quantity == Ohms && u == unit.None {
		u = unit.Ohm
	}
	return part{p, u, div}
}

// called is the part in a message.
func (p *part) called() string { return quantities[p.Quantity].called }

// take gives the value in SI (a time in its own unit), or why it cannot be one. A time
// that is missing or written as a date is unknown, not wrong.
func (p *part) take(v *value, thermistor line.Thermistor) (si float64, known bool, err error) {
	missing := v.kind == empty || v.kind == fault
	switch {
	case p.Quantity == Skip, p.Quantity == Time && (missing || v.kind == clock):
		return 0, false, nil
	case v.kind == empty:
		return 0, false, refuse(line.Empty, p.called()+" is empty")
	case v.kind == fault:
		return 0, false, refuse(line.Sentinel, p.called()+" is a fault: "+line.Shown(v.text))
	case p.Quantity == Word:
		si, err = wordTempC(v.text)
	case v.kind != number:
		return 0, false, refuse(line.BadNumber, p.called()+" is not a number: "+line.Shown(v.text))
	default:
		si, err = p.convert(v, thermistor)
	}
	return si, err == nil, err
}

// convert gives a number in SI.
func (p *part) convert(v *value, thermistor line.Thermistor) (si float64, err error) {
	u, div, err := p.unitOf(v)
	if err != nil {
		return 0, err
	}
	if err := p.checkWritten(v.num, u, div); err != nil {
		return 0, err
	}
	switch si = u.SI(v.num / div); p.Quantity {
	case Temp:
		err = checkTempC(si)
	case Depth:
		err = line.CheckDepthM(si)
	case Ohms:
		if thermistor == (line.Thermistor{}) {
			return 0, refuse(line.AskWhich, "a resistance, but not of which thermistor: give its three coefficients")
		}
		si, err = thermistor.TempC(si)
	case Pressure, Gauge:
		if !(math.Abs(si) <= 1e7) {
			err = refuse(line.OutOfRange, "the pressure is out of range")
		}
	case Time:
		if si = v.num / div; u != p.unit {
			si = u.SI(si) / p.unit.SI(1)
		}
		if !(si >= 0 && si <= 1e15) {
			err = refuse(line.OutOfRange, "the time is out of range")
		}
	}
	return si, err
}

// unitOf is the unit of a value: the one written on the line counts, unless it cannot
// be that of the part.
func (p *part) unitOf(v *value) (u unit.Unit, div float64, err error) {
	if v.unit == unit.None || v.unit == p.unit {
		return p.unit, p.div, nil
	}
	if p.Quantity == Ohms && v.unit == unit.Kelvin {
		return unit.Kilohm, 1, nil // 12.49K
	}
	if p.Quantity == Temp && v.unit == unit.Kilohm {
		v.unit = unit.Kelvin // 291.5k
	}
	if quantityOf(v.unit) != quantityOf(p.unit) || p.div != 1 {
		return 0, 0, refuse(line.BadUnit, p.called()+" stands in "+v.unit.String()+" on the line, not in "+p.Unit)
	}
	return v.unit, 1, nil
}

// checkWritten refuses the numbers that stand for a fault in the unit they are written
// in (common practice of sensor programs).
func (p *part) checkWritten(v float64, u unit.Unit, div float64) error {
	stands := false
	if p.Quantity == Temp || p.Quantity == Depth || p.Quantity == Pressure || p.Quantity == Gauge {
		switch v {
		case 9999, -9999, 8888, -999:
			stands = true
		case 300, 302, 304:
			stands = div == 1 && (u == unit.Celsius || u == unit.Fahrenheit || u == unit.Metre)
		}
	}
	if stands {
		return refuse(line.Sentinel, p.called()+" is a number that stands for a fault")
	}
	return nil
}

// checkTempC is line.CheckTempC, with the two faults of a DS18B20 recognised behind the
// rounding of Fahrenheit or kelvins: 185 F, -196.6 F.
func checkTempC(c float64) error {
	for _, f := range [2]float64{85, -127} {
		if math.Abs(c-f) < 1e-9 {
			c = f
		}
	}
	return line.CheckTempC(c)
}

// counter turns a time that counts up in a board into seconds that do so too.
type counter struct {
	last, add float64 // in the unit of the line
	seen      bool
}

// seconds takes the next time of unit u. Milliseconds and microseconds of a board are
// kept in 32 bits and start again from 0 after 2^32; that is counted on. A time that
// goes back otherwise is of a board that was started again, and the result goes back
// with it.
func (c *counter) seconds(t float64, u unit.Unit) float64 {
	wrap := float64(1 << 32)
	if u == unit.Second {
		wrap /= 1000 // milliseconds, divided before they were printed
	}
	if c.seen && t < c.last {
		if u != unit.Minute && c.last < wrap && c.last-t > wrap/2 {
			c.add += wrap
		} else {
			c.add = 0
		}
	}
	c.last, c.seen = t, true
	return u.SI(t + c.add)
}
