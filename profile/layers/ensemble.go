package layers

import (
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"

	"coldseam/profile"
)

// ensembleSize is how many columns stand for all that the readings allow.
const ensembleSize = 64

// Ensemble is a set of columns that the readings allow: each reading off by its
// error, each gap filled in one of the ways in which measured lakes fill theirs. The
// spread of an answer over them is its doubt. The same readings give the same set.
type Ensemble struct {
	Depths []float64   // m, those of the readings and of places between, rising
	Temps  [][]float64 // C at those depths, one row a member

	reading       []int          // index of each reading in Depths
	perturbations []perturbation // one a member
}

// newEnsemble makes n columns that the readings of c allow, at least two. The first of them
// are the same whatever n is.
func newEnsemble(k *Curve, c profile.Column, n int) *Ensemble {
	f := newInfill(k.Depths, fineM)
	p := &Ensemble{Depths: f.z, Temps: make([][]float64, n), reading: f.reading, perturbations: make([]perturbation, n)}
	raw := make([]float64, c.Len())
	for i := range raw {
		raw[i] = c.At(i).TempC // before any pooling
	}
	rng := rand.New(rand.NewPCG(seed(k.Depths, raw), 0))
	all := make([]float64, n*len(f.z))
	off := make([]float64, len(raw))
	var stable pooler
	for m := range p.Temps {
		t := all[m*len(f.z) : (m+1)*len(f.z)]
		for i := range raw {
			off[i] = raw[i] + k.ErrC[i]*rng.NormFloat64()
		}
		stable.pool(off)
		for i, at := range f.reading {
			t[at] = off[i]
		}
		f.fill(t, rng)
		p.Temps[m], p.perturbations[m] = t, newPerturbation(rng)
	}
	return p
}

// seed is made of the readings alone: their spacing and their temperatures, to a
// tenth of a millimetre and of a millidegree.
func seed(depths, temps []float64) uint64 {
	h := fnv.New64a()
	var b [16]byte
	for i := range depths {
		for k, v := range [2]float64{(depths[i] - depths[0]) * 1e4, temps[i] * 1e4} {
			for bits, j := uint64(int64(math.Round(v))), 0; j < 8; j++ { // the lowest first
				b[8*k+j] = byte(bits >> (8 * j))
			}
		}
		h.Write(b[:])
	}
	return h.Sum64()
}

// tail is the share of the members left out at each end of an 80 % interval.
const tail = 0.115

// interval80 gives the interval that holds 80 % of the members' answers, and best. It
// keeps within the readings, off by their depths' errors.
func (k *Curve) interval80(best float64, answers []float64) profile.Estimate {
	e := profile.Exactly(best)
	if len(answers) == 0 {
		return e
	}
	slices.Sort(answers)
	last := len(k.ErrM) - 1
	low, high := math.Max(0, k.Top()-k.ErrM[0]), k.Bottom()+k.ErrM[last]
	e.Low = math.Min(best, math.Max(low, quantile(answers, tail)))
	e.High = math.Max(best, math.Min(high, quantile(answers, 1-tail)))
	return e
}

// quantile of sorted values, linear between them: a further value of their kind falls
// below it in that share of cases (Weibull 1939, from memory).
func quantile(sorted []float64, share float64) float64 {
	last := float64(len(sorted) - 1)
	x := math.Min(math.Max(share*(last+2)-1, 0), last)
	i := min(int(x), max(len(sorted)-2, 0))
	if i+1 == len(sorted) {
		return sorted[i]
	}
	return sorted[i] + (x-float64(i))*(sorted[i+1]-sorted[i])
}

// Crossing gives the depths at which member m reaches a temperature, the one nearest
// to nearM where there are several. Where it reaches none it is the end of the
// column on that side.
func (p *Ensemble) Crossing(m int, tempC, nearM float64) float64 {
	t := p.Temps[m]
	best, off := math.NaN(), math.Inf(1)
	for i := 1; i < len(t); i++ {
		a, b := t[i-1]-tempC, t[i]-tempC
		if a*b > 0 || a == b {
			continue
		}
		z := p.Depths[i-1] + (p.Depths[i]-p.Depths[i-1])*a/(a-b)
		if d := math.Abs(z - nearM); d < off {
			best, off = z, d
		}
	}
	if !math.IsNaN(best) {
		return best
	}
	last := len(t) - 1
	if (t[last] > tempC) == (t[0] >= t[last]) { // too warm all the way, and cooler downwards; or the other way round
		return p.Depths[last]
	}
	return p.Depths[0]
}

// crossings are all members' crossings, off by their depths' errors.
func (k *Curve) crossings(tempC, nearM float64) []float64 {
	out := make([]float64, len(k.ensemble.Temps))
	for m := range out {
		out[m] = k.shifted(m, k.ensemble.Crossing(m, tempC, nearM))
	}
	return out
}

// shifted is a depth of member m, off by the error of depths there.
func (k *Curve) shifted(m int, depthM float64) float64 {
	return depthM + k.ErrM[k.indexAt(depthM)]*k.ensemble.perturbations[m].shift
}

// head is the ensemble of the first n members.
func (p *Ensemble) head(n int) *Ensemble {
	out := *p
	out.Temps, out.perturbations = p.Temps[:n], p.perturbations[:n]
	return &out
}

// At gives every member's temperature at a depth, in out.
func (p *Ensemble) At(depthM float64, out []float64) []float64 {
	i := 0
	for i+2 < len(p.Depths) && p.Depths[i+1] < depthM {
		i++
	}
	share := (depthM - p.Depths[i]) / (p.Depths[i+1] - p.Depths[i])
	share = math.Min(1, math.Max(0, share))
	out = out[:0]
	for _, t := range p.Temps {
		out = append(out, t[i]+share*(t[i+1]-t[i]))
	}
	return out
}

// TempInterval is the temperature at a depth with its 80 % interval, C.
func (k *Curve) TempInterval(depthM float64) profile.Estimate {
	best := k.At(depthM)
	if k.ensemble == nil {
		return profile.Exactly(best)
	}
	return Spread(best, k.ensemble.At(depthM, nil))
}

// Spread gives the 80 % interval of the members' answers, and best, to a question asked of
// each; it sorts the answers. Without answers it is best alone.
func Spread(best float64, answers []float64) profile.Estimate {
	e := profile.Exactly(best)
	if len(answers) > 0 {
		slices.Sort(answers)
		e.Low, e.High = math.Min(best, quantile(answers, tail)), math.Max(best, quantile(answers, 1-tail))
	}
	return e
}

// Thermoclines gives every member's metre of the greatest rise of density at or below
// fromM, NaN for a member that falls less in all than a layered column does.
func (p *Ensemble) Thermoclines(fromM float64) []float64 {
	var f gradients
	var rho []float64
	var s []window
	out := make([]float64, len(p.Temps))
	for m, t := range p.Temps {
		out[m] = math.NaN()
		if t[0]-t[len(t)-1] < layeredC-equal {
			continue
		}
		rho = f.reset(p.Depths, t).cumulativeRise(rho)
		var z float64
		var ok bool
		if z, ok, s = steepestMetre(p.Depths, rho, fromM, s); ok {
			out[m] = z
		}
	}
	return out
}
