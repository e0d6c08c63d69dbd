package rig

import (
	"slices"

	"coldseam/profile"
	"coldseam/profile/expect"
)

var near = expect.Near

const (
	ft  = 0.3048  // m, exact (international foot of 1959)
	mph = 0.44704 // m/s, exact
)

// over is a rig's input for water of a depth in feet with the fly a foot above the
// bottom, nothing known of the wind, and everything else as it comes.
func over(waterFt float64) Input {
	return Input{
		WaterM: waterFt * ft, FlyM: (waterFt - 1) * ft, StepM: StepFtM, Tackle: DefaultTackle(),
	}
}

func wind(v float64) profile.Optional { return profile.Some(v * mph) }

func says(r Rig, why Reason) bool { return slices.Contains(r.Why, why) }
