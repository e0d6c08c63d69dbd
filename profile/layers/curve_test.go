package layers

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/water"
)

// Two invented columns and a classic one; see pchip.py for others.
var (
	depthsA = []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}
	tempsA  = []float64{21.6, 21.5, 21.5, 21.3, 20.9, 18.2, 14.6, 11.8, 10.1, 9.2, 8.7, 8.4, 8.2}
	depthsB = []float64{0, 1, 2, 4, 5, 6, 7, 8, 10, 13, 17}
	tempsB  = []float64{20.4, 20.4, 20.3, 20.1, 18.9, 15.2, 12.4, 10.9, 9.0, 7.6, 6.9}
	// RPN-15A, the data of Fritsch & Carlson 1980 (from memory). As temperatures in
	// Celsius they are stable water under 4 C.
	depthsRPN = []float64{7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20}
	tempsRPN  = []float64{0, 2.76429e-5, 4.37498e-2, .169183, .469428, .943740, .998636, .999919, .999994}
)

// The curve against scipy 1.10.1 PchipInterpolator: each value to its printed digits.
func TestCurveValues(t *testing.T) {
	for _, c := range []struct {
		name          string
		depths, temps []float64
		at, want      []float64
		tol           float64
	}{
		{"A, halves", depthsA, tempsA, []float64{.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 9.5, 10.5, 11.5},
			[]float64{21.53125, 21.5, 21.433333333, 21.153763441, 19.848617512, 16.408035714, 13.070694444, 10.832670940, 9.583241758, 8.916517857, 8.533125, 8.28875}, 5.1e-10},
		{"A, quarters", depthsA, tempsA, []float64{.25, 1.25, 2.25, 3.25, 4.25, 5.25, 6.25, 7.25, 8.25, 9.25, 10.25, 11.25},
			[]float64{21.56328125, 21.5, 21.48125, 21.23266129, 20.524783986, 17.351227679, 13.818697917, 11.292043269, 9.824004121, 9.049051339, 8.611640625, 8.34203125}, 5.1e-9},
		{"B, uneven", depthsB, tempsB, []float64{.5, 1.5, 3, 4.5, 5.5, 6.5, 7.5, 9, 11.5, 15},
			[]float64{20.4, 20.3625, 20.225943396, 19.701058914, 17.221930926, 13.645724508, 11.55494186, 9.811856546, 8.157397832, 7.124078171}, 5.1e-9},
		{"RPN-15A", depthsRPN, tempsRPN, []float64{8.0, 8.14, 8.5, 9, 9.5, 11, 13.5, 18},
			[]float64{2.76743e-7, .017697167376, .116632576939, .337534326846, .685217945111, .986043362535, .999603364012, .999982683848}, 5.1e-13},
	} {
		k := cubicOnly(metres(t, c.depths, c.temps))
		for i, z := range c.at {
			near(t, fmt.Sprintf("%s at %g m", c.name, z), k.At(z), c.want[i], c.tol)
		}
		for i, z := range c.depths {
			near(t, fmt.Sprintf("%s at its reading %g m", c.name, z), k.At(z), c.temps[i], 1e-12)
		}
	}
}

// Slopes, C per metre, from scipy 1.10.1 PchipInterpolator.derivative.
func TestCurveSlopes(t *testing.T) {
	for _, c := range []struct {
		name          string
		depths, temps []float64
		at, want      []float64
		tol           float64
	}{
		{"A, halves", depthsA, tempsA, []float64{.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 9.5, 10.5, 11.5},
			[]float64{-.1125, 0, -.233333333, -.359139785, -3.10437788, -3.841071429, -2.883611111, -1.726880342, -.895054945, -.495535714, -.29625, -.2025}, 5.1e-9},
		{"A, readings", depthsA, tempsA, depthsA[:12],
			[]float64{-.15, 0, 0, -.266666667, -.696774194, -3.085714286, -3.15, -2.115555556, -1.176923077, -.642857143, -.375, -.24}, 5.1e-10},
		{"B, readings", depthsB, tempsB, depthsB[:10],
			[]float64{0, 0, -.1, -.203773585, -1.812244898, -3.187692308, -1.953488372, -1.193023256, -.640449438, -.260176991}, 5.1e-10},
		{"A, zone of 1 C/m", depthsA, tempsA, []float64{4.04312, 8.30761}, []float64{-1, -1}, 1e-4}, // 5e-6 m at up to 14 C/m2
	} {
		k := cubicOnly(metres(t, c.depths, c.temps))
		for i, z := range c.at {
			near(t, fmt.Sprintf("%s at %g m", c.name, z), k.cubic.PredictDerivative(z), c.want[i], c.tol)
		}
	}
}

