package layers

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"coldseam/profile"
)

// shared is where the open measured profiles lie, seen from this package; their
// sources are named in SOURCES.md there.
const shared = "../../../shared/data"

// cast is one measured profile.
type cast struct {
	name   string
	points []profile.Point
	mark   map[string]float64 // depth of a crew's mark: "T" or "B"
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

// casts reads a file of measured profiles, in the file's order. Every reading has
// an error of errC.
func casts(tb testing.TB, file string, errC float64) []cast {
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
		i, seen := index[row[0]]
		if !seen {
			i = len(out)
			index[row[0]] = i
			out = append(out, cast{name: row[0], mark: map[string]float64{}})
		}
		z, errZ := strconv.ParseFloat(row[2], 64)
		temp, errT := strconv.ParseFloat(row[3], 64)
		if errZ != nil || errT != nil {
			continue // a depth with oxygen only
		}
		out[i].points = append(out[i].points, profile.Point{DepthM: z, TempC: temp, ErrC: errC})
		if len(row) > 5 && row[5] != "" {
			out[i].mark[row[5]] = z
		}
	}
	return out
}

// column makes a cast's Column, or ends the test.
func (c cast) column(tb testing.TB) profile.Column {
	tb.Helper()
	col, err := profile.NewColumn(c.points)
	if err != nil {
		tb.Fatalf("%s: %v", c.name, err)
	}
	return col
}

// metres makes a Column of temperatures in Celsius at depths in metres.
func metres(tb testing.TB, depths, temps []float64) profile.Column {
	tb.Helper()
	if len(depths) != len(temps) {
		tb.Fatalf("%d depths and %d temperatures", len(depths), len(temps))
	}
	c := cast{name: "column"}
	for i, z := range depths {
		c.points = append(c.points, profile.Point{DepthM: z, TempC: temps[i], ErrC: 0.25})
	}
	return c.column(tb)
}

// feet makes a Column of temperatures in Fahrenheit at depths in feet.
func feet(tb testing.TB, depths, temps []float64) profile.Column {
	tb.Helper()
	z, c := make([]float64, len(depths)), make([]float64, len(temps))
	for i := range depths {
		z[i] = depths[i] * 0.3048
	}
	for i := range temps {
		c[i] = (temps[i] - 32) / 1.8
	}
	return metres(tb, z, c)
}

// near fails when got is further than tol from want, or not a number.
func near(tb testing.TB, what string, got, want, tol float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tol) {
		tb.Errorf("%s: %.10g, want %.10g within %g", what, got, want, tol)
	}
}

// stable is a copy of temperatures, pooled.
func stable(temps []float64) []float64 {
	out := slices.Clone(temps)
	new(pooler).pool(out)
	return out
}

// cubicOnly is a column's curve without places between readings: the cubic alone.
func cubicOnly(c profile.Column) *Curve {
	k := NewCurve(c)
	k.z, k.t, k.cubic = k.Depths, k.Temps, nil
	k.join()
	return k
}
