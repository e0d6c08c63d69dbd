package band

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/light"
)

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
		z = f.nearest(f.best(), inner.Low, f.measuredTo(inner))
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
	z = f.byUsual(b, inner, z)
	b.Cold = b.Verdict == Warmest || f.cold(z)
	shift := z - b.Top.Best
	b.Start = profile.Estimate{Best: z, Low: math.Max(f.from, math.Min(z, b.Top.Low+shift)), High: math.Min(f.to, math.Max(z, b.Top.High+shift))}
}

// measuredTo is how far down the start may go by oxygen that was measured: to the deepest
// reading, or the band's upper edge where that lies deeper.
func (f *finder) measuredTo(inner profile.Estimate) float64 {
	return math.Max(inner.Low, math.Min(inner.High, f.oxygenZ[len(f.oxygenZ)-1]))
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
// down into water that is deeper than common practice or whose oxygen is unknown, and never into water
// that is colder than the fish likes where it was warmer.
func (f *finder) byLight(b *Band, inner profile.Estimate, z float64) float64 {
	top, bottom := math.Min(inner.Low, inner.High), math.Max(inner.Low, inner.High)
	if b.ToSurface { // not into water shallower than what is cast over
		top = math.Min(math.Max(top, shelfM-f.ClearanceM-intoBandM), z)
	}
	if f.Light.Shift == light.Deeper {
		bottom = math.Max(z, math.Min(bottom, f.deepest(b, inner)))
	}
	moved := light.Start(top, bottom, z, f.Light.Shift)
	if math.IsNaN(moved) { // a band that light cannot move in
		moved = z
	}
	if math.Abs(moved-z) < 0.05 || f.cold(moved) && f.k.At(moved) < f.k.At(z)-asGoodC {
		b.Unmoved = f.Light
		return z
	}
	b.Shift = f.Light
	return moved
}

// deepest is how far down the start may be moved: no deeper than common practice, nor into
// water whose oxygen is unknown.
func (f *finder) deepest(b *Band, inner profile.Estimate) float64 {
	limit := PracticeM - f.ClearanceM
	switch {
	case b.DoubtfulBelow != nil:
		return math.Min(limit, b.DoubtfulBelow.Best)
	case b.Oxygen:
		return math.Min(limit, f.measuredTo(inner))
	}
	return limit
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
