package response

import (
	"cmp"
	"slices"
)

const (
	// turnS is the width of the running mean of depth that finds the turn, s;
	// waves on a small lake have periods of 1 to 3 s (common practice).
	turnS = 5.0
	// minRiseM is how far that mean must rise or fall to make a cast, m. Waves
	// of 0.2 m and noise of 0.05 m leave less than that in it.
	minRiseM = 0.5
)

// Split parts the record of one trip of a probe, down and perhaps up again, at
// the deepest place of the depth averaged over 5 s. What hangs at the bottom
// falls to either side; both corrections hold there. up is empty where the
// record ends at the bottom, down where it begins there. Both are parts of
// cast, not copies. It returns ErrSample as BinCast does.
func Split(cast []CastSample) (down, up []CastSample, err error) {
	if len(cast) < 3 {
		return nil, nil, ErrSample
	}
	if err := checkCast(cast); err != nil {
		return nil, nil, err
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
		return cast, nil, nil
	case rise(mean[:turn+1]) < minRiseM:
		return nil, cast, nil
	}
	return cast[: turn+1 : turn+1], cast[turn+1:], nil
}

// meanDepths is the depth (m) averaged over turnS around each sample.
func meanDepths(cast []CastSample) []float64 {
	out := make([]float64, len(cast))
	lo, hi, sum := 0, 0, 0.0
	for i, s := range cast {
		for hi < len(cast) && cast[hi].TimeS-s.TimeS <= turnS/2 {
			sum += cast[hi].DepthM
			hi++
		}
		for s.TimeS-cast[lo].TimeS > turnS/2 {
			sum -= cast[lo].DepthM
			lo++
		}
		out[i] = sum / float64(hi-lo)
	}
	return out
}

// Trip is what one trip of a moving probe gives.
type Trip struct {
	Bins    []Bin   // shallow first; where both casts have a bin, their mean
	TauS    float64 // time constant corrected for, s; 0: not corrected
	Matched bool    // TauS comes from the casts, not from the caller
	RmsC    float64 // difference left between the casts, root mean square, C; 0 unless Matched
	Down    int     // bins the cast down has
	Up      int     // bins the cast up has, 0 without one
}

// Bins turns the record of one trip into bins. With a cast up, the time
// constant is that of MatchTau and each bin the mean of both casts, so that
// what the correction leaves of the lag cancels; where the casts give none, or
// without one of them, it is tauS (s, 0 to 10000; 0 for not known: nothing is
// corrected, Trip.TauS says so, and the bins are plain means). A cast of a few samples is left out.
// Errors are those of BinCast.
func Bins(cast []CastSample, tauS float64, o CastOptions) (Trip, error) {
	if !(tauS >= 0 && tauS <= 1e4) {
		return Trip{}, ErrArg
	}
	down, up, err := Split(cast)
	if err != nil {
		return Trip{}, err
	}
	d, errD := layersIn(cast, 0, len(down), &o)
	u, errU := layersIn(cast, len(down), len(down)+len(up), &o)
	if errD != nil && errU != nil {
		return Trip{}, errD
	}
	t := Trip{TauS: tauS, Down: len(d), Up: len(u)}
	if tau, rms, err := matchTau(d, u, o.BinM); err == nil {
		t.TauS, t.RmsC, t.Matched = tau, rms, true
	}
	if t.TauS == 0 {
		t.Bins = plain(cast, o.BinM)
	} else {
		t.Bins = corrected(merge(d, u), t.TauS)
	}
	return t, nil
}

// plain gives the means of the readings in water by bins, each at the mean of its
// depths. Where no lag is taken out nothing is smoothed: a record of few lines a metre
// would only be blurred.
func plain(cast []CastSample, binM float64) []Bin {
	sums := map[int]Bin{}
	for _, s := range cast {
		if s.DepthM >= 0 {
			k := int(s.DepthM / binM)
			b := sums[k]
			sums[k] = Bin{b.DepthM + s.DepthM, b.TempC + s.TempC, b.Count + 1}
		}
	}
	out := make([]Bin, 0, len(sums))
	for _, b := range sums {
		n := float64(b.Count)
		out = append(out, Bin{b.DepthM / n, b.TempC / n, b.Count})
	}
	slices.SortFunc(out, func(a, b Bin) int { return cmp.Compare(a.DepthM, b.DepthM) })
	return out
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
			out = append(out, layer{x.k, (x.depth + y.depth) / 2, (x.temp + y.temp) / 2, (x.rate + y.rate) / 2, x.n + y.n})
			a, b = a[1:], b[1:]
		}
	}
	return append(append(out, a...), b...)
}
