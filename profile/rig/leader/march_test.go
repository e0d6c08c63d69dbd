package leader

import (
	"math"
	"testing"
)

// constants is an even line with given forces and a body at its lower end.
type constants struct{ W, D, w, R, F, L float64 }

// solve gives the angle in degrees and the rest of what holds at the tip.
func (c constants) solve(t *testing.T, tol float64) (m march, angle float64) {
	t.Helper()
	l := line{
		pieces: []piece{{length: c.L, w: c.w, fixed: true, r: c.R, f: c.F}},
		loads:  []load{{w: c.W, d: c.D}, {}},
		x:      make([]float64, 2), h: make([]float64, 2), total: c.L,
	}
	m, ok := l.solve(tol)
	if !ok {
		t.Fatalf("%+v: too many steps", c)
	}
	return m, math.Atan2(m.h, m.v) * 180 / math.Pi
}

const fine = 1e-9 // tolerance of a step, for the core by itself

// Where line has neither weight nor friction, the tension is the same all along and
// the shape is exact: tan a = D/W + R s/T, and depth and distance behind by asinh and
// secant.
func TestWeightless(t *testing.T) {
	for _, c := range []constants{
		{1, 0, 0, 1, 0, 1}, {1, 0, 0, 1, 0, 3}, {.010, 0, 0, .001, 0, 6},
		{.0025, .0005, 0, .0008, 0, 5}, {2, 5, 0, 0.1, 0, 60}, {.001, .00001, 0, .02, 0, 10},
	} {
		m, angle := c.solve(t, fine)
		tension := math.Hypot(c.W, c.D)
		from := c.D / c.W
		to := from + c.R*c.L/tension
		scale := tension / c.R
		within(t, "angle", angle, math.Atan(to)*180/math.Pi, 1e-6)
		within(t, "depth", m.z, scale*(math.Asinh(to)-math.Asinh(from)), 1e-6)
		within(t, "behind", m.x, scale*(math.Hypot(1, to)-math.Hypot(1, from)), 1e-6)
		within(t, "tension", math.Hypot(m.h, m.v), tension, 1e-6)
	}
}

// The published figures of the same case.
func TestWeightlessFigures(t *testing.T) {
	m, angle := constants{1, 0, 0, 1, 0, 1}.solve(t, fine)
	near(t, "1 m: angle", angle, 45, 1e-6)
	near(t, "1 m: depth", m.z, 0.881373587019543, 1e-6)
	near(t, "1 m: behind", m.x, 0.414213562373095, 1e-6)
	m, angle = constants{1, 0, 0, 1, 0, 3}.solve(t, fine)
	near(t, "3 m: angle", angle, 71.565051177, 1e-5)
	near(t, "3 m: depth", m.z, 1.818446459232067, 1e-6)
	near(t, "3 m: behind", m.x, 2.162277660168380, 1e-6)
	m, angle = constants{.010, 0, 0, .001, 0, 6}.solve(t, fine)
	near(t, "rig A: depth", m.z, 5.688248987322, 1e-6)
	near(t, "rig A: angle", angle, 30.963756532, 1e-5)
	near(t, "rig A: behind", m.x, 1.661903789691, 1e-6)
	m, angle = constants{.0025, .0005, 0, .0008, 0, 5}.solve(t, fine)
	near(t, "rig B: depth", m.z, 3.622091682431, 1e-6)
	near(t, "rig B: angle", angle, 60.519925295, 1e-5)
}

// A heavy line without any drag on it hangs in a catenary.
func TestCatenary(t *testing.T) {
	for _, c := range []constants{
		{1, 1, 1, 0, 0, 1}, {.02, .005, .001, 0, 0, 6}, {0, .01, .02, 0, 0, 3}, {.001, 1, .003, 0, 0, 40},
	} {
		m, _ := c.solve(t, fine)
		v := c.W + c.w*c.L
		within(t, "depth", m.z, (math.Hypot(v, c.D)-math.Hypot(c.W, c.D))/c.w, 1e-6)
		within(t, "behind", m.x, c.D/c.w*(math.Asinh(v/c.D)-math.Asinh(c.W/c.D)), 1e-6)
		within(t, "tension", math.Hypot(m.h, m.v), math.Hypot(v, c.D), 1e-6)
	}
	m, angle := constants{1, 1, 1, 0, 0, 1}.solve(t, fine)
	near(t, "tension", math.Hypot(m.h, m.v), 2.236067977, 1e-6)
	near(t, "angle", angle, 26.565051177, 1e-5)
	near(t, "depth", m.z, 0.821854415126695, 1e-6)
	near(t, "behind", m.x, 0.562261888159267, 1e-6)
	m, _ = constants{.02, .005, .001, 0, 0, 6}.solve(t, fine)
	near(t, "depth", m.z, 5.860876461659, 1e-6)
	near(t, "behind", m.x, 1.281065862449, 1e-6)
}

