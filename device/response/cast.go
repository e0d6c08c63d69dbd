package response

import (
	"math"
	"slices"
)

const maxDepthM = 1000.0

// CastSample is one reading of a probe that moves without stopping. Readings
// with DepthM below 0 are in air and left out.
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
	DepthM float64 // middle of the bin, m; mean depth of its readings where the bin beside it has none
	TempC  float64 // mean corrected temperature, C
	Count  int     // readings in the bin, 1 or more
}

// BinCast corrects a cast for a first-order lag of time constant tauS (s, 0 to
// 10000; 0 leaves it out) and bins it by depth, shallow first. The correction
// is T + tau dT/dt, the lag equation solved for the water. T, dT/dt and the
// depth come from lines through the readings SmoothS/2 to either side (at least
// two each side where there are): a bare difference would multiply the noise,
// and a depth not smoothed like T would set waves against it. Water layers
// passed in less than SmoothS are blurred. It returns ErrSample for fewer than
// 3 samples in water, times that do not increase or values out of range, and
// ErrArg for options or tauS out of range.
func BinCast(cast []CastSample, tauS float64, o CastOptions) ([]Bin, error) {
	if !(tauS >= 0 && tauS <= 1e4) {
		return nil, ErrArg
	}
	layers, err := layersOf(cast, &o)
	if err != nil {
		return nil, err
	}
	return corrected(layers, tauS), nil
}

// layer is the mean of a bin: of depth (m), and of the smoothed temperature (C)
// and its rate (C/s). k counts bins from the surface.
type layer struct {
	k                 int
	depth, temp, rate float64
	n                 int
}

func corrected(layers []layer, tauS float64) []Bin {
	out := make([]Bin, 0, len(layers))
	for _, l := range layers {
		out = append(out, Bin{l.depth, l.temp + tauS*l.rate, l.n})
	}
	return out
}

func checkCast(cast []CastSample) error {
	for i, s := range cast {
		if math.Abs(s.TimeS) > 1e12 || math.IsNaN(s.TimeS) || !plausible(s.TempC) || !(s.DepthM >= -maxDepthM && s.DepthM <= maxDepthM) {
			return ErrSample
		}
		// Steps under a microsecond are no clock's and would blow up dT/dt.
		if i > 0 && !(s.TimeS-cast[i-1].TimeS >= 1e-6) {
			return ErrSample
		}
	}
	return nil
}

// layersOf smooths and bins a cast, and puts the defaults into o.
func layersOf(cast []CastSample, o *CastOptions) ([]layer, error) {
	return layersIn(cast, 0, len(cast), o)
}

// layersIn does so for the samples from up to before to. Temperature is smoothed over
// what lies around them too: a probe's temperature turns smoothly where its way does not,
// and a fit to one side only would take the lag there for more than it is.
func layersIn(cast []CastSample, from, to int, o *CastOptions) ([]layer, error) {
	if o.BinM == 0 {
		o.BinM = 0.25
	}
	if o.SmoothS == 0 {
		o.SmoothS = 3
	}
	if !(o.BinM >= 0.01 && o.BinM <= 100) || !(o.SmoothS >= 0.01 && o.SmoothS <= 1000) {
		return nil, ErrArg
	}
	if err := checkCast(cast); err != nil {
		return nil, err
	}
	wet := make([]CastSample, 0, len(cast))
	first, end := 0, 0 // of the part, in wet
	for i, s := range cast {
		if s.DepthM < 0 {
			continue
		}
		if i < from {
			first++
		}
		if i < to {
			end++
		}
		wet = append(wet, s)
	}
	if end-first < 3 {
		return nil, ErrSample
	}
	sums := map[int]layer{}
	lo, hi := 0, 0
	for i, s := range wet {
		for s.TimeS-wet[lo].TimeS > o.SmoothS/2 {
			lo++
		}
		for hi < len(wet) && wet[hi].TimeS-s.TimeS <= o.SmoothS/2 {
			hi++
		}
		if i < first || i >= end {
			continue
		}
		low, high := min(lo, i-2), max(hi, i+3)
		temp, rate := lineAt(wet[max(low, 0):min(high, len(wet))], s.TimeS, func(s CastSample) float64 { return s.TempC })
		depth, _ := lineAt(wet[max(low, first):min(high, end)], s.TimeS, func(s CastSample) float64 { return s.DepthM })
		depth = max(depth, 0)
		k := int(depth / o.BinM)
		b := sums[k]
		sums[k] = layer{k, b.depth + depth, b.temp + temp, b.rate + rate, b.n + 1}
	}
	out := make([]layer, 0, len(sums))
	for _, b := range sums {
		n := float64(b.n)
		out = append(out, layer{b.k, b.depth / n, b.temp / n, b.rate / n, b.n})
	}
	slices.SortFunc(out, func(a, b layer) int { return a.k - b.k })
	return centred(out, o.BinM), nil
}

// centred moves the means of each bin, whose readings may lie to one side, to
// its middle, along the line to the bin next to it on that side if there is one.
func centred(in []layer, binM float64) []layer {
	out := slices.Clone(in)
	for i, l := range in {
		mid := (float64(l.k) + 0.5) * binM
		side := i + 1
		if l.depth > mid {
			side = i - 1
		}
		if side < 0 || side >= len(in) || in[side].k-l.k != side-i {
			continue
		}
		next := in[side]
		part := (mid - l.depth) / (next.depth - l.depth)
		if !(part >= 0 && part <= 1) { // both on the edge between them
			continue
		}
		out[i].depth = mid
		out[i].temp += part * (next.temp - l.temp)
		out[i].rate += part * (next.rate - l.rate)
	}
	return out
}

// lineAt fits a line to at least 3 readings and gives its value and slope at
// atS.
func lineAt(part []CastSample, atS float64, of func(CastSample) float64) (value, perS float64) {
	var n, mx, my, cxx, cxy float64
	for _, s := range part {
		n++
		dx, dy := s.TimeS-atS-mx, of(s)-my
		mx, my = mx+dx/n, my+dy/n
		cxx += dx * (s.TimeS - atS - mx)
		cxy += dx * (of(s) - my)
	}
	return my - cxy/cxx*mx, cxy / cxx
}
