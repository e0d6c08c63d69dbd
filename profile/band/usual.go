package band

import (
	"math"

	"coldseam/profile"
)

const (
	worthM    = 0.2 // a start that moves by less is where it was
	costCPerM = 0.1 // of moving, so that water of one temperature does not move it
	usualStep = 0.02
	roundM    = 0.16 // half a mark of the line, to which the depth of the water is rounded
)

// byUsual moves the start towards the temperature at which the fish was usually taken, as
// far as that weighs against the temperature of the start. It goes nowhere that sky and
// hour could not move it: not out of the band's safe part, nor deeper than common practice
// or than oxygen is likely, nor into water colder than the fish likes; and not into water
// so warm, or from above so deep, that fish are harmed on their way up. Where the usual
// temperature is found nowhere in the band it has no say.
func (f *finder) byUsual(b *Band, inner profile.Estimate, z float64) float64 {
	u := f.Usual
	if u == nil || b.Verdict != Good {
		return z
	}
	top, bottom := math.Min(inner.Low, inner.High), math.Max(inner.Low, inner.High)-f.ClearanceM
	if b.ToSurface {
		top = math.Max(top, shelfM-f.ClearanceM-intoBandM)
	}
	bottom = math.Min(bottom, f.deepest(b, inner)) - roundM
	if z <= u.FromToM {
		bottom = math.Min(bottom, u.FromToM)
	}
	top, bottom = math.Min(z, top+roundM), math.Max(z, bottom)
	start := f.k.At(z)
	fit := func(at float64) bool {
		t := f.k.At(at)
		return t < u.StopC && !(f.cold(at) && t < start)
	}
	aim := start + u.Weight*(u.TempC-start)
	best, cost := z, math.Abs(start-aim)
	for at := top; at <= bottom; at += usualStep {
		if c := math.Abs(f.k.At(at)-aim) + costCPerM*math.Abs(at-z); c < cost-1e-9 && fit(at) {
			best, cost = at, c
		}
	}
	if !f.holds(u.TempC, inner) || math.Abs(best-z) < worthM {
		return z
	}
	b.WithoutM = profile.Some(z)
	return best
}

// holds reports whether the safe part of the band has water of a temperature.
func (f *finder) holds(tempC float64, inner profile.Estimate) bool {
	z := f.nearest(tempC, math.Min(inner.Low, inner.High), math.Max(inner.Low, inner.High))
	return math.Abs(f.k.At(z)-tempC) <= asGoodC
}
