package band

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/light"
)

// fill sets everything about a band that was found: the thickest run; the rest are named.
func (f *finder) fill(b Band, all []run) Band {
	runs := f.overMud(&b, all)
	if len(runs) == 0 {
		return f.smothered(b, all[0].top.depthM)
	}
	f.edges(&b, runs)
	if !b.Oxygen {
		b.DoubtfulBelow = f.doubtfulBelow()
		f.surer(&b, b.Top.Best)
	}
	b.Shelf = light.ShelfOf(f.Secchi)
	if f.Secchi.Known && f.Secchi.Value >= light.MinSecchiM && f.Secchi.Value <= light.MaxSecchiM {
		weeds := light.Weeds(f.Secchi.Value)
		b.PlantsM = light.OnePercentM(f.Secchi.Value)
		b.Weeds = &weeds
	}
	f.start(&b)
	f.cast(&b)
	return b
}

// edges sets where the band begins and ends, and how thick it is.
func (f *finder) edges(b *Band, runs []run) {
	best := thickest(runs)
	r := runs[best]
	for i, other := range runs {
		if i != best && other.thick() >= WordM {
			b.Others = append(b.Others, Interval{other.top.depthM, other.bottom.depthM, Thinner})
		}
	}
	b.Others = append(b.Others, f.starved()...)
	b.Top, b.Bottom = f.edgeInterval(r.top), f.edgeInterval(r.bottom)
	b.ToSurface = r.top.end && f.from == 0
	b.ToDeepest = r.bottom.end && !f.atBottom(r.bottom.depthM)
	if r.top.end {
		b.Top = profile.Exactly(f.from)
	}
	if r.bottom.end {
		b.Bottom = profile.Estimate{Best: f.to, Low: math.Min(f.k.Bottom(), f.to), High: f.to}
	}
	b.Top, b.Bottom = f.within(b.Top), f.within(b.Bottom)
	b.Oxygen = f.oxygenCovers(r)
	b.Thin = b.Top.High+f.ClearanceM > b.Bottom.Low
}

// atBottom reports whether a depth is within a foot of the bottom under the boat or
// of the lake's deepest water: nothing lies below it.
func (f *finder) atBottom(depthM float64) bool {
	const footM = 0.31 // a little more, for feet turned into metres
	return f.Bottom.Known && depthM >= f.Bottom.Value-footM || f.Deepest.Known && depthM >= f.Deepest.Value-footM
}

// within keeps an edge's interval to the depths that an answer may reach into.
func (f *finder) within(e profile.Estimate) profile.Estimate {
	e.Low, e.High = math.Max(e.Low, f.from), math.Min(e.High, f.to)
	return e
}

// doubt gives an edge's 80 % interval: that of the curve for a temperature, a share
// of the space between the oxygen readings for oxygen. A first oxygen reading that
// is too low ends the band at its own depth at the latest.
func (f *finder) edgeInterval(e edge) profile.Estimate {
	if e.byTemp {
		return f.k.CrossingInterval(e.depthM, e.levelC)
	}
	out := profile.Exactly(e.depthM)
	if e.depthM == f.sureM { // at the safe end already
		return out
	}
	if len(f.oxygenZ) > 0 && e.depthM == f.oxygenZ[0] && f.oxygenV[0] < f.Fish.OxygenMgL.Value {
		out.Low -= oxygenShare * (e.depthM - f.from)
		return out
	}
	for i := 0; i+1 < len(f.oxygenZ); i++ {
		a, c := f.oxygenZ[i], f.oxygenZ[i+1]
		if e.depthM >= a && e.depthM <= c {
			half := oxygenShare * (c - a)
			out.Low, out.High = math.Max(a, e.depthM-half), math.Min(c, e.depthM+half)
		}
	}
	return out
}

// WordM is how thick such water, or any beside the band, must be to be worth a word.
const WordM = 0.3

// cast sets the depth of water to cast over, so that the bottom under the fly lies
// in the band; where the band is too thin for that, the fly at least.
func (f *finder) cast(b *Band) {
	top, bottom := b.Top.High, b.Bottom.Low
	if b.Thin {
		top, bottom = b.Top.Best, b.Bottom.Best
	}
	shallow, deep := top+f.ClearanceM, math.Min(bottom, PracticeM)
	if b.ToSurface {
		shallow = math.Min(math.Max(shallow, shelfM), math.Max(bottom, f.ClearanceM))
	}
	if shallow > PracticeM {
		b.OverDeep = true
		deep = bottom
	}
	if deep < shallow { // too thin to hold the bottom and the fly: the fly comes first
		shallow = b.Start.Best + f.ClearanceM
		deep = shallow
	}
	if f.Fish.OpenWater {
		b.Suspended = true
		shallow = b.Start.Best + f.ClearanceM
		deep = math.Max(shallow, math.Max(f.to, f.Bottom.Or(0)))
	}
	if f.Deepest.Known { // or what was read, where that is deeper
		most := math.Max(f.Deepest.Value, f.k.Bottom())
		shallow, deep = math.Min(shallow, most), math.Min(deep, most)
	}
	b.CastShallowM, b.CastDeepM = shallow, math.Max(shallow, deep)
	b.WaterM = math.Min(math.Max(b.Start.Best+f.ClearanceM, b.CastShallowM), b.CastDeepM)
}
