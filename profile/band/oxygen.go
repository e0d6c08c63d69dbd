package band

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/oxygen"
)

// oxygenOK reports whether a depth has the oxygen the fish needs, as far as it was
// measured: straight lines between readings, the first value up to the surface when
// it was read within a metre of it, and below the last one the water is taken to be
// no better than there.
func (f *finder) oxygenOK(z float64) bool {
	n := len(f.oxygenZ)
	if n == 0 {
		return true
	}
	need := f.Fish.OxygenMgL.Value
	switch {
	case z <= f.oxygenZ[0]:
		return f.oxygenV[0] >= need || f.oxygenZ[0] > nearSurfaceM
	case z >= f.oxygenZ[n-1]:
		return f.oxygenV[n-1] >= need
	}
	for i := 1; i < n; i++ {
		if z <= f.oxygenZ[i] {
			share := (z - f.oxygenZ[i-1]) / (f.oxygenZ[i] - f.oxygenZ[i-1])
			return f.oxygenV[i-1]+share*(f.oxygenV[i]-f.oxygenV[i-1]) >= need-1e-9
		}
	}
	return true
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

// surer names the water above topM, where the band begins or cool water does, that is
// warmer than a coldwater fish likes but that it uses, and where oxygen is not in doubt:
// where to go when the band has none.
func (f *finder) surer(b *Band, topM float64) {
	if b.DoubtfulBelow == nil || f.Fish.Kind != fish.Coldwater || !f.Fish.UpperUseC.Known || b.ToSurface {
		return
	}
	to := math.Min(b.DoubtfulBelow.Best, topM)
	from := f.from
	if f.k.At(from) > f.Fish.UpperUseC.Value {
		z, ok := f.k.Crossing(f.Fish.UpperUseC.Value, from, topM)
		if !ok {
			return
		}
		from = z
	}
	if to-from >= WordM {
		b.Others = append(b.Others, Interval{from, to, Surer})
	}
}
