package band

import (
	"math"
	"slices"

	"coldseam/profile/fish"
)

// overMud takes the water below the doubtful depth out of the runs where mud came up black
// or smelling and oxygen was not measured: the water over such mud has none (common
// practice), and how far up that reaches is package oxygen's depth. What is taken out is
// named beside the band.
func (f *finder) overMud(b *Band, runs []run) []run {
	if !f.AnchorBlack || len(runs) == 0 || f.measuredDown(runs[thickest(runs)]) {
		return runs
	}
	d := f.doubtfulBelow()
	if d == nil {
		return runs
	}
	b.DoubtfulBelow = d
	f.sureM = d.Best
	kept := f.runs(f.suits)
	kept = slices.DeleteFunc(kept, func(r run) bool { return r.thick() < WordM })
	for _, r := range runs {
		if top := math.Max(r.top.depthM, d.Best); r.bottom.depthM-top >= WordM {
			b.Others = append(b.Others, Interval{top, r.bottom.depthM, OverMud})
		}
	}
	return kept
}

// measuredDown reports whether oxygen was measured down to a run's end: over black mud it is
// not taken to hold below the readings.
func (f *finder) measuredDown(r run) bool {
	return f.oxygenCovers(r) && f.oxygenZ[len(f.oxygenZ)-1] >= r.bottom.depthM-AssumedM-1e-6
}

// stressC: warmer water stresses trout and their kin: 68 F, common advice.
const stressC = 20.0

// thickest is the index of the thickest run, ties to the shallower.
func thickest(runs []run) int {
	best := 0
	for i, r := range runs {
		if r.thick() > runs[best].thick()+1e-6 {
			best = i
		}
	}
	return best
}

// smothered answers where all of the water whose temperature suits lies under the depth
// below which black mud leaves little hope of oxygen. Then the fish use the warmer water
// above; where it stresses coldwater fish they are better left alone.
func (f *finder) smothered(b Band, topM float64) Band {
	if f.Fish.UpperUseC.Known {
		f.high = f.Fish.UpperUseC.Value
		if f.Fish.Kind == fish.Coldwater {
			f.high = math.Min(f.high, stressC)
		}
		if runs := f.runs(f.suits); len(runs) > 0 && runs[thickest(runs)].thick() >= WordM {
			b.Verdict = OverWarm
			return f.fill(b, runs)
		}
	}
	b.Verdict, b.Found = Smothered, false
	b.CoolFromM.Value, b.CoolFromM.Known = topM, true
	b.CoolestM, b.CoolestC = f.coolest(func(z float64) bool { return z <= f.sureM })
	f.surer(&b, topM)
	return b
}
