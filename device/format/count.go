package format

import (
	"slices"

	"coldseam/profile/unit"
)

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
	slices.Sort(steps)
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
