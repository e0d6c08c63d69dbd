package sampling

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sync"
	"testing"

	"coldseam/profile"
	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
	"coldseam/profile/water"
)

// The limit of temperature that the tables seek, C.
const levelC = 19

// lake is a dense cast with its answers.
type lake struct {
	measured.Cast
	truth  measured.Truth
	dense  layers.Layers // by our own definitions of the metalimnion and the mixed layer
	levelM float64       // where it falls to levelC
	falls  bool
}

// lakesOf are the lakes of each file, once they were worked out. No test changes them.
var (
	lakesOf = map[string][]*lake{}
	lakesMu sync.Mutex
)

// lakes are the layered casts of a file; in a short run a few of them.
func lakes(tb testing.TB, file string) []*lake {
	tb.Helper()
	lakesMu.Lock()
	defer lakesMu.Unlock()
	if out, ok := lakesOf[file]; ok {
		return out
	}
	var out []*lake
	for i, c := range measured.Casts(tb, file) {
		if testing.Short() && i%20 != 0 {
			continue
		}
		l := &lake{Cast: c, truth: c.Truth()}
		l.At(0) // fits the cubic, before tests read the lake side by side
		l.levelM, l.falls = l.Reaches(levelC)
		l.dense = layers.Find(l.Column(tb), layers.WithoutIntervals)
		if l.truth.Layered && len(c.Depths) > 5 && l.dense.Structure == layers.Layered {
			out = append(out, l)
		}
	}
	lakesOf[file] = out
	return out
}

// ends are the first and the last mark of a lake.
func (l *lake) ends(markM float64) (first, last float64) {
	return math.Ceil(math.Max(l.Depths[0], underM)/markM-1e-6) * markM, math.Floor((l.Bottom()-underM)/markM+1e-6) * markM
}

// A policy gives the next depth; ok is false when it has none.
type policy func(tb testing.TB, l *lake, c profile.Column, markM float64) (depthM float64, ok bool)

// input is what the advice is asked with.
func (l *lake) input(c profile.Column, markM float64) Input {
	return Input{Column: c, Bottom: profile.Some(l.Bottom()), LevelsC: []float64{levelC}, MarkM: markM}
}

// onward follows the advice, and past its enough to the best mark that is left.
func onward(_ testing.TB, l *lake, c profile.Column, markM float64) (float64, bool) {
	in := l.input(c, markM)
	a, ruled := in.byRule()
	if ruled && (!a.Enough || c.Len() < endsN) {
		return a.DepthM, !a.Enough
	}
	k := newEvaluator(c, in.LevelsC)
	if !ruled {
		if a = in.weigh(k); !a.Enough || c.Len() < endsN {
			return a.DepthM, !a.Enough
		}
	}
	z, _, _, ok := k.bestMark(Input{Column: c, MarkM: markM}, atEndM, l.Bottom()-atEndM)
	return z, ok
}

// advised are the depths that the advice asks for until it is enough.
func advised(tb testing.TB, l *lake) (depths []float64) {
	tb.Helper()
	for {
		var c profile.Column
		if len(depths) > 0 {
			c = l.Read(tb, depths, 0.1, 0)
		}
		a := Find(l.input(c, footM))
		if a.Enough {
			return depths
		}
		if depths = append(depths, a.DepthM); len(depths) > manyN+1 {
			tb.Errorf("%s: no end after %v", l.Name, depths)
			return depths
		}
	}
}

// halving halves the greatest change of density.
func halving(_ testing.TB, l *lake, c profile.Column, markM float64) (float64, bool) {
	first, last := l.ends(markM)
	switch c.Len() {
	case 0:
		return first, true
	case 1:
		return last, true
	}
	best, most, found := 0.0, -1.0, false
	for i := 0; i+1 < c.Len(); i++ {
		a, b := c.At(i), c.At(i+1)
		mid := math.Round((a.DepthM+b.DepthM)/2/markM) * markM
		change := math.Abs(water.Density(b.TempC) - water.Density(a.TempC))
		if change > most && mid-a.DepthM > markM-1e-6 && b.DepthM-mid > markM-1e-6 {
			best, most, found = mid, change, true
		}
	}
	return best, found
}

// row is what a way of choosing depths reached: the share of lakes with the break,
// and with the limit, within 0.5 m.
type row struct {
	brk, level, n, levels float64
	lakes                 map[string]*[2]float64 // found, and columns, of each lake
}

func (r *row) add(tb testing.TB, l *lake, c profile.Column, withinM float64) {
	tb.Helper()
	found := layers.Find(c, layers.WithoutIntervals)
	r.n++
	if r.lakes == nil {
		r.lakes = map[string]*[2]float64{}
	}
	if r.lakes[l.Lake()] == nil {
		r.lakes[l.Lake()] = new([2]float64)
	}
	r.lakes[l.Lake()][1]++
	if found.Thermocline != nil && math.Abs(found.Thermocline.Best-l.truth.Thermocline) <= withinM {
		r.brk++
		r.lakes[l.Lake()][0]++
	}
	if !l.falls {
		return
	}
	r.levels++
	if z, ok := found.Curve.Crossing(levelC, found.Curve.Top(), found.Curve.Bottom()); ok && math.Abs(z-l.levelM) <= withinM {
		r.level++
	}
}

// eachLake gives the share of the break with every lake counted once, and the worst of the
// lakes with 50 columns or more, 1 where there is none.
func (r *row) eachLake() (mean, worst float64) {
	worst = 1
	for _, name := range slices.Sorted(maps.Keys(r.lakes)) {
		c := r.lakes[name]
		mean += c[0] / c[1] / float64(len(r.lakes))
		if c[1] >= 50 {
			worst = math.Min(worst, c[0]/c[1])
		}
	}
	return mean, worst
}

