package sink

import (
	"math"
	"testing"

	"coldseam/profile/rig/drag"
	"coldseam/profile/water"
)

// What is left open widens the interval; the bounds are those of the rigs stated so.
func TestWaitEstimate(t *testing.T) {
	stated, depthM := usual(15, 0.25)
	open := func(density, dressing, line bool) Rig {
		r, _ := usual(15, 0.25)
		if density {
			r.Bodies[0].Density = 0
		}
		if dressing {
			r.Bodies[0].Dressing = 0
		}
		if line {
			r.Parts[2].Density = 0
		}
		return r
	}
	wait := func(change func(*Rig)) float64 {
		r, _ := usual(15, 0.25)
		change(&r)
		s, err := Wait(r, depthM, Held)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	e, err := WaitEstimate(stated, depthM, Held)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stated, low", e.Low, 0.9*e.Best, 1e-9)
	near(t, "stated, high", e.High, 1.1*e.Best, 1e-9)

	e, err = WaitEstimate(open(false, true, false), depthM, Held)
	if err != nil {
		t.Fatal(err)
	}
	slim, bushy := wait(func(r *Rig) { r.Bodies[0].Dressing = 1.5 }), wait(func(r *Rig) { r.Bodies[0].Dressing = 2.5 })
	near(t, "dressing open, low", e.Low, e.Best-math.Hypot(0.1*e.Best, e.Best-slim), 1e-9)
	near(t, "dressing open, high", e.High, e.Best+math.Hypot(0.1*e.Best, bushy-e.Best), 1e-9)

	e, err = WaitEstimate(open(false, false, true), depthM, Held)
	if err != nil {
		t.Fatal(err)
	}
	fluoro, nylon := wait(func(r *Rig) {}), wait(func(r *Rig) { r.Parts[2].Density = Nylon })
	if !(fluoro < e.Best && e.Best < nylon && e.Low < fluoro && e.High > nylon) {
		t.Errorf("material open: %v, fluorocarbon %g s, nylon %g s", e, fluoro, nylon)
	}

	last := 0.0
	for _, r := range []Rig{stated, open(true, false, false), open(true, true, false), open(true, true, true)} {
		e, err := WaitEstimate(r, depthM, Held)
		if err != nil {
			t.Fatal(err)
		}
		wide := (e.High - e.Low) / e.Best
		if !(e.Low > 0 && e.Low < e.Best && e.Best < e.High && wide > last) {
			t.Errorf("%v is no wider than with less left open", e)
		}
		last = wide
		t.Logf("%.1f s (%.1f to %.1f)", e.Best, e.Low, e.High)
	}
}

// The assumed dressing lets flies fall, off the leader, at about the foot a second of
// common practice.
func TestDressing(t *testing.T) {
	rho, nu := water.Density(15), water.KinematicViscosity(15)
	fall := func(kg, dressing float64) float64 {
		b := Body{KgDry: kg, Density: AnyFly}
		cube := dressing * dressing * dressing
		return drag.Terminal(b.ball()*dressing, rho+(AnyFly-rho)/cube, rho, nu)
	}
	for _, row := range []struct{ kg, dressing, speed float64 }{
		{1e-4, AnyDressing, 0.29}, {3e-4, AnyDressing, 0.36},
		{1e-4, bushyFly, 0.23}, {3e-4, slimFly, 0.48},
	} {
		near(t, "fall", fall(row.kg, row.dressing), row.speed, 0.03)
	}
}

func TestScale(t *testing.T) {
	for _, row := range []struct{ touched, model, want float64 }{
		{52, 40, 1.3}, {40, 50, 0.8}, {200, 40, 2}, {5, 40, 0.5}, {0, 40, 1}, {40, 0, 1},
		{math.NaN(), 40, 1}, {40, math.NaN(), 1}, {math.Inf(1), 40, 1}, {40, math.Inf(1), 1}, {-3, 5, 1},
	} {
		if got := Scale(row.touched, row.model); math.Abs(got-row.want) > 1e-12 {
			t.Errorf("touched at %g s, modelled %g s: %g, want %g", row.touched, row.model, got, row.want)
		}
	}
}
