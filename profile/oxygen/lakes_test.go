package oxygen

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat"

	"coldseam/profile"
	"coldseam/profile/expect"
	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
)

// lake is one measured cast with its oxygen.
type lake struct {
	measured.Cast
	set    string
	water  string    // which lake it is
	fitted bool      // the factors were fitted on it
	z, v   []float64 // depths, m, and oxygen there, mg/L
	day    int       // of the year
	whole  Input     // all of it, oxygen hidden, at 5 mg/L
}

// files are the measured casts with oxygen: U.S. EPA, National Lakes Assessments of 2007
// and 2017, with and without a crew's mark; Carpenter et al., Cascade Project at NTL-LTER,
// EDI knb-lter-ntl.352; Carey et al., EDI edi.198.
var files = []struct{ set, file string }{
	{"NLA", "nla_marked.csv"},
	{"NLA unmarked", "nla_unmarked.csv"},
	{"Cascade", "cascade_dense.csv"},
	{"Virginia", "virginia.csv"},
}

// lakes reads them all. Fitted are those of the NLA's marked ones that were read in 2007,
// and Paul, Peter and Beaverdam; nothing was fitted on the others.
func lakes(tb testing.TB) []lake {
	tb.Helper()
	if read != nil {
		return read
	}
	var all []lake
	for _, f := range files {
		days := daysOf(tb, f.file)
		for _, c := range measured.Casts(tb, f.file) {
			l := lake{Cast: c, set: f.set, day: days[c.Name]}
			for _, o := range c.Oxygen {
				l.z, l.v = append(l.z, o.DepthM), append(l.v, o.MgL)
			}
			if len(l.z) < 2 || len(c.Depths) < 3 {
				continue
			}
			l.water = c.Lake()
			l.fitted = f.set == "NLA" && strings.HasPrefix(c.Name, l.water+"_2007") || slices.Contains([]string{"L", "R", "BVR"}, l.water)
			l.whole = inputOf(c.Column(tb), 5)
			all = append(all, l)
		}
	}
	read = all
	return all
}

// read are the lakes once they are read. No test changes them, and none is parallel.
var read []lake

// daysOf reads the day of the year of a file's casts.
func daysOf(tb testing.TB, file string) map[string]int {
	tb.Helper()
	f, err := os.Open("../../../shared/data/" + file)
	if errors.Is(err, fs.ErrNotExist) {
		expect.Missing(tb, "the measured profiles %s are not beside this module", file)
	}
	if err != nil {
		tb.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	days := map[string]int{}
	for _, row := range rows[1:] {
		date, err := time.Parse(time.DateOnly, row[1])
		if err != nil {
			tb.Fatalf("%s: %v", file, err)
		}
		days[row[0]] = date.YearDay()
	}
	return days
}

// Where oxygen stands to a need.
const (
	crosses = "crosses"
	low     = "low at the surface"
	never   = "never"
)

// crossing is where oxygen first falls under a need.
func (l *lake) crossing(needMgL float64) (depthM float64, how string) {
	if l.v[0] < needMgL {
		return 0, low
	}
	if z, ok := layers.Linear(l.z, l.v, needMgL); ok {
		return z, crosses
	}
	return 0, never
}

// enoughAt reports whether there is oxygen enough at a depth.
func (l *lake) enoughAt(depthM, needMgL float64) bool {
	v, ok := l.OxygenAt(depthM)
	return ok && v >= needMgL-1e-9
}

// thinned is the cast at n even depths, with an error of 0.1 C; all of it for n = 0.
func (l *lake) thinned(tb testing.TB, n int) Input {
	tb.Helper()
	if n == 0 {
		return l.whole
	}
	return inputOf(l.Read(tb, l.Even(n), 0.1, 0), 5)
}

// cut is the cast down to a depth, or nothing where it begins below that.
func (l *lake) cut(tb testing.TB, depthM float64) Input {
	tb.Helper()
	var points []profile.Point
	for i, z := range l.Depths {
		if z <= depthM+1e-9 {
			points = append(points, profile.Point{DepthM: z, TempC: l.Temps[i]})
		}
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		return Input{}
	}
	return inputOf(c, 5)
}

func inputOf(c profile.Column, needMgL float64) Input {
	return Input{Column: c, Layers: layers.Find(c, layers.WithoutIntervals), NeedMgL: needMgL}
}

func median(v []float64) float64 {
	if len(v) == 0 {
		return 0
	}
	return stat.Quantile(.5, stat.LinInterp, slices.Sorted(slices.Values(v)), nil)
}
