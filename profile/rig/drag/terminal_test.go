package drag

import (
	"math"
	"testing"

	"coldseam/profile/water"
)

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
	within(t, "with Perry's law", fall(d, coal/rho-1, mu/rho, 9.80665, perry), 0.01578161840, 1e-8)
	within(t, "with Perry's law at 30 g", fall(d, coal/rho-1, mu/rho, 30*9.80665, perry), 0.20602148, 1e-7)
	within(t, "with Sphere", Terminal(d, coal, rho, mu/rho), 0.0157816, 0.025)
}

// Rushton, Ward & Holdich 1996: settling of fine sand, by Oseen's law.
func TestTerminalFine(t *testing.T) {
	within(t, "70 um", Terminal(70e-6, 2600, 1000, 1e-6), 0.00406, 0.025)
	within(t, "50 um", Terminal(50e-6, 2800, 1000, 1e-6), 0.002453, 0.04)
	within(t, "Stokes", Terminal(70e-6, 2600, 1000, 1e-4), 4.27134e-5, 0.001)
	// GPSA engineering data book, example 7-1: drops of 150 um in gas.
	const lbFt3 = 16.018463
	within(t, "GPSA", Terminal(150e-6, 31.2*lbFt3, 2.07*lbFt3, 1.2e-5/(2.07*lbFt3)), 0.46*0.3048, 0.03)
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
			within(t, "bead", Terminal(row.mm/1000, density, water.Density(15), water.KinematicViscosity(15)), row.want[i], 1.2e-4)
		}
	}
}

func TestTerminalLimits(t *testing.T) {
	down, up := Terminal(0.01, 1200, 1000, 1e-6), Terminal(0.01, 800, 1000, 1e-6)
	within(t, "a light ball rises as fast as a heavy one sinks", up, -down, 1e-12)
	if v := Terminal(0.01, 1000, 1000, 1e-6); v != 0 {
		t.Errorf("neutral: %g", v)
	}
	for _, a := range [][4]float64{
		{0, 2000, 1000, 1e-6}, {-1, 2000, 1000, 1e-6}, {0.01, 0, 1000, 1e-6},
		{0.01, 2000, math.Inf(1), 1e-6}, {0.01, 2000, 1000, math.NaN()},
	} {
		if v := Terminal(a[0], a[1], a[2], a[3]); !math.IsNaN(v) {
			t.Errorf("%v: %g", a, v)
		}
	}
	// Drag and weight balance over every size.
	for d := 1e-7; d < 1; d *= 3 {
		v := Terminal(d, 2500, 1000, 1e-6)
		within(t, "balance", Sphere(v*d/1e-6)*v*v, 4.0/3*water.StandardGravity*d*1.5, 1e-9)
	}
}

func BenchmarkTerminal(b *testing.B) {
	for range b.N {
		sink += Terminal(0.0033, 17500, 999.1, 1.1386e-6)
	}
}
