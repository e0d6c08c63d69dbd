package profile

import (
	"math"
	"testing"

	"coldseam/profile/unit"
)

// A first-order thermometer lowered from 20 C into 10 C reads 10 + 10 e^(-t/tau): with
// a time constant of 20 s 13.679 C after 20 s, 10.498 after 60 and 10.025 after 120;
// with 60 s 13.679 C after 60 s and 10.067 after 300.
func TestLag(t *testing.T) {
	for _, c := range []struct{ waitS, tauS, readsC float64 }{
		{20, 20, 13.679}, {60, 20, 10.498}, {120, 20, 10.025}, {60, 60, 13.679}, {300, 60, 10.067},
	} {
		d := Drop{Wait: Some(c.waitS), TimeConst: Some(c.tauS), Precision: Some(0.0)}
		for i, temp := range []float64{20, c.readsC} {
			d.Readings = append(d.Readings, Reading{Depth: float64(i), Temp: temp, DepthUnit: unit.Metre, TempUnit: unit.Celsius})
		}
		d.Correct()
		if got, want := d.LagC(1), c.readsC-10; math.Abs(got-want) > 6e-4 {
			t.Errorf("after %g s of %g s: lag %.4f C, want %.4f", c.waitS, c.tauS, got, want)
		}
		if got := d.LagC(0); got != 0 {
			t.Errorf("the first reading lags by %v C", got)
		}
		if got := d.ErrorC(1); math.Abs(got-d.LagC(1)) > 1e-9 {
			t.Errorf("error of the second reading %v C, want its lag, %v", got, d.LagC(1))
		}
		d.TimeConst = Optional{}
		if got := d.LagC(1); got != 0 {
			t.Errorf("lag %v C with no time constant known", got)
		}
	}
	d := Drop{Wait: Some(0.0), TimeConst: Some(20.0), Readings: []Reading{{TempC: 20}, {TempC: 10, DepthM: 3}}}
	if got := d.LagC(1); got != 100 {
		t.Errorf("not left at all: lag %v C, want the most it is taken for", got)
	}
}

// The reading above counts, in whatever order they were written; one left out does
// not.
func TestLagFromAbove(t *testing.T) {
	d := Drop{Wait: Some(20.0), TimeConst: Some(20.0), Readings: []Reading{
		{DepthM: 9, TempC: 6}, {DepthM: 3, TempC: 20}, {DepthM: 6, TempC: 10}, {DepthM: 4, TempC: 99, Flag: "out of range"},
	}}
	share := math.Exp(-1) / (1 - math.Exp(-1))
	for i, step := range []float64{4, 0, 10} {
		if got, want := d.LagC(i), step*share; math.Abs(got-want) > 1e-9 {
			t.Errorf("at %v m: lag %v C, want %v", d.Readings[i].DepthM, got, want)
		}
	}
}
