package response

import (
	"errors"
	"math"
)

// ErrSample reports a sample that is not finite or no possible temperature,
// and ErrSameTime one stamped like the sample before it. Both are left out.
var (
	ErrSample   = errors.New("sample not usable")
	ErrSameTime = errors.New("sample has the time of the one before")
)

const (
	// sureZ is how many standard errors the change seen must stay inside the
	// precision. The test is repeated at each sample, hence more than 2.
	sureZ = 2.5
	// maxKept bounds the samples remembered for the flatness test.
	maxKept = 4096
)

// ErrArg reports an option or a time constant that is not finite or out of its range.
var ErrArg = errors.New("out of range")

// Options sets up a Filter. Zero values take the default in brackets.
type Options struct {
	PrecisionC float64 // change over one time constant that counts as none, C, above 0 [0.05]
	NoiseC     float64 // standard deviation of one reading as stated for the probe, C, above 0 [0.05]
	TauS       float64 // time constant if known, s, 0.01 to 10000; 0 has it fitted. It is taken as exact: ErrC knows no doubt about it
	MinTauS    float64 // shortest time constant tried when fitting, s [2]
	MaxTauS    float64 // longest time constant tried when fitting, s, at most 1000 times MinTauS [300]
	MaxGapS    float64 // longer steps of the clock start a new stretch, s [60]
}

// Estimate is the answer after a sample. No field is ever NaN or infinite.
type Estimate struct {
	Settled    bool    // the reading itself can be taken as the water
	Fitted     bool    // false while EstimateC is just the last reading (error would exceed 20 C)
	NewStretch bool    // this sample started a new stretch (first, or clock jump)
	Held       bool    // this sample jumps; it waits for the next to tell whether it is wild
	Wild       bool    // a sample before this one was wild and is left out
	EstimateC  float64 // what the reading will settle at, C
	ErrC       float64 // standard error of EstimateC, C; 20 while not Fitted
	LeftS      float64 // rough time until Settled, s; 0 when Settled
	TauS       float64 // time constant given, or the median of the fit, s
}

// Filter follows one still probe. It is not safe for concurrent use.
type Filter struct {
	o      Options
	f      *fitter
	startS float64
	since  []float64 // of the samples kept, s after startS
	temps  []float64
	doubt  bool     // the newest of them may be wild; the fitter can undo it
	last   Estimate // given last, before any Held
}

// NewFilter returns a Filter, or ErrArg for options out of range.
func NewFilter(o Options) (*Filter, error) {
	for _, d := range []struct {
		p *float64
		v float64
	}{{&o.PrecisionC, 0.05}, {&o.NoiseC, 0.05}, {&o.MinTauS, 2}, {&o.MaxTauS, 300}, {&o.MaxGapS, 60}} {
		if *d.p == 0 {
			*d.p = d.v
		}
		if !(*d.p >= 1e-4 && *d.p <= 1e5) {
			return nil, ErrArg
		}
	}
	if o.TauS != 0 && !(o.TauS >= 1e-2 && o.TauS <= 1e4) {
		return nil, ErrArg
	}
	if o.TauS == 0 && !(o.MinTauS >= 1e-2 && o.MaxTauS <= 1e4 && o.MaxTauS > o.MinTauS && o.MaxTauS <= 1000*o.MinTauS) {
		return nil, ErrArg
	}
	return &Filter{o: o, f: newFitter(o)}, nil
}

// Reset forgets all samples; call it when the probe is moved to a new depth. A
// time constant that was fitted to a clear step is remembered as likely, so use
// one Filter for all depths and a new one for another probe.
func (w *Filter) Reset() {
	w.f.learn()
	w.f.reset()
	w.since, w.temps = w.since[:0], w.temps[:0]
	w.doubt, w.last = false, Estimate{}
}

// Add takes the reading tempC (C) at timeS (s, any origin) and returns the
// state. A clock that goes back, or forward by more than MaxGapS, starts a new
// stretch: everything before is forgotten, as the lag curve cannot be joined
// over an unknown pause, and Estimate.NewStretch is set.
//
// One wild reading among good ones is left out. It is held when it comes: the
// Estimate is the one before it, but not Settled, and the next reading lets it in
// or shows it to be wild. Two in a row that go the same way pass; feed a running
// median of 5 where a probe makes such. ErrSample and ErrSameTime leave the
// Filter as it was; the Estimate is then empty.
func (w *Filter) Add(timeS, tempC float64) (Estimate, error) {
	if math.IsNaN(timeS) || math.IsInf(timeS, 0) || !plausible(tempC) {
		return Estimate{}, ErrSample
	}
	if n := len(w.since); n > 0 {
		dt := timeS - w.startS - w.since[n-1]
		if dt == 0 {
			return Estimate{}, ErrSameTime
		}
		if dt < 0 || dt > w.o.MaxGapS {
			w.Reset()
		}
	}
	fresh := len(w.since) == 0
	if fresh {
		w.startS = timeS
	}
	wild := w.drop(tempC)
	held := w.astray(tempC)
	if w.doubt = w.jumps(tempC); w.doubt {
		w.f.save()
	}
	w.keep(timeS-w.startS, tempC)
	if held {
		s := w.last
		s.Settled, s.NewStretch, s.Held, s.Wild = false, false, true, wild
		s.LeftS = max(s.LeftS, w.since[len(w.since)-1]-w.since[len(w.since)-2])
		return s, nil
	}
	w.last = w.state()
	w.last.NewStretch, w.last.Wild = fresh, wild
	return w.last, nil
}

// keep takes a sample into the fit and the memory.
func (w *Filter) keep(since, tempC float64) {
	w.f.add(since, tempC)
	if len(w.since) == maxKept {
		w.since = append(w.since[:0], w.since[maxKept/4:]...)
		w.temps = append(w.temps[:0], w.temps[maxKept/4:]...)
	}
	w.since, w.temps = append(w.since, since), append(w.temps, tempC)
}

// state judges the samples kept.
func (w *Filter) state() Estimate {
	r, ok := w.f.solve()
	if !ok || !(r.errC <= unknownErrC) || !finite(r.waterC, r.tauS, r.tauHighS, r.noiseC) {
		tau := w.o.TauS
		if tau == 0 {
			tau = math.Sqrt(w.o.MinTauS * w.o.MaxTauS)
		}
		return Estimate{EstimateC: w.temps[len(w.temps)-1], ErrC: unknownErrC, LeftS: 5 * tau, TauS: tau}
	}
	s := Estimate{Fitted: true, EstimateC: r.waterC, ErrC: r.errC, TauS: r.tauS}
	levelC, errC, ok := w.flat(r.tauHighS)
	if !ok {
		s.LeftS = w.left(r, w.since[len(w.since)-1])
		return s
	}
	s.Settled = true
	// Where the whole stretch was no lag curve (a probe moved on without a
	// Reset), what the flat end says holds.
	if math.Abs(s.EstimateC-levelC) > w.o.PrecisionC+3*math.Hypot(s.ErrC, errC) {
		s.EstimateC, s.ErrC = levelC, errC
	}
	return s
}

// plausible keeps out values no thermometer in or above a lake can give; NaN
// fails both comparisons.
func plausible(tempC float64) bool { return tempC >= -100 && tempC <= 200 }

func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
