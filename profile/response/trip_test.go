package response

import (
	"math"
	"math/rand"
	"testing"
)

const footM = 0.3048

// The turn must be found within a second and a half; where the probe rested at
// the bottom any moment of the rest will do.
func TestSplit(t *testing.T) {
	r := rand.New(rand.NewSource(9))
	worst := 0.0
	for range 100 {
		s := simTrip{
			tauS: 5, downMS: spread(r, 0.1, 0.5), upMS: spread(r, 0.1, 0.5), noiseM: 0.05, waveM: 0.2, dtS: 0.25,
			restS: float64(r.Intn(3)) * 10,
		}
		cast, turnS := s.record(r)
		up, err := split(cast)
		if err != nil || up == 0 || up == len(cast) {
			t.Fatalf("%+v: %d of %d, %v", s, up, len(cast), err)
		}
		at := cast[up-1].timeS
		off := max(at-turnS, turnS-s.restS-at) // outside the rest
		worst = max(worst, off)
		if off > 1.5 {
			t.Errorf("%+v: turn %.2f s away", s, off)
		}
	}
	t.Logf("the turn is at most %.2f s off", worst)
}

// A record may end, or begin, at the bottom.
func TestSplitOneWay(t *testing.T) {
	r := rand.New(rand.NewSource(10))
	for range 30 {
		s := simTrip{tauS: 5, downMS: 0.3, restS: float64(r.Intn(3)) * 20, noiseM: 0.05, waveM: 0.2, dtS: 0.25}
		cast, _ := s.record(r)
		up, err := split(cast)
		if err != nil || up != len(cast) {
			t.Errorf("%+v: up from %d of %d, %v", s, up, len(cast), err)
		}
		s.upMS = 0.3
		cast, turnS := s.record(r)
		for cast[0].timeS < turnS {
			cast = cast[1:]
		}
		up, err = split(cast)
		if err != nil || up != 0 {
			t.Errorf("%+v: up from %d of %d, %v", s, up, len(cast), err)
		}
	}
}

// TestBins prints the error of the bins of simulated trips: as they come, with
// the cast down alone corrected by the right time constant, and with both casts,
// which find it themselves. Noise of 0.03 C and 0.05 m, waves of 0.2 m, 4
// readings a second. The limits are what was reached.
func TestBins(t *testing.T) {
	trials := 12
	if testing.Short() {
		trials = 3
	}
	for _, binM := range []float64{footM, 0.25} {
		for _, c := range []struct{ tauS, speedMS, oneC, bothC, tauOff float64 }{
			{2, 0.3, 0.075, 0.055, 1.2}, {5, 0.2, 0.070, 0.045, 1}, {10, 0.1, 0.065, 0.050, 1}, {20, 0.1, 0.115, 0.090, 1},
		} {
			r := rand.New(rand.NewSource(11))
			var rawRms, rawC, oneRms, oneC, bothRms, bothC, off float64
			for range trials {
				s := simTrip{tauS: c.tauS, downMS: c.speedMS, upMS: c.speedMS, noiseC: 0.03, noiseM: 0.05, waveM: 0.2, dtS: 0.25}
				cast, _ := s.record(r)
				both, err := newTrip(cast, 0, binM)
				if err != nil || !both.Matched || both.Down == 0 || both.Up == 0 {
					t.Fatalf("%+v: %+v, %v", c, both, err)
				}
				up, err := split(cast)
				if err != nil {
					t.Fatal(err)
				}
				down := cast[:up]
				raw, err := newTrip(down, 0, binM)
				if err != nil || raw.TauS != 0 || raw.Matched || raw.Up != 0 {
					t.Fatalf("%+v: %+v, %v", c, raw, err)
				}
				one, err := newTrip(down, c.tauS, binM)
				if err != nil || one.TauS != c.tauS || one.Matched {
					t.Fatalf("%+v: %+v, %v", c, one, err)
				}
				for _, x := range []struct {
					bins       []layer
					rms, worst *float64
				}{{raw.layers, &rawRms, &rawC}, {one.layers, &oneRms, &oneC}, {both.layers, &bothRms, &bothC}} {
					rms, worst := errorsOf(x.bins)
					*x.rms += rms / float64(trials)
					*x.worst += worst / float64(trials)
				}
				off = max(off, math.Abs(both.TauS/c.tauS-1))
			}
			t.Logf("bins of %.4f m, tau %2g s, %.1f m/s: rms (worst) as it comes %.2f (%.2f) C, down corrected %.3f (%.3f), both %.3f (%.3f); tau within %.1f %%",
				binM, c.tauS, c.speedMS, rawRms, rawC, oneRms, oneC, bothRms, bothC, 100*off)
			if rawRms < 10*bothRms || !testing.Short() && (oneRms > c.oneC || bothRms > c.bothC || 100*off > c.tauOff) {
				t.Errorf("%+v: rms %.3f and %.3f, tau %.1f %%", c, oneRms, bothRms, 100*off)
			}
		}
	}
}