// With nothing at its end a line is straight, at the angle where its weight and the
// drag across it balance (Pode 1951): R sin^2 phi = w cos phi, phi from the stream.
func TestCriticalAngle(t *testing.T) {
	for _, row := range []struct{ ratio, degrees, share float64 }{
		{.1, 5.682713, .995085}, {.25, 13.654585, .971737}, {.5, 24.469801, .910180},
		{1, 38.172708, .786151}, {2, 51.331718, .624811}, {5, 64.821608, .425438},
		{10, 72.035764, .308423},
	} {
		m, angle := constants{0, 0, 1, row.ratio, .02, 7}.solve(t, fine)
		near(t, "angle", angle, row.degrees, 1e-6)
		near(t, "depth", m.z/7, row.share, 1e-6)
		// A line with next to nothing at its end comes to the same.
		m, angle = constants{1e-6, 0, 1, row.ratio, .02, 7}.solve(t, fine)
		near(t, "angle with a speck", angle, row.degrees, 1e-5)
		near(t, "depth with a speck", m.z/7, row.share, 2e-6)
	}
}

// Line with everything, integrated by scipy 1.10.1 (DOP853, 1e-12) from the equations of
// Pode 1951.
func TestGeneral(t *testing.T) {
	for _, row := range []struct {
		constants
		tension, angle, behind, depth float64
	}{
		{constants{1, 0, .5, 1, 0, 2}, 1.8504048795, 43.3120229498, .9691040551, 1.7008097591},
		{constants{1, .2, .5, 1, .05, 2}, 1.8647514421, 45.1674953492, 1.1247604803, 1.6229265248},
		{constants{1, 0, .2, .5, .02, 5}, 1.8358262019, 48.8240481431, 2.7678797097, 4.0060861096},
		{constants{.1, 0, 1, 1, .02, 5}, 4.1092657835, 38.1564004301, 3.0220602822, 3.9724571630},
		{constants{2, .5, .1, .3, .01, 10}, 2.8997976214, 47.4107772356, 5.7262058471, 8.0359110116},
	} {
		m, angle := row.solve(t, fine)
		near(t, "tension", math.Hypot(m.h, m.v), row.tension, 1e-6)
		near(t, "angle", angle, row.angle, 1e-5)
		near(t, "behind", m.x, row.behind, 1e-6)
		near(t, "depth", m.z, row.depth, 1e-6)
		m, _ = row.solve(t, tolerance)
		within(t, "depth at the working tolerance", m.z, row.depth, 2e-4)
	}
}

// Beads on even tippet, worked out by scipy (DOP853) with the constants given: a bead of
// tungsten of 3.3 mm on 6 m of 0.2032 mm fluorocarbon, one of brass of 2.4 mm on 5 m of
// 0.1524 mm nylon.
func TestBeads(t *testing.T) {
	for _, row := range []struct {
		name string
		constants
		depth float64
	}{
		{"C", constants{3.04486941e-3, 1.92269564e-5, 2.48342883e-4, 2.63923048e-3, 1.59449752e-4, 6}, 3.24374417},
		{"D", constants{3.04486941e-3, 1.20168478e-4, 2.48342883e-4, 1.20541777e-2, 5.97936570e-4, 6}, 1.39193119},
		{"E", constants{5.32434545e-4, 1.12995887e-5, 2.52047409e-5, 2.20781781e-3, 1.19587314e-4, 5}, 1.12392025},
	} {
		m, _ := row.solve(t, fine)
		within(t, "rig "+row.name, m.z, row.depth, 1e-6)
		m, angle := row.solve(t, tolerance)
		within(t, "rig "+row.name+" at the working tolerance", m.z, row.depth, 1e-3)
		if row.name == "C" {
			within(t, "behind", m.x, 4.73196098, 1e-3)
			near(t, "angle", angle, 69.868, 0.02)
			within(t, "tension", math.Hypot(m.h, m.v), 0.0044898, 1e-3)
		}
	}
}
