package settle

import (
	"errors"
	"math"
	"math/rand"
	"testing"
)

// alderKettle is the water of an invented lake: a thermocline at 6 m.
func alderKettle(depthM float64) float64 { return 14 - 6*math.Tanh((depthM-6)/1.5) }

// simCast lowers (or raises) a lagging probe at speedMS; the lag is integrated
// in 1 ms steps, a method apart from the correction under test.
func simCast(r *rand.Rand, fromM, toM, speedMS, tauS, noiseC float64) []CastSample {
	const dt = 0.001
	var out []CastSample
	dir := 1.0
	if toM < fromM {
		dir = -1
	}
	temp := alderKettle(fromM)
	for i := 0; float64(i)*dt*speedMS <= math.Abs(toM-fromM); i++ {
		at := float64(i) * dt
		z := fromM + dir*speedMS*at
		temp += (alderKettle(z) - temp) * dt / tauS
		if i%250 == 0 {
			out = append(out, CastSample{1000 + at, z, temp + noiseC*r.NormFloat64()})
		}
	}
	return out
}

func worst(bins []Bin) float64 {
	w := 0.0
	for _, b := range bins {
		w = max(w, math.Abs(b.TempC-alderKettle(b.DepthM)))
	}
	return w
}

func TestCast(t *testing.T) {
	for _, c := range []struct{ tauS, speedMS, noiseC, tolC, tolTau float64 }{
		{5, 0.2, 0, 0.15, 0.1}, {5, 0.2, 0.01, 0.25, 0.2}, {10, 0.1, 0.01, 0.25, 0.4}, {2, 0.3, 0.01, 0.25, 0.2},
	} {
		r := rand.New(rand.NewSource(3))
		down := simCast(r, 0, 12, c.speedMS, c.tauS, c.noiseC)
		up := simCast(r, 12, 0, c.speedMS, c.tauS, c.noiseC)
		raw, err := BinCast(down, 0, CastOptions{})
		if err != nil {
			t.Fatal(err)
		}
		fixed, _ := BinCast(down, c.tauS, CastOptions{})
		tau, rms, err := MatchTau(down, up, CastOptions{})
		t.Logf("%+v: raw %.2f C, corrected %.3f C, tau %.3f s, rms %.3f C, %v", c, worst(raw), worst(fixed), tau, rms, err)
		if n := len(fixed); n < 48 || n > 49 || worst(fixed) > c.tolC || worst(raw) < 4*c.tolC {
			t.Errorf("%+v: %d bins, worst %.3f raw %.3f", c, n, worst(fixed), worst(raw))
		}
		if err != nil || math.Abs(tau-c.tauS) > c.tolTau {
			t.Errorf("%+v: tau %.3f, %v", c, tau, err)
		}
	}
}

func TestCastErrors(t *testing.T) {
	ok := []CastSample{{0, 0, 10}, {1, 1, 10}, {2, 2, 10}, {3, 3, 10}, {4, 4, 10}, {5, 5, 10}}
	for _, c := range []struct {
		cast []CastSample
		tauS float64
		o    CastOptions
		want error
	}{
		{ok, 5, CastOptions{}, nil}, {ok, -1, CastOptions{}, ErrArg}, {ok, math.NaN(), CastOptions{}, ErrArg},
		{ok, 5, CastOptions{BinM: -1}, ErrArg}, {ok, 5, CastOptions{SmoothS: math.NaN()}, ErrArg}, {ok[:2], 5, CastOptions{}, ErrSample},
		{[]CastSample{{0, 0, 1}, {1, 1, 1}, {1, 2, 1}}, 5, CastOptions{}, ErrSample},
		{[]CastSample{{0, 0, 1}, {1, math.NaN(), 1}, {2, 2, 1}}, 5, CastOptions{}, ErrSample},
	} {
		if _, err := BinCast(c.cast, c.tauS, c.o); !errors.Is(err, c.want) {
			t.Errorf("%+v: %v, want %v", c, err, c.want)
		}
	}
	if _, _, err := MatchTau(ok, ok, CastOptions{}); !errors.Is(err, ErrNoMatch) {
		t.Errorf("one temperature: %v", err)
	}
	if _, _, err := MatchTau(ok, ok[:3], CastOptions{}); !errors.Is(err, ErrNoMatch) {
		t.Errorf("few bins: %v", err)
	}
}
