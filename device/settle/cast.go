package settle

import (
	"errors"
	"math"
	"sort"
)

// ErrNoMatch reports two casts that share too few bins, or whose readings do
// not change with depth, so that they say nothing of the time constant.
var ErrNoMatch = errors.New("settle: casts give no time constant")

const (
	minShared = 5
	maxDepthM = 1000.0
)

// CastSample is one reading of a probe that moves without stopping. Readings
// with DepthM below 0 are in air and only serve the smoothing.
type CastSample struct {
	TimeS, DepthM, TempC float64
}

// CastOptions sets up the binning. Zero values take the default in brackets.
type CastOptions struct {
	BinM    float64 // height of a depth bin, m, 0.01 to 100 [0.25]
	SmoothS float64 // width of the sliding line fit, s, 0.01 to 1000 [3]
}

// Bin is the mean of a depth bin.
type Bin struct {
	DepthM float64 // middle of the bin, m
	TempC  float64 // mean corrected temperature, C
	Count  int     // readings in the bin, 1 or more
}

// BinCast corrects a cast for a first-order lag of time constant tauS (s, 0 to
// 10000; 0 leaves it out) and bins it by depth, shallow first. The correction
// is T + tau dT/dt, the lag equation solved for the water; T and dT/dt come
// from a line through the readings SmoothS/2 to either side (at least two each
// side where there are), as a bare difference would multiply the noise. Water
// layers passed in less than SmoothS are blurred. It returns ErrSample for
// fewer than 3 samples, times that do not increase or values out of range, and
// ErrArg for options or tauS out of range.
func BinCast(cast []CastSample, tauS float64, o CastOptions) ([]Bin, error) {
	if !(tauS >= 0 && tauS <= 1e4) {
		return nil, ErrArg
	}
	bins, err := sumBins(cast, &o)
	if err != nil {
		return nil, err
	}
	out := make([]Bin, 0, len(bins))
	for k, b := range bins {
		out = append(out, Bin{(float64(k) + 0.5) * o.BinM, (b.temp + tauS*b.rate) / float64(b.n), b.n})
	}
	sort.Slice(out, func(i, j int) bool { return out[i].DepthM < out[j].DepthM })
	return out, nil
}

// MatchTau finds the time constant (s) for which a cast down and a cast up
// through the same water agree, by least squares over the bins both have, and
// the root mean square difference (C) that remains. A lag drags the down cast
// and the up cast to opposite sides; matching them is the published idea
// (Morison et al. 1994, J. Atmos. Oceanic Technol. 11, from memory; they match
// a different correction). As the correction is linear in tau, the optimum is
// closed form. It returns ErrNoMatch for fewer than 5 shared bins, water of one
// temperature, or a best tau not above 0, and the errors of BinCast.
func MatchTau(down, up []CastSample, o CastOptions) (tauS, rmsC float64, err error) {
	d, err := sumBins(down, &o)
	if err != nil {
		return 0, 0, err
	}
	u, err := sumBins(up, &o)
	if err != nil {
		return 0, 0, err
	}
	var keys []int
	for k := range d {
		if u[k].n > 0 {
			keys = append(keys, k)
		}
	}
	if len(keys) < minShared {
		return 0, 0, ErrNoMatch
	}
	sort.Ints(keys) // a fixed order of summing, for a repeatable result
	var tt, tr, rr float64
	for _, k := range keys {
		dn, un := float64(d[k].n), float64(u[k].n)
		t, r := d[k].temp/dn-u[k].temp/un, d[k].rate/dn-u[k].rate/un
		tt, tr, rr = tt+t*t, tr+t*r, rr+r*r
	}
	tauS = -tr / rr
	if !(tauS > 0) || tauS > 1e4 {
		return 0, 0, ErrNoMatch
	}
	return tauS, math.Sqrt(max(tt+tauS*tr, 0) / float64(len(keys))), nil
}

// binSum adds up the smoothed temperature (C) and its rate (C/s) in a bin.
type binSum struct {
	temp, rate float64
	n          int
}

func sumBins(cast []CastSample, o *CastOptions) (map[int]binSum, error) {
	if o.BinM == 0 {
		o.BinM = 0.25
	}
	if o.SmoothS == 0 {
		o.SmoothS = 3
	}
	if !(o.BinM >= 0.01 && o.BinM <= 100) || !(o.SmoothS >= 0.01 && o.SmoothS <= 1000) {
		return nil, ErrArg
	}
	if len(cast) < 3 {
		return nil, ErrSample
	}
	for i, s := range cast {
		if math.Abs(s.TimeS) > 1e12 || math.IsNaN(s.TimeS) || !plausible(s.TempC) || !(s.DepthM >= -maxDepthM && s.DepthM <= maxDepthM) {
			return nil, ErrSample
		}
		// Steps under a microsecond are no clock's and would blow up dT/dt.
		if i > 0 && !(s.TimeS-cast[i-1].TimeS >= 1e-6) {
			return nil, ErrSample
		}
	}
	bins := map[int]binSum{}
	lo, hi := 0, 0
	for i, s := range cast {
		for s.TimeS-cast[lo].TimeS > o.SmoothS/2 {
			lo++
		}
		for hi < len(cast) && cast[hi].TimeS-s.TimeS <= o.SmoothS/2 {
			hi++
		}
		if s.DepthM < 0 {
			continue
		}
		temp, rate := lineAt(cast[max(min(lo, i-2), 0):min(max(hi, i+3), len(cast))], s.TimeS)
		k := int(s.DepthM / o.BinM)
		b := bins[k]
		bins[k] = binSum{b.temp + temp, b.rate + rate, b.n + 1}
	}
	return bins, nil
}

// lineAt fits a line to at least 3 readings and gives its value and slope at
// atS.
func lineAt(part []CastSample, atS float64) (tempC, rateCPerS float64) {
	var n, mx, my, cxx, cxy float64
	for _, s := range part {
		n++
		dx, dy := s.TimeS-atS-mx, s.TempC-my
		mx, my = mx+dx/n, my+dy/n
		cxx += dx * (s.TimeS - atS - mx)
		cxy += dx * (s.TempC - my)
	}
	return my - cxy/cxx*mx, cxy / cxx
}
