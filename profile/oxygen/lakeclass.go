package oxygen

import (
	"coldseam/profile"
	"coldseam/profile/light"
)

// LakeClass says of a lake whether a depth that Below names is often a false alarm there.
// It softens the words about that depth, never the depth itself, since nobody has
// measured there.
//
// Of the layered columns that a depth was named in, each lake counting once, a third
// never fell under 5 mg/L where the lake was at least 20 m deep, and a tenth where it was
// not: TestFalseAlarms. That oxygen often holds where a deep lake is clear as well is
// common practice; none of the lakes at hand came with a Secchi depth.
type LakeClass string

// The classes.
const (
	AnyLake       LakeClass = ""
	DeepLake      LakeClass = "deep"           // measured: one lake in three never runs short
	DeepClearLake LakeClass = "deep and clear" // common practice, untested: most never do
)

// deepM is where the share of false alarms rises: it was a tenth or less in lakes of 5 to
// 20 m, a quarter at 20 to 30 m, and two fifths beyond.
const deepM = 20.0

// ClassOf gives the class of a lake. lakeM is the greatest depth known of it, m: a lake
// that is not known to be deep is any lake, and so is one of fertile water.
func ClassOf(lakeM float64, secchi profile.Optional, colour string) LakeClass {
	switch rich := light.Noted(secchi, colour); {
	case !(lakeM >= deepM-1e-9) || rich == light.Fertile || rich == light.VeryFertile:
		return AnyLake
	case rich == light.Clear:
		return DeepClearLake
	}
	return DeepLake
}
