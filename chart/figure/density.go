package figure

import "coldseam/profile/water"

// riseOfDensity is by how much fresh water of the lower temperature is denser than that
// of the upper, kg/m3.
func riseOfDensity(upperC, lowerC float64) float64 {
	return water.Density(lowerC) - water.Density(upperC)
}
