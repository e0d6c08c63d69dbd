package format

import (
	"slices"
	"sort"

	"coldseam/profile/unit"
)

// reading is what a column can be, by what its name and its unit say and by its numbers.
type reading struct {
	meaning
	bare   bool      // nothing says what it is
	usual  []float64 // its numbers but for those that stand for a fault in some unit
	lo, hi float64   // of the usual

	temps, depths []Part // the ways to read it as a temperature, as a depth, likeliest first
	tempTier      tier
	depthTier     tier
	time          Part // where it counts time
}

// tier says how well a column is known for the temperature or the depth: the lowest
// tier that has a column decides, the others are not asked.
type tier uint8

const (
	byWord tier = iota
	byLetter
	byOther // a pressure for the depth, a resistance or a word for the temperature
	byOtherLetter
	byValue
	never
)

// judge finds what the column can be.
func (c *column) judge(hex bool) {
	c.reading = reading{usual: slices.DeleteFunc(slices.Clone(c.nums), isUnusual)}
	if len(c.usual) > 0 {
		c.lo, c.hi = slices.Min(c.usual), slices.Max(c.usual)
	}
	if c.title != nil {
		c.meaning = meaningOf(c.title)
	}
	switch {
	case c.on == unit.Other:
		c.beside = true
	case !c.mixed:
		c.joinUnit()
		c.bare = c.sure == 0 && !c.beside && c.title == nil
	}
	c.temps, c.depths = c.tempWays(hex), c.depthWays()
	if c.tempTier = c.tier(c.temps, Temp, Ohms, Word); hex && c.sure == 0 && isWords(c.texts) && c.clocks == 0 && !c.beside {
		c.tempTier = byOther
	}
	c.depthTier = c.tier(c.depths, Depth, Pressure, Gauge)
}

// joinUnit joins what the name says with the unit on the lines.
func (c *column) joinUnit() {
	if c.on == unit.None || c.beside {
		return
	}
	switch of := quantityOf(c.on); {
	case c.sure < 2:
		c.quantity, c.unit, c.sure = of, c.on, 2
	case of == c.quantity || of == Pressure && c.quantity == Gauge:
		c.unit = c.on
	default:
		c.meaning = meaning{beside: true} // the name and the unit contradict
	}
}

// tier is how well the column is known for a quantity, or for others that stand for it.
func (c *column) tier(ways []Part, q Quantity, others ...Quantity) tier {
	other := slices.Contains(others, c.quantity)
	switch {
	case c.beside || c.clocks > 0 || len(ways) == 0:
		return never
	case c.bare:
		return byValue
	case c.quantity == q && c.sure == 2:
		return byWord
	case c.quantity == q:
		return byLetter
	case other && c.sure == 2:
		return byOther
	case other:
		return byOtherLetter
	}
	return never
}

// isUnusual reports a number that stands for a fault in some unit.
func isUnusual(v float64) bool {
	switch v {
	case 85, 8500, 85000, 185, -127, -12700, -127000, -196.6, 300, 302, 304, 999, -999, 8888, 9999, -9999:
		return true
	}
	return false
}

// onlyFaults reports a column that may be the temperature or the depth, of which no line
// has had a number yet that stands for itself.
func (c *column) onlyFaults() bool {
	if !c.bare && (c.quantity == Skip || c.quantity == Time) {
		return false
	}
	return c.faults+len(c.nums) > 1 && len(c.usual) == 0
}

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
	if len(parts) > 0 || !c.whole || c.on != unit.None {
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

// findTime finds the column that counts time: by name with a unit, or without any name
// where it counts up evenly beside two others or beyond every depth. One that counts up
// otherwise may be a depth.
func (s *set) findTime() {
	s.time, s.mayBeTime = -1, -1
	bare := 0
	for _, c := range s.cols {
		bare += one(c.bare && len(c.nums) > 0)
	}
	for i, c := range s.cols {
		var counts bool
		if c.time, counts = c.timeWay(s.places); !counts {
			continue
		}
		if !c.bare || bare > 2 || slices.Min(c.nums) > 1000*likelyMaxM {
			s.time = i
			return
		}
		if s.mayBeTime < 0 {
			s.mayBeTime = i
		}
	}
}

// timeWay is the part of a column that counts up as time does.
func (c *column) timeWay(place bool) (p Part, counts bool) {
	switch {
	case len(c.nums) == 0:
		return p, false
	case c.quantity == Time && c.unit != unit.None:
		return Part{Quantity: Time, Unit: c.unit.String()}, true
	case c.quantity == Time:
		p = counted(c.nums)
		return p, p.Quantity == Time
	case c.quantity == Temp && c.sure == 1: // t beside temp
		return counted(c.nums), slices.Min(c.nums) >= wholeCounts && countsUp(c.nums)
	}
	return counted(c.nums), c.bare && place && c.whole && countsUp(c.nums)
}

// countsUp reports numbers from 1000 that grow by even steps, or are beyond all depths
// and grow.
func countsUp(nums []float64) bool {
	if len(nums) < 2 || slices.Max(nums) < wholeCounts {
		return false
	}
	steps := make([]float64, 0, len(nums)-1)
	for i := 1; i < len(nums); i++ {
		if nums[i] <= nums[i-1] {
			return false
		}
		steps = append(steps, nums[i]-nums[i-1])
	}
	if nums[0] > 1000*likelyMaxM {
		return true
	}
	sort.Float64s(steps)
	mid := steps[len(steps)/2]
	return len(steps) > 1 && steps[0] >= 0.8*mid && steps[len(steps)-1] <= 1.2*mid
}

// counted is the part of a column that counts up: seconds since 1970 by their size,
// milliseconds since a board was started by steps of no less than a fiftieth of a second,
// else a number of the line, or a time that cannot be told.
func counted(nums []float64) Part {
	lo, hi := slices.Min(nums), slices.Max(nums)
	switch {
	case lo >= 1.2e9 && hi <= 2.5e9:
		return Part{Quantity: Time, Unit: unit.Second.String()}
	case hi >= wholeCounts && len(nums) > 1 && (hi-lo)/float64(len(nums)-1) >= 20:
		return Part{Quantity: Time, Unit: unit.Millisecond.String()}
	}
	return Part{Quantity: Skip}
}
