// Package measured gives tests the open profiles of measured lakes. The files lie
// beside the module, not in it: their sources are named in SOURCES.md there. It also
// reads a dense profile as an angler would: at a few depths, with errors.
package measured

import (
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/interp"

	"coldseam/profile"
	"coldseam/profile/expect"
)

// Cast is one measured profile: the depths at which a temperature was read, from the
// surface down.
type Cast struct {
	Name   string
	Depths []float64          // m
	Temps  []float64          // C
	Mark   map[string]float64 // depth of a field crew's mark: "T" or "B"
	Oxygen []Oxygen           // from the surface down; none in most files of temperatures alone

	cubic *interp.FritschButland
}

// Oxygen is one reading of it.
type Oxygen struct{ DepthM, MgL float64 }

// read are the casts of the files that were read before.
var (
	read   = map[string][]Cast{}
	readMu sync.Mutex
)

// Casts gives the profiles of a file, in the file's order, each sorted by depth and with
// one temperature a depth. A file is read once; its casts are shared, and not to be changed.
func Casts(tb testing.TB, file string) []Cast {
	tb.Helper()
	readMu.Lock()
	defer readMu.Unlock()
	if read[file] == nil {
		read[file] = casts(tb, file)
	}
	return slices.Clone(read[file])
}

// Path is where a file of profiles lies, or ends the test.
func Path(tb testing.TB, file string) string {
	tb.Helper()
	_, here, _, _ := runtime.Caller(0)
	path := filepath.Join(filepath.Dir(here), "..", "..", "..", "..", "shared", "data", file)
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		expect.Missing(tb, "the measured profiles %s are not beside this module", file)
	}
	return path
}

// casts reads a file: profile, date, depth_m, temp_c, oxygen_mgl, mark.
func casts(tb testing.TB, file string) (out []Cast) {
	tb.Helper()
	f, err := os.Open(Path(tb, file))
	if err != nil {
		tb.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	points, oxygen := map[string][]profile.Point{}, map[string][]Oxygen{}
	for _, row := range rows[1:] {
		name := row[0]
		z, errZ := strconv.ParseFloat(row[2], 64)
		t, errT := strconv.ParseFloat(row[3], 64)
		mgL, errMgL := strconv.ParseFloat(row[4], 64)
		if errZ == nil && errMgL == nil {
			oxygen[name] = append(oxygen[name], Oxygen{z, mgL})
		}
		if errZ != nil || errT != nil {
			continue // a depth with oxygen only
		}
		if points[name] == nil {
			out = append(out, Cast{Name: name, Mark: map[string]float64{}})
		}
		points[name] = append(points[name], profile.Point{DepthM: z, TempC: t})
		if len(row) > 5 && row[5] != "" {
			out[len(out)-1].Mark[row[5]] = z
		}
	}
	for i := range out {
		c := &out[i]
		column, err := profile.NewColumn(points[c.Name])
		if err != nil {
			tb.Fatalf("%s: %v", c.Name, err)
		}
		for _, p := range column.Points() {
			c.Depths, c.Temps = append(c.Depths, p.DepthM), append(c.Temps, p.TempC)
		}
		c.cubic = cubic(c.Depths, c.Temps)
		c.Oxygen = oxygen[c.Name]
		slices.SortStableFunc(c.Oxygen, func(a, b Oxygen) int { return cmp.Compare(a.DepthM, b.DepthM) })
	}
	return out
}

// cubic is the monotone cubic through two readings or more.
func cubic(depths, temps []float64) *interp.FritschButland {
	c := &interp.FritschButland{}
	if len(depths) > 1 {
		if err := c.Fit(depths, temps); err != nil {
			panic(err)
		}
	}
	return c
}

// Column is the whole cast, without errors.
func (c Cast) Column(tb testing.TB) profile.Column {
	tb.Helper()
	var points []profile.Point
	for i, z := range c.Depths {
		points = append(points, profile.Point{DepthM: z, TempC: c.Temps[i]})
	}
	col, err := profile.NewColumn(points)
	if err != nil {
		tb.Fatalf("%s: %v", c.Name, err)
	}
	return col
}

// Lake is the lake that a cast's name begins with; names of the National Lakes
// Assessments have a _ of their own before the date.
func (c Cast) Lake() string {
	end := "_"
	if strings.HasPrefix(c.Name, "NLA") {
		end = "_20"
	}
	lake, _, _ := strings.Cut(c.Name, end)
	return lake
}

// OxygenAt is the oxygen at a depth, mg/L: straight lines between readings, the ends
// beyond. ok is false without readings.
func (c Cast) OxygenAt(depthM float64) (mgl float64, ok bool) {
	o := c.Oxygen
	if len(o) == 0 {
		return 0, false
	}
	i := slices.IndexFunc(o, func(x Oxygen) bool { return x.DepthM >= depthM })
	switch {
	case i == 0:
		return o[0].MgL, true
	case i < 0:
		return o[len(o)-1].MgL, true
	}
	share := (depthM - o[i-1].DepthM) / (o[i].DepthM - o[i-1].DepthM)
	return o[i-1].MgL + share*(o[i].MgL-o[i-1].MgL), true
}

// Bottom is the depth of the deepest reading, m.
func (c Cast) Bottom() float64 { return c.Depths[len(c.Depths)-1] }

// At is the water's temperature at a depth, C: the monotone cubic through every
// reading of a cast of two or more.
func (c Cast) At(depthM float64) float64 { return c.cubic.Predict(depthM) }

// Read reads the cast at some depths: with a normal error of errC in temperature and
// of errM in depth, which the Column is told, the same for the same depth.
func (c Cast) Read(tb testing.TB, depths []float64, errC, errM float64) profile.Column {
	tb.Helper()
	var points []profile.Point
	for _, z := range depths {
		h := fnv.New64a()
		fmt.Fprintf(h, "%s %.3f", c.Name, z)
		rng := rand.New(rand.NewPCG(h.Sum64(), 0))
		real := math.Min(math.Max(z+errM*rng.NormFloat64(), c.Depths[0]), c.Bottom())
		t := c.At(real) + errC*rng.NormFloat64()
		points = append(points, profile.Point{DepthM: z, TempC: math.Round(t*1000) / 1000, ErrC: errC, ErrM: errM})
	}
	col, err := profile.NewColumn(points)
	if err != nil {
		tb.Fatalf("%s at %v: %v", c.Name, depths, err)
	}
	return col
}

// Even gives n depths at even steps from the first reading to the last.
func (c Cast) Even(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = c.Depths[0] + (c.Bottom()-c.Depths[0])*float64(i)/float64(n-1)
	}
	return out
}
