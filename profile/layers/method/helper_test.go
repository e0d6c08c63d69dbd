package method

import (
	"math"
	"strings"
	"testing"

	"coldseam/profile/internal/measured"
	"coldseam/profile/water"
)

// goldCast finds the published cast of a short name.
func goldCast(tb testing.TB, name string) measured.Cast {
	tb.Helper()
	for _, c := range measured.Casts(tb, "cascade_cases.csv") {
		if strings.HasPrefix(c.Name, name+" ") {
			return c
		}
	}
	tb.Fatalf("no cast %s", name)
	return measured.Cast{}
}

// stable pools neighbouring temperatures whose densities lie the wrong way round.
func stable(temps []float64) []float64 {
	var mean []float64
	var count []int
	for _, t := range temps {
		mean, count = append(mean, t), append(count, 1)
		for n := len(mean); n > 1 && water.Density(mean[n-2]) > water.Density(mean[n-1]); n-- {
			a, b := float64(count[n-2]), float64(count[n-1])
			mean = append(mean[:n-2], (a*mean[n-2]+b*mean[n-1])/(a+b))
			count = append(count[:n-2], count[n-2]+count[n-1])
		}
	}
	var out []float64
	for i, m := range mean {
		for range count[i] {
			out = append(out, m)
		}
	}
	return out
}

// near fails when got is further than tol from want, or not a number.
func near(tb testing.TB, what string, got, want, tol float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tol) {
		tb.Errorf("%s: %.10g, want %.10g within %g", what, got, want, tol)
	}
}

// answer gives the depth of a method's answer, or ends the test.
func answer(tb testing.TB, answers []Answer, name string) float64 {
	tb.Helper()
	for _, a := range answers {
		if a.Name == name {
			if !a.OK {
				tb.Errorf("%s: found nothing", name)
			}
			return a.DepthM
		}
	}
	tb.Fatalf("no method %q", name)
	return 0
}

// profileA is a made-up column of a summer lake in whole metres.
var profileA = measured.Cast{
	Name:   "A",
	Depths: []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12},
	Temps:  []float64{21.6, 21.5, 21.5, 21.3, 20.9, 18.2, 14.6, 11.8, 10.1, 9.2, 8.7, 8.4, 8.2},
}
