package chart

import (
	"math"
	"slices"
)

// Step is the least of 1, 2, 5, 10, 20... and their tenths, hundredths... that cuts a span,
// more than 0, into at most so many pieces.
func Step(span, most float64) float64 {
	raw := span / most
	unit := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, k := range []float64{1, 2, 5} {
		if k*unit >= raw*(1-1e-9) {
			return k * unit
		}
	}
	return 10 * unit
}

// TempRange is from how cold to how warm a picture of drops goes, C: all of the curves and
// of the readings that are used, and of the doubt as much as leaves these readable. One
// layer is a straight line in it, not noise blown up.
func TempRange(drops ...Drop) (lowC, highC float64) {
	lowC, highC = math.Inf(1), math.Inf(-1)
	for _, d := range drops {
		low, high := d.tempRange()
		lowC, highC = math.Min(lowC, low), math.Max(highC, high)
	}
	if lowC > highC {
		return 0, 25
	}
	return lowC, highC
}

func (d Drop) tempRange() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	hold := func(c float64) { low, high = math.Min(low, c), math.Max(high, c) }
	for _, q := range d.Curve {
		hold(q.TempC)
	}
	some := slices.ContainsFunc(d.Readings, func(r Reading) bool { return r.Used })
	for _, r := range d.Readings {
		if r.Used || !some {
			hold(r.TempC)
		}
	}
	if low > high { // nothing was read
		return low, high
	}
	if high-low < 2 {
		low, high = (low+high)/2-1, (low+high)/2+1
	}
	far := 0.4 * (high - low)
	from, to := low-0.06*(high-low), high+0.06*(high-low)
	for _, q := range d.Curve {
		from, to = math.Min(from, math.Max(q.LowC, low-far)), math.Max(to, math.Min(q.HighC, high+far))
	}
	return from, to
}

// Within80 turns a standard error into half of an 80 % interval, as for a normal
// distribution: its 90th percentile (Abramowitz and Stegun 1964, table 26.5).
const Within80 = 1.28155

// Crowded is how many readings a picture takes before bars would be a smear.
const Crowded = 60
