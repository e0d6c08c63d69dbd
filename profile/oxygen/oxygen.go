package oxygen

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// Input is what a depth is named from. Nothing else was found to help: for the season, and
// for colour, see the package comment.
type Input struct {
	Column  profile.Column   // its oxygen readings, if any, are kept to
	Layers  layers.Layers    // of that column, with or without intervals: they give the same
	NeedMgL float64          // oxygen that the fish needs; fitted for 3 to 7, beyond that as for 3 or 7
	Bottom  profile.Optional // depth of water under the boat, m

	// AnchorBlack says that the mud on the anchor is black or smells of rotten eggs. The
	// water just above it is then taken to have no oxygen (common practice); without
	// Bottom that says nothing.
	AnchorBlack bool
}

// Below names the depth, m, below which the water may hold less than the oxygen needed.
// The estimate is of the depth at which oxygen first falls under it, going down, in a
// lake that runs short of it: of such lakes 9 in 10 still have enough at Low, 5 at Best
// and 1 at High. Low is the depth to print as 'unknown below'. Over black mud more than 9
// in 10 have enough at Low.
//
// ok is false when no depth can be named: the water is colder below by less than 1.5 C,
// is inverse, as under ice, or was read at fewer than 3 depths, and no black mud speaks
// for it; it has just turned over, whatever the mud says; or the need is not above 0. That is no proof of oxygen.
func Below(in Input) (below profile.Estimate, ok bool) {
	if !(in.NeedMgL > 0) {
		return below, false
	}
	byFall, fell := fallDepths(in.Layers)
	if TurnedOver(in.Layers) {
		return below, false
	}
	bottomM := math.Inf(1)
	if in.Bottom.Known && in.Bottom.Value > 0 {
		bottomM = in.Bottom.Value
	}
	byMud := in.AnchorBlack && !math.IsInf(bottomM, 1)
	if !fell && !byMud {
		return below, false
	}
	var v [3]float64
	for i := range v {
		v[i] = math.Max(bottomM, in.Column.Last().DepthM) // what was read there is water
		if fell {
			v[i] = math.Min(v[i], byFall[i]*factor(ofFall, in.NeedMgL, i))
		}
		if byMud {
			v[i] = math.Min(v[i], bottomM*factor(ofMud, in.NeedMgL, i))
		}
		v[i] = withinMeasured(in.Column, in.NeedMgL, v[i])
	}
	return profile.Estimate{Low: v[0], Best: v[1], High: v[2]}, true
}

// TurnedOver reports whether a lake seems to have been mixed by the wind lately, as in
// spring and late autumn: one layer from top to bottom, in cold water, which has taken up
// air and loses it slowly. Of such columns one in fifteen fell under 5 mg/L, and
// that near the bottom: TestTurnedOver.
func TurnedOver(l layers.Layers) bool {
	oneLayer := l.Structure == layers.Mixed || l.Structure == layers.SkinOnly
	return oneLayer && l.MixedTempC <= turnoverC
}

// turnoverC: a column of one layer no warmer than this has turned over lately. Lakes turn
// over at 4 to 10 C or a little more (common practice).
const turnoverC = 12.0

// leastFallC is the least fall of temperature, in all, from which depths are named: that
// of a layered column, whether or not an interval is steep.
const leastFallC = 1.5

// fallen gives the depths at which the shares of the fall are done.
func fallDepths(l layers.Layers) (depthsM [3]float64, ok bool) {
	k := l.Curve
	if k == nil || len(k.Depths) < 3 || l.Structure == layers.Inverse || l.Structure == layers.TooFew {
		return depthsM, false
	}
	coldest := 0
	for i, t := range k.Temps {
		if t < k.Temps[coldest] {
			coldest = i
		}
	}
	fall := l.MixedTempC - k.Temps[coldest]
	if !(fall >= leastFallC-1e-9) {
		return depthsM, false
	}
	for i, share := range shares {
		z, ok := k.Crossing(l.MixedTempC-share*fall, math.Max(k.Top(), l.SkinM), k.Depths[coldest])
		if !ok {
			return depthsM, false
		}
		depthsM[i] = z
	}
	return depthsM, true
}

// keepTo keeps a depth to the oxygen that was measured: not above the deepest reading
// with enough, as far as no reading above it had too little, nor below the first with
// too little.
func withinMeasured(c profile.Column, needMgL, depthM float64) float64 {
	for i := range c.Len() {
		switch p := c.At(i); {
		case !p.Oxygen.Known:
		case p.Oxygen.Value < needMgL:
			return math.Min(depthM, p.DepthM)
		default:
			depthM = math.Max(depthM, p.DepthM)
		}
	}
	return depthM
}
