package oxygen

import "math"

// shares of the fall of temperature, from the mixed layer's to the coldest reading's,
// after which oxygen is looked for: for Low, Best and High.
var shares = [3]float64{0.15, 0.5, 0.9}

// chances are of the lakes that run short: in so many oxygen is gone above Low, Best and
// High.
var chances = [3]float64{0.1, 0.5, 0.9}

// needs are the needs in mg/L that the factors were fitted for.
var needs = [5]float64{3, 4, 5, 6, 7}

// ofFall is the depth at which oxygen falls under a need, as a part of the depth at which
// a share of the fall is done, and ofMud as a part of the depth at which it falls to 1
// mg/L. One line a need, one column a chance: quantiles over the fitted lakes, in which
// each lake counts once, rounded. TestFactors works them out again:
//
//	go test ./profile/oxygen -run TestFactors -v
var (
	ofFall = [5][3]float64{
		{0.92, 0.93, 1.20},
		{0.87, 0.91, 1.17},
		{0.80, 0.85, 1.07},
		{0.71, 0.79, 1.01},
		{0.55, 0.73, 0.93},
	}
	ofMud = [5][3]float64{
		{0.74, 0.88, 0.94},
		{0.64, 0.83, 0.91},
		{0.54, 0.77, 0.88},
		{0.44, 0.70, 0.85},
		{0.31, 0.63, 0.80},
	}
)

// factor reads a column of a table at a need, straight between its lines.
func factor(table [5][3]float64, needMgL float64, column int) float64 {
	at := math.Max(0, math.Min(needMgL-needs[0], float64(len(needs)-1)))
	i := min(int(at), len(needs)-2)
	share := at - float64(i)
	return table[i][column]*(1-share) + table[i+1][column]*share
}
