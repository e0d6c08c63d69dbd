package format

import (
	"math"
	"slices"
	"sort"
)

// usual leaves out the numbers that stand for a fault in some unit.
func usual(nums []float64) []float64 {
	var out []float64
	for _, v := range nums {
		switch v {
		case 85, 8500, 85000, 185, -127, -12700, -127000, -196.6, 300, 302, 304, 999, -999, 8888, 9999, -9999:
			continue
		}
		out = append(out, v)
	}
	return out
}

// Bounds of what is offered, not of what is read: a temperature that is higher was not
// measured in a lake, and a depth that is greater not by a hobby probe.
const (
	likelyMaxC  = 40
	likelyMaxM  = 200
	surelyC     = 31 // up to here a number is in C: as F it would be ice
	surelyF     = 40 // over it a number is in F
	wholeCounts = 1000
)

// tempParts are the ways to read the column as a temperature.
func (k *known) tempParts(hex bool) []Part {
	if hex && isWords(k.texts) {
		word := []Part{{Quantity: Word}}
		if slices.ContainsFunc(k.texts, hasHexLetter) || k.what == Word {
			return word
		}
		return append(word, k.numberParts()...)
	}
	if k.what == Word && k.sure > 0 {
		return nil
	}
	return k.numberParts()
}

func (k *known) numberParts() []Part {
	nums := usual(k.nums)
	if len(nums) == 0 {
		return nil
	}
	lo, hi := slices.Min(nums), slices.Max(nums)
	if k.what == Ohms && k.sure > 0 {
		if lo <= 0 {
			return nil
		}
		if k.unit == kilohm {
			return []Part{{Quantity: Ohms, Unit: units[kilohm].symbol}}
		}
		return []Part{{Quantity: Ohms}}
	}
	parts := k.scaled(lo, hi, 1)
	if len(parts) > 0 || !k.whole || k.lineUnit != noUnit {
		return parts
	}
	for _, div := range []float64{100, 10, 16, 1000} {
		if div < wholeCounts || hi >= 4*wholeCounts {
			parts = append(parts, k.scaled(lo/div, hi/div, div)...)
		}
	}
	return parts
}

// scaled are the units in which lo to hi can be temperatures of water.
func (k *known) scaled(lo, hi, div float64) (parts []Part) {
	add := func(u unitID) { parts = append(parts, Part{Quantity: Temp, Unit: unitString(u, div)}) }
	inC := lo >= -5 && hi <= likelyMaxC
	inF := lo >= 23 && hi <= 122 && (div == 1 || hi <= fahrenheitOf(likelyMaxC)) && div != 16
	switch k.unit {
	case celsius:
		if inC || div == 1 && lo >= -5 && hi <= 50 {
			add(celsius)
		}
	case fahrenheit:
		if inF {
			add(fahrenheit)
		}
	case kelvin:
		if div == 1 && lo >= 268 && hi <= 323.15 {
			add(kelvin)
		}
	default:
		if inC && hi <= surelyF {
			add(celsius)
		}
		if inF && hi > surelyC {
			add(fahrenheit)
		}
	}
	return parts
}

func fahrenheitOf(c float64) float64 { return c*9/5 + 32 }

// depthParts are the ways to read the column as a depth.
func (k *known) depthParts() []Part {
	nums := usual(k.nums)
	if len(nums) == 0 {
		return nil
	}
	lo, hi := slices.Min(nums), slices.Max(nums)
	if k.sure > 0 && (k.what == Pressure || k.what == Gauge) {
		return k.pressureParts(lo, hi)
	}
	if k.what == Depth && k.unit != noUnit {
		return []Part{{Quantity: Depth, Unit: units[k.unit].symbol}}
	}
	var parts []Part
	order := []unitID{metre, foot, centimetre, millimetre}
	if k.whole && hi > likelyMaxM {
		order = []unitID{centimetre, millimetre, foot, metre}
	}
	for _, u := range order {
		if u.si(lo) < -2 || u.si(hi) > likelyMaxM || u == millimetre && !k.whole && hi < 100 {
			continue
		}
		parts = append(parts, Part{Quantity: Depth, Unit: units[u].symbol})
	}
	if k.bare && lo >= 950 && hi <= 1100 {
		parts = append(parts, Part{Quantity: Pressure, Unit: units[hectopascal].symbol})
	}
	return parts
}

