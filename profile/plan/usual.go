package plan

import (
	"math"

	"coldseam/profile/band"
	"coldseam/profile/catches"
)

// secondOpinion is what was caught before, as the band hears it; nil where that says
// nothing. The start goes into no water in which fish of the salmon family are stressed,
// and not down to where all suffer from the change of pressure.
func (p *Plan) secondOpinion() *band.Usual {
	if p.Usual == nil || p.Usual.Contradict {
		return nil
	}
	u := &band.Usual{TempC: p.Usual.MedianC, Weight: p.Usual.Weight, StopC: math.Inf(1), FromToM: PressureM}
	if p.Fish.Salmonid {
		u.StopC = caution68
	}
	return u
}

// Heed is the code of what became of the second opinion.
type Heed string

// The heeds.
const (
	NoOpinion   Heed = ""           // too little was caught
	Contradicts Heed = "contradict" // it was taken at too many temperatures
	NoWater     Heed = "no band"    // there is no band to start in
	Deeper      Heed = "deeper"     // the start moved down
	Shallower   Heed = "shallower"  // up
	Agrees      Heed = "agrees"     // the start is as warm as where the fish was usually taken
	Near        Heed = "near"       // such water is too near to move for
	Apart       Heed = "apart"      // it is not, and stays, though the band has such water
	Absent      Heed = "absent"     // the band has no such water
)

// Heed says what became of the second opinion, and by how much it moved the start, m.
func (p *Plan) Heed() (Heed, float64) {
	u, b := p.Usual, p.Band
	switch {
	case u == nil:
		return NoOpinion, 0
	case u.Contradict:
		return Contradicts, 0
	case !b.Found:
		return NoWater, 0
	case b.WithoutM.Known && b.Start.Best > b.WithoutM.Value:
		return Deeper, b.Start.Best - b.WithoutM.Value
	case b.WithoutM.Known:
		return Shallower, b.WithoutM.Value - b.Start.Best
	case p.usuallyAt(b.Start.Best, *u):
		return Agrees, 0
	}
	switch away := p.toUsual(*u); {
	case math.IsInf(away, 1):
		return Absent, 0
	case away < nearM:
		return Near, 0
	}
	return Apart, 0
}

// nearM is about a foot: the fly's own doubt.
const nearM = 0.3

// toUsual is how far from the start the band has water as warm as where the fish was usually
// taken, m; +Inf where it has none.
func (p *Plan) toUsual(u catches.Usual) float64 {
	const stepM = 0.1
	away := math.Inf(1)
	for z := p.Band.Top.Best; z <= p.Band.Bottom.Best; z += stepM {
		if p.usuallyAt(z, u) {
			away = math.Min(away, math.Abs(z-p.Band.Start.Best))
		}
	}
	return away
}

// usuallyAt reports whether the water of a depth is as warm as where the fish was usually
// taken.
func (p *Plan) usuallyAt(z float64, u catches.Usual) bool {
	const asGoodC = 0.5
	t := p.Layers.Curve.At(z)
	return t >= u.LowC-asGoodC && t <= u.HighC+asGoodC
}
