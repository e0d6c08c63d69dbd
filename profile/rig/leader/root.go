package leader

import "math"

// root is the place between a and b where f, of opposite signs there, is zero, to
// within tol of the place or exact of the value. It is Chandrupatla's 1997 method
// (Advances in Engineering Software 28:145): a parabola through three points where
// that is safe, halving where it is not.
func root(f func(float64) (float64, error), a, b, fa, fb, tol, exact float64) (float64, error) {
	c, fc, share := a, fa, 0.5
	for range 100 {
		at := a + share*(b-a)
		ft, err := f(at)
		if err != nil {
			return 0, err
		}
		if (ft > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			c, b, fc, fb = b, a, fb, fa
		}
		a, fa = at, ft
		best, value := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			best, value = b, fb
		}
		least := (2e-16*math.Abs(best) + tol/2) / math.Abs(b-a)
		if least > 0.5 || math.Abs(value) <= exact {
			return best, nil
		}
		share = 0.5
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			share = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		share = math.Min(math.Max(share, least), 1-least)
	}
	return a, nil
}