// A sensor read each 3 s in sixteenths of a degree leaves bins empty; the casts
// tell the time constant all the same.
func TestBinsSparse(t *testing.T) {
	for seed := range int64(20) {
		r := rand.New(rand.NewSource(seed))
		s := simTrip{tauS: 10, downMS: 0.15, upMS: 0.3, noiseC: 0.03, noiseM: 0.05, waveM: 0.2, dtS: 3, restS: 10}
		cast, _ := s.record(r)
		for i := range cast {
			cast[i].tempC = math.Round(cast[i].tempC*16) / 16
		}
		got, err := newTrip(cast, 0, footM)
		if err != nil || !got.Matched || math.Abs(got.TauS-s.tauS) > 0.5 {
			t.Fatalf("%+v, %v", got, err)
		}
		if rms, worst := errorsOf(got.layers); rms > 0.4 {
			t.Errorf("seed %d: rms %.2f C, worst %.2f C", seed, rms, worst)
		}
	}
}

// Water of one temperature tells no time constant: the caller's is used, and
// none is none.
func TestBinsUnmatched(t *testing.T) {
	r := rand.New(rand.NewSource(12))
	var cast []castSample
	for i := range 240 {
		z := 6 - math.Abs(float64(i)*0.05-6)
		cast = append(cast, castSample{float64(i) / 4, z, 10 + 0.03*r.NormFloat64()})
	}
	for _, tauS := range []float64{0, 7} {
		got, err := newTrip(cast, tauS, binM)
		if err != nil || got.Matched || got.TauS != tauS || got.RmsC != 0 || got.Down == 0 || got.Up == 0 {
			t.Errorf("tau %g: %+v, %v", tauS, got, err)
		}
		for i, b := range got.layers {
			if i > 0 && b.depthM <= got.layers[i-1].depthM || math.Abs(b.tempC-10) > 0.5 {
				t.Errorf("tau %g: %+v", tauS, b)
			}
		}
	}
}

// Whatever is recorded, the bins are in order and hold numbers.
func TestBinsOfNonsense(t *testing.T) {
	r := rand.New(rand.NewSource(13))
	binned := 0
	for range 3000 {
		var cast []castSample
		at := spread(r, 1, 1e9)
		for range r.Intn(30) {
			at += spread(r, 1e-3, 1e6)
			cast = append(cast, castSample{at, spread(r, 0.05, 1e3) - 0.1, 300*r.Float64() - 100})
		}
		got, err := newTrip(cast, float64(r.Intn(2))*spread(r, 1e-3, 1e4), spread(r, 0.01, 100))
		if err != nil {
			if len(cast) > 10 {
				t.Fatalf("%d samples: %v", len(cast), err)
			}
			continue
		}
		binned++
		if !finite(got.TauS, got.RmsC) || got.TauS < 0 {
			t.Fatalf("%+v", got)
		}
		for i, b := range got.layers {
			if !finite(b.depthM, b.tempC) || b.n < 1 || i > 0 && b.depthM <= got.layers[i-1].depthM {
				t.Fatalf("bin %d of %+v", i, got)
			}
		}
	}
	if binned < 2000 {
		t.Errorf("only %d casts were binned", binned)
	}
}

// A record of one reading a metre, its lag not known, gives its readings as they are.
func TestBinsPlain(t *testing.T) {
	var cast []castSample
	want := []float64{23, 22.9, 22.1, 19.2, 15.1, 12.2, 10.9}
	for i, temp := range want {
		cast = append(cast, castSample{timeS: float64(i), depthM: float64(i) + 0.1, tempC: temp})
	}
	got, err := newTrip(cast, 0, footM)
	if err != nil || len(got.layers) != len(want) {
		t.Fatalf("%v, %v", got.layers, err)
	}
	for i, b := range got.layers {
		if b.tempC != want[i] || math.Abs(b.depthM-float64(i)-0.1) > 1e-12 {
			t.Errorf("%.2f C at %.2f m, want %.2f", b.tempC, b.depthM, want[i])
		}
	}
}
