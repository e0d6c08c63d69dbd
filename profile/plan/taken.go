package plan

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/catches"
	"coldseam/profile/check"
	"coldseam/profile/layers"
)

// flyErrM is how far off the depth of a fly may be that took a fish: half a foot (common
// practice: it is counted down, or read off marks).
const flyErrM = 0.1524

// nearSurfaceM: a reading no deeper than this holds up to the surface, as in package band.
const nearSurfaceM = 1.0

// Taken says of a catch of this drop where in its water it was.
func (p *Plan) Taken(c profile.Catch) catches.Taken {
	d := &p.Drop
	t := catches.Taken{Fish: c.Fish, Count: c.Count, Water: d.Water, Date: d.Date, Time: c.Time, DepthM: c.DepthM()}
	z := t.DepthM.Value
	if !t.DepthM.Known || p.Column.Len() == 0 {
		return t
	}
	if first, last := p.Column.First().DepthM, p.Column.Last().DepthM; (z >= first || first <= nearSurfaceM) && z <= last+band.AssumedM {
		t.TempC, t.ErrC = profile.Some(p.Layers.Curve.At(z)), p.errAt(z)
	}
	if line := p.Layers.Thermocline; line != nil {
		t.BelowM = profile.Some(z - line.Best)
	}
	if p.Band.Found && c.Fish == p.Fish.Key {
		t.Part = p.partAt(z)
	}
	return t
}

// errAt is the standard error of the water's temperature at a fly's depth.
func (p *Plan) errAt(z float64) float64 {
	k := p.Layers.Curve
	slope := math.Abs(k.At(z+flyErrM)-k.At(z-flyErrM)) / 2
	near := 0
	for i := range k.Depths {
		if math.Abs(k.Depths[i]-z) < math.Abs(k.Depths[near]-z) {
			near = i
		}
	}
	return math.Hypot(k.ErrC[near], slope)
}

// partAt is the part of the band that a depth is in.
func (p *Plan) partAt(z float64) catches.Part {
	last := p.Column.Last().DepthM
	top, bottom := p.Band.Safe(last)
	betTop, betBottom, bet := p.Band.BestBet(last)
	switch {
	case z < top-profile.SameDepthM:
		return catches.Above
	case z > bottom+profile.SameDepthM:
		return catches.Below
	case bet == band.AllOfIt || bet == band.UpperPart && z >= betTop-profile.SameDepthM && z <= betBottom+profile.SameDepthM:
		return catches.BestBet
	}
	return catches.Rest
}

// TakenOn says of all catches of a drop where in its water they were, but for the band,
// which takes longer to find.
func TakenOn(d profile.Drop) (taken []catches.Taken) {
	checked := check.Of(d)
	p := Plan{Drop: checked.Drop()}
	if column, err := checked.Column(); err == nil {
		p.Column, p.Layers = column, layers.Find(column, layers.WithoutIntervals)
	}
	for _, c := range d.Catches {
		taken = append(taken, p.Taken(c))
	}
	return taken
}
