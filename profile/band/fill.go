package band

import (
	"math"
	"sort"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
	"coldseam/profile/light"
	"coldseam/profile/oxygen"
)

// depths are the readings' depths and the ends of what answers may reach.
func (f *finder) depths() []float64 {
	return append([]float64{f.from, f.to}, f.k.Depths...)
}

// cuts lists, in order of depth, every place where suitability can change.
func (f *finder) cuts() []edge {
	cuts := []edge{{depthM: f.from, end: true}, {depthM: f.to, end: true}}
	for i := 0; i+1 < len(f.k.Depths); i++ {
		for _, level := range []float64{f.high, f.low} {
			if z, ok := f.k.Crossing(level, f.k.Depths[i], f.k.Depths[i+1]); ok && !math.IsInf(level, 0) {
				cuts = append(cuts, edge{depthM: z, byTemp: true, levelC: level})
			}
		}
	}
	need := f.Fish.OxygenMgL.Value
	for i := 0; i+1 < len(f.oxygenZ); i++ {
		if z, ok := layers.Linear(f.oxygenZ[i:i+2], f.oxygenV[i:i+2], need); ok {
			cuts = append(cuts, edge{depthM: z})
		}
	}
	if n := len(f.oxygenZ); n > 0 {
		cuts = append(cuts, edge{depthM: f.oxygenZ[0]}, edge{depthM: f.oxygenZ[n-1]})
	}
	sort.SliceStable(cuts, func(i, j int) bool { return cuts[i].depthM < cuts[j].depthM })
	var out []edge
	for _, c := range cuts {
		if c.depthM >= f.from-1e-9 && c.depthM <= f.to+1e-9 && (len(out) == 0 || c.depthM > out[len(out)-1].depthM+1e-6) {
			out = append(out, c)
		}
	}
	return out
}

