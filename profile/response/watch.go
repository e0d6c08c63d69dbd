package response

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"

	"coldseam/profile"
)

// Limits of stillness. Waves of a lake at anchor lift a probe by 0.2 m, within some
// seconds (common practice).
const (
	overS  = 6.0  // stillness is judged over this long,
	driftM = 0.15 // by how far its first and second half lie apart
	rangeM = 0.7  // and all of it
	movedM = 0.4  // the median of three depths this far off is a move
	gapS   = 10.0 // a longer silence: what was known of the depth is void
)

// Phase is what the probe does.
type Phase int

// The phases.
const (
	Moving   Phase = iota // or not said to hang
	Settling              // hangs still, its reading not yet that of the water
	Settled
	Taken // hangs still where its reading was taken
)

// Sample is one line of the probe.
type Sample struct {
	TimeS  float64 // since any fixed moment, s
	TempC  float64
	DepthM profile.Optional
}

// State is what is known after a sample.
type State struct {
	Phase  Phase
	DepthM profile.Optional // median while it hangs, else the last; unknown where the probe states none
	TempC  float64          // the last one read
	Estimate
}

// Watch follows a probe that is lowered by hand and held at one depth after the other.
// It tells when the probe moves, when it hangs still, and when its reading has settled
// there.
//
// A probe that states its depth tells by itself when it hangs still: waves lift the
// boat and the probe with it, so stillness is judged by means over some seconds. Of a
// probe that states only a temperature somebody must say that it hangs (Hold).
type Watch struct {
	filter *Filter
	recent []Sample // of the last overS seconds, or since the last move
	held   []Sample // since it hangs still
	holds  bool
	taken  bool
	now    State // after the last sample since it was held, let go or taken
}

// NewWatch makes a Watch; o is that of its Filter, for a probe whose time constant is
// 60 s at most where it does not say otherwise (common practice: 10 to 20 s for a sensor
// in a steel tube). It returns ErrArg for options out of range.
func NewWatch(o Options) (*Watch, error) {
	if o.TauS == 0 && o.MaxTauS == 0 {
		o.MaxTauS = slowestS
	}
	f, err := NewFilter(o)
	if err != nil {
		return nil, err
	}
	return &Watch{filter: f}, nil
}

const slowestS = 60.0

// Hold says that the probe hangs still from now on: for a probe without depth.
func (w *Watch) Hold() {
	w.release()
	w.holds = true
}

// Release says that the probe is being moved, for a probe without depth.
func (w *Watch) Release() { w.release() }

// Take says that the reading at this depth was taken; the phase is Taken until the
// probe moves, or Hold is said again.
func (w *Watch) Take() { w.taken, w.now = true, State{} }

// State is what is known now: that of the last sample, and nothing where none came
// since Hold, Release or Take. A reading ends its state, so that no second one can be
// made of it.
func (w *Watch) State() State { return w.now }

func (w *Watch) release() {
	w.filter.Reset()
	w.held, w.recent, w.holds, w.taken, w.now = nil, nil, false, false, State{}
}

// Add takes a sample in. Samples that the Filter does not take are errors, and change
// nothing.
func (w *Watch) Add(s Sample) (State, error) {
	state, err := w.add(s)
	if err == nil {
		w.now = state
	}
	return state, err
}

func (w *Watch) add(s Sample) (State, error) {
	state := State{DepthM: s.DepthM, TempC: s.TempC}
	if s.DepthM.Known && (w.silent(s) || w.moved(s)) {
		w.release()
	}
	if w.follow(s); !w.holds {
		return state, nil
	}
	estimate, err := w.filter.Add(s.TimeS, s.TempC)
	if err != nil {
		return state, err
	}
	state.Estimate, state.Phase = estimate, Settling
	if estimate.Settled {
		state.Phase = Settled
	}
	if w.taken {
		state.Phase = Taken
	}
	if s.DepthM.Known {
		state.DepthM = profile.Some(w.middleM())
	}
	return state, nil
}

// follow remembers a sample, and finds whether the probe has come to hang still. The
// Filter has then had all samples since but this one.
func (w *Watch) follow(s Sample) {
	switch {
	case w.holds:
		w.held, w.recent = append(w.held, s), append(w.recent[max(0, len(w.recent)-2):], s)
		if len(w.held) > maxHeld {
			w.held = append(w.held[:0], w.held[maxHeld/2:]...)
		}
	case s.DepthM.Known:
		w.recent = append(w.recent, s)
		if !w.still() {
			return
		}
		w.holds, w.held = true, w.recent
		w.recent = w.recent[len(w.recent)-1:]
		for _, old := range w.held[:len(w.held)-1] {
			_, _ = w.filter.Add(old.TimeS, old.TempC) // the last one speaks for all
		}
	}
}

// maxHeld bounds what is remembered of a probe that hangs for hours.
const maxHeld = 4096

// still reports whether the recent samples hang still, and forgets those that are too
// old to matter.
func (w *Watch) still() bool {
	last := w.recent[len(w.recent)-1].TimeS
	for len(w.recent) > 2 && last-w.recent[1].TimeS >= overS {
		w.recent = w.recent[1:]
	}
	if last-w.recent[0].TimeS < overS || len(w.recent) < 3 {
		return false
	}
	var halves [2][]float64
	var all []float64
	for i, s := range w.recent {
		z := s.DepthM.Value
		if i > 0 && i+1 < len(w.recent) { // a line that lost a digit is no move
			z = median3(w.recent[i-1].DepthM.Value, z, w.recent[i+1].DepthM.Value)
		}
		half := 0
		if last-s.TimeS < overS/2 {
			half = 1
		}
		halves[half] = append(halves[half], z)
		all = append(all, z)
	}
	return len(halves[0]) > 0 && len(halves[1]) > 0 && floats.Max(all)-floats.Min(all) < rangeM &&
		math.Abs(stat.Mean(halves[0], nil)-stat.Mean(halves[1], nil)) < driftM
}

func median3(a, b, c float64) float64 { return max(min(a, b), min(max(a, b), c)) }

// silent reports that too long passed since the last sample to know the depth still.
func (w *Watch) silent(s Sample) bool {
	n := len(w.recent)
	return n > 0 && math.Abs(s.TimeS-w.recent[n-1].TimeS) > gapS
}

// moved reports whether the probe has left the depth at which it hung.
func (w *Watch) moved(s Sample) bool {
	n := len(w.recent)
	if !w.holds || n < 2 || !w.held[0].DepthM.Known {
		return false
	}
	middle := median3(w.recent[n-2].DepthM.Value, w.recent[n-1].DepthM.Value, s.DepthM.Value)
	return math.Abs(middle-w.middleM()) > movedM
}

// middleM is the median depth since it hangs: lines that lost a digit do not move it.
func (w *Watch) middleM() float64 {
	depths := make([]float64, len(w.held))
	for i, s := range w.held {
		depths[i] = s.DepthM.Value
	}
	slices.Sort(depths)
	n := len(depths)
	return (depths[(n-1)/2] + depths[n/2]) / 2
}
