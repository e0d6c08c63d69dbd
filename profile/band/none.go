package band

import (
	"math"
	"slices"

	"coldseam/profile"
)

// none says why there is no band.
func (f *finder) noBand(b Band) Band {
	b.CoolestM, b.CoolestC = f.coolest(func(float64) bool { return true })
	cool, breathable := f.runs(f.cool), f.runs(f.oxygenOK)
	if len(cool) > 0 {
		b.CoolFromM = profile.Some(cool[0].top.depthM)
	}
	spent := len(f.oxygenZ) > 0 && !f.oxygenOK(f.to) // no better below, see oxygenOK
	switch {
	case len(cool) > 0 && f.low > math.Inf(-1) && len(breathable) > 0 && !f.anyWarm():
		return f.warmest(b)
	case len(cool) > 0:
		return f.tooLittleOxygen(b, NoOxygen, breathable)
	case spent:
		return f.tooLittleOxygen(b, Squeezed, breathable)
	case f.Deepest.Known && f.Deepest.Value <= f.k.Bottom()+AssumedM+1e-9:
		b.Verdict = TooWarm
	default:
		b.Verdict = NotReached
	}
	return b
}

// starve says that measured oxygen leaves no band, and what the water that has it is like.
func (f *finder) tooLittleOxygen(b Band, v Verdict, breathable []run) Band {
	b.Verdict, b.Oxygen = v, true
	if n := len(breathable); n > 0 {
		b.CoolestM, b.CoolestC = f.coolest(f.oxygenOK)
		b.OxygenToM = profile.Some(breathable[n-1].bottom.depthM)
	}
	return b
}

// anyWarm reports whether any water reaches the comfort's low edge.
func (f *finder) anyWarm() bool { return len(f.runs(f.warm)) > 0 }

// warmest takes the warmest water that there is, for a fish to whom all of it is too
// cold; where that lies over black mud, the warmest above that.
func (f *finder) warmest(b Band) Band {
	runs := f.nearWarmest()
	if len(runs) == 0 {
		return f.tooLittleOxygen(b, NoOxygen, nil)
	}
	if probe := b; len(f.overMud(&probe, runs)) == 0 {
		runs = f.nearWarmest()
	}
	b.Verdict, b.Found = Warmest, true
	return f.fill(b, runs)
}

// nearWarmest are the runs within half a degree of the warmest water with the oxygen.
func (f *finder) nearWarmest() []run {
	most := math.Inf(-1)
	for _, z := range f.depths() {
		if f.oxygenOK(z) && z <= f.sureM {
			most = math.Max(most, f.k.At(z))
		}
	}
	f.low = most - 0.5
	return f.runs(f.suits)
}

// coolest gives the depth and temperature of the coolest water for which ok holds, among
// the readings and the depths where anything changes.
func (f *finder) coolest(ok func(float64) bool) (depthM, tempC float64) {
	tempC = math.Inf(1)
	at := slices.Clone(f.k.Depths)
	for _, c := range f.cuts() {
		at = append(at, c.depthM)
	}
	for _, z := range at {
		if t := f.k.At(z); t < tempC-1e-9 && ok(z) {
			depthM, tempC = z, t
		}
	}
	return depthM, tempC
}