// The steepest place of the curve, from scipy 1.10.1 PchipInterpolator.
func TestCurveSteepest(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name              string
		depths, temps     []float64
		at, slope, zTol   float64
		tempC, slopeTolCM float64
	}{
		{"A", depthsA, tempsA, 5.51111, -3.84142857, 2e-5, 16.36536, 5.1e-9},
		{"B", depthsB, tempsB, 5.59551, -4.36570341, 2e-5, math.NaN(), 5.1e-9},
	} {
		k := cubicOnly(metres(t, c.depths, c.temps))
		at, slope := 0.0, 0.0
		for i := range 400001 {
			z := 4 + float64(i)*1e-5
			if s := k.cubic.PredictDerivative(z); s < slope {
				at, slope = z, s
			}
		}
		near(t, c.name+": steepest depth", at, c.at, c.zTol)
		near(t, c.name+": steepest slope", slope, c.slope, c.slopeTolCM)
		if !math.IsNaN(c.tempC) {
			near(t, c.name+": temperature there", k.At(at), c.tempC, 1e-4) // 2e-5 m at 3.84 C/m
		}
	}
}

// Depths of temperatures on column A, from scipy 1.10.1 PchipInterpolator.
func TestCurveCrossings(t *testing.T) {
	k := cubicOnly(metres(t, depthsA, tempsA))
	for _, c := range []struct{ tempC, depthM float64 }{
		{20, 4.45021797}, {18, 5.06299162}, {15, 5.87904298}, {12, 6.90930577}, {10, 8.08685825}, {9, 9.33871337},
		{21.6 - .2, 2.63397460}, {21.6 - .5, 3.63724496}, {21.6 - .8, 4.09686819}, {21.6 - 1, 4.21445779}, // mixed layers
	} {
		z, ok := k.Crossing(c.tempC, k.Top(), k.Bottom())
		if !ok {
			t.Errorf("%g C is not reached", c.tempC)
		}
		near(t, fmt.Sprintf("%g C", c.tempC), z, c.depthM, 5.1e-9)
	}
	if z, ok := k.Crossing(25, k.Top(), k.Bottom()); ok {
		t.Errorf("25 C is found at %g m in a column that starts at 21.6 C", z)
	}
}

// Straight lines between the readings of column A, by hand from its numbers.
func TestLinear(t *testing.T) {
	for _, c := range []struct{ level, depthM float64 }{
		{20, 4 + .9/2.7}, {18, 5 + .2/3.6}, {16, 5 + 2.2/3.6}, {15, 5 + 3.2/3.6}, {14, 6 + .6/2.8}, {12, 6 + 2.6/2.8},
		{10, 8 + .1/.9}, {9, 9 + .2/.5},
		{21.4, 2.5}, {21.1, 3.5}, {20.8, 4 + .1/2.7}, {20.6, 4 + .3/2.7},
	} {
		z, ok := Linear(depthsA, tempsA, c.level)
		if !ok {
			t.Errorf("%g C is not reached", c.level)
		}
		near(t, fmt.Sprintf("%g C", c.level), z, c.depthM, 1e-12)
	}
	for _, c := range []struct {
		name           string
		depths, values []float64
		level          float64
		want           float64
		ok             bool
	}{
		{"on the first reading", []float64{1, 2}, []float64{5, 4}, 5, 1, true},
		{"on the last reading", []float64{1, 2}, []float64{5, 4}, 4, 2, true},
		{"the first of three crossings", []float64{0, 1, 2, 3}, []float64{6, 4, 6, 4}, 5, .5, true},
		{"never", []float64{1, 2}, []float64{5, 4}, 3, 0, false},
		{"nothing", nil, nil, 3, 0, false},
		{"more depths than values", []float64{1, 2, 3}, []float64{5, 4}, 3, 0, false},
	} {
		z, ok := Linear(c.depths, c.values, c.level)
		if ok != c.ok || math.Abs(z-c.want) > 1e-12 {
			t.Errorf("%s: %g, %v, want %g, %v", c.name, z, ok, c.want, c.ok)
		}
	}
}

