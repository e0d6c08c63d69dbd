package notebook

import (
	"math"
	"testing"
)

// Oxygen in percent is of what water holds in the air there: of 100 % at 15 C 10.1 mg/L
// beside the sea, and 0.835 of that at 1500 m (Benson & Krause 1984 and the standard
// atmosphere, as tables for field crews give them).
func TestPercentAtAltitude(t *testing.T) {
	for altitude, want := range map[string]float64{"": 10.08, "altitude: 1500 m\n": 10.08 * 0.835} {
		sheets, err := Read([]byte("units: m C\noxygen: %\n"+altitude+"0 15 DO 100%\n3 15 DO 50%\n"), Options{Name: "page"})
		if err != nil {
			t.Fatal(err)
		}
		for i, share := range []float64{1, 0.5} {
			got := sheets[0].Drop.Readings[i].Oxygen
			if !got.Known || math.Abs(got.Value-share*want) > 0.005*want {
				t.Errorf("%q: %v mg/L, want %.2f", altitude, got, share*want)
			}
		}
	}
}
