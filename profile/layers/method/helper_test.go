package method

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"coldseam/profile/water"
)

// shared is where the open measured profiles lie, seen from this package; their
// sources are named in SOURCES.md there.
const shared = "../../../../shared/data"

// cast is one measured profile.
type cast struct {
	name        string
	z, t        []float64
	top, bottom float64 // a crew's marks, where there are any
}

// missing ends a test that lacks something: skipped, or failed when COLDSEAM_FULL is
// 1, so that a full run cannot pass by leaving tests out.
func missing(tb testing.TB, format string, args ...any) {
	tb.Helper()
	if os.Getenv("COLDSEAM_FULL") == "1" {
		tb.Fatalf(format, args...)
	}
	tb.Skipf(format, args...)
}

// casts reads a file of measured profiles, in the file's order.
func casts(tb testing.TB, file string) []cast {
	tb.Helper()
	f, err := os.Open(filepath.Join(filepath.FromSlash(shared), file))
	if errors.Is(err, fs.ErrNotExist) {
		missing(tb, "the measured profiles %s are not beside this module", file)
	}
	if err != nil {
		tb.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	var out []cast
	index := map[string]int{}
	for _, row := range rows[1:] {
		z, errZ := strconv.ParseFloat(row[2], 64)
		temp, errT := strconv.ParseFloat(row[3], 64)
		if errZ != nil || errT != nil {
			continue // a depth with oxygen only
		}
		i, seen := index[row[0]]
		if !seen {
			i = len(out)
			index[row[0]] = i
			out = append(out, cast{name: row[0]})
		}
		c := &out[i]
		c.z, c.t = append(c.z, z), append(c.t, temp)
		if len(row) > 5 && row[5] == "T" {
			c.top = z
		}
		if len(row) > 5 && row[5] == "B" {
			c.bottom = z
		}
	}
	return out
}

// goldCast finds the published cast of a short name.
func goldCast(tb testing.TB, name string) cast {
	tb.Helper()
	for _, c := range casts(tb, "cascade_cases.csv") {
		if strings.HasPrefix(c.name, name+" ") {
			return c
		}
	}
	tb.Fatalf("no cast %s", name)
	return cast{}
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
var profileA = cast{
	name: "A",
	z:    []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12},
	t:    []float64{21.6, 21.5, 21.5, 21.3, 20.9, 18.2, 14.6, 11.8, 10.1, 9.2, 8.7, 8.4, 8.2},
}
