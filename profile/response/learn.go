package response

import (
	"math"

	"gonum.org/v1/gonum/stat"
)

const (
	// learnStepC is the least step, C, and learnSd the widest standard
	// deviation of log tau, from which a time constant is learned.
	learnStepC = 1.0
	learnSd    = 0.25
	// keepSd is how far, as a standard deviation of log tau, a probe's time
	// constant may move from one depth to the next, by the water's motion past
	// it (assumed); keepOdds are the odds that all that was learned is wrong.
	keepSd   = 0.2
	keepOdds = 0.02
)

// learn carries what a stretch said of the time constant to the next. In water
// as warm as at the depth before, a reading shows no lag to fit, and would have
// to be waited for as with the slowest probe.
func (f *fitter) learn() {
	if len(f.nodes) == 1 || f.n < 3 || !(math.Abs(f.lagAtStart()) >= learnStepC) {
		return
	}
	logs := make([]float64, len(f.taus))
	for i, tau := range f.taus {
		logs[i] = math.Log(tau)
	}
	mean, variance := stat.PopMeanVariance(logs, f.w)
	if !(variance <= learnSd*learnSd) {
		return
	}
	for i, l := range logs {
		d := l - mean
		f.prior[i] = math.Log(keepOdds + math.Exp(-0.5*d*d/(variance+keepSd*keepSd)))
	}
}
