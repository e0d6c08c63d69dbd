package response

const (
	// turnS is the width of the running mean of depth that finds the turn, s;
	// waves on a small lake have periods of 1 to 3 s (common practice).
	turnS = 5.0
	// minRiseM is how far that mean must rise or fall to make a cast, m. Waves
	// of 0.2 m and noise of 0.05 m leave less than that in it.
	minRiseM = 0.5
	// maxTauS is the longest time constant that is given or matched, s.
	maxTauS = 1e4
)

// Trip is what one trip of a moving probe gives.
type Trip struct {
	TauS    float64 // time constant corrected for, s; 0: not corrected
	Matched bool    // TauS comes from the casts, not from the caller
	RmsC    float64 // difference left between the casts, root mean square, C; 0 unless Matched
	Down    int     // bins the cast down has
	Up      int     // bins the cast up has, 0 without one

	layers []layer // shallow first; where both casts have a bin, their mean
}

// newTrip turns the record of one trip into bins of binM. With a cast up, the time
// constant is that of matchTau and each bin the mean of both casts, so that
// what the correction leaves of the lag cancels; where the casts give none, or
// without one of them, it is tauS (s, 0 to 10000; 0 for not known: nothing is
// corrected, Trip.TauS says so, and the bins are plain means). A cast of a few
// samples is left out. The error is ErrArg for a tauS out of range, else ErrSample for
// what split refuses and for fewer than 3 samples in water either way.
func newTrip(cast []castSample, tauS, binM float64) (Trip, error) {
	if !(tauS >= 0 && tauS <= maxTauS) {
		return Trip{}, ErrArg
	}
	turn, err := split(cast)
	if err != nil {
		return Trip{}, err
	}
	down, up := smoothed(cast, 0, turn, binM), smoothed(cast, turn, len(cast), binM)
	if down == nil && up == nil {
		return Trip{}, ErrSample
	}
	t := Trip{TauS: tauS, Down: len(down), Up: len(up)}
	if tau, rms, ok := matchTau(down, up, binM); ok {
		t.TauS, t.RmsC, t.Matched = tau, rms, true
	}
	if t.TauS == 0 {
		t.layers = plainMeans(cast, binM)
	} else {
		t.layers = corrected(merge(down, up), t.TauS)
	}
	return t, nil
}

// split finds where the record of one trip of a probe turns from down to up: behind the
// deepest place of the depth averaged over 5 s, at the end of a record that ends at the
// bottom, at its beginning where it begins there. What hangs at the bottom falls to
// either side; both corrections hold there. The error is ErrSample for fewer than 3
// samples, times that do not increase and values that cannot be.
func split(cast []castSample) (up int, err error) {
	if len(cast) < 3 {
		return 0, ErrSample
	}
	if err := check(cast); err != nil {
		return 0, err
	}
	mean := meanDepths(cast)
	turn := 0
	for i, d := range mean {
		if d > mean[turn] {
			turn = i
		}
	}
	rise := func(part []float64) (m float64) {
		for _, d := range part {
			m = max(m, mean[turn]-d)
		}
		return m
	}
	switch {
	case rise(mean[turn:]) < minRiseM:
		return len(cast), nil
	case rise(mean[:turn+1]) < minRiseM:
		return 0, nil
	}
	return turn + 1, nil
}

// meanDepths is the depth (m) averaged over turnS around each sample.
func meanDepths(cast []castSample) []float64 {
	out := make([]float64, len(cast))
	lo, hi, sum := 0, 0, 0.0
	for i, s := range cast {
		for hi < len(cast) && cast[hi].timeS-s.timeS <= turnS/2 {
			sum += cast[hi].depthM
			hi++
		}
		for s.timeS-cast[lo].timeS > turnS/2 {
			sum -= cast[lo].depthM
			lo++
		}
		out[i] = sum / float64(hi-lo)
	}
	return out
}

// plainMeans are the means of the readings in water by bins, each at the mean of its
// depths. Where no lag is taken out nothing is smoothed: a record of few lines a metre
// would only be blurred.
func plainMeans(cast []castSample, binM float64) []layer {
	sums := bins{}
	for _, s := range cast {
		if s.depthM >= 0 {
			sums.add(binM, s.depthM, s.tempC, 0)
		}
	}
	return sums.means()
}

// merge joins two casts, each shallow first. They weigh alike where both have a
// bin, however many readings each has, as their lags are opposite.
func merge(a, b []layer) []layer {
	out := make([]layer, 0, max(len(a), len(b)))
	for len(a) > 0 && len(b) > 0 {
		switch x, y := a[0], b[0]; {
		case x.k < y.k:
			out, a = append(out, x), a[1:]
		case y.k < x.k:
			out, b = append(out, y), b[1:]
		default:
			out = append(out, layer{x.k, (x.depthM + y.depthM) / 2, (x.tempC + y.tempC) / 2, (x.rate + y.rate) / 2, x.n + y.n})
			a, b = a[1:], b[1:]
		}
	}
	return append(append(out, a...), b...)
}
