package response

import (
	"errors"
	"math"
	"math/rand"
	"testing"
)

const binM = 0.25

// alderKettle is the water of an invented lake: a thermocline at 6 m.
func alderKettle(depthM float64) float64 { return 14 - 6*math.Tanh((depthM-6)/1.5) }

// simTrip is a lagging probe lowered to 12 m, left there for restS, and raised
// again unless upMS is 0.
type simTrip struct {
	tauS, downMS, upMS, restS float64
	waveM                     float64 // waves of 2.5 s lift and drop the probe by this
	noiseC, noiseM            float64 // standard deviations of what it reports
	dtS                       float64 // between readings
}

// record is what the probe reports; turnS is when it leaves the bottom. The lag
// is integrated in steps of 5 ms, a method apart from the correction under test.
func (s simTrip) record(r *rand.Rand) (cast []castSample, turnS float64) {
	const dt, bottomM = 0.005, 12.0
	downS := bottomM / s.downMS
	turnS, endS := downS+s.restS, downS+s.restS
	if s.upMS > 0 {
		endS += bottomM / s.upMS
	}
	temp, every := alderKettle(0), int(math.Round(s.dtS/dt))
	follow := -math.Expm1(-dt / s.tauS)
	for i := 0; float64(i)*dt <= endS; i++ {
		at := float64(i) * dt
		z := min(at*s.downMS, bottomM)
		if at > turnS {
			z = bottomM - (at-turnS)*s.upMS
		}
		z += s.waveM * math.Sin(2*math.Pi*at/2.5)
		temp += (alderKettle(z) - temp) * follow
		if i%every == 0 {
			cast = append(cast, castSample{1000 + at, z + s.noiseM*r.NormFloat64(), temp + s.noiseC*r.NormFloat64()})
		}
	}
	return cast, 1000 + turnS
}

// errorsOf gives the root mean square and the largest error (C) of bins.
func errorsOf(bins []layer) (rms, worst float64) {
	for _, b := range bins {
		e := math.Abs(b.tempC - alderKettle(b.depthM))
		rms += e * e
		worst = max(worst, e)
	}
	return math.Sqrt(rms / float64(len(bins))), worst
}

func TestCast(t *testing.T) {
	for _, c := range []struct{ tauS, speedMS, noiseC, tolC, tolTau float64 }{
		{5, 0.2, 0, 0.15, 0.1}, {5, 0.2, 0.01, 0.25, 0.2}, {10, 0.1, 0.01, 0.25, 0.4}, {2, 0.3, 0.01, 0.25, 0.2},
	} {
		r := rand.New(rand.NewSource(3))
		cast, turnS := simTrip{tauS: c.tauS, downMS: c.speedMS, upMS: c.speedMS, noiseC: c.noiseC, dtS: 0.25}.record(r)
		n := 0
		for n < len(cast) && cast[n].timeS <= turnS {
			n++
		}
		down, up := smoothed(cast[:n], 0, n, binM), smoothed(cast[n:], 0, len(cast)-n, binM)
		fixed := corrected(down, c.tauS)
		_, rawC := errorsOf(down)
		_, fixedC := errorsOf(fixed)
		tau, rms, ok := matchTau(down, up, binM)
		t.Logf("%+v: raw %.2f C, corrected %.3f C, tau %.3f s, rms %.3f C, %v", c, rawC, fixedC, tau, rms, ok)
		if n := len(fixed); n < 48 || n > 49 || fixedC > c.tolC || rawC < 4*c.tolC {
			t.Errorf("%+v: %d bins, worst %.3f raw %.3f", c, n, fixedC, rawC)
		}
		if !ok || math.Abs(tau-c.tauS) > c.tolTau {
			t.Errorf("%+v: tau %.3f, %v", c, tau, ok)
		}
	}
}

func TestCastErrors(t *testing.T) {
	ok := []castSample{{0, 0, 10}, {1, 1, 10}, {2, 2, 10}, {3, 3, 10}, {4, 4, 10}, {5, 5, 10}}
	for _, c := range []struct {
		cast []castSample
		tauS float64
		want error
	}{
		{ok, 5, nil}, {ok, -1, ErrArg}, {ok, math.NaN(), ErrArg}, {ok[:2], 5, ErrSample},
		{[]castSample{{0, 0, 1}, {1, 1, 1}, {1, 2, 1}}, 5, ErrSample},
		{[]castSample{{0, 0, 1}, {1, math.NaN(), 1}, {2, 2, 1}}, 5, ErrSample},
		{[]castSample{{0, 0, 1}, {1, 1, 1}, {0.5, 2, 1}}, 5, ErrSample},
		{[]castSample{{0, -1, 1}, {1, -1, 1}, {2, 2, 1}}, 5, ErrSample}, // one in water
	} {
		if _, err := newTrip(c.cast, c.tauS, binM); !errors.Is(err, c.want) {
			t.Errorf("%+v: %v, want %v", c, err, c.want)
		}
	}
	whole := smoothed(ok, 0, len(ok), binM)
	if _, _, matched := matchTau(whole, whole, binM); matched {
		t.Error("one temperature: matched")
	}
	if _, _, matched := matchTau(whole, smoothed(ok[:3], 0, 3, binM), binM); matched {
		t.Error("few bins: matched")
	}
	if _, err := split(ok[:2]); !errors.Is(err, ErrSample) {
		t.Errorf("two samples: %v", err)
	}
}
