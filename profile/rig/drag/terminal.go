package drag

import (
	"math"

	"coldseam/profile/water"
)

// Terminal returns the steady speed in m/s at which a smooth solid ball of
// diameterM metres and density kg/m3 falls in still fluid of density rho kg/m3
// and kinematic viscosity nu m2/s, its drag being that of Sphere. A ball lighter
// than the fluid rises: the answer is negative. The diameter, the densities and
// the viscosity must be above zero and finite, else the answer is NaN.
//
// A bead alone falls much faster than a dressed fly on a line, so that this is
// an upper bound and no count for the angler.
func Terminal(diameterM, density, rho, nu float64) float64 {
	for _, v := range [...]float64{diameterM, density, rho, nu} {
		if !(v > 0) || math.IsInf(v, 0) {
			return math.NaN()
		}
	}
	return fall(diameterM, density/rho-1, nu, water.StandardGravity, Sphere)
}

// fall is the steady speed of a ball with a drag law of its own, excess being the
// density of the ball over that of the fluid, less one. The balance of weight and
// drag says that cd * re^2 = 4/3 g d^3 |excess| / nu^2; its root is sought in the
// logarithm of re, where the left side is nearly straight, by false position with
// the Illinois weights.
func fall(diameterM, excess, nu, gravity float64, cd func(float64) float64) float64 {
	if excess == 0 {
		return 0
	}
	want := math.Log(4.0/3*gravity*math.Abs(excess)) + 3*math.Log(diameterM) - 2*math.Log(nu)
	over := func(ln float64) float64 { return math.Log(cd(math.Exp(ln))) + 2*ln - want }
	// Between Stokes's drag, 24/re, and that plus 24, which no ball has, re is
	// easily solved for; the root lies between.
	lo, hi := want-math.Log(48), want-math.Log(24)+1e-9
	lo = math.Min(lo, lo/2)
	fLo, fHi := over(lo), over(hi)
	ln, kept := lo, 0 // kept: the end that the last step left standing
	for range 100 {
		ln = (lo*fHi - hi*fLo) / (fHi - fLo)
		f := over(ln)
		if math.Abs(f) < 1e-13*(1+math.Abs(want)) || hi-lo < 1e-14*(1+math.Abs(ln)) {
			break
		}
		if f < 0 {
			lo, fLo = ln, f
			if kept == 1 {
				fHi /= 2
			}
			kept = 1
		} else {
			hi, fHi = ln, f
			if kept == -1 {
				fLo /= 2
			}
			kept = -1
		}
	}
	return math.Copysign(math.Exp(ln)*nu/diameterM, excess)
}
