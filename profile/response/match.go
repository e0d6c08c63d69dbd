package response

import (
	"cmp"
	"math"
	"slices"
)

const (
	// minShared is how many bins of the cast down must be met by the cast up.
	minShared = 5
	// maxHoleM is the widest hole of the cast up that a line may span, m, where
	// bins are not wider still.
	maxHoleM = 1.0
	// sureTau is how many of its standard errors a time constant must be above
	// 0 to be believed.
	sureTau = 3.0
)

// matchTau finds the time constant (s) for which a cast down and a cast up
// through the same water agree, by least squares over the bins of the cast
// down, and the root mean square difference (C) that remains. A lag drags the
// casts to opposite sides; matching them is the published idea (Morison et al.
// 1994, J. Atmos. Oceanic Technol. 11, from memory; they match a different
// correction). As the correction is linear in tau, the optimum is closed form.
// Where the cast up has no bin, a line across at most 1 m stands in. ok is false
// for fewer than 5 shared bins, water of one temperature, or a best tau less than
// 3 standard errors above 0.
func matchTau(down, up []layer, binM float64) (tauS, rmsC float64, ok bool) {
	var n, tt, tr, rr float64
	for _, d := range down {
		u, shared := at(up, d.depthM, max(maxHoleM, 2*binM))
		if !shared {
			continue
		}
		t, r := d.tempC-u.tempC, d.rate-u.rate
		n, tt, tr, rr = n+1, tt+t*t, tr+t*r, rr+r*r
	}
	if n < minShared || rr == 0 {
		return 0, 0, false
	}
	tauS = -tr / rr
	left := max(tt+tauS*tr, 0)
	if !(tauS > 0 && tauS <= maxTauS) || tauS < sureTau*math.Sqrt(left/(n-1)/rr) {
		return 0, 0, false
	}
	return tauS, math.Sqrt(left / n), true
}

// at is the layer at depthM, along a line across a hole of at most holeM.
func at(layers []layer, depthM, holeM float64) (layer, bool) {
	i, found := slices.BinarySearchFunc(layers, depthM, func(l layer, z float64) int { return cmp.Compare(l.depthM, z) })
	if found {
		return layers[i], true
	}
	if i == 0 || i == len(layers) || layers[i].depthM-layers[i-1].depthM > holeM {
		return layer{}, false
	}
	a, b := layers[i-1], layers[i]
	part := (depthM - a.depthM) / (b.depthM - a.depthM)
	return layer{depthM: depthM, tempC: a.tempC + part*(b.tempC-a.tempC), rate: a.rate + part*(b.rate-a.rate)}, true
}
