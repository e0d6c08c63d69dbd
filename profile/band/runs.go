package band

import (
	"math"
	"sort"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/layers"
)

// finder works on one input.
type finder struct {
	Input
	k         *layers.Curve
	from, to  float64 // the depths that answers may reach into
	oxygenZ   []float64
	oxygenV   []float64
	sureM     float64 // below it black mud leaves little hope of oxygen; +Inf: nothing speaks of that
	low, high float64 // comfort range that counts; low is -Inf for coldwater fish
}

// Reach is how far readings are taken to hold, m: up to the surface where the first is
// within a metre of it, and 2 ft below the last (assumed).
func Reach(k *layers.Curve) (fromM, toM float64) {
	if fromM = k.Top(); fromM <= nearSurfaceM {
		fromM = 0
	}
	return fromM, k.Bottom() + AssumedM
}

// extent sets the depths that answers may reach into: as far as readings hold, but below
// the bottom only where a reading was taken there.
func (f *finder) extent() {
	f.from, f.to = Reach(f.k)
	for _, limit := range []profile.Optional{f.Bottom, f.Deepest} {
		if limit.Known {
			f.to = math.Max(f.k.Bottom(), math.Min(f.to, limit.Value))
		}
	}
	for _, p := range f.Column.Points() {
		if p.Oxygen.Known {
			f.oxygenZ = append(f.oxygenZ, p.DepthM)
			f.oxygenV = append(f.oxygenV, p.Oxygen.Value)
		}
	}
	f.high = f.Fish.ComfortHighC.Value
	f.low = math.Inf(-1)
	if f.Fish.Kind != fish.Coldwater {
		f.low = f.Fish.ComfortLowC.Value
	}
}

func (f *finder) cool(z float64) bool { return f.k.At(z) <= f.high+1e-9 }

func (f *finder) warm(z float64) bool { return f.k.At(z) >= f.low-1e-9 }

func (f *finder) suits(z float64) bool {
	return f.cool(z) && f.warm(z) && f.oxygenOK(z) && z <= f.sureM
}

// edge is a depth where what suits begins or ends.
type edge struct {
	depthM float64
	byTemp bool    // a crossing of levelC; else of oxygen, or an end of what was read
	levelC float64 // the temperature crossed
	end    bool    // the surface or the deepest depth an answer may reach
}

// run is an unbroken run of depths.
type run struct{ top, bottom edge }

func (r run) thick() float64 { return r.bottom.depthM - r.top.depthM }

// runs finds the runs of depths between from and to for which ok holds: the places
// where anything can change are the readings, and the crossings between them.
func (f *finder) runs(ok func(float64) bool) []run {
	cuts := f.cuts()
	var out []run
	for i := 0; i+1 < len(cuts); i++ {
		if !ok((cuts[i].depthM + cuts[i+1].depthM) / 2) {
			continue
		}
		if n := len(out); n > 0 && out[n-1].bottom.depthM == cuts[i].depthM {
			out[n-1].bottom = cuts[i+1]
		} else {
			out = append(out, run{cuts[i], cuts[i+1]})
		}
	}
	return out
}

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
	cuts = append(cuts, edge{depthM: f.sureM}) // one at infinity is left out below
	sort.SliceStable(cuts, func(i, j int) bool { return cuts[i].depthM < cuts[j].depthM })
	var out []edge
	for _, c := range cuts {
		if c.depthM >= f.from-1e-9 && c.depthM <= f.to+1e-9 && (len(out) == 0 || c.depthM > out[len(out)-1].depthM+1e-6) {
			out = append(out, c)
		}
	}
	return out
}
