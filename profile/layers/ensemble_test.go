package layers

import (
	"math"
	"slices"
	"testing"

	"coldseam/profile"
)

func TestQuantile(t *testing.T) {
	v := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9} // ten places for a further value
	for share, want := range map[float64]float64{0: 1, 0.1: 1, 0.25: 2.5, 0.5: 5, 0.9: 9, 1: 9} {
		near(t, "quantile", quantile(v, share), want, 1e-12)
	}
	near(t, "quantile of one", quantile([]float64{3}, 0.1), 3, 0)
}

// The same readings give the same columns, other readings others.
func TestEnsembleIsRepeatable(t *testing.T) {
	z := []float64{0, 3, 6, 9}
	a := Find(metres(t, z, []float64{22, 21, 11, 8})).Ensemble
	b := Find(metres(t, z, []float64{22, 21, 11, 8})).Ensemble
	c := Find(metres(t, z, []float64{22, 21, 11.1, 8})).Ensemble
	for m := range a.Temps {
		if !slices.Equal(a.Temps[m], b.Temps[m]) {
			t.Fatalf("member %d: %v, then %v", m, a.Temps[m], b.Temps[m])
		}
	}
	if math.Abs(a.Temps[0][0]-c.Temps[0][0]) < 1e-6 { // the surface was read alike: only what is drawn differs
		t.Error("other readings draw the same errors")
	}
}

// The members are spread about a reading by its error.
func TestEnsembleHoldsTheReadings(t *testing.T) {
	k := Find(metres(t, []float64{0, 3, 6, 9}, []float64{25, 20, 10, 5})).Curve
	temps := k.ensemble.At(3, nil)
	mean, square := 0.0, 0.0
	for _, v := range temps {
		mean += v / float64(len(temps))
	}
	for _, v := range temps {
		square += (v - mean) * (v - mean) / float64(len(temps))
	}
	near(t, "mean at a reading", mean, 20, 4*0.25/math.Sqrt(float64(len(temps))))
	near(t, "standard deviation at a reading", math.Sqrt(square), 0.25, 0.06)
}

// Close readings in steps of 0.5 m from 0.25 m on, that put a break in the middle of its
// steepest step: 3.25 to 3.75 m.
func TestCloseReadings(t *testing.T) {
	f := newGradients([]float64{0, 3, 4, 9}, []float64{20, 20, 10, 10})
	h := perturbation{step: 0.5, phase: 0.5, place: 0.5}
	got, ok := h.thermocline(f, f.cumulativeRise(nil), 0)
	if !ok {
		t.Fatal("nothing found")
	}
	near(t, "break", got, 3.5, 1e-9)
	if _, ok := h.thermocline(f, f.cumulativeRise(nil), 5); ok {
		t.Error("a break found in even water")
	}
}

// Where a temperature is reached by no member the answer is the end of the column on
// that side.
func TestCrossingBeyondTheColumn(t *testing.T) {
	p := Find(metres(t, []float64{0, 2, 4, 6}, []float64{20, 19, 15, 10})).Ensemble
	ice := Find(metres(t, []float64{0, 2, 4, 6}, []float64{0.5, 2, 3, 3.9})).Ensemble
	near(t, "colder than all", p.Crossing(0, 4, 3), 6, 1e-12)
	near(t, "warmer than all", p.Crossing(0, 30, 3), 0, 1e-12)
	near(t, "under ice, warmer than all", ice.Crossing(0, 5, 3), 6, 1e-12)
	near(t, "under ice, colder than all", ice.Crossing(0, -2, 3), 0, 1e-12)
}

// The interval of a temperature's depth is about the error over the slope where the
// readings are close: 0.25 C in 2 C/m, +-0.16 m.
func TestDoubtOfCloseReadings(t *testing.T) {
	var z, temps []float64
	for i := range 21 {
		d := float64(i) * 0.5
		z, temps = append(z, d), append(temps, 22-2*math.Min(math.Max(d-3, 0), 5))
	}
	k := Find(metres(t, z, temps)).Curve
	at, ok := k.Crossing(17.5, 0, 10)
	if !ok {
		t.Fatal("17.5 C not found")
	}
	e := k.CrossingInterval(at, 17.5)
	near(t, "half of the interval", (e.High-e.Low)/2, 1.28*0.25/2/math.Sqrt2*1.15, 0.06) // between two readings, half of each
	if k := Find(metres(t, z, temps), WithoutIntervals).Curve; k.CrossingInterval(3, 10) != profile.Exactly(3) {
		t.Error("best answers without doubt have an interval")
	}
}
