package band

import (
	"math"
	"slices"
)

// overMud takes the water below the doubtful depth out of the runs where mud came up black
// or smelling and oxygen was not measured: the water over such mud has none (common
// practice), and how far up that reaches is package oxygen's depth. What is taken out is
// named beside the band.
func (f *finder) overMud(b *Band, runs []run) []run {
	if !f.AnchorBlack || len(runs) == 0 || f.oxygenCovers(runs[thickest(runs)]) {
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

// smothered says that all of the water whose temperature suits lies under the depth below
// which black mud leaves no hope of oxygen.
func (f *finder) smothered(b Band, topM float64) Band {
	b.Verdict, b.Found = Smothered, false
	b.CoolFromM.Value, b.CoolFromM.Known = topM, true
	b.CoolestM, b.CoolestC = f.coolest(func(z float64) bool { return z <= f.sureM })
	f.surer(&b, topM)
	return b
}
