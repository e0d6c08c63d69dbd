// Package check finds what is odd about the readings of a drop and flags it, each
// flag named after what it finds. The same checks serve a page, the prompt and a
// probe.
//
// A flagged reading is never removed and never mended: it stays visible with its
// flag, and where a slip of the pen or a wrong unit would explain it, what may have
// been meant is shown as a guess. Two flags, "repeat disagrees" and "warmer below",
// describe water that may be real: those readings are still used.
//
// The limits come from how anglers' pages go wrong (common practice): a factor of
// ten, a digit left out, two columns swapped, a Celsius reading on a Fahrenheit
// page, a mark read twice.
package check

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/water"
)

// Limits of what a check takes for odd.
const (
	MinTempC    = -1.0 // colder is no liquid lake, thermometer error allowed
	MaxTempC    = 40.0
	MaxDepthM   = 300.0
	spikeC      = 2.0  // off both neighbours by more than this, or three times the precision
	repeatC     = 0.56 // two readings of one depth that differ by more (1 F) disagree
	endStepC    = 12.0 // how far an end reading may lie from its only neighbour
	guessSlackC = 1.0  // how far outside its neighbours a guess may lie, or twice the precision
)

type checker struct {
	d         *profile.Drop
	precision float64
}

func (c *checker) plausible(r profile.Reading) bool {
	return r.TempC >= MinTempC && r.TempC <= MaxTempC && r.DepthM <= MaxDepthM
}

// outOfRange flags what cannot be a lake's temperature, and says what it may have been.
func (c *checker) outOfRange() {
	for i := range c.d.Readings {
		r := &c.d.Readings[i]
		switch {
		case c.swapped(i):
			r.Flag = profile.ColumnsSwapped
		case !c.plausible(*r):
			c.flagWithGuess(i, profile.OutOfRange)
		}
	}
}

// spikes flags readings that both neighbours contradict in the same direction, the
// worst first, since one bad reading makes its neighbours look odd.
func (c *checker) spikes() {
	limit := math.Max(spikeC, 3*c.precision)
	for range c.d.Readings {
		worst, excess := -1, limit
		for i, r := range c.d.Readings {
			if !r.Used() {
				continue
			}
			above, below := c.neighbours(i, r.DepthM)
			if above == nil || below == nil {
				continue
			}
			low, high := math.Min(above.TempC, below.TempC), math.Max(above.TempC, below.TempC)
			if e := math.Max(low-r.TempC, r.TempC-high); e > excess {
				worst, excess = i, e
			}
		}
		if worst < 0 {
			return
		}
		c.flagWithGuess(c.culprit(worst, limit), profile.Spike)
	}
}

// culprit says which reading is odd where reading i contradicts both neighbours: i
// itself, or the first or last reading of the drop, when that one lies the wrong
// way from i's other neighbour too, and i does not.
func (c *checker) culprit(i int, limit float64) int {
	r := &c.d.Readings[i]
	above, below := c.neighbours(i, r.DepthM)
	if !c.lighter(below, above, limit) {
		return i // without i, all is well
	}
	for j := range c.d.Readings {
		switch end := &c.d.Readings[j]; end {
		case above:
			if over, _ := c.neighbours(j, end.DepthM); over == nil && !c.lighter(below, r, limit) {
				return j
			}
		case below:
			if _, under := c.neighbours(j, end.DepthM); under == nil && !c.lighter(r, above, limit) {
				return j
			}
		}
	}
	return i
}

// lighter reports whether the lower of two readings is warmer by more than limit,
// and lighter for it.
func (c *checker) lighter(lower, upper *profile.Reading, limit float64) bool {
	return lower.TempC-upper.TempC > limit && water.Density(lower.TempC) < water.Density(upper.TempC)
}

// flagWithGuess flags reading i by what would explain it, else by flag.
func (c *checker) flagWithGuess(i int, flag profile.Flag) {
	r := &c.d.Readings[i]
	r.Flag = flag
	if v, u, ok := c.otherUnit(i); ok {
		r.Flag, r.Guess = profile.WrongUnit, show(v, u)
	} else if v, ok := c.slip(i); ok {
		r.Flag, r.Guess = profile.SlippedDigit, show(v, r.TempUnit)
	}
}

// bottom flags readings deeper than the bottom under the boat.
func (c *checker) bottom() {
	for i := range c.d.Readings {
		if r := &c.d.Readings[i]; r.Used() && c.d.BelowBottom(r.DepthM) {
			r.Flag = profile.BelowBottom
		}
	}
}

// repeats flags readings of one depth that disagree.
func (c *checker) repeats() {
	rs := c.d.Readings
	for i := range rs {
		for j := range rs[:i] {
			if rs[i].Used() && rs[j].Used() && math.Abs(rs[i].DepthM-rs[j].DepthM) < profile.SameDepthM &&
				math.Abs(rs[i].TempC-rs[j].TempC) > repeatC+1e-9 {
				rs[i].Flag, rs[j].Flag = profile.RepeatDisagrees, profile.RepeatDisagrees
			}
		}
	}
}

// warmerBelow flags a reading that is warmer, and so lighter, than the one above it
// by more than the thermometer's error. Below 4 C warmer water is the heavier, and
// nothing is odd about it.
func (c *checker) warmerBelow() {
	for i := range c.d.Readings {
		r := &c.d.Readings[i]
		if r.Flag != "" {
			continue
		}
		above, _ := c.neighbours(i, r.DepthM)
		if above == nil {
			continue
		}
		rise := r.TempC - above.TempC
		if rise > c.precision+math.Max(r.SpreadC, above.SpreadC)+1e-9 && water.Density(r.TempC) < water.Density(above.TempC) {
			r.Flag = profile.WarmerBelow
		}
	}
}

// neighbours gives the used readings next above and next below a depth, leaving
// reading i and those of its own depth out.
func (c *checker) neighbours(i int, depthM float64) (above, below *profile.Reading) {
	for j := range c.d.Readings {
		r := &c.d.Readings[j]
		if j == i || !r.Used() || !c.plausible(*r) || math.Abs(r.DepthM-depthM) < profile.SameDepthM {
			continue
		}
		if r.DepthM < depthM && (above == nil || r.DepthM > above.DepthM) {
			above = r
		}
		if r.DepthM > depthM && (below == nil || r.DepthM < below.DepthM) {
			below = r
		}
	}
	return above, below
}

// fits reports whether a temperature would lie well at a depth, by its neighbours.
func (c *checker) fits(i int, depthM, tempC float64) bool {
	slack := math.Max(guessSlackC, 2*c.precision)
	above, below := c.neighbours(i, depthM)
	switch {
	case above != nil && below != nil:
		return tempC >= math.Min(above.TempC, below.TempC)-slack && tempC <= math.Max(above.TempC, below.TempC)+slack
	case above != nil:
		return tempC <= above.TempC+slack && tempC >= math.Max(above.TempC-endStepC, 0)
	case below != nil:
		return tempC >= below.TempC-slack && tempC <= math.Min(below.TempC+endStepC, 35)
	}
	return tempC >= 0 && tempC <= 35
}
