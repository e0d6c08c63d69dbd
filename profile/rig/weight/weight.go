// Package weight works out what a fly or a shot weighs, and how dense it is, from
// what an angler knows of it: a mass off the scales ("0.25 g"), the bead that it is
// tied on ("3.3 mm tungsten #12"), or the name of a shot ("BB shot").
//
// It does not know how a fly sinks: dressing and hackle slow one far below a bare
// bead of its weight, which is the business of package leader.
package weight

import (
	"fmt"
	"math"
	"strconv"

	"coldseam/profile/rig/leader"
)

// Weight is a fly or a shot.
type Weight struct {
	Kg      float64 // mass when dry
	Density float64 // kg/m3 of hook, bead and dressing together; AnyFly where it is not known
	Text    string  // what it was read as, "3.3 mm tungsten bead, hook 12"
}

// KnownDensity is the density, or 0 where it is not known.
func (w Weight) KnownDensity() float64 {
	if w.Density == AnyFly {
		return 0
	}
	return w.Density
}

const (
	// AnyFly is the density in kg/m3 of hook, bead and dressing together that is
	// assumed of a fly of which only the mass is known.
	AnyFly = leader.AnyFlyKgM3
	// MostKg is the heaviest that is taken for a fly or a shot.
	MostKg = 0.05
)

// The smallest and largest beads that are taken for beads: they are sold from about
// 1.5 to 6.5 mm (common practice).
const (
	leastBeadM = 0.001
	mostBeadM  = 0.010
)

// bored is the share of a solid sphere that the hole and the slot or countersink of
// a bead take away: assumed from common practice. A 3.3 mm bead with a straight hole
// of 1 mm lacks 13 %, of which the hook's wire fills a part again.
const bored = 0.10

// sphereM3 is the volume of a solid sphere, pi/6 d^3.
func sphereM3(diameterM float64) float64 {
	return math.Pi / 6 * diameterM * diameterM * diameterM
}

// Bead is a bead by itself, of a diameter between 1 and 10 mm and a metal that
// MetalDensity knows: a solid sphere less a tenth for its hole and slot. OnHook
// makes a fly of it.
func Bead(diameterM float64, metal string) (Weight, error) {
	density, ok := MetalDensity(metal)
	if !ok {
		return Weight{}, fmt.Errorf("%q is not a bead's metal: write one of %s", metal, metalNames())
	}
	if !(diameterM >= leastBeadM && diameterM <= mostBeadM) {
		return Weight{}, errDiameter
	}
	mm := strconv.FormatFloat(math.Round(diameterM*1e5)/100, 'f', -1, 64)
	return Weight{(1 - bored) * sphereM3(diameterM) * density, density, mm + " mm " + metal + " bead"}, nil
}