// Where the advice leads, in measured lakes read with an error of 0.1 C at marks a
// foot apart, beside halving and even steps: after so many readings, and where it
// says enough. The floors are what was reached, rounded down to 0.005. Reading every
// mark of a foot would find the break within 0.5 m in 0.98 and 0.93 of the first two.
func TestNextOnMeasuredLakes(t *testing.T) {
	t.Parallel()
	counts := []int{5, 6, 7, 8}
	for _, file := range []studied{
		{"cascade_dense.csv", 0.5, [4][2]float64{{0.975, 0.995}, {0.980, 0.995}, {0.985, 0.995}, {0.990, 0.995}}},
		{"virginia.csv", 0.5, [4][2]float64{{0.815, 0.985}, {0.890, 0.990}, {0.920, 0.995}, {0.935, 1}}},
		{"nla_marked.csv", 1, [4][2]float64{{0.890, 0.940}, {0.915, 0.945}, {0.925, 0.950}, {0.940, 0.950}}},
	} {
		all := lakes(t, file.name)
		table := fmt.Sprintf("\n%s, %d layered columns: share with the break, and %d C, within %g m (the break with each lake once, and in the worst lake)\n%-10s", file.name, len(all), levelC, file.withinM, "readings")
		for _, n := range counts {
			table += fmt.Sprintf("%30d", n)
		}
		ours := each(all, func(_ int, l *lake) []float64 { return advised(t, l) })
		for _, p := range []struct {
			name string
			next policy
		}{{"advice", onward}, {"halving", halving}, {"even", nil}} {
			paths := each(all, func(i int, l *lake) [][]float64 {
				if p.next == nil {
					return evenly(l, counts)
				}
				var begun []float64
				if p.name == "advice" {
					begun = ours[i]
				}
				return follow(t, l, p.next, begun, counts)
			})
			rows := make([]row, len(counts))
			for k, l := range all {
				for i := range counts {
					rows[i].add(t, l, l.Read(t, paths[k][i], 0.1, 0), file.withinM)
				}
			}
			table += fmt.Sprintf("\n%-10s", p.name)
			for i, r := range rows {
				mean, worst := r.eachLake()
				table += fmt.Sprintf("%10.3f %.3f (%.3f %.3f)", r.brk/r.n, r.level/r.levels, mean, worst)
				if p.name == "advice" && !testing.Short() {
					file.check(t, i, counts[i], r)
				}
			}
		}
		t.Log(table + enough(t, all, ours, file.withinM))
	}
}

// studied is a file and the floors of the break and of the limit, by count.
type studied struct {
	name    string
	withinM float64
	floor   [4][2]float64
}

func (f studied) check(t *testing.T, i, readings int, r row) {
	t.Helper()
	if got := r.brk / r.n; got < f.floor[i][0] {
		t.Errorf("%s, %d readings: break %.3f, below the %.3f reached before", f.name, readings, got, f.floor[i][0])
	}
	if got := r.level / r.levels; got < f.floor[i][1] {
		t.Errorf("%s, %d readings: limit %.3f, below the %.3f reached before", f.name, readings, got, f.floor[i][1])
	}
}

// evenly gives the depths of so many even readings.
func evenly(l *lake, counts []int) (out [][]float64) {
	for _, n := range counts {
		out = append(out, l.Even(n))
	}
	return out
}

// follow gives the depths of a policy after so many readings, the first of them as begun.
func follow(tb testing.TB, l *lake, next policy, begun []float64, counts []int) (out [][]float64) {
	tb.Helper()
	var depths []float64
	for _, n := range counts {
		for len(depths) < n {
			if len(depths) < len(begun) {
				depths = append(depths, begun[len(depths)])
				continue
			}
			var c profile.Column
			if len(depths) > 0 {
				c = l.Read(tb, depths, 0.1, 0)
			}
			z, ok := next(tb, l, c, footM)
			if !ok {
				break
			}
			depths = append(depths, z)
		}
		out = append(out, slices.Clone(depths))
	}
	return out
}

// enough says how many readings the advice takes, and the errors left.
func enough(t *testing.T, all []*lake, ours [][]float64, withinM float64) string {
	t.Helper()
	var counts []int
	var brk, level []float64
	var r row
	for i, l := range all {
		c := l.Read(t, ours[i], 0.1, 0)
		counts = append(counts, len(ours[i]))
		r.add(t, l, c, withinM)
		found := layers.Find(c, layers.WithoutIntervals)
		if found.Thermocline != nil {
			brk = append(brk, math.Abs(found.Thermocline.Best-l.truth.Thermocline))
		}
		if z, ok := found.Curve.Crossing(levelC, found.Curve.Top(), found.Curve.Bottom()); ok && l.falls {
			level = append(level, math.Abs(z-l.levelM))
		}
	}
	slices.Sort(counts)
	slices.Sort(brk)
	slices.Sort(level)
	n := len(counts)
	if share := r.brk / r.n; !testing.Short() && (share <= 0.9 || counts[n/2] < 5 || counts[n/2] > 7) { // as the README says
		t.Errorf("enough after %d readings in the median, then %.3f within %v m", counts[n/2], share, withinM)
	}
	return fmt.Sprintf("\nenough after %d readings in the median (80 %%: %d to %d); then %.3f and %.3f within, median error %.2f m and %.2f m, in nine of ten within %.2f and %.2f m\n",
		counts[n/2], counts[n/10], counts[n-1-n/10], r.brk/r.n, r.level/r.levels, brk[len(brk)/2], level[len(level)/2], brk[len(brk)*9/10], level[len(level)*9/10])
}