// Air pressure near the ground, and what counts as no pressure at all, Pa.
const (
	airLowPa, airHighPa = 95000, 110000
	nearZeroPa          = 5000
)

// pressureParts: the first lines of a probe are mostly of air, where an absolute pressure
// shows itself by its size, and one over the air's by being none.
func (k *known) pressureParts(lo, hi float64) (parts []Part) {
	if k.unit == noUnit {
		for _, u := range []unitID{hectopascal, bar, kilopascal, pascal, psi} {
			if k.what == Pressure && u.si(lo) >= airLowPa && u.si(hi) <= airHighPa {
				return []Part{{Quantity: Pressure, Unit: units[u].symbol}}
			}
		}
	}
	for _, u := range []unitID{hectopascal, bar, kilopascal, pascal, psi} {
		if k.unit != noUnit && u != k.unit && !(k.unit == millibar && u == hectopascal) {
			continue
		}
		sym := units[u].symbol
		if k.unit == millibar {
			sym = units[millibar].symbol
		}
		least, most := u.si(lo), u.si(hi)
		abs := k.what == Pressure && least >= 50000 && most <= 2.5e6
		gauge := least >= -nearZeroPa && most <= 2.4e6
		if k.unit != noUnit && abs && least >= airLowPa && least <= airHighPa {
			gauge = false
		}
		if gauge && math.Abs(least) <= nearZeroPa {
			abs = false
		}
		if k.unit == noUnit && most < 500 {
			gauge = gauge && u == bar && hi > 0 // as other units it would be nothing
		}
		if abs {
			parts = append(parts, Part{Quantity: Pressure, Unit: sym})
		}
		if gauge {
			parts = append(parts, Part{Quantity: Gauge, Unit: sym})
		}
	}
	return parts
}

// timeColumns are the columns that count time: by name with a unit, or without any name
// where they count up evenly beside two others or beyond every depth.
func timeColumns(cols []known, places bool) map[int]Part {
	times := map[int]Part{}
	bare := 0
	for i := range cols {
		if cols[i].bare && len(cols[i].nums) > 0 {
			bare++
		}
	}
	for i := range cols {
		k := &cols[i]
		if len(k.nums) == 0 || len(times) > 0 {
			continue
		}
		switch {
		case k.sure > 0 && k.what == Time && k.unit != noUnit:
			times[i] = Part{Quantity: Time, Unit: units[k.unit].symbol}
		case k.sure > 0 && k.what == Time:
			if p := counted(k.nums); p.Quantity == Time {
				times[i] = p
			}
		case k.sure == 1 && k.what == Temp && slices.Min(k.nums) >= wholeCounts && countsUp(k.nums):
			times[i] = counted(k.nums) // t beside temp
		case k.bare && places && countsUp(k.nums) && k.whole:
			k.time, k.counts = counted(k.nums), true
			if bare > 2 || slices.Min(k.nums) > 1000*likelyMaxM {
				times[i] = k.time
			}
		}
	}
	return times
}

// doubtfulTime is the column that may count time or be a depth, or -1.
func doubtfulTime(cols []known, times map[int]Part, places bool) int {
	for i := range cols {
		if _, is := times[i]; !is && places && cols[i].counts {
			return i
		}
	}
	return -1
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
		return Part{Quantity: Time, Unit: units[second].symbol}
	case hi >= wholeCounts && len(nums) > 1 && (hi-lo)/float64(len(nums)-1) >= 20:
		return Part{Quantity: Time, Unit: units[millisecond].symbol}
	}
	return Part{Quantity: Skip}
}
