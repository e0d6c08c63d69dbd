package tilt

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile/expect"
	"coldseam/profile/water"
)

// basin is a line of testdata/basin.csv.
type basin struct {
	w                                     TwoLayers
	lengthM, windMps                      float64
	endM, periodS, quarter, eighth, rises float64
}

func basins(t *testing.T) (out []basin) {
	for _, row := range expect.Rows(t, "basin.csv") {
		v := make([]float64, len(row))
		for i, s := range row {
			v[i] = expect.Number(t, s)
		}
		out = append(out, basin{TwoLayers{v[0], v[1], water.Density(v[2]), water.Density(v[3])}, v[4], v[5], v[6], v[7], v[8], v[9], v[10]})
	}
	return out
}

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// Other formulations, by scipy (testdata/basin.py), agree: the balance without the linear
// step where the Wedderburn number is over 2, the equations of motion under a free
// surface, and their way to the steady state.
func TestBasin(t *testing.T) {
	for _, b := range basins(t) {
		stress := Stress(b.windMps, dragBest)
		if b.w.Wedderburn(b.w.EndM(stress, b.lengthM)) < 2 {
			t.Errorf("%+v is tilted too far for the comparison", b)
		}
		near(t, "end", b.w.EndM(stress, b.lengthM), b.endM, 0.025)
		near(t, "period", b.w.PeriodS(b.lengthM), b.periodS, 0.002)
		near(t, "a quarter", Share(b.periodS/4, b.periodS), b.quarter, 0.001)
		near(t, "an eighth", Share(b.periodS/8, b.periodS), b.eighth, 0.001)
		near(t, "cold water comes up", riseW, b.rises, 0.13) // "about 1"
	}
	expect.Remade(t, "basin.py", "basin.csv", []int{0, 1, 2, 3, 4, 5}, func(what string, got, want float64) { near(t, what, got, want, 1e-4) })
}

// The handbook's figures for 22 C over 9 C (angling-practice.md 1e) are those of thicknesses
// that it does not name; these are such: to its last digit.
func TestHandbookFigures(t *testing.T) {
	for _, c := range []struct {
		lengthM, upperM, lowerM, hours, at5, at10 float64
	}{
		{500, 4, 8, 1.2, 0.1, 0.5}, {1000, 5, 7, 2.3, 0.2, 0.8}, {3000, 7, 12, 5.6, 0.4, 1.7},
	} {
		w := TwoLayers{c.upperM, c.lowerM, water.Density(22), water.Density(9)}
		for _, got := range []struct{ is, want float64 }{
			{w.PeriodS(c.lengthM) / 3600, c.hours}, {w.EndM(Stress(5, dragBest), c.lengthM), c.at5}, {w.EndM(Stress(10, dragBest), c.lengthM), c.at10},
		} {
			if math.Round(got.is*10)/10 != got.want {
				t.Errorf("%v m long: %v, the handbook has %v", c.lengthM, got.is, got.want)
			}
		}
	}
}

// Periods that were measured in a lake of about 4 km over a season, 10 to 23 hours
// (angling-practice.md 1e, S11), are those of such a lake with layers as June, August and
// October have them; its depths are not told there, and these are invented.
func TestMeasuredPeriods(t *testing.T) {
	for _, c := range []struct{ upperM, lowerM, above, below float64 }{{3, 10, 17, 10}, {6, 7, 20, 10}, {10, 4, 13, 9}} {
		w := TwoLayers{c.upperM, c.lowerM, water.Density(c.above), water.Density(c.below)}
		if h := w.PeriodS(4000) / 3600; h < 9.5 || h > 23 {
			t.Errorf("%+v: %v hours", c, h)
		}
	}
}

// The formulas by hand: 10 m over 30 m, 2 kg/m3 in 1000, 1 km, 0.1 N/m2.
func TestByHand(t *testing.T) {
	w := TwoLayers{10, 30, 998, 1000}
	near(t, "end", w.EndM(0.1, 1000), 0.1*1000/(2*9.80665*2*10), 1e-12)
	near(t, "period", w.PeriodS(1000), 2*1000/math.Sqrt(9.80665*2/1000*7.5), 1e-12)
	near(t, "Wedderburn number", w.Wedderburn(w.EndM(0.1, 1000)), 9.80665*2*100/(0.1*1000), 1e-12)
	near(t, "stress", Stress(10, 1.3e-3), 0.156, 1e-12)
	deep := w
	deep.LowerM = math.Inf(1)
	near(t, "period over a deep layer", deep.PeriodS(1000), 2*1000/math.Sqrt(9.80665*2/1000*10), 1e-12)
}

// The swing past the steady state is twice it at half a period, never less than the share,
// and dies away.
func TestOvershoot(t *testing.T) {
	near(t, "half a period", overshoot(50, 100), 2, 1e-12)
	near(t, "two periods on", overshoot(250, 100), 1+math.Exp(-1), 1e-12)
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(100, 1e5).Draw(t, "period")
		at := rapid.Float64Range(0, 10).Draw(t, "periods") * p
		if o := overshoot(at, p); o < Share(at, p)-1e-12 || o > 2+1e-12 {
			t.Fatalf("%v", o)
		}
	})
}
