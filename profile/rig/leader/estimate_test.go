package leader

import (
	"math"
	"testing"
)

// What is left open widens the interval; the bounds are those of the rigs stated so.
func TestWaitEstimate(t *testing.T) {
	stated, depthM := usual(15, 0.25)
	open := func(density, dressing, line bool) Leader {
		r, _ := usual(15, 0.25)
		if density {
			r.Bodies[0].DensityKgM3 = 0
		}
		if dressing {
			r.Bodies[0].Dressing = 0
		}
		if line {
			r.Parts[2].DensityKgM3 = 0
		}
		return r
	}
	wait := func(change func(*Leader)) float64 {
		r, _ := usual(15, 0.25)
		change(&r)
		return mustSink(t, r, depthM, Held)
	}
	e, err := stated.SinkTimeEstimate(depthM, Held)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "stated, low", e.Low, 0.9*e.Best, 1e-9)
	within(t, "stated, high", e.High, 1.1*e.Best, 1e-9)

	e, err = open(false, true, false).SinkTimeEstimate(depthM, Held)
	if err != nil {
		t.Fatal(err)
	}
	slim, bushy := wait(func(r *Leader) { r.Bodies[0].Dressing = 1.5 }), wait(func(r *Leader) { r.Bodies[0].Dressing = 2.5 })
	within(t, "dressing open, low", e.Low, e.Best-math.Hypot(0.1*e.Best, e.Best-slim), 1e-9)
	within(t, "dressing open, high", e.High, e.Best+math.Hypot(0.1*e.Best, bushy-e.Best), 1e-9)

	e, err = open(false, false, true).SinkTimeEstimate(depthM, Held)
	if err != nil {
		t.Fatal(err)
	}
	fluoro, nylon := wait(func(r *Leader) {}), wait(func(r *Leader) { r.Parts[2].DensityKgM3 = NylonKgM3 })
	if !(fluoro < e.Best && e.Best < nylon && e.Low < fluoro && e.High > nylon) {
		t.Errorf("material open: %v, fluorocarbon %g s, nylon %g s", e, fluoro, nylon)
	}

	last := 0.0
	for _, r := range []Leader{stated, open(true, false, false), open(true, true, false), open(true, true, true)} {
		e, err := r.SinkTimeEstimate(depthM, Held)
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
	f := fluidAt(15)
	fall := func(kg, dressing float64) float64 {
		b := Body{KgDry: kg, Dressing: dressing}
		return terminal(t, b.width(), f.weight(kg, b.density()), f)
	}
	for _, row := range []struct{ kg, dressing, speed float64 }{
		{1e-4, AnyDressing, 0.29}, {3e-4, AnyDressing, 0.36},
		{1e-4, bushyFly, 0.23}, {3e-4, slimFly, 0.48},
	} {
		within(t, "fall", fall(row.kg, row.dressing), row.speed, 0.03)
	}
}
