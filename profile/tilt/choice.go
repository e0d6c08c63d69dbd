package tilt

import "strings"

// Want is what water a fish looks for.
type Want string

// The wants.
const (
	Cooler  Want = "cooler"  // cool water, which begins under warm water
	Warmer  Want = "warmer"  // warmer water than there is
	Anyhow  Want = "anyhow"  // the water suits from the top down
	Nowhere Want = "nowhere" // none of it suits
)

// End is which end to try first.
type End string

// The ends.
const (
	EitherEnd   End = "either"
	UpwindEnd   End = "upwind"
	DownwindEnd End = "downwind"
)

// Choice is which end to try first, and why.
type Choice struct {
	End End
	Why Reason
}

// Reason is the code of why an end is chosen, or none.
type Reason string

// The reasons.
const (
	Shallower Reason = "shallower" // cool water is shallower to reach there
	Thicker   Reason = "thicker"   // the warm layer is thicker there
	Calm      Reason = "calm"      // there is no wind
	Small     Reason = "small"     // the ends are too little apart to move for
	NoMatter  Reason = "no matter" // the water suits from the top down at both
	NoGood    Reason = "no good"   // no water suits, at either
)

// SmallM is what the ends must be apart for to be worth a move along the lake: less is
// within what an angler tries at one place, by steps of 6 to 12 in (common practice).
const SmallM = 0.5

// choose picks the end.
func choose(t Tilt, want Want) Choice {
	switch {
	case t.WindMps == 0:
		return Choice{EitherEnd, Calm}
	case want == Nowhere:
		return Choice{EitherEnd, NoGood}
	case 2*t.End.Best < SmallM:
		return Choice{EitherEnd, Small}
	case want == Cooler:
		return Choice{UpwindEnd, Shallower}
	case want == Warmer:
		return Choice{DownwindEnd, Thicker}
	}
	return Choice{EitherEnd, NoMatter}
}

// To is the point of the compass that a wind from another blows to: SW to NE.
func To(from string) string {
	return strings.NewReplacer("N", "S", "S", "N", "E", "W", "W", "E").Replace(from)
}
