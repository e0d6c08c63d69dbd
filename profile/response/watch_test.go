package response

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// trip is a probe moved by hand: where it is held, and for how long.
type trip struct {
	depthM, holdS float64
}

// lower plays a probe of time constant tauS in water of 24 C at the surface, 1.5 C
// colder each metre, moved at 0.4 m/s between holds and lifted by waves of 0.2 m, and
// gives every state with the true depth and whether the hand moves the probe.
func lower(t *testing.T, seed uint64, tauS, waveM, noiseM, noiseC float64, trips []trip, each func(s State, depthM float64, moving bool)) {
	t.Helper()
	w, err := NewWatch(Options{})
	if err != nil {
		t.Fatal(err)
	}
	random := rand.New(rand.NewPCG(seed, 1))
	const dt = 0.5
	at, probe, now := 0.0, 26.0, 0.0
	sample := func(moving bool) {
		now += dt
		z := at + waveM*math.Sin(2*math.Pi*now/2.7)
		water := 24 - 1.5*max(z, 0)
		probe = water + (probe-water)*math.Exp(-dt/tauS)
		s, err := w.Add(Sample{TimeS: now, TempC: probe + noiseC*random.NormFloat64(), DepthM: profile.Some(z + noiseM*random.NormFloat64())})
		if err != nil {
			t.Fatal(err)
		}
		each(s, at, moving)
		if s.Phase == Settled {
			w.Take()
		}
	}
	for _, trip := range trips {
		for math.Abs(at-trip.depthM) > 1e-9 {
			at += math.Copysign(min(0.4*dt, math.Abs(trip.depthM-at)), trip.depthM-at)
			sample(true)
		}
		for range int(trip.holdS / dt) {
			sample(false)
		}
	}
}

// Each depth at which the probe is held for long enough gives one reading, none is
// given on the way, and it is that of the depth: in waves too.
func TestTaken(t *testing.T) {
	trips := []trip{{0.3, 90}, {9, 120}, {4, 120}, {4.9, 120}, {2, 3}, {6, 120}}
	for _, waveM := range []float64{0, 0.1, 0.2} {
		for seed := range uint64(5) {
			var depths, off []float64
			lower(t, seed, 6, waveM, 0.03, 0.03, trips, func(s State, depthM float64, moving bool) {
				if s.Phase != Settled {
					return
				}
				if moving {
					t.Errorf("waves %v: a reading while the probe is moved at %.1f m", waveM, depthM)
				}
				depths = append(depths, depthM)
				off = append(off, math.Abs(s.DepthM.Value-depthM), math.Abs(s.EstimateC-(24-1.5*depthM))/10)
			})
			want := []float64{0.3, 9, 4, 4.9, 6}
			if len(depths) != len(want) {
				t.Errorf("waves %v, seed %d: readings at %v", waveM, seed, depths)
				continue
			}
			for i := range want {
				if depths[i] != want[i] || off[2*i] > 0.06 || off[2*i+1] > 0.025 {
					t.Errorf("waves %v, seed %d: a reading at %v m is off by %.3f m and %.2f C", waveM, seed, depths[i], off[2*i], 10*off[2*i+1])
				}
			}
		}
	}
}

// Lines that lost a digit of their depth neither move the probe nor its reading.
func TestTornDepth(t *testing.T) {
	w, err := NewWatch(Options{TauS: 3})
	if err != nil {
		t.Fatal(err)
	}
	taken := 0
	for i := range 200 {
		z := 14.5
		if i%9 == 4 {
			z = 4.5
		}
		s, err := w.Add(Sample{TimeS: float64(i) / 2, TempC: 15, DepthM: profile.Some(z)})
		if err != nil {
			t.Fatal(err)
		}
		if s.Phase == Settled {
			taken++
			w.Take()
			if s.DepthM.Value != 14.5 {
				t.Errorf("taken at %v m", s.DepthM.Value)
			}
		}
	}
	if taken != 1 {
		t.Errorf("taken %d times", taken)
	}
}

// A probe that creeps down does not hang still.
func TestCreeping(t *testing.T) {
	w, err := NewWatch(Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range 400 {
		at := float64(i) / 2
		s, err := w.Add(Sample{TimeS: at, TempC: 15, DepthM: profile.Some(at * 0.06)})
		if err != nil || s.Phase != Moving {
			t.Fatalf("after %.1f s: %v, %v", at, s.Phase, err)
		}
	}
}

// A silence makes what was known of the depth void.
func TestGap(t *testing.T) {
	w, err := NewWatch(Options{TauS: 2})
	if err != nil {
		t.Fatal(err)
	}
	at := 0.0
	add := func() Phase {
		at += 0.5
		s, err := w.Add(Sample{TimeS: at, TempC: 15, DepthM: profile.Some(3)})
		if err != nil {
			t.Fatal(err)
		}
		return s.Phase
	}
	for i := 0; add() == Moving; i++ {
		if i > 100 {
			t.Fatal("never still")
		}
	}
	at += 30
	if got := add(); got != Moving {
		t.Errorf("after a silence: %v", got)
	}
}

// A probe without a depth hangs when somebody says so, and each time anew.
func TestHold(t *testing.T) {
	w, err := NewWatch(Options{})
	if err != nil {
		t.Fatal(err)
	}
	probe, at := 26.0, 0.0
	run := func(water float64, n int) (settled []float64) {
		for range n {
			at += 0.5
			probe = water + (probe-water)*math.Exp(-0.5/6)
			s, err := w.Add(Sample{TimeS: at, TempC: probe})
			if err != nil {
				t.Fatal(err)
			}
			if s.DepthM.Known {
				t.Fatal("a depth from nowhere")
			}
			if s.Phase == Settled {
				settled = append(settled, s.EstimateC)
				w.Take()
			}
		}
		return settled
	}
	if got := run(20, 300); len(got) != 0 {
		t.Errorf("readings before it was held: %v", got)
	}
	w.Hold()
	if got := run(12, 300); len(got) != 1 || math.Abs(got[0]-12) > 0.1 {
		t.Errorf("held in 12 C: %v", got)
	}
	w.Release()
	if got := run(15, 300); len(got) != 0 {
		t.Errorf("readings after it was let go: %v", got)
	}
	w.Hold()
	if got := run(8, 300); len(got) != 1 || math.Abs(got[0]-8) > 0.1 {
		t.Errorf("held in 8 C: %v", got)
	}
}

func TestReading(t *testing.T) {
	feet := unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}
	metric := unit.System{Depth: unit.Metre, Temp: unit.Celsius}
	s := State{TempC: 12, Estimate: Estimate{Fitted: true, EstimateC: 10.04, ErrC: 0.21}}
	if r := s.Reading(4.58, metric); r.Depth != 4.6 || r.Temp != 10 || r.Step != 0.1 || r.SpreadC != 0.5 {
		t.Errorf("early: %+v", r)
	}
	s.Settled = true
	if r := s.Reading(4.58, feet); r.Depth != 15 || r.Temp != 50.1 || r.SpreadC != 0 || r.DepthUnit != unit.Foot {
		t.Errorf("settled: %+v", r)
	}
	s.Fitted = false
	if r := s.Reading(0.123, metric); r.Depth != 0.1 || r.Temp != 12 {
		t.Errorf("not fitted: %+v", r)
	}
}
