package trip

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/rig"
)

// Kit is what to make ready at home. Lengths are m.
type Kit struct {
	LineM    float64 // of marked line
	DeepestM float64 // the deepest reading that it is for
	// RopeLowM to RopeHighM is the anchor's rope, 5 to 7 times the depth, for water of
	// AnchorM; 0 without a depth of water to begin over, and for fish of open water.
	AnchorM, RopeLowM, RopeHighM float64
	Ties                         []Tie
	ReadM                        profile.Optional // the mark to read after both ends, unknown where one layer is expected
}

// Tie is a rig for one depth of water that is likely.
type Tie struct {
	WaterM, FlyM float64
	Rig          rig.Rig
}

// Lengths of common practice, m: what is left over of a marked line, and how deep to read
// where nobody knows, as deep as sinking lines reach. Scope is by the handbooks of boating:
// 5 to 7 times the depth.
const (
	spareM        = 5 * 0.3048
	readToM       = 60 * 0.3048
	shortestM     = 30 * 0.3048
	scopeLow      = 5
	scopeHigh     = 7
	mostTies      = 4
	tiesApartM    = 0.6
	roundLineFtM  = 5 * 0.3048
	roundLineM    = 1.0
	roundRopeFtM  = 10 * 0.3048
	roundRopeM    = 5.0
	offTheBottomM = 0.3
)

// Tackle is what leaders are worked out by: WaterM and FlyM are set for each.
type Tackle = rig.Input

// Pack says what to make ready for what is expected; feet says how lengths are rounded, and
// markM how the line is marked.
func Pack(e Expectation, in Input, t Tackle, feet bool, markM float64) Kit {
	k := Kit{DeepestM: in.deepestReading(e)}
	line, rope := roundLineM, roundRopeM
	if feet {
		line, rope = roundLineFtM, roundRopeFtM
	}
	k.LineM = up(k.DeepestM+spareM, line)
	if e.Thermocline != nil {
		k.ReadM = profile.Some(math.Round(e.Thermocline.Best/markM) * markM)
	}
	if e.Water == nil || e.State == Iced {
		return k
	}
	if !t.Suspended { // who fishes open water may drift
		k.AnchorM = up(e.Water.High, markM)
		k.RopeLowM, k.RopeHighM = up(scopeLow*k.AnchorM, rope), up(scopeHigh*k.AnchorM, rope)
	}
	for _, z := range depths(e.Water.Low, e.Water.High, markM) {
		t.WaterM, t.FlyM = z, max(0, z-in.ClearanceM)
		k.Ties = append(k.Ties, Tie{z, t.FlyM, reaching(t)})
	}
	return k
}

// reaching is the rig for a depth, or the next best where that is out of the first one's
// reach: what is tied at home should do.
func reaching(t Tackle) rig.Rig {
	r := rig.Find(t)
	if r.Reachable || r.RunnerUp == "" {
		return r
	}
	t.Kind = r.RunnerUp
	if next := rig.Find(t); next.Reachable {
		return next
	}
	return r
}

// deepestReading is how deep it may be worth reading: to the bottom, or twice as deep as the
// thermocline may lie.
func (in Input) deepestReading(e Expectation) float64 {
	z := readToM
	if e.Thermocline != nil {
		z = max(2*e.Thermocline.High, shortestM)
	}
	if in.Deepest.Known {
		z = min(max(z, readToM), in.Deepest.Value-offTheBottomM)
	}
	return max(z, 0)
}

// depths are whole marks from low to high, mostTies of them at the most and evenly apart, the
// ends among them.
func depths(low, high, markM float64) (out []float64) {
	first, last := math.Round(low/markM), math.Round(high/markM)
	first = max(first, 1)
	n := min(mostTies-1, int((last-first)*markM/tiesApartM))
	if n < 1 {
		return []float64{math.Round((first+last)/2) * markM}
	}
	for i := range n + 1 {
		out = append(out, math.Round(first+(last-first)*float64(i)/float64(n))*markM)
	}
	return out
}

// up rounds up to whole steps.
func up(m, step float64) float64 { return math.Ceil(m/step-1e-6) * step }
