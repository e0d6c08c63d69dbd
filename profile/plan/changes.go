package plan

import (
	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/fish"
	"coldseam/profile/tilt"
)

// Change is the code of something that would change the advice.
type Change string

// The changes: the first three where there is no band.
const (
	ColderBelow  Change = "colder below"  // a reading further down that is cool enough
	CoolerWater  Change = "cooler water"  // from a spring, or after cool weather
	MoreOxygen   Change = "more oxygen"   // in water of the right temperature
	LessOxygen   Change = "less oxygen"   // where the fly starts: see Retreat
	WarmerNearby Change = "warmer nearby" // water nearer to what the fish likes
	WarmerStart  Change = "warmer start"  // too warm where the fly starts: down
	ColderStart  Change = "colder start"  // too cold where the fly starts: up
	WindTilts    Change = "wind tilts"    // the thermocline, so that the ends of the lake differ
)

// Changes lists what would change the advice.
func (p *Plan) Changes() []Change {
	b := p.Band
	switch {
	case b.Found:
	case b.Verdict == band.NotReached:
		return []Change{ColderBelow}
	case b.Verdict == band.TooWarm:
		return []Change{CoolerWater}
	default:
		return []Change{MoreOxygen}
	}
	const nearSurfaceM = 2 // nearer to the surface there is hardly any "up"
	const coolsCPerM = 0.1
	var out []Change
	if b.Start.Best > nearSurfaceM || !b.ToSurface {
		out = append(out, LessOxygen)
	}
	switch {
	case b.Cold && !p.UnderIce():
		out = append(out, WarmerNearby)
	case p.warmEdge():
		out = append(out, WarmerStart)
	}
	if p.Fish.Kind != fish.Coldwater && !b.Cold && b.Verdict != band.OverWarm && p.fallAt(b.Start.Best) > coolsCPerM {
		out = append(out, ColderStart)
	}
	if t, no := p.Tilt(profile.Optional{}, tilt.AnyPlace); no == "" && t.Choice.End != tilt.EitherEnd {
		out = append(out, WindTilts)
	}
	return out
}

// Retreat is where too little oxygen at the start would send the angler.
type Retreat struct {
	To            RetreatTo
	TopM, BottomM float64 // of ToDepth and ToEdge TopM alone; of ToSurer both
}

// RetreatTo is the code of a retreat.
type RetreatTo string

// The retreats.
const (
	ToUnder  RetreatTo = "under"  // down: over the start there is too little as well
	ToDepth  RetreatTo = "depth"  // up to where oxygen is surer
	ToEdge   RetreatTo = "edge"   // up to the band's edge
	ToSurer  RetreatTo = "surer"  // up to water that is warmer than the fish likes
	ToAbove  RetreatTo = "above"  // up
	ToWarmer RetreatTo = "warmer" // up, into water warmer than they like
	ToOther  RetreatTo = "other"  // away: hardly any water above is cool enough
)

// Retreat says where too little oxygen at the start would send the angler.
func (p *Plan) Retreat() Retreat {
	b := p.Band
	if p.oxygenEdge() {
		return Retreat{To: ToUnder}
	}
	const apartM = 0.3
	top := b.Top.High
	if b.ToSurface {
		top = 0
	}
	if d := b.DoubtfulBelow; d != nil && d.Best < b.Start.Best-apartM && d.Best > top {
		return Retreat{To: ToDepth, TopM: d.Best}
	}
	if top < b.Start.Best-2*apartM && !b.ToSurface {
		return Retreat{To: ToEdge, TopM: top}
	}
	for _, o := range b.Others {
		if o.Why == band.Surer {
			return Retreat{ToSurer, o.TopM, o.BottomM}
		}
	}
	switch {
	case b.ToSurface || b.Cold:
		return Retreat{To: ToAbove}
	case p.Fish.Kind != fish.Coldwater:
		return Retreat{To: ToWarmer}
	}
	return Retreat{To: ToOther}
}
