package format

import (
	"slices"

	"coldseam/profile/unit"
)

// Bounds of what is offered, not of what is read: a temperature that is higher was not
// measured in a lake, and a depth that is greater not by a hobby probe.
const (
	likelyMinC  = -5
	likelyMaxC  = 40
	saidMaxC    = 50 // where the unit is said, or can only be F
	likelyMaxM  = 200
	surelyC     = 31 // up to here a number is in C: as F it would be ice
	wholeCounts = 1000
)

// tempWays are the ways to read the column as a temperature.
func (c *column) tempWays(hex bool) []Part {
	if hex && isWords(c.texts) {
		word := []Part{{Quantity: Word}}
		if slices.ContainsFunc(c.texts, hasHexLetter) || c.quantity == Word {
			return word
		}
		return append(word, c.numberWays()...)
	}
	if c.quantity == Word {
		return nil
	}
	return c.numberWays()
}

func (c *column) numberWays() []Part {
	switch {
	case len(c.usual) == 0:
		return nil
	case c.quantity == Ohms && c.lo <= 0:
		return nil
	case c.quantity == Ohms && c.unit == unit.Kilohm:
		return []Part{{Quantity: Ohms, Unit: unit.Kilohm.String()}}
	case c.quantity == Ohms:
		return []Part{{Quantity: Ohms}}
	}
	parts := c.scaled(1)
	if len(parts) > 0 || !c.whole || c.lineUnit != unit.None {
		return parts
	}
	for _, div := range []float64{100, 10, 16, 1000} {
		if div < wholeCounts || c.hi >= 4*wholeCounts {
			parts = append(parts, c.scaled(div)...)
		}
	}
	return parts
}

// scaled are the units in which the numbers, divided, can be temperatures of water.
// Sixteenths are of C, and kelvins are written with their point and their unit.
func (c *column) scaled(div float64) (parts []Part) {
	for _, u := range []unit.Unit{unit.Celsius, unit.Fahrenheit, unit.Kelvin} {
		said := c.unit == u
		mostC := float64(saidMaxC)
		if div != 1 || u == unit.Celsius && !said {
			mostC = likelyMaxC
		}
		switch {
		case quantityOf(c.unit) == Temp && !said, u != unit.Celsius && div == 16:
		case u == unit.Kelvin && (!said || div != 1), u == unit.Fahrenheit && !said && c.hi/div <= surelyC:
		case u.SI(c.lo/div) >= likelyMinC && u.SI(c.hi/div) <= mostC:
			parts = append(parts, Part{Quantity: Temp, Unit: unitString(u, div)})
		}
	}
	return parts
}

// depthWays are the ways to read the column as a depth.
func (c *column) depthWays() []Part {
	switch {
	case len(c.usual) == 0:
		return nil
	case c.quantity == Pressure || c.quantity == Gauge:
		return c.pressureWays()
	case c.quantity == Depth && c.unit != unit.None:
		return []Part{{Quantity: Depth, Unit: c.unit.String()}}
	}
	parts := c.lengthWays()
	if c.bare && c.lo >= 950 && c.hi <= 1100 {
		parts = append(parts, Part{Quantity: Pressure, Unit: unit.Hectopascal.String()})
	}
	return parts
}

// lengthWays are the units in which the numbers can be depths.
func (c *column) lengthWays() (parts []Part) {
	order := []unit.Unit{unit.Metre, unit.Foot, unit.Centimetre, unit.Millimetre}
	if c.whole && c.hi > likelyMaxM {
		order = []unit.Unit{unit.Centimetre, unit.Millimetre, unit.Foot, unit.Metre}
	}
	for _, u := range order {
		fine := u == unit.Millimetre && !c.whole && c.hi < 100 // who measures millimetres prints no parts of them
		if u.SI(c.lo) >= -2 && u.SI(c.hi) <= likelyMaxM && !fine {
			parts = append(parts, Part{Quantity: Depth, Unit: u.String()})
		}
	}
	return parts
}

// Air pressure near the ground, and what counts as no pressure at all, Pa.
const (
	airLowPa, airHighPa = 95000, 110000
	nearZeroPa          = 5000
)

// pressureWays: the first lines of a probe are mostly of air, where an absolute pressure
// shows itself by its size, and one over the air's by being none.
func (c *column) pressureWays() (parts []Part) {
	in := []unit.Unit{unit.Hectopascal, unit.Bar, unit.Kilopascal, unit.Pascal, unit.PSI}
	said := c.unit != unit.None
	if said {
		in = []unit.Unit{c.unit}
	}
	for _, u := range in {
		if !said && c.quantity == Pressure && u.SI(c.lo) >= airLowPa && u.SI(c.hi) <= airHighPa {
			return []Part{{Quantity: Pressure, Unit: u.String()}}
		}
	}
	for _, u := range in {
		absolute, gauge := c.pressureIn(u)
		if absolute {
			parts = append(parts, Part{Quantity: Pressure, Unit: u.String()})
		}
		if gauge {
			parts = append(parts, Part{Quantity: Gauge, Unit: u.String()})
		}
	}
	return parts
}

// pressureIn reports whether the numbers can be an absolute pressure in a unit, and one
// over the air's.
func (c *column) pressureIn(u unit.Unit) (absolute, gauge bool) {
	least, most := u.SI(c.lo), u.SI(c.hi)
	absolute = c.quantity == Pressure && least >= 50000 && most <= 2.5e6
	gauge = least >= -nearZeroPa && most <= 2.4e6
	said := c.unit != unit.None
	switch {
	case said && absolute && least >= airLowPa && least <= airHighPa:
		return true, false
	case !said && most < 500: // in other units it would be nothing
		return absolute, gauge && u == unit.Bar && c.hi > 0
	}
	return absolute, gauge
}
