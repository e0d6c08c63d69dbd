package response

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

const (
	// gridRatio is the step between neighbouring trial time constants. Two
	// percent is finer than most fits can tell; refine goes on from there.
	gridRatio = 1.02
	// noiseWeight is how many samples the stated noise counts for against
	// the scatter seen: enough to carry the first few samples, soon outvoted.
	noiseWeight = 4.0
	// Lake water is liquid and not a hot spring; a trial time constant that
	// needs water outside these bounds is marked down.
	waterLowC, waterHighC = -1.0, 40.0
	// unknownErrC is the standard error stated before anything can be fitted.
	unknownErrC = 20.0
)

// node holds one trial time constant and the running centred sums of the
// regression of T on x = 1 - exp(-t/tau). For a fixed tau the lag is linear in
// x, and T at x = 1 is the water.
type node struct {
	tauS              float64
	meanX, cxx, cxy   float64
	rss, waterC, varC float64
}

// fitter fits the first-order lag over a grid of time constants (one if tau is
// known) and weighs the grid by likelihood, so that the doubt about tau is
// part of the error of the water temperature.
//
// A time constant far longer than the samples last makes their curve a straight
// line, and puts the water as far off as it is long. No sample can tell such
// ones apart, so the estimate weighs them down by (1 + tau/span)^-2. Jeffreys'
// rule asks for one power; the second was found on simulated probes
// (TestCalibration): it brings more estimates near the water and ErrC holds.
type fitter struct {
	sums
	saved    sums
	noiseC   float64
	taus     []float64
	prior    []float64 // log weight of each trial tau, from stretches before
	w, water []float64
}

// sums are what samples are added to.
type sums struct {
	nodes      []node
	n, spanS   float64
	meanY, cyy float64
}

func (s *sums) set(from sums) {
	nodes := append(s.nodes[:0], from.nodes...)
	*s = from
	s.nodes = nodes
}

// save keeps the sums and undo brings them back.
func (f *fitter) save() { f.saved.set(f.sums) }
func (f *fitter) undo() { f.sums.set(f.saved) }

// fitted is the outcome of a fit. tauHighS is the 84 % quantile of tau without
// the weighing down of long ones: waiting is judged by it, so that an undecided
// tau does not settle a slow probe early.
type fitted struct {
	waterC, errC, tauS, tauHighS, noiseC float64
}

func newFitter(o Options) *fitter {
	f := &fitter{noiseC: o.NoiseC}
	if o.TauS > 0 {
		f.nodes = []node{{tauS: o.TauS}}
	} else {
		steps := int(math.Ceil(math.Log(o.MaxTauS/o.MinTauS) / math.Log(gridRatio)))
		for i := 0; i <= steps; i++ {
			f.nodes = append(f.nodes, node{tauS: o.MinTauS * math.Pow(o.MaxTauS/o.MinTauS, float64(i)/float64(max(steps, 1)))})
		}
	}
	for _, nd := range f.nodes {
		f.taus = append(f.taus, nd.tauS)
	}
	f.prior = make([]float64, len(f.nodes))
	f.w = make([]float64, len(f.nodes))
	f.water = make([]float64, len(f.nodes))
	return f
}

func (f *fitter) reset() {
	for i := range f.nodes {
		f.nodes[i] = node{tauS: f.nodes[i].tauS}
	}
	f.n, f.spanS, f.meanY, f.cyy = 0, 0, 0, 0
}

// add takes a sample sinceS after the start of the stretch. The sums are
// updated about the running means, which does not lose digits.
func (f *fitter) add(sinceS, tempC float64) {
	f.n++
	f.spanS = sinceS
	dy := tempC - f.meanY
	f.meanY += dy / f.n
	f.cyy += dy * (tempC - f.meanY)
	for i := range f.nodes {
		nd := f.nodes[i]
		x := -math.Expm1(-sinceS / nd.tauS)
		dx := x - nd.meanX
		nd.meanX += dx / f.n
		nd.cxx += dx * (x - nd.meanX)
		nd.cxy += dx * (tempC - f.meanY)
		f.nodes[i] = nd
	}
}

// solve weighs the grid. ok is false while there are too few samples.
func (f *fitter) solve() (r fitted, ok bool) {
	need := 2.0
	if len(f.nodes) > 1 {
		need = 3
	}
	if f.n < need {
		return r, false
	}
	dof := noiseWeight + f.n - 2
	for i := range f.nodes {
		nd := f.nodes[i]
		if !(nd.cxx > 0) {
			return r, false
		}
		slope := nd.cxy / nd.cxx
		nd.rss = max(f.cyy-slope*nd.cxy, 0) + noiseWeight*f.noiseC*f.noiseC
		nd.waterC = f.meanY + slope*(1-nd.meanX)
		nd.varC = nd.rss / dof * (1/f.n + (1-nd.meanX)*(1-nd.meanX)/nd.cxx)
		logW := f.prior[i] - 0.5*dof*math.Log(nd.rss)
		if out := max(waterLowC-nd.waterC, nd.waterC-waterHighC); out > 0 && len(f.nodes) > 1 {
			logW -= 0.5 * out * out / (1 + nd.varC)
		}
		f.nodes[i], f.w[i], f.water[i] = nd, logW, nd.waterC
	}
	top := floats.Max(f.w)
	for i := range f.w {
		f.w[i] = math.Exp(f.w[i] - top)
	}
	r.tauHighS = stat.Quantile(0.84, stat.Empirical, f.taus, f.w)
	for i, nd := range f.nodes {
		long := 1 + nd.tauS/f.spanS
		f.w[i] /= long * long
	}
	r.waterC = stat.Mean(f.water, f.w)
	sum, v, noise2 := floats.Sum(f.w), 0.0, 0.0
	for i, nd := range f.nodes {
		d := nd.waterC - r.waterC
		v += f.w[i] * (nd.varC + d*d)
		noise2 += f.w[i] * nd.rss / dof
	}
	r.errC, r.noiseC = math.Sqrt(v/sum), math.Sqrt(noise2/sum)
	r.tauS = stat.Quantile(0.5, stat.Empirical, f.taus, f.w)
	return f.refine(r, dof), true
}