// fill sets everything about a band that was found: the thickest run, ties to the
// shallower; the rest are named.
func (f *finder) fill(b *Band, runs []run) {
	best := 0
	for i, r := range runs {
		if r.thick() > runs[best].thick()+1e-6 {
			best = i
		}
	}
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
	if !b.Oxygen {
		b.DoubtfulBelow = f.doubtfulBelow()
		f.surer(b)
	}
	b.Shelf = light.ShelfOf(f.Secchi)
	if f.Secchi.Known && f.Secchi.Value >= light.MinSecchiM && f.Secchi.Value <= light.MaxSecchiM {
		weeds := light.Weeds(f.Secchi.Value)
		b.PlantsM = light.OnePercentM(f.Secchi.Value)
		b.Weeds = &weeds
	}
	f.start(b)
	f.cast(b)
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

// starved lists the runs whose temperature suits but which lack the oxygen.
func (f *finder) starved() []Interval {
	if len(f.oxygenZ) == 0 {
		return nil
	}
	var out []Interval
	for _, r := range f.runs(func(z float64) bool { return f.cool(z) && f.warm(z) && !f.oxygenOK(z) }) {
		if r.thick() >= WordM {
			out = append(out, Interval{r.top.depthM, r.bottom.depthM, LittleOxygen})
		}
	}
	return out
}

// oxygenCovers reports whether oxygen was measured at both ends of a run, or as far as it
// matters, to where trout feed or the run's top if that is deeper: two readings at least,
// the deepest no more than 2 ft above that, or where its end was set by oxygen. A run
// that ends at the first reading has none inside it.
func (f *finder) oxygenCovers(r run) bool {
	n := len(f.oxygenZ)
	if n < 2 || f.oxygenZ[0] >= r.bottom.depthM {
		return false
	}
	return f.oxygenZ[n-1] >= math.Min(r.bottom.depthM, math.Max(PracticeM, r.top.depthM+intoBandM))-AssumedM-1e-6 && f.oxygenZ[0] <= r.top.depthM+AssumedM+1
}

// doubt gives an edge's 80 % interval: that of the curve for a temperature, a share
// of the space between the oxygen readings for oxygen. A first oxygen reading that
// is too low ends the band at its own depth at the latest.
func (f *finder) edgeInterval(e edge) profile.Estimate {
	if e.byTemp {
		return f.k.CrossingInterval(e.depthM, e.levelC)
	}
	out := profile.Exactly(e.depthM)
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

// oxygenShare of the space between two oxygen readings is taken as the
// doubt about a crossing between them. Assumed, not measured.
const oxygenShare = 0.25

// doubtful says from where on down oxygen is doubtful. A reading with oxygen enough
// proves the water down to its depth.
func (f *finder) doubtfulBelow() *profile.Estimate {
	e, ok := oxygen.Below(oxygen.Input{
		Column: f.Column, Layers: f.Layers, NeedMgL: f.Fish.OxygenMgL.Value, Bottom: f.Bottom, AnchorBlack: f.AnchorBlack,
	})
	if !ok {
		return nil
	}
	e.Best = e.Low
	return &e
}

// surer names the water above the band that is warmer than a coldwater fish likes but
// that it uses, and where oxygen is not in doubt: where to go when the band has none.
func (f *finder) surer(b *Band) {
	if b.DoubtfulBelow == nil || f.Fish.Kind != fish.Coldwater || !f.Fish.UpperUseC.Known || b.ToSurface {
		return
	}
	to := math.Min(b.DoubtfulBelow.Best, b.Top.Best)
	from := f.from
	if f.k.At(from) > f.Fish.UpperUseC.Value {
		z, ok := f.k.Crossing(f.Fish.UpperUseC.Value, from, b.Top.Best)
		if !ok {
			return
		}
		from = z
	}
	if to-from >= WordM {
		b.Others = append(b.Others, Interval{from, to, Surer})
	}
}

// WordM is how thick such water, or any beside the band, must be to be worth a word.
const WordM = 0.3

// start sets where to put the fly first.
func (f *finder) start(b *Band) {
	inner := profile.Estimate{Best: b.Top.Best, Low: b.Top.High, High: b.Bottom.Low}
	if b.Thin {
		inner.Low, inner.High = b.Top.Best, b.Bottom.Best
	}
	z := inner.Low + intoBandM
	shelf := f.shelf(b, inner)
	switch {
	case b.Oxygen && f.Fish.OptimumC.Known:
		z = f.nearest(f.best(), inner.Low, inner.High)
		if b.ToSurface && z < shelf {
			z = f.towards(shelf, z)
		}
	case b.ToSurface && f.cold(shelf): // the warmest above it: nobody knows how far down there is oxygen
		z = f.towards(shelf, f.nearest(f.best(), inner.Low, shelf))
	case b.ToSurface:
		z = shelf
	}
	if b.ToSurface {
		z = math.Max(z, math.Min(math.Max(inner.Low+intoBandM, shelfM-f.ClearanceM), shelf))
	}
	z = math.Min(z, (inner.Low+inner.High)/2+math.Max(0, (inner.High-inner.Low)/2-f.ClearanceM))
	z = math.Max(z, math.Min(inner.Low, inner.High))
	z = f.byLight(b, inner, z)
	b.Cold = b.Verdict == Warmest || f.cold(z)
	shift := z - b.Top.Best
	b.Start = profile.Estimate{Best: z, Low: math.Max(f.from, math.Min(z, b.Top.Low+shift)), High: math.Min(f.to, math.Max(z, b.Top.High+shift))}
}

// best is the temperature that the fish likes best.
func (f *finder) best() float64 {
	if f.Fish.OptimumC.Known {
		return f.Fish.OptimumC.Value
	}
	return (f.Fish.ComfortLowC.Value + f.Fish.ComfortHighC.Value) / 2
}

// cold reports whether the water at a depth is colder than the fish likes.
func (f *finder) cold(z float64) bool { return f.k.At(z) < f.Fish.ComfortLowC.Value-asGoodC }

// shelf is where to begin in a band that reaches the surface, which has no shallow edge
// to keep to: over the middle of the food shelf, no deeper than oxygen is likely.
func (f *finder) shelf(b *Band, inner profile.Estimate) float64 {
	z := math.Min(b.Shelf.EndM/2, (inner.Low+inner.High)/2)
	if d := b.DoubtfulBelow; d != nil {
		z = math.Min(z, math.Max(d.Best, shelfM-f.ClearanceM))
	}
	return z
}

// towards goes from a depth down to the shelf as far as the water stays as good.
func (f *finder) towards(shelf, from float64) float64 {
	off := math.Abs(f.k.At(from)-f.best()) + asGoodC
	z := from
	const steps = 100
	for i := 1; i <= steps; i++ {
		next := from + (shelf-from)*float64(i)/steps
		if math.Abs(f.k.At(next)-f.best()) > off {
			break
		}
		z = next
	}
	return z
}

// byLight moves the start as sky and hour ask, never out of the band's safe part, never
// down into water that is deeper than common practice or unproven, and never into water
// that is colder than the fish likes where it was warmer.
func (f *finder) byLight(b *Band, inner profile.Estimate, z float64) float64 {
	top, bottom := math.Min(inner.Low, inner.High), math.Max(inner.Low, inner.High)
	if b.ToSurface { // not into water shallower than what is cast over
		top = math.Min(math.Max(top, shelfM-f.ClearanceM-intoBandM), z)
	}
	if f.Light.Shift == light.Deeper {
		limit := PracticeM - f.ClearanceM
		if b.DoubtfulBelow != nil {
			limit = math.Min(limit, b.DoubtfulBelow.Best)
		}
		bottom = math.Max(z, math.Min(bottom, limit))
	}
	moved := light.Start(top, bottom, z, f.Light.Shift)
	if math.IsNaN(moved) || math.Abs(moved-z) < 0.05 || f.cold(moved) && f.k.At(moved) < f.k.At(z)-asGoodC {
		return z
	}
	b.Shift = f.Light
	return moved
}

// asGoodC: temperatures no further apart than this are as good for a fish.
const asGoodC = 0.5

// nearest gives the depth between from and to whose temperature is nearest to
// aimC, ties to the shallower.
func (f *finder) nearest(aimC, from, to float64) float64 {
	best, off := from, math.Abs(f.k.At(from)-aimC)
	const steps = 400
	for i := 1; i <= steps; i++ {
		z := from + (to-from)*float64(i)/steps
		if d := math.Abs(f.k.At(z) - aimC); d < off-0.01 {
			best, off = z, d
		}
	}
	return best
}

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
