package leader

import (
	"math"
	"testing"

	"coldseam/profile/water"
)

// balance is the Reynolds number at which a drag, as a share of a weight, is 1, sought
// in logarithms.
func balance(t *testing.T, share func(re float64) float64) float64 {
	t.Helper()
	over := func(ln float64) (float64, error) { return math.Log(share(math.Exp(ln))), nil }
	low, high := -25.0, 18.0
	below, _ := over(low)
	above, _ := over(high)
	ln, err := root(over, low, high, below, above, 1e-13, 0)
	if err != nil || !(below < 0 && above > 0) {
		t.Fatal(below, above, err)
	}
	return math.Exp(ln)
}

// terminal is the steady speed in m/s at which a ball of a weight in the fluid falls, its
// drag being that of ballDrag; what floats rises.
func terminal(t *testing.T, diameterM, weightN float64, f fluid) float64 {
	t.Helper()
	toMps := f.nu / diameterM
	re := balance(t, func(re float64) float64 { return f.ballDrag(diameterM, re*toMps) / math.Abs(weightN) })
	return math.Copysign(re*toMps, weightN)
}

// solid is that of a solid ball of a density.
func solid(t *testing.T, diameterM, density float64, f fluid) float64 {
	t.Helper()
	return terminal(t, diameterM, f.weight(density*math.Pi/6*diameterM*diameterM*diameterM, density), f)
}

// perry is the drag law of Cutlip & Shacham's problem (from Perry's book for chemical engineers).
func perry(re float64) float64 {
	switch {
	case re < 0.1:
		return 24 / re
	case re < 1000:
		return 24 / re * (1 + 0.14*math.Pow(re, 0.7))
	case re < 3.5e5:
		return 0.44
	}
	return 0.19 - 8e4/re
}

// Cutlip & Shacham 1997, "ten problems" no. 5 (ASEE summer school): coal of 0.208 mm
// in water, with gravity of 1 and of 30 g.
func TestTerminalCutlip(t *testing.T) {
	const d, rho, mu, coal = 0.208e-3, 994.6, 8.931e-4, 1800.0
	byPerry := func(gravity float64) float64 {
		const nu = mu / rho
		return nu / d * balance(t, func(re float64) float64 {
			return perry(re) * re * re / (4.0 / 3 * gravity * (coal/rho - 1) * d * d * d / (nu * nu))
		})
	}
	within(t, "with Perry's law", byPerry(9.80665), 0.01578161840, 1e-8)
	within(t, "with Perry's law at 30 g", byPerry(30*9.80665), 0.20602148, 1e-7)
	within(t, "with Brown & Lawler's", solid(t, d, coal, fluid{rho, mu / rho}), 0.0157816, 0.025)
}

// Rushton, Ward & Holdich 1996: settling of fine sand, by Oseen's law.
func TestTerminalFine(t *testing.T) {
	within(t, "70 um", solid(t, 70e-6, 2600, fluid{1000, 1e-6}), 0.00406, 0.025)
	within(t, "50 um", solid(t, 50e-6, 2800, fluid{1000, 1e-6}), 0.002453, 0.04)
	within(t, "Stokes", solid(t, 70e-6, 2600, fluid{1000, 1e-4}), 4.27134e-5, 0.001)
	// GPSA engineering data book, example 7-1: drops of 150 um in gas.
	const lbFt3 = 16.018463
	within(t, "GPSA", solid(t, 150e-6, 31.2*lbFt3, fluid{2.07 * lbFt3, 1.2e-5 / (2.07 * lbFt3)}), 0.46*0.3048, 0.03)
}

// Beads at 15 C, worked out in Python with Brown & Lawler's law.
func TestTerminalBeads(t *testing.T) {
	densities := []float64{17500, 19250, 11340, 8500, 7850, 7290}
	for _, row := range []struct {
		mm   float64
		want [6]float64
	}{
		{2.0, [6]float64{1.0231, 1.0801, .7925, .6625, .6295, .5999}},
		{2.4, [6]float64{1.1405, 1.2022, .8899, .7478, .7115, .6789}},
		{2.8, [6]float64{1.2422, 1.3078, .9751, .8228, .7839, .7488}},
		{3.3, [6]float64{1.3526, 1.4225, 1.0678, .9050, .8632, .8255}},
		{3.8, [6]float64{1.4493, 1.5230, 1.1490, .9769, .9328, .8930}},
		{4.6, [6]float64{1.5839, 1.6630, 1.2612, 1.0764, 1.0289, .9861}},
	} {
		for i, density := range densities {
			within(t, "bead", solid(t, row.mm/1000, density, fluidAt(15)), row.want[i], 1.2e-4)
		}
	}
}

func TestTerminalLimits(t *testing.T) {
	f := fluid{1000, 1e-6}
	within(t, "a light ball rises as fast as a heavy one sinks", solid(t, 0.01, 800, f), -solid(t, 0.01, 1200, f), 1e-12)
	if w := f.weight(0.01, 1000); w != 0 {
		t.Errorf("neutral: %g N", w)
	}
	// Drag and weight balance over every size.
	for d := 1e-7; d < 1; d *= 3 {
		v := solid(t, d, 2500, f)
		within(t, "balance", sphere(v*d/1e-6)*v*v, 4.0/3*water.StandardGravity*d*1.5, 1e-9)
	}
}

// Weights in water, worked out elsewhere: of solid spheres of tungsten in grams in water of
// 15 C (999.1020 kg/m3 by IAPWS SR6-08(2011)) to four digits, of two in newtons in water of
// 999.103 kg/m3, of a fly and of cork by hand.
func TestWeightInWater(t *testing.T) {
	sphereKg := func(mm, density float64) float64 { return density * math.Pi / 6 * mm * mm * mm * 1e-9 }
	for _, c := range []struct{ mm, g float64 }{
		{2.0, .0691}, {2.4, .1194}, {2.8, .1897}, {3.3, .3105}, {3.8, .4741}, {4.6, .8410},
	} {
		near(t, "tungsten", fluid{rho: 999.1020}.weight(sphereKg(c.mm, 17500), 17500)/9.80665*1000, c.g, 0.00005)
	}
	for _, c := range []struct{ mm, density, n float64 }{{3.3, 17500, 3.04486941e-3}, {2.4, 8500, 5.32434545e-4}} {
		within(t, "bead", fluid{rho: 999.103}.weight(sphereKg(c.mm, c.density), c.density), c.n, 1e-8)
	}
	w := fluid{rho: 1000}
	near(t, "a quarter gram of 4000", w.weight(0.00025, 4000), 0.00025*9.80665*0.75, 1e-15)
	near(t, "density not known", w.weight(0.00025, Body{}.density()), 0.00025*9.80665*0.75, 1e-15)
	near(t, "cork", w.weight(0.001, 250), -0.003*9.80665, 1e-15)
	near(t, "nothing", w.weight(0, 4000), 0, 0)
}

// A level line of 1.1 mm sinks at 1.5, 3, 4.5 and 6 in/s with 1150, 1522, 2098 and 2866
// kg/m3 of density at 15 C (Sucker and Brauer 1975's drag, worked out apart).
func TestLineDensity(t *testing.T) {
	for inches, want := range map[float64]float64{1.5: 1150, 3: 1522, 4.5: 2098, 6: 2866} {
		within(t, "density", LineDensity(15, 0.0011, inches*inch), want, 0.002)
	}
}

func BenchmarkBallDrag(b *testing.B) {
	f := fluidAt(15)
	for range b.N {
		kept += f.ballDrag(0.0033, 0.05)
	}
}
