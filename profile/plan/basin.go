package plan

import (
	"sort"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/basin"
	"coldseam/profile/layers"
)

// Basin is what the water's table of depth and area adds to the answer.
type Basin struct {
	FloorM float64 // the table's last depth
	// TooShallow says that readings lie deeper than the table goes, so that nothing of the
	// rest was worked out.
	TooShallow bool
	// Band is how much of the lake's bottom lies in the band, 0 to 1: Low between the edges
	// that are printed, High between the outer ones. Cast is how much lies under the water to
	// cast over. Both nil without a band.
	Band *profile.Estimate
	Cast *float64
	// Stability is Schmidt's, J/m2, with its 80 % interval by the doubt between the readings.
	Stability profile.Estimate
	// AtLeast says that the lake goes on below the readings, whose last is taken to hold
	// there: colder water below would only add.
	AtLeast bool
}

// offFloorM is how far below the table's last depth a reading may lie: maps are no finer.
const offFloorM = 0.6

func (p *Plan) inBasin(b *basin.Basin) *Basin {
	if b == nil {
		return nil
	}
	deepest := p.Column.Last().DepthM
	out := &Basin{FloorM: b.FloorM(), TooShallow: deepest > b.FloorM()+offFloorM}
	if out.TooShallow {
		return out
	}
	if p.Band.Found {
		top, bottom := p.Band.Top, p.Band.Bottom
		safeTop, safeBottom := p.Band.Safe(deepest)
		e := profile.Estimate{Best: b.BottomShare(top.Best, bottom.Best), Low: b.BottomShare(safeTop, safeBottom), High: b.BottomShare(top.Low, bottom.High)}
		e.Low, e.High = min(e.Low, e.Best), max(e.High, e.Best)
		cast := b.BottomShare(p.Band.CastShallowM, p.Band.CastDeepM)
		out.Band, out.Cast = &e, &cast
	}
	out.Stability, out.AtLeast = p.stability(b), b.FloorM() > deepest+band.AssumedM
	return out
}

// stability asks the readings' curve, and each of the columns that the readings allow.
func (p *Plan) stability(b *basin.Basin) profile.Estimate {
	k := p.Layers.Curve
	held := func(z float64) float64 { return min(max(z, k.Top()), k.Bottom()) }
	best := b.Stability(func(z float64) float64 { return k.At(held(z)) }, k.Depths)
	var all []float64
	if e := p.Layers.Ensemble; e != nil {
		for _, temps := range e.Temps {
			all = append(all, b.Stability(func(z float64) float64 { return linear(e.Depths, temps, z) }, e.Depths))
		}
	}
	return layers.Spread(best, all)
}

// linear is the value at a depth, straight between two depths and held beyond the last.
func linear(depths, values []float64, z float64) float64 {
	i := sort.SearchFloat64s(depths, z)
	switch {
	case i == 0:
		return values[0]
	case i == len(depths):
		return values[i-1]
	}
	share := (z - depths[i-1]) / (depths[i] - depths[i-1])
	return values[i-1] + share*(values[i]-values[i-1])
}
