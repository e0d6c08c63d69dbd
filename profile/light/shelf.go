package light

import (
	"math"

	"coldseam/profile"
)

// PracticeM is where the food shelf ends by common practice, 20 ft.
const PracticeM = 20 * 0.3048

// Limit is what ends the food shelf.
type Limit string

// The limits.
const (
	ByWeeds    Limit = "weeds"           // weeds are not expected deeper
	ByPractice Limit = "common practice" // weeds may grow deeper than 20 ft
	NoSecchi   Limit = "no Secchi depth" // 20 ft by common practice alone
)

// Shelf is the depth at which the food shelf ends, m, and why there. The doubt of a
// depth ByWeeds is that of Weeds.
type Shelf struct {
	EndM float64
	By   Limit
}

// ShelfOf returns the shallower of the weeds' best depth and PracticeM. A Secchi depth
// outside the range counts as none.
func ShelfOf(secchi profile.Optional) Shelf {
	weedsM := Weeds(secchi.Value).Best
	switch {
	case !secchi.Known || math.IsNaN(weedsM):
		return Shelf{PracticeM, NoSecchi}
	case weedsM < PracticeM:
		return Shelf{weedsM, ByWeeds}
	}
	return Shelf{PracticeM, ByPractice}
}
