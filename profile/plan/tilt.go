package plan

import (
	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/tilt"
)

// Tilt says what the wind of the drop does to its thermocline, after so many seconds of it, the
// drop being taken at a place of the water. The bottom is the deepest that is known.
func (p *Plan) Tilt(blown profile.Optional, at tilt.Place) (tilt.Tilt, tilt.Refusal) {
	bottomM, known := p.lakeM(), p.Drop.Bottom.Known || p.Drop.Deepest.Known
	if p.Basin != nil {
		bottomM, known = max(bottomM, p.Basin.FloorM), true
	}
	return tilt.Find(tilt.Input{
		Layers: p.Layers, BottomM: bottomM, BottomKnown: known,
		Length: p.Drop.LakeLength, Wind: p.Drop.Wind, Blown: blown, At: at, Want: p.Wants(),
	})
}

// Wants is what water the fish looks for, warmer or cooler than that at hand.
func (p *Plan) Wants() tilt.Want {
	switch b := p.Band; {
	case !b.Found && b.Verdict == band.NotReached:
		return tilt.Cooler
	case !b.Found:
		return tilt.Nowhere
	case p.UnderIce():
		return tilt.Anyhow
	case b.Cold || b.Verdict == band.Warmest:
		return tilt.Warmer
	case p.warmEdge():
		return tilt.Cooler
	}
	return tilt.Anyhow
}
