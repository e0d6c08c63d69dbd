package format

import (
	"slices"

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
	case c.lineUnit == unit.Other:
		c.beside = true
	case !c.mixed:
		c.joinUnit()
		c.bare = c.sure == 0 && !c.beside && c.title == nil
	}
	c.temps, c.depths = c.tempWays(hex), c.depthWays()
	if c.tempTier = c.tier(c.temps, Temp); hex && c.sure == 0 && isWords(c.texts) && c.clocks == 0 && !c.beside {
		c.tempTier = byOther
	}
	c.depthTier = c.tier(c.depths, Depth)
}

// joinUnit joins what the name says with the unit on the lines.
func (c *column) joinUnit() {
	if c.lineUnit == unit.None || c.beside {
		return
	}
	switch {
	case c.sure < 2:
		c.quantity, c.unit, c.sure = quantityOf(c.lineUnit), c.lineUnit, 2
	case c.quantity.isIn(c.lineUnit):
		c.unit = c.lineUnit
	default:
		c.meaning = meaning{beside: true} // the name and the unit contradict
	}
}

// tier is how well the column is known for a quantity, or for another that gives it.
func (c *column) tier(ways []Part, q Quantity) tier {
	other := quantities[c.quantity].gives == q
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

// saysTemp reports a column whose name or unit says that it is the temperature.
func (c *column) saysTemp() bool { return c.quantity == Temp && c.sure == 2 && !c.beside }

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
