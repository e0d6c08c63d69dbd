package check

import (
	"math"
	"strconv"
	"strings"

	"coldseam/profile/unit"
)

func show(v float64, u unit.Temperature) string { return unit.Exact(v) + " " + u.String() }

// tempC is what a written temperature would be after the thermometer's correction.
func (c *checker) tempC(v float64, u unit.Temperature) float64 {
	return u.ToC(v) - c.d.IcePoint.Or(0)
}

// otherUnit reads the written number on the other scale.
func (c *checker) otherUnit(i int) (float64, unit.Temperature, bool) {
	r := c.d.Readings[i]
	other := unit.Fahrenheit
	if r.TempUnit == unit.Fahrenheit {
		other = unit.Celsius
	}
	return r.Temp, other, c.fits(i, r.DepthM, c.tempC(r.Temp, other))
}

// slip looks for the number that a slip of the pen may have spoilt: a decimal point
// moved or lost, else a digit left out at either end or two digits changed about.
// Of those that fit between the neighbours it takes the one nearest to the line
// between them.
func (c *checker) slip(i int) (float64, bool) {
	r := c.d.Readings[i]
	aim := c.expected(i)
	best, found := 0.0, false
	for _, list := range [][]float64{{r.Temp * 10, r.Temp / 10}, otherSlips(r.Temp)} {
		for _, v := range list {
			t := c.tempC(v, r.TempUnit)
			if !c.fits(i, r.DepthM, t) {
				continue
			}
			if !found || math.Abs(t-aim) < math.Abs(c.tempC(best, r.TempUnit)-aim) {
				best, found = v, true
			}
		}
		if found {
			break
		}
	}
	return best, found
}

// otherSlips lists the numbers of which v may be what is left after a digit was
// left out, added or changed about with its neighbour.
func otherSlips(v float64) []float64 {
	if v < 0 { // a dash taken for a minus; a sentinel such as -127 is no slip
		return []float64{-v}
	}
	var out []float64
	s := strconv.FormatFloat(math.Abs(v), 'f', -1, 64)
	whole, _, _ := strings.Cut(s, ".")
	add := func(s string) {
		if x, err := strconv.ParseFloat(s, 64); err == nil {
			out = append(out, x)
		}
	}
	if len(whole) == 1 {
		for d := '1'; d <= '9'; d++ {
			add(string(d) + s)
		}
		for d := '0'; d <= '9'; d++ {
			add(whole + string(d) + s[1:])
		}
	}
	if len(whole) == 2 {
		add(whole[1:] + whole[:1] + s[2:])
	}
	if len(whole) == 3 && whole == s {
		add(whole[:2])
		add(whole[1:])
	}
	return out
}

// expected is the temperature on the straight line between a reading's neighbours.
func (c *checker) expected(i int) float64 {
	r := c.d.Readings[i]
	above, below := c.neighbours(i, r.DepthM)
	switch {
	case above != nil && below != nil:
		f := (r.DepthM - above.DepthM) / (below.DepthM - above.DepthM)
		return above.TempC + f*(below.TempC-above.TempC)
	case above != nil:
		return above.TempC
	case below != nil:
		return below.TempC
	}
	return 15
}

// swapped reports whether reading i has its depth and temperature the wrong way
// round: as it stands it does not belong where it is written, the other way round
// it does.
func (c *checker) swapped(i int) bool {
	rs := c.d.Readings
	r := &rs[i]
	if len(rs) < 3 || r.Temp == r.Depth {
		return false
	}
	var low, high float64
	switch { // between the lines above and below, or beyond the one line beside an end
	case i == 0:
		low, high = beyond(rs[2].DepthM, rs[1].DepthM)
	case i == len(rs)-1:
		low, high = beyond(rs[i-2].DepthM, rs[i-1].DepthM)
	default:
		low, high = min(rs[i-1].DepthM, rs[i+1].DepthM), max(rs[i-1].DepthM, rs[i+1].DepthM)
	}
	atEnd := i == 0 || i == len(rs)-1
	depthM := r.DepthUnit.Metres(r.Temp) // the corrections are small against the steps of a page
	tempC := c.tempC(r.Depth, r.TempUnit)
	inOrder := r.DepthM > low && r.DepthM < high
	if atEnd { // a deep last reading is in order too: only one that is no lake's is not
		inOrder = c.plausible(*r)
	}
	if inOrder || !(depthM > low && depthM < high) || !c.fits(i, depthM, tempC) {
		return false
	}
	r.Guess = unit.Exact(r.Temp) + " " + r.DepthUnit.String() + ", " + show(r.Depth, r.TempUnit)
	return true
}

// beyond gives the depths at which the next reading of a page may lie that went
// from depth a to depth b: on in the same direction, by no more than five such steps.
func beyond(a, b float64) (low, high float64) {
	on := b + 5*(b-a)
	return min(b, on), max(b, on)
}
