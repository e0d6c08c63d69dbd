package light

import (
	"fmt"
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/expect"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

var near = expect.Near

// Poole & Atkins 1929 for the light, Caffrey et al. 2007 for the weeds, worked out
// apart from this program with 40 digits. The tolerances are half of the last digit.
func TestSecchiTable(t *testing.T) {
	for _, r := range []struct{ secchiM, k, onePercentM, weedsM, mostM float64 }{
		{0.5, 3.4, 1.354462, 1.292172, 2.694351},
		{1, 1.7, 2.708924, 2.041738, 3.890451},
		{2, 0.85, 5.417847, 3.226115, 5.617536},
		{3, 0.566667, 8.126771, 4.215994, 6.964249},
		{4, 0.425, 10.835695, 5.097528, 8.111325},
		{5, 0.34, 13.544618, 5.906364, 9.129649},
		{10, 0.17, 27.089236, 9.332543, 13.182567},
	} {
		at := fmt.Sprintf(" at %v m", r.secchiM)
		near(t, "k"+at, Extinction(r.secchiM), r.k, 5.01e-7)
		near(t, "1 %"+at, OnePercentM(r.secchiM), r.onePercentM, 5.01e-7)
		near(t, "weeds"+at, Weeds(r.secchiM).Best, r.weedsM, 5.01e-7)
		near(t, "most"+at, WeedsMostM(r.secchiM), r.mostM, 5.01e-7)
	}
}

// The law that light fades by: at the depth of 1 % the exponential is 0.01.
func TestOnePercentClosedForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.Float64Range(MinSecchiM, MaxSecchiM).Draw(t, "secchi")
		if left := math.Exp(-Extinction(z) * OnePercentM(z)); math.Abs(left-0.01) > 1e-12 {
			t.Fatalf("%v of the light is left", left)
		}
	})
}

// Two other lines, fitted on other lakes: Canfield et al. 1985, and Chambers & Kalff
// 1985 for flowering plants, both from memory. They must lie within the 80 % interval,
// as what they are fitted on are lakes like those it speaks of.
func TestWeedsAgainstOtherAuthors(t *testing.T) {
	canfield := func(z float64) float64 { return math.Pow(10, 0.61*math.Log10(z)+0.26) }
	chambers := func(z float64) float64 { return math.Pow(1.33*math.Log10(z)+1.40, 2) }
	near(t, "Canfield at 2 m", canfield(2), 2.7773, 5.01e-5)
	near(t, "Chambers at 2 m", chambers(2), 3.241, 5.01e-4)
	for z := 0.5; z <= 10; z += 0.25 {
		w := Weeds(z)
		for name, other := range map[string]float64{"Canfield": canfield(z), "Chambers": chambers(z)} {
			if !(w.Low <= other && other <= w.High) {
				t.Errorf("%s at %v m: %.2f m, outside %.2f to %.2f", name, z, other, w.Low, w.High)
			}
		}
	}
	// What the comment of Weeds admits: outside, they part.
	for _, z := range []float64{0.35, 20} {
		if w := Weeds(z); chambers(z) >= w.Low {
			t.Errorf("at %v m Chambers %.2f is within %.2f to %.2f: say so in the comment", z, chambers(z), w.Low, w.High)
		}
	}
}

// Lakes made with the assumed spread and the scatter of the interval must give the R2
// of the paper, and four of five must lie within the interval.
func TestWeedsSpreadFollowsFromR2(t *testing.T) {
	const n = 400
	normal := func(i int, sigma float64) float64 {
		return distuv.Normal{Sigma: sigma}.Quantile((float64(i) + 0.5) / n)
	}
	sigma := halfSpread / distuv.UnitNormal.Quantile(0.9)
	var fit, made []float64
	within := 0
	for i := range n {
		for j := range n {
			y := fitSlope*normal(i, secchiSpread) + fitAt1M
			fit, made = append(fit, y), append(made, y+normal(j, sigma))
		}
	}
	near(t, "R2", stat.RSquaredFrom(fit, made, nil), 0.68, 0.002)
	w := Weeds(2)
	for j := range n {
		if y := w.Best * math.Pow(10, normal(j, sigma)); y >= w.Low && y <= w.High {
			within++
		}
	}
	near(t, "share within", float64(within)/n, 0.8, 0.003)

	under := distuv.UnitNormal.CDF(math.Log10(WeedsMostM(2)/w.Best) / sigma)
	near(t, "share under the envelope at 2 m", under, 0.96, 0.005)
	near(t, "factor either way at 2 m", w.High/w.Best, 1.49, 0.005)
	near(t, "factor either way at 2 m", w.Best/w.Low, 1.49, 0.005)
}

