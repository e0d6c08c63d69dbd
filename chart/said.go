package chart

import "coldseam/profile/unit"

// Said is where a zone is, as every picture prints it beside its name: "15 to 29 ft",
// "below 20 ft".
func (z Zone) Said(u unit.System) string {
	if z.Kind == Unproven {
		return "below " + u.Length(z.TopM)
	}
	return u.Span(z.TopM, z.BottomM)
}

// Said is where a mark is: a thermocline between two depths, all else at one.
func (m Mark) Said(u unit.System) string {
	if m.Kind == Thermocline {
		return u.Span(m.At.Low, m.At.High)
	}
	return u.Length(m.At.Best)
}
