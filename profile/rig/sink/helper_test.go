package sink

import (
	"math"
	"testing"
)

const ft = 0.3048 // m, exact (international foot of 1959)

// near fails when got is further than the share tol from want, or not a number.
func near(tb testing.TB, what string, got, want, tol float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		tb.Errorf("%s: %.5g, want %.5g within %g %%", what, got, want, 100*tol)
	}
}

// built is a leader of a length with 2 ft of butt, nylon of 0.30 mm and an end.
func built(lengthM, endM, endDiameterM, endDensity float64) []Part {
	return []Part{
		{2 * ft, 0.51e-3, Nylon},
		{lengthM - 2*ft - endM, 0.30e-3, Nylon},
		{endM, endDiameterM, endDensity},
	}
}

// usual is a rig for water of a depth in feet, its leader a quarter longer, with a
// fly of some grams.
func usual(feet, grams float64) (r Rig, depthM float64) {
	l := 1.25 * feet * ft
	return Rig{
		Parts:  built(l, 1.2, 0.18e-3, Fluoro),
		Bodies: []Body{{AtM: l, KgDry: grams / 1000, Density: AnyFly, Dressing: AnyDressing}},
		TempC:  15,
	}, feet * ft
}

// asked is a rig of testdata/chain.py.
type asked struct {
	rig Rig
	tip Tip
}

// chainRigs are the rigs of testdata/chain.py.
func chainRigs() map[string]asked {
	one := func(parts []Part, tip Tip, bodies ...Body) asked {
		return asked{Rig{Parts: parts, Bodies: bodies, TempC: 15}, tip}
	}
	l6, l10, l15, l20, l30 := 7.5*ft, 3.81, 18.75*ft, 25*ft, 37.5*ft
	return map[string]asked{
		"6 ft, 0.05 g":  one([]Part{{l6, 0.18e-3, Fluoro}}, Held, Body{l6, 5e-5, 4000, 2}),
		"10 ft, 0.1 g":  one([]Part{{3, 0.30e-3, Nylon}, {0.81, 0.18e-3, Fluoro}}, Held, Body{l10, 1e-4, 4000, 2}),
		"15 ft, 0.25 g": one(built(l15, 1.5, 0.18e-3, Fluoro), Held, Body{l15, 2.5e-4, 4000, 2}),
		"20 ft, 0.05 g, nylon and two droppers": one(built(l20, 3, 0.20e-3, Nylon), Held,
			Body{l20 - 2, 3e-5, 3000, 2}, Body{l20 - 1, 3e-5, 3000, 2}, Body{l20, 5e-5, 4000, 2}),
		"15 ft, 0.25 g, tip slides": one(built(l15, 1.5, 0.18e-3, Fluoro), Slides, Body{l15, 2.5e-4, 4000, 2}),
		"30 ft, 1 g and a shot": one(built(l30, 5, 0.20e-3, Fluoro), Held,
			Body{l30 - 0.4, 4e-4, 7290, 1}, Body{l30, 1e-3, 4000, 2}),
	}
}
