// Package tilt says how far wind tilts the thermocline of a layered water, how long it
// takes to rock back, at which end cool or warm water is easier to reach, and when to read
// again.
//
// Wind drags the warm layer along, so the thermocline stands lower at the end that the wind
// blows to (downwind) and higher at the end that it comes from. When the wind drops it
// rocks back and past its level, for hours or days.
//
// # The balance
//
// Two layers, the upper of thickness h1 and density rho1, the lower of h2 and rho2, in a
// basin of length L along the wind, the lower one at rest under a steady wind (textbook
// balance, as in Spigel & Imberger 1980 and Fischer et al. 1979, from memory):
//
//	stress on the water       tau  = rho_air Cd U^2
//	displacement at each end  zeta = tau L / (2 g (rho2 - rho1) h1)
//	period of rocking         T    = 2 L / sqrt(g' h1 h2 / (h1 + h2)), g' = g (rho2 - rho1) / rho2
//	Wedderburn number         W    = g (rho2 - rho1) h1^2 / (tau L) = h1 / (2 zeta)
//
// The period is that of the first horizontal internal seiche (Merian's formula for two
// layers). Where W is about 1 or less cold water comes up at the upwind end: keeping the
// volume of the warm layer, the balance without the linear step has it there from
// W = 8/9 down (testdata/basin.py).
//
// A wind that begins suddenly drives the ends apart evenly, to zeta after a quarter of the
// period and, without friction, to 2 zeta after half of it; then they swing about zeta. The
// share of zeta is therefore 4 t/T up to 1, and the doubt above it dies out over
// some periods.
//
// # The range
//
// Each figure is a range that should hold it in most cases; nobody has measured how often.
// Its parts are independent factors whose spreads are added as squares of logarithms:
//
//   - Cd: 1.3e-3, from 1.0e-3 to 1.5e-3 (Fischer et al. 1979; Hicks 1972 has the two as
//     steps at 5 m/s; from memory). Those are of wind 10 m up, which is about 1.15 times
//     that at head height: so up to 2.0e-3.
//   - U: a quarter more or less, the width of a class of the Beaufort scale, in which words
//     such as breeze are.
//   - Shelter: behind trees 10 m high the wind needs some 50 of their heights to come down to
//     the water (Markfort et al. 2010, from memory). At the low end half of the stress
//     on the first 500 m is lost.
//   - h1, and the densities with it: the 80 % interval of the thermocline.
//   - h2: the lake is not a box. Two thirds of the greatest depth under the thermocline, the
//     mean of a section like a parabola, from half of it to all; without a limit
//     where the bottom is not known.
//
// # Limits
//
// Water away from the thermocline moves less than it, none at the bottom. It knows one
// basin, one thermocline, no bays and no turning of the earth, which bends the
// tilt sideways in lakes some kilometres wide. L is the length that the wind blows along:
// across the lake, less. The wind is steady, and it stirs nothing: a storm that deepens the
// warm layer needs a new drop.
package tilt
