package response

import (
	"math"
	"slices"
)

const (
	maxDepthM = 1000.0
	// smoothS is the width of the sliding line fit, s. Layers of water that are
	// passed in less are blurred.
	smoothS = 3.0
)

// castSample is one reading of a probe that moves without stopping. Those with
// depthM below 0 are in air and left out.
type castSample struct {
	timeS, depthM, tempC float64
}

// layer is the mean of a depth bin; k counts bins from the surface.
type layer struct {
	k      int
	depthM float64 // middle of the bin; mean depth of its readings where the bin beside it has none
	tempC  float64
	rate   float64 // of the temperature, C/s
	n      int     // readings
}

// corrected takes a first-order lag of time constant tauS out: T + tau dT/dt, the lag
// equation solved for the water.
func corrected(layers []layer, tauS float64) []layer {
	out := slices.Clone(layers)
	for i := range out {
		out[i].tempC += tauS * out[i].rate
	}
	return out
}

// bins are sums of readings by the place of their bin.
type bins map[int]layer

func (b bins) add(binM, depthM, tempC, rate float64) {
	k := int(depthM / binM)
	l := b[k]
	b[k] = layer{k, l.depthM + depthM, l.tempC + tempC, l.rate + rate, l.n + 1}
}

// means gives the means of the bins, shallow first.
func (b bins) means() []layer {
	out := make([]layer, 0, len(b))
	for _, l := range b {
		n := float64(l.n)
		out = append(out, layer{l.k, l.depthM / n, l.tempC / n, l.rate / n, l.n})
	}
	slices.SortFunc(out, func(a, b layer) int { return a.k - b.k })
	return out
}

// check refuses times that do not increase and values that cannot be.
func check(cast []castSample) error {
	for i, s := range cast {
		if math.Abs(s.timeS) > 1e12 || math.IsNaN(s.timeS) || !plausible(s.tempC) || !(math.Abs(s.depthM) <= maxDepthM) {
			return ErrSample
		}
		// Steps under a microsecond are no clock's and would blow up dT/dt.
		if i > 0 && !(s.timeS-cast[i-1].timeS >= 1e-6) {
			return ErrSample
		}
	}
	return nil
}

// smoothed gives the layers of the samples from up to before to; none for fewer than 3
// in water. T, dT/dt and the depth come from lines through the readings smoothS/2 to
// either side (at least two each side where there are): a bare difference would multiply
// the noise, and a depth not smoothed like T would set waves against it. Temperature is
// smoothed over what lies around the part too: a probe's temperature turns smoothly where
// its way does not, and a fit to one side only would take the lag there for more than it
// is.
func smoothed(cast []castSample, from, to int, binM float64) []layer {
	wet, first, end := inWater(cast, from, to)
	if end-first < 3 {
		return nil
	}
	sums := bins{}
	lo, hi := 0, 0
	for i, s := range wet {
		for s.timeS-wet[lo].timeS > smoothS/2 {
			lo++
		}
		for hi < len(wet) && wet[hi].timeS-s.timeS <= smoothS/2 {
			hi++
		}
		if i < first || i >= end {
			continue
		}
		low, high := min(lo, i-2), max(hi, i+3)
		temp, rate := lineAt(wet[max(low, 0):min(high, len(wet))], s.timeS, func(s castSample) float64 { return s.tempC })
		depth, _ := lineAt(wet[max(low, first):min(high, end)], s.timeS, func(s castSample) float64 { return s.depthM })
		sums.add(binM, max(depth, 0), temp, rate)
	}
	return centred(sums.means(), binM)
}

// inWater leaves out what was read in air; the part from up to before to is that from
// first up to before end in what is left.
func inWater(cast []castSample, from, to int) (wet []castSample, first, end int) {
	wet = make([]castSample, 0, len(cast))
	for i, s := range cast {
		if s.depthM < 0 {
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
	return wet, first, end
}

// centred moves the means of each bin, whose readings may lie to one side, to
// its middle, along the line to the bin next to it on that side if there is one.
func centred(in []layer, binM float64) []layer {
	out := slices.Clone(in)
	for i, l := range in {
		mid := (float64(l.k) + 0.5) * binM
		side := i + 1
		if l.depthM > mid {
			side = i - 1
		}
		if side < 0 || side >= len(in) || in[side].k-l.k != side-i {
			continue
		}
		next := in[side]
		part := (mid - l.depthM) / (next.depthM - l.depthM)
		if !(part >= 0 && part <= 1) { // both on the edge between them
			continue
		}
		out[i].depthM = mid
		out[i].tempC += part * (next.tempC - l.tempC)
		out[i].rate += part * (next.rate - l.rate)
	}
	return out
}

// lineAt fits a line to at least 3 readings and gives its value and slope at
// atS.
func lineAt(part []castSample, atS float64, of func(castSample) float64) (value, perS float64) {
	var n, mx, my, cxx, cxy float64
	for _, s := range part {
		n++
		dx, dy := s.timeS-atS-mx, of(s)-my
		mx, my = mx+dx/n, my+dy/n
		cxx += dx * (s.timeS - atS - mx)
		cxy += dx * (of(s) - my)
	}
	return my - cxy/cxx*mx, cxy / cxx
}
