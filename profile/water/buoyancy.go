package water

import "math"

// BuoyancyFrequencySquared returns the square of the buoyancy (Brunt-Vaisala)
// frequency in s^-2 between two levels of densities rhoUpper and rhoLower in kg/m3,
// the lower being dzM metres below the upper. It is negative where denser water
// lies on top. The densities and dzM must be above zero, else the answer is NaN.
//
// Both densities must be for one and the same pressure, as those of Density are: a
// density that contains the squeeze of its own depth would make even perfectly
// mixed water look stable, by 5e-5 s^-2.
//
// Source: the definition, N^2 = (g/rho) d(rho)/dz with z downwards, taken over one
// interval with the mean of the two densities.
func BuoyancyFrequencySquared(rhoUpper, rhoLower, dzM float64) float64 {
	if !(rhoUpper > 0 && rhoLower > 0 && dzM > 0) {
		return math.NaN()
	}
	return StandardGravity * (rhoLower - rhoUpper) / (0.5 * (rhoUpper + rhoLower) * dzM)
}
