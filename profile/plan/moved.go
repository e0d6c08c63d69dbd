package plan

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/layers"
)

// Moved is the answer of a plan where its layers lie deeper or shallower.
type Moved struct {
	Column profile.Column
	Band   band.Band
	FlyM   float64 // depth of the fly; meaningless without a band
}

// Moved finds the band again with all that was read, the oxygen too, lying shiftM metres
// deeper, or shallower where it is below zero: the uppermost water reaches further down
// then, or is gone. ok is false where nothing is left between the surface and the bottom.
func (p *Plan) Moved(shiftM float64) (m Moved, ok bool) {
	first, last := p.Column.First(), p.Column.Last().DepthM
	if p.Drop.Bottom.Known {
		last = math.Max(last, p.Drop.Bottom.Value)
	} else if shiftM > 0 {
		last += shiftM
	}
	top := first // what is at the depth of the first reading now
	if shiftM < 0 {
		top.TempC = p.Layers.Curve.At(first.DepthM - shiftM)
		top.Oxygen = profile.Optional{}
	}
	points := []profile.Point{top}
	for _, q := range p.Column.Points() {
		q.DepthM += shiftM
		if q.DepthM > points[len(points)-1].DepthM+profile.SameDepthM && q.DepthM <= last+1e-9 {
			points = append(points, q)
		}
	}
	var err error
	if m.Column, err = profile.NewColumn(points); err != nil {
		return m, false
	}
	m.Band = p.findBand(m.Column, layers.Find(m.Column))
	m.FlyM = p.flyM(m.Band)
	return m, true
}