func TestStable(t *testing.T) {
	for _, c := range []struct {
		name     string
		in, want []float64
	}{
		{"stable, left alone", []float64{20, 20, 18.5, 9, 4.5}, []float64{20, 20, 18.5, 9, 4.5}},
		{"stable under ice, left alone", []float64{0.3, 1, 2.5, 3.9}, []float64{0.3, 1, 2.5, 3.9}},
		{"one warmer below", []float64{20, 21, 15}, []float64{20.5, 20.5, 15}},
		{"a spike pools upwards", []float64{20, 19, 23, 15}, []float64{62.0 / 3, 62.0 / 3, 62.0 / 3, 15}},
		{"colder below under 4 C", []float64{2, 1, 3}, []float64{1.5, 1.5, 3}},
		{"over the densest water", []float64{5, 2.5}, []float64{3.75, 3.75}},
		{"both near 4 C and stable", []float64{4.5, 4.2, 3.9}, []float64{4.5, 4.2, 3.9}},
		{"one", []float64{12}, []float64{12}},
	} {
		got := stable(c.in)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			near(t, fmt.Sprintf("%s, %d", c.name, i), got[i], c.want[i], 1e-12)
		}
	}
}

// columns draws columns of 1 to most depths with any temperatures between low and
// high, stable or not.
func columns(most int, low, high float64) *rapid.Generator[profile.Column] {
	return rapid.Custom(func(t *rapid.T) profile.Column {
		n := rapid.IntRange(1, most).Draw(t, "readings")
		z := rapid.Float64Range(0, 3).Draw(t, "first depth")
		var points []profile.Point
		for range n {
			points = append(points, profile.Point{DepthM: z, TempC: rapid.Float64Range(low, high).Draw(t, "temp"), ErrC: 0.25})
			z += rapid.Float64Range(0.06, 4).Draw(t, "step")
		}
		c, err := profile.NewColumn(points)
		if err != nil {
			t.Fatal(err)
		}
		return c
	})
}

func TestCurveIsStable(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := columns(12, 0, 30).Draw(t, "column")
		k := newCurve(c)
		sumIn, sumOut := 0.0, 0.0
		for i, p := range c.Points() {
			sumIn += p.TempC
			sumOut += k.Temps[i]
		}
		if math.Abs(sumIn-sumOut) > 1e-9*float64(c.Len()+1)*30 {
			t.Fatalf("pooling changed the mean: %v from %v", k.Temps, c.Points())
		}
		for i := 0; i+1 < len(k.Depths); i++ {
			a, b := k.Temps[i], k.Temps[i+1]
			across := (a-water.MaxDensityTempC)*(b-water.MaxDensityTempC) < 0
			before := water.Density(a)
			for j := 1; j <= 20; j++ {
				v := k.At(k.Depths[i] + (k.Depths[i+1]-k.Depths[i])*float64(j)/20)
				if v < math.Min(a, b)-1e-9 || v > math.Max(a, b)+1e-9 {
					t.Fatalf("%v C between readings of %v and %v C", v, a, b)
				}
				rho := water.Density(v)
				if rho < before-1e-9 {
					t.Fatalf("density falls from %v to %v between %v and %v C", before, rho, a, b)
				}
				if !across { // across the densest water it may only not fall below the upper reading's
					before = rho
				}
			}
		}
	})
}
