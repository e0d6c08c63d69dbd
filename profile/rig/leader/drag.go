package leader

import "math"

// sphere returns the drag coefficient of a smooth ball, on its frontal area:
// force = coefficient * rho/2 * pi/4 * d^2 * v^2. The range is 0 < re < 2e5;
// above it the last plateau continues. 0 gives +Inf (the force is still zero);
// a negative or NaN argument gives NaN.
//
// Source: Brown & Lawler 2003 (Journal of Environmental Engineering 129:222),
// coefficients from memory. Other published correlations and tables agree within
// 5 % up to 5e4, and within 8 % above.
func sphere(re float64) float64 {
	if !(re > 0) {
		return atRest(re)
	}
	return 24/re*(1+0.150*math.Exp(0.681*math.Log(re))) + 0.407*re/(re+8710)
}

// cylinder returns the drag coefficient of a long smooth round line across the
// flow, on its side view: force per length = coefficient * rho/2 * d * v^2. For a
// slanted line v, and the speed in re, are the part of the flow across the line
// (the independence principle). The range is 0 < re < 2e5; above it the last
// plateau continues. 0 gives +Inf (the force is still zero); a negative or NaN
// argument gives NaN.
//
// From re = 1 it is Sucker & Brauer 1975 (Waerme- und Stoffuebertragung 8:149,
// coefficients from memory). That formula runs up to 15 % above the exact
// limit of slow flow, so that below re = 0.1 Kaplun's 1957 extension of Lamb's
// formula stands (from memory; it is Lamb's own as re goes to 0), and between the
// two one passes smoothly into the other, where they are 8 to 1 % apart.
func cylinder(re float64) float64 {
	if !(re > 0) {
		return atRest(re)
	}
	ln := math.Log(re)
	if re >= brauerFrom {
		return suckerBrauer(re, ln)
	}
	if re <= lambTo {
		return lambKaplun(re, ln)
	}
	share := (ln - lnLambTo) / -lnLambTo
	share *= share * (3 - 2*share)
	return share*suckerBrauer(re, ln) + (1-share)*lambKaplun(re, ln)
}

// The Reynolds numbers between which cylinder changes its formula.
const (
	lambTo     = 0.1
	brauerFrom = 1.0
	lnLambTo   = -2.302585092994046
)

func suckerBrauer(re, ln float64) float64 {
	return 1.18 + 6.8*math.Exp(-0.89*ln) + 1.96/math.Sqrt(re) - 0.0004*re/(1+3.64e-7*re*re)
}

// lambKaplun is 8 pi/re * (e - 0.87 e^3), e being Lamb's 1/(1/2 - gamma + ln(8/re)).
func lambKaplun(re, ln float64) float64 {
	const halfLessGammaPlusLn8 = 0.5 - 0.5772156649015329 + 2.0794415416798357
	e := 1 / (halfLessGammaPlusLn8 - ln)
	return 8 * math.Pi / re * e * (1 - 0.87*e*e)
}

// atRest is the coefficient for an argument that is not above zero.
func atRest(re float64) float64 {
	if re == 0 {
		return math.Inf(1)
	}
	return math.NaN()
}
