package forecast

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/layers"
	density "coldseam/profile/water"
)

// quantity is a depth that is forecast.
type quantity interface {
	of(layers.Layers) (depthM float64, ok bool) // in a drop; ok is false where it has none
	interval(layers.Layers) profile.Estimate    // in a drop that has it
	features(*water) []float64                  // what its change is a sum of, each times its coefficient
	doubt(w *water, ownM float64) float64       // half of the interval but for its scale; ownM is half the drop's own
	coefficients() coefficients
}

// coefficients are what TestFitted finds: of each feature, and of the doubt.
type coefficients struct {
	change []float64
	scale  float64
}

// sinking are the features of a rate that changes over the season: days ahead in tens, times
// the powers of the time of the year half way.
func (w *water) sinking(powers int) []float64 {
	d := (w.yearDay - w.ahead/2 - midSeason) / seasonDays
	out := []float64{w.ahead / tenDays}
	for range powers {
		out = append(out, out[len(out)-1]*d)
	}
	return out
}

// thermocline is the plane of the steepest rise of density.
type thermocline struct{}

func (thermocline) of(l layers.Layers) (depthM float64, ok bool) {
	if l.Thermocline == nil {
		return 0, false
	}
	return l.Thermocline.Best, true
}

func (thermocline) interval(l layers.Layers) profile.Estimate { return *l.Thermocline }

func (thermocline) coefficients() coefficients { return ofThermocline }

func (q thermocline) features(w *water) []float64 {
	here, _ := q.of(w.last().Layers)
	return append(w.sinking(1), w.meanThermocline()-here)
}

// doubt is how far this water's thermocline has jumped before, nearly alike in any time, and
// the drop's own.
func (q thermocline) doubt(w *water, ownM float64) float64 {
	const usualM = 0.6
	jump := w.jumps(q, usualM, func(m, _ float64) float64 { return math.Abs(m) })
	return math.Hypot(jump*math.Sqrt(0.8+0.2*w.ahead/fortnight), ownM)
}

// meanThermocline is the middle of the metre over which density rises most in the mean
// column of this season.
func (w *water) meanThermocline() float64 {
	const step, topM = 0.1, 0.5 // m; nothing nearer the surface is in it, since skins come and go
	last, deepest := w.last(), 0.0
	for _, d := range w.season {
		deepest = math.Max(deepest, d.Layers.Curve.Bottom())
	}
	best, most := last.Layers.Thermocline.Best, 0.0
	for i := 0; topM+float64(i)*step+1 <= deepest+1; i++ {
		z, rise := topM+float64(i)*step, 0.0
		for _, d := range w.season {
			days := last.When.Sub(d.When).Hours() / 24
			from := z - sinkMPerDay*days
			if k := d.Layers.Curve; from >= math.Max(topM, d.Layers.SkinM)-1e-9 {
				rise += math.Exp2(-days/meanHalfDays) * (density.Density(k.At(from+1)) - density.Density(k.At(from)))
			}
		}
		if rise > most+1e-9 {
			best, most = z+0.5, rise
		}
	}
	return best
}

// isotherm is the depth of a temperature, C.
type isotherm float64

func (q isotherm) of(l layers.Layers) (depthM float64, ok bool) {
	k := l.Curve
	if k == nil || len(k.Depths) == 0 || k.At(k.Top()) <= float64(q) {
		return 0, false
	}
	return k.Crossing(float64(q), k.Top(), k.Bottom())
}

func (q isotherm) interval(l layers.Layers) profile.Estimate {
	z, _ := q.of(l)
	return l.Curve.CrossingInterval(z, float64(q))
}

func (isotherm) coefficients() coefficients { return ofIsotherm }

func (isotherm) features(w *water) []float64 { return w.sinking(2) }

// doubt is how far this water's isotherm has strayed before, which grows as the root of the
// time, the drop's own, and how nearly the mixed layer has that temperature: then a cool week
// moves it far.
func (q isotherm) doubt(w *water, ownM float64) float64 {
	const usualM, nearC, nearMPerC = 0.4, 3.0, 0.2
	strayed := w.jumps(q, usualM*usualM, func(m, days float64) float64 { return m * m * fortnight / days })
	near := nearMPerC * math.Max(0, nearC-(w.last().Layers.MixedTempC-float64(q)))
	return math.Sqrt(strayed*(0.3+0.7*w.ahead/fortnight) + ownM*ownM + near*near)
}

// mixedC forecasts the temperature of the mixed layer.
func (w *water) mixedC() profile.Estimate {
	here := w.last().Layers.MixedTempC
	best := here
	for i, x := range w.warming() {
		best += ofMixed.change[i] * x
	}
	half := ofMixed.scale * w.mixedDoubt()
	return profile.Estimate{Best: best, Low: best - half, High: best + half}
}

// warming are the features of the mixed layer's change.
func (w *water) warming() []float64 {
	const usualC = 22
	s := w.sinking(1)
	return append(s, s[0]*(w.last().Layers.MixedTempC-usualC))
}

// mixedDoubt is that of the weather: of the day, and growing on.
func (w *water) mixedDoubt() float64 { return math.Sqrt(1 + 0.7*w.ahead/fortnight) }

// Of all lakes, found by TestFitted: go test ./profile/forecast -run TestFitted -v
var (
	ofThermocline = coefficients{[]float64{0.147, 0.092, 0.782}, 1.165}
	ofIsotherm    = coefficients{[]float64{0.152, -0.074, 0.040}, 0.864}
	ofMixed       = coefficients{[]float64{0.212, -0.572, -0.232}, 2.446}
)
