package rig

// Tackle is what the angler has and casts, from one drop to the next.
type Tackle struct {
	Stock          []Piece
	LongestM       float64 // the longest leader the angler casts
	RodM           float64
	Flies          int             // tied on, the point fly and droppers; 0 is 1
	Prefer         Kind            // the rig to take wherever it reaches the depth, "" for none
	SinkMps        float64         // rate of the sinking line; 0: not known
	BottomContacts []BottomContact // which correct the sink times
}

// BottomContact is a bottom that the fly touched, on a rig of the kind, so long after it
// landed.
type BottomContact struct {
	Kind   Kind
	DepthM float64
	S      float64
}

// DefaultTackle is what is assumed where the settings leave it open.
func DefaultTackle() Tackle {
	return Tackle{Stock: DefaultStock(), LongestM: LongestM, RodM: RodM, Flies: 1}
}

// What DefaultTackle assumes.
const (
	LongestM = 30 * 0.3048
	RodM     = 10 * 0.3048
)

// Limits of what is asked for.
const (
	FastestMps     = 3.0 // of a retrieve or a drift
	HeaviestShotKg = 0.05
	MostFlies      = 3
)
