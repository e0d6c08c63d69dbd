package chart

import "coldseam/profile/unit"

// Said is where a zone is, as every picture prints it beside its name: "15 to 29 ft",
// "below 20 ft".
func (z Zone) Said(u unit.System) string {
	if z.Kind == Unproven {
		return "below " + u.Length(z.TopM)
	}
	if z.Kind == Band && z.TopM <= 0 {
		return "down to " + u.Length(z.BottomM)
	}
	return u.Span(z.TopM, z.BottomM)
}

// Said is where a mark is: a thermocline between two depths, all else at one.
func (m Mark) Said(u unit.System) string {
	switch m.Kind {
	case Thermocline:
		return u.Span(m.At.Low, m.At.High)
	case Water, Bottom: // as the line is marked
		return u.Marked(m.At.Best)
	}
	return u.Length(m.At.Best)
}

// What the signs of a picture of one drop mean, in every kind of picture.
const (
	SaidReading  = "reading (bars: in 8 of 10 cases)"
	SaidCrowded  = "reading (bars left out: many readings)"
	SaidOdd      = "odd, but used"
	SaidUnused   = "odd, not used"
	SaidOffScale = "off the scale"
	SaidCurve    = "temperature (shaded: in 8 of 10 cases)"
	SaidDoubt    = "in 8 of 10 cases"
	SaidAssumed  = "assumed beyond the readings"
)
