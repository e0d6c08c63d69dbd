package leader

import "math"

// friction returns the number n in: friction along a line per length =
// pi * n * rho * nu * v, v being the part of the flow along the line and re the
// Reynolds number of the part across it. A negative or NaN argument gives NaN.
//
// It rests on the independence principle (Sears 1948, Journal of the Aeronautical
// Sciences 15:49, from memory): along a slanted cylinder in smooth flow the speed
// obeys the very equation that heat obeys in a fluid of Prandtl number 1, so that
// n is the Nusselt number of the flow across. Its value is Kramers 1946 (Physica
// 12:61), 0.42 + 0.57 re^0.5 at that Prandtl number (from memory), made for 5 to
// 1000 and within 10 % of Churchill & Bernstein 1977 from 5 to 1e4. As re goes to
// 0 the 0.42 is what Glauert & Lighthill 1955 (Proceedings of the Royal Society A
// 230:188) give for a line towed along itself, some metres from its front end:
// 4/ln(4 nu x/(v a^2)), 0.4 to 0.6 for leaders. It was measured on no fishing
// line: a fifth either way is well possible.
func friction(re float64) float64 {
	if !(re >= 0) {
		return math.NaN()
	}
	return 0.42 + 0.57*math.Sqrt(re)
}
