package leader

import (
	"errors"
	"math"
	"testing"

	"coldseam/profile/water"
)

func TestAtRest(t *testing.T) {
	r := ruleLeader(fly(18.75*ft, 0.25e-3), fly(16*ft, 0.1e-3))
	s := mustTow(t, r, 0)
	near(t, "point", s.Point.DepthM, 18.75*ft, 1e-12)
	near(t, "dropper", s.Bodies[1].DepthM, 16*ft, 1e-12)
	near(t, "behind", s.Point.BehindM, 0, 1e-12)
	near(t, "angle", s.AngleDeg, 0, 1e-12)
	// All that hangs, weighed by hand: flies of 0.35 g at 4000, and line.
	rho := 999.10203
	taper := math.Pi / 12 * 12 * ft * inch * inch * (.02*.02 + .02*.008 + .008*.008) * (1140 - rho)
	even := math.Pi / 4 * inch * inch * (2*ft*.02*.02*(1140-rho) + 4.75*ft*.007*.007*(1780-rho))
	within(t, "tension", s.TensionN, 9.80665*(0.35e-3*(1-rho/4000)+taper+even), 1e-7)
}

// A part in two halves, a taper in two, and bodies in another order are the same rig.
func TestSameRig(t *testing.T) {
	r := ruleLeader(fly(18.75*ft, 0.25e-3), fly(16*ft, 0.1e-3), fly(10*ft, 0.05e-3))
	cut := r
	cut.Parts = []Part{
		{LengthM: 1.5 * ft, DiameterM: 0.020 * inch, DensityKgM3: 1140},
		{LengthM: 0.5 * ft, DiameterM: 0.020 * inch, DensityKgM3: 1140},
		{LengthM: 6 * ft, DiameterM: 0.020 * inch, EndDiameterM: 0.014 * inch, DensityKgM3: 1140},
		{LengthM: 6 * ft, DiameterM: 0.014 * inch, EndDiameterM: 0.008 * inch, DensityKgM3: 1140},
		r.Parts[2],
	}
	cut.Bodies = []Body{r.Bodies[2], r.Bodies[0], r.Bodies[1]}
	for _, speed := range []float64{0, 0.03, 0.3} {
		a, b := mustTow(t, r, speed), mustTow(t, cut, speed)
		within(t, "point", b.Point.DepthM, a.Point.DepthM, 2e-5)
		within(t, "dropper", b.Bodies[0].DepthM, a.Bodies[2].DepthM, 2e-5)
		within(t, "tension", b.TensionN, a.TensionN, 2e-5)
	}
}

func TestFloating(t *testing.T) {
	// At rest a braid of 970 kg/m3 that carries a sinking fly hangs as far as its
	// buoyancy goes, and the rest lies on the surface.
	r := Leader{
		Parts:  []Part{{LengthM: 20, DiameterM: 0.5e-3, DensityKgM3: 970}},
		Bodies: []Body{{AtM: 20, KgDry: 0.05e-3, DensityKgM3: 4000}},
		TempC:  15,
	}
	s := mustTow(t, r, 0)
	depth := 0.05e-3 * (1 - 999.10203/4000) / (math.Pi / 4 * 0.25e-6 * (999.10203 - 970))
	within(t, "hangs", s.Point.DepthM, depth, 1e-6)
	within(t, "afloat", s.AfloatM, 20-depth, 1e-6)
	within(t, "crawling", mustTow(t, r, 1e-6).Point.DepthM, depth, 1e-3)
	if moved := mustTow(t, r, 0.05); !(moved.Point.DepthM < depth && moved.Point.DepthM > 0 && moved.AngleDeg == 90 && moved.TensionN > 0) {
		t.Errorf("under way: %+v", moved)
	}
	// A fly that floats on a line that floats stays at the surface at any speed.
	r.Bodies[0].DensityKgM3 = 500
	for _, speed := range []float64{0, 1e-5, 0.1, 3} {
		if s := mustTow(t, r, speed); s.Point.DepthM != 0 || s.AfloatM != 20 || s.Point.BehindM != 20 {
			t.Errorf("at %g m/s: %+v", speed, s)
		}
	}
	// A fly that floats above a shot rises from it by the length between.
	r = Leader{
		Parts: []Part{{LengthM: 3, DiameterM: 0.2e-3, DensityKgM3: 1780}},
		Bodies: []Body{
			{AtM: 3, KgDry: 0.2e-3, DensityKgM3: 500}, {AtM: 2.5, KgDry: 1e-3, DensityKgM3: 11340},
		},
		TempC: 15,
	}
	s = mustTow(t, r, 0)
	near(t, "floating point", s.Point.DepthM, 2, 1e-9)
	near(t, "shot", s.Bodies[1].DepthM, 2.5, 1e-9)
	// Where nothing weighs anything, all lies behind.
	r.Bodies = nil
	r.Parts[0].DensityKgM3 = water.Density(15)
	for _, speed := range []float64{0, 0.2} {
		if s := mustTow(t, r, speed); s.Point.DepthM != 0 || math.Abs(s.Point.BehindM-3) > 1e-9 || s.AngleDeg != 90 {
			t.Errorf("no weight at %g m/s: %+v", speed, s)
		}
	}
}

