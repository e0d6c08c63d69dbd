package oxygen

import (
	"coldseam/profile"
	"coldseam/profile/light"
)

// Hope is what speaks against a depth that Below names: in some lakes it is often a false
// alarm. It softens the words about that depth, never the depth itself, since nobody has
// measured there.
//
// Of the layered columns that a depth was named in, each lake counting once, a third
// never fell under 5 mg/L where the lake was at least 20 m deep, and a tenth where it was
// not: TestFalseAlarms. That oxygen often holds where a deep lake is clear as well is
// common practice; none of the lakes at hand came with a Secchi depth.
type Hope string

// The hopes.
const (
	NoHope    Hope = ""
	Deep      Hope = "deep"           // measured: one lake in three never runs short
	DeepClear Hope = "deep and clear" // common practice, untested: most never do
)

// deepM is where the share of false alarms rises: it was a tenth or less in lakes of 5 to
// 20 m, a quarter at 20 to 30 m, and two fifths beyond.
const deepM = 20.0

// HopeOf says what speaks against the doubt in a lake. lakeM is the greatest depth known
// of it, m: what is not known to be deep gives no hope, nor does fertile water.
func HopeOf(lakeM float64, secchi profile.Optional, colour string) Hope {
	switch rich := light.Noted(secchi, colour); {
	case !(lakeM >= deepM-1e-9) || rich == light.Fertile || rich == light.VeryFertile:
		return NoHope
	case rich == light.Clear:
		return DeepClear
	}
	return Deep
}
