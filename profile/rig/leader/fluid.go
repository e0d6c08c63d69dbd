package leader

import (
	"math"

	"coldseam/profile/water"
)

// fluid is water of one temperature.
type fluid struct {
	rho float64 // density, kg/m3
	nu  float64 // kinematic viscosity, m2/s
}

func fluidAt(tempC float64) fluid {
	return fluid{rho: water.Density(tempC), nu: water.KinematicViscosity(tempC)}
}

// weight is that in water, in N, of a dry mass: below zero for what floats.
func (f fluid) weight(kg, density float64) float64 {
	return kg * water.StandardGravity * (1 - f.rho/density)
}

// ballDrag is the drag of a ball in N.
func (f fluid) ballDrag(diameterM, mps float64) float64 {
	re := mps * diameterM / f.nu
	if !(re > 1e-12) {
		return 0
	}
	return sphere(re) * f.rho / 2 * math.Pi / 4 * diameterM * diameterM * mps * mps
}

// LineDensity gives the density in kg/m3 of a level line of a diameter in m that sinks
// broadside at a rate in m/s in water of tempC degrees Celsius: its weight in water is
// the drag across it.
func LineDensity(tempC, diameterM, mps float64) float64 {
	f := fluidAt(tempC)
	cd := cylinder(mps * diameterM / f.nu)
	return f.rho * (1 + 2*cd*mps*mps/(math.Pi*water.StandardGravity*diameterM))
}