// Common practice: on a leader a quarter longer than the water is deep, 15 ft, a fly of
// 0.25 g keeps between the bottom and 2 ft above it at about 1.8 to 2.3 in/s. The model
// was made without this figure and is asked only to come within a sixth of it.
func TestCommonPractice(t *testing.T) {
	w, err := ruleLeader(fly(18.75*ft, 0.25e-3)).TowWindow(13*ft, 15*ft)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%.2f to %.2f in/s", w.SlowestMps/inch, w.FastestMps/inch)
	within(t, "slowest", w.SlowestMps, 1.8*inch, 1.0/6)
	within(t, "fastest", w.FastestMps, 2.3*inch, 1.0/6)
}

func TestRefused(t *testing.T) {
	good := ruleLeader(fly(18.75*ft, 0.25e-3))
	for name, spoil := range map[string]func(*Leader){
		"no parts":      func(r *Leader) { r.Parts = nil },
		"too short":     func(r *Leader) { r.Parts, r.Bodies = r.Parts[:1], nil; r.Parts[0].LengthM = 0.04 },
		"too long":      func(r *Leader) { r.Parts[0].LengthM = 101 },
		"no length":     func(r *Leader) { r.Parts[1].LengthM = 0 },
		"length NaN":    func(r *Leader) { r.Parts[1].LengthM = math.NaN() },
		"no diameter":   func(r *Leader) { r.Parts[1].DiameterM = 0 },
		"diameter":      func(r *Leader) { r.Parts[1].EndDiameterM = -1e-4 },
		"density":       func(r *Leader) { r.Parts[1].DensityKgM3 = 1.14 },
		"beyond":        func(r *Leader) { r.Bodies[0].AtM = 6 },
		"above":         func(r *Leader) { r.Bodies[0].AtM = -1 },
		"mass":          func(r *Leader) { r.Bodies[0].KgDry = math.NaN() },
		"body density":  func(r *Leader) { r.Bodies[0].DensityKgM3 = 99 },
		"body dressing": func(r *Leader) { r.Bodies[0].Dressing = math.Inf(1) },
		"water":         func(r *Leader) { r.TempC = 59 },
	} {
		r := ruleLeader(fly(18.75*ft, 0.25e-3))
		spoil(&r)
		_, solve := r.Tow(0.05)
		_, speed := r.TowSpeed(3)
		_, window := r.TowWindow(3, 4)
		_, length := TowLength(func(float64) Leader { return r }, 0.05, 3, 1, 9)
		_, fly := r.FlyFor(3, 0.05)
		_, sinks := r.SinkTime(3, Held)
		for _, err := range []error{solve, speed, window, length, fly, sinks} {
			if !errors.Is(err, ErrRange) {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		_, solve := good.Tow(bad)
		_, speed := good.TowSpeed(bad)
		_, window := good.TowWindow(3, bad)
		_, byDepth := TowLength(longerTippet(good), 0.05, bad, 5, 9)
		_, bySpeed := TowLength(longerTippet(good), bad, 3, 5, 9)
		_, byLimit := TowLength(longerTippet(good), 0.05, 3, bad, 9)
		for i, err := range []error{solve, speed, window, byDepth, bySpeed, byLimit} {
			if !errors.Is(err, ErrRange) {
				t.Errorf("%g, question %d: %v", bad, i, err)
			}
		}
	}
	if s := mustTow(t, good, 1e300); !(s.Point.DepthM >= 0 && s.Point.DepthM < 0.1) {
		t.Errorf("very fast: %+v", s)
	}
}
