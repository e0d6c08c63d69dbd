package profile

import "coldseam/profile/unit"

// Optional is a number that may be unknown; unknown is never zero.
type Optional struct {
	Value float64
	Known bool
}

// Some is a known number.
func Some(v float64) Optional { return Optional{v, true} }

// Or gives the number, or v when it is unknown.
func (o Optional) Or(v float64) float64 {
	if o.Known {
		return o.Value
	}
	return v
}

// Flag names what a check found odd about a reading; empty when nothing was.
type Flag string

// The flags, as they are printed.
const (
	OutOfRange      Flag = "out of range"
	Spike           Flag = "spike"
	RepeatDisagrees Flag = "repeat disagrees"
	WarmerBelow     Flag = "warmer below"
	SlippedDigit    Flag = "slipped digit"
	ColumnsSwapped  Flag = "columns swapped"
	WrongUnit       Flag = "wrong unit"
	BelowBottom     Flag = "below bottom"
)

// LeavesOut reports whether a reading with this flag is kept out of the Column.
// Repeats that disagree and water that is warmer below may both be real, so they
// are used, and widen what is said; the others are shown but not used.
func (f Flag) LeavesOut() bool {
	return f != "" && f != RepeatDisagrees && f != WarmerBelow
}

// Reading is one temperature at one depth.
type Reading struct {
	DepthM float64  // below the water surface, corrected for marks and line angle
	TempC  float64  // corrected by the thermometer's ice-point reading
	Oxygen Optional // dissolved oxygen, mg/L

	// As it was written, before any correction.
	Depth     float64 // in DepthUnit
	DepthUnit unit.Length
	Temp      float64 // on TempUnit
	TempUnit  unit.Temperature
	Step      float64 // size of the temperature's last written digit, on TempUnit
	SpreadC   float64 // half the range written ("66-67"), or a wider error where the angler said "about"
	Line      int     // line of the page, from 1; 0 when it came from no page
	Text      string  // what stood there

	Flag  Flag
	Guess string // what the flag suspects was meant, never used: "72 F"
}

// Used reports whether the reading takes part in the Column.
func (r Reading) Used() bool { return !r.Flag.LeavesOut() }