func TestWeedsInterval(t *testing.T) {
	last := profile.Estimate{}
	for z := MinSecchiM; z <= MaxSecchiM; z *= 1.01 {
		w := Weeds(z)
		if !(0 < w.Low && w.Low < w.Best && w.Best < w.High && w.High <= WeedsMostM(z)) {
			t.Fatalf("at %v m: %+v, at most %v", z, w, WeedsMostM(z))
		}
		if !(w.Low > last.Low && w.Best > last.Best && w.High > last.High) {
			t.Fatalf("at %v m: %+v after %+v", z, w, last)
		}
		last = w
	}
}

// Carlson 1977, from memory: the index, and its classes at 40, 50 and 60.
func TestTSI(t *testing.T) {
	for _, r := range []struct {
		secchiM, tsi float64
		word         Richness
	}{
		{0.5, 69.99, VeryFertile}, {0.99, 60.14, VeryFertile}, {1, 60, Fertile}, {2, 50.01, Fertile},
		{2.01, 49.94, Middling}, {4, 40.02, Middling}, {4.01, 39.99, Clear}, {8, 30.04, Clear},
	} {
		near(t, fmt.Sprintf("TSI at %v m", r.secchiM), TSI(r.secchiM), r.tsi, 0.00501)
		if got := RichnessOf(r.secchiM); got != r.word {
			t.Errorf("%v m is %q, want %q", r.secchiM, got, r.word)
		}
	}
}

func TestOutsideTheRange(t *testing.T) {
	all := func(z float64) []float64 {
		w := Weeds(z)
		return []float64{Extinction(z), OnePercentM(z), w.Low, w.Best, w.High, WeedsMostM(z), TSI(z)}
	}
	for _, z := range []float64{0, -1, 0.0499, 40.01, math.Inf(1), math.Inf(-1), math.NaN()} {
		for i, v := range all(z) {
			if !math.IsNaN(v) {
				t.Errorf("answer %d at %v m = %v, want NaN", i, z, v)
			}
		}
		if got := RichnessOf(z); got != Unknown {
			t.Errorf("%v m is %q", z, got)
		}
		if got := ShelfOf(profile.Some(z)); got != (Shelf{PracticeM, NoSecchi}) {
			t.Errorf("shelf at %v m: %+v", z, got)
		}
	}
	for _, z := range []float64{MinSecchiM, 1, MaxSecchiM} {
		for i, v := range all(z) {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("answer %d at %v m = %v", i, z, v)
			}
		}
	}
}

// The weeds' line of Caffrey et al. 2007 meets 20 ft at 5.24 m of Secchi depth.
func TestShelf(t *testing.T) {
	near(t, "20 ft", PracticeM, 6.096, 1e-12)
	crossing := math.Pow(10, (math.Log10(6.096)-0.31)/0.66)
	near(t, "crossing", crossing, 5.24, 0.01)
	for _, r := range []struct {
		secchi profile.Optional
		endM   float64
		by     Limit
	}{
		{profile.Optional{}, 6.096, NoSecchi},
		{profile.Optional{Value: 2}, 6.096, NoSecchi}, // unknown, whatever stands there
		{profile.Some(2), 3.2261, ByWeeds},
		{profile.Some(crossing - 0.01), 6.088, ByWeeds},
		{profile.Some(crossing + 0.01), 6.096, ByPractice},
		{profile.Some(10), 6.096, ByPractice},
	} {
		got := ShelfOf(r.secchi)
		near(t, fmt.Sprintf("end of the shelf, %+v", r.secchi), got.EndM, r.endM, 5.01e-4)
		if got.By != r.by {
			t.Errorf("%+v: by %q, want %q", r.secchi, got.By, r.by)
		}
	}
}
