package sampling

import (
	"fmt"
	"maps"
	"math"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// cover counts how often an interval holds the dense column's answer.
type cover struct {
	n, inside    float64
	above, below float64   // where the answer lies outside the interval
	width, gap   []float64 // of the interval, and of the two readings around the best answer
	held         float64   // those two readings' own share
}

func (c *cover) add(low, high, gapLow, gapHigh, truth float64) {
	c.n++
	switch {
	case truth < low:
		c.above++
	case truth > high:
		c.below++
	default:
		c.inside++
	}
	if gapLow <= truth && truth <= gapHigh {
		c.held++
	}
	c.width, c.gap = append(c.width, high-low), append(c.gap, gapHigh-gapLow)
}

// estimate adds an answer; one that was not found is a miss.
func (c *cover) estimate(l layers.Layers, e *profile.Estimate, truth float64) {
	if e == nil {
		c.n++
		return
	}
	z := l.Curve.Depths
	i := slices.IndexFunc(z, func(d float64) bool { return d >= e.Best })
	i = min(max(i, 1), len(z)-1)
	c.add(e.Low, e.High, z[i-1], z[i], truth)
}

func (c cover) share() float64 { return c.inside / c.n }

func middleOf(v []float64) float64 {
	s := slices.Sorted(slices.Values(v))
	if len(s) == 0 {
		return math.NaN()
	}
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// chosen gives n depths as the advice asks for them, past its enough.
func chosen(tb testing.TB, l *lake, n int, errC, errM float64) []float64 {
	first, _ := l.ends(footM)
	depths := []float64{first}
	for len(depths) < n {
		z, ok := onward(tb, l, l.Read(tb, depths, errC, errM), footM)
		if !ok {
			break
		}
		depths = append(depths, z)
	}
	return depths
}

// sought are the depths whose intervals are counted.
var sought = [5]string{"thermocline", "19 C", "metalimnion's top", "its bottom", "mixed layer"}

// covered counts the intervals of one column read at some depths.
func covered(tb testing.TB, l *lake, depths []float64, errC float64) (out [5]cover) {
	found := layers.Find(l.Read(tb, depths, errC, 0.1))
	out[0].estimate(found, found.Thermocline, l.truth.Thermocline)
	if z, ok := found.Curve.Crossing(levelC, found.Curve.Top(), found.Curve.Bottom()); ok && l.falls {
		e := found.Curve.CrossingInterval(z, levelC)
		out[1].estimate(found, &e, l.levelM)
	}
	out[2].estimate(found, found.MetalimnionTop, l.dense.MetalimnionTop.Best)
	if !l.dense.BottomReached {
		out[3].estimate(found, found.MetalimnionBottom, l.dense.MetalimnionBottom.Best)
	}
	out[4].estimate(found, found.MixedLayer, l.dense.MixedLayer.Best)
	return out
}

// group is a set of columns that are counted together: the limits are what was reached,
// rounded outwards to 0.005.
type group struct {
	name        string
	files       []string
	year        string
	every       int // so many columns are passed over to save time
	errs        []float64
	low, high   [5]float64
	worst, most float64 // of the thermocline, all sets of a lake together
}

var groups = []group{
	{"2007, fitted", []string{"nla_marked.csv", "nla_unmarked.csv"}, "2007", 3, []float64{0.1}, [5]float64{.745, .79, .625, .73, .78}, [5]float64{.865, .885, .765, .845, .84}, 0, 1},
	{"2017", []string{"nla_marked.csv", "nla_unmarked.csv"}, "2017", 3, []float64{0.1}, [5]float64{.755, .815, .725, .80, .845}, [5]float64{.91, .905, .89, .905, .89}, 0, 1},
	{"Cascade and Virginia", []string{"cascade_dense.csv", "virginia.csv"}, "", 1, []float64{0.1, 0.3}, [5]float64{.835, .785, .77, .815, .74}, [5]float64{.925, .875, .89, .90, .855}, .825, .92},
}

// columns are the group's.
func (g group) columns(tb testing.TB) (all []*lake) {
	for _, file := range g.files {
		for i, l := range lakes(tb, file) {
			if (g.year == "" || strings.Contains(l.Name, "_"+g.year)) && i%g.every == 0 {
				all = append(all, l)
			}
		}
	}
	return all
}

// byLake adds up what was counted in each lake.
type byLake map[string]*cover

func (b byLake) join(lake string, c cover) {
	if b[lake] == nil {
		b[lake] = &cover{}
	}
	b[lake].join(c)
}

// once is the share inside with every lake counted once.
func (b byLake) once() float64 {
	share, lakes := 0.0, 0.0
	for _, name := range slices.Sorted(maps.Keys(b)) {
		if b[name].n > 0 {
			share, lakes = share+b[name].share(), lakes+1
		}
	}
	return share / lakes
}

// extremes are the lakes with the least and the greatest share of those with n or more.
func (b byLake) extremes(n float64) (worst, most string) {
	for _, name := range slices.Sorted(maps.Keys(b)) {
		if b[name].n < n {
			continue
		}
		if worst == "" || b[name].share() < b[worst].share() {
			worst = name
		}
		if most == "" || b[name].share() > b[most].share() {
			most = name
		}
	}
	return worst, most
}

// check fails where the k-th depth's intervals hold too few or too many, or are hardly
// narrower than the readings around it, and gives its part of the table.
func (g group) check(t *testing.T, set string, k int, lakes byLake, sum cover) string {
	t.Helper()
	share := lakes.once()
	if !testing.Short() && (share < g.low[k] || share > g.high[k]) {
		t.Errorf("%s, %s, %s: inside %.3f, outside the %.3f to %.3f reached before", g.name, set, sought[k], share, g.low[k], g.high[k])
	}
	if ours, theirs := middleOf(sum.width), middleOf(sum.gap); k < 2 && g.year == "" && sum.held/sum.n > 0.85 && ours > 0.8*theirs {
		t.Errorf("%s, %s, %s: %.2f m wide, the readings around it %.2f m apart", g.name, set, sought[k], ours, theirs)
	}
	return fmt.Sprintf(" %.3f (%.2f, %.2f) %5.2f     ", share, sum.above/sum.n, sum.below/sum.n, middleOf(sum.width))
}

// The 80 % intervals against the dense columns, over the ways and numbers of readings and
// their errors, with 0.1 m of error in depth. The ways in which gaps are filled were fitted
// on the lakes of 2007 alone; the other groups had no part in it. Every lake counts once in
// its group, however many casts it has; the worst lake is of those with 50 casts and more.
func TestCoverage(t *testing.T) {
	t.Parallel()
	for _, g := range groups {
		all := g.columns(t)
		planes := byLake{} // of the thermocline, all sets together
		table := fmt.Sprintf("\n%s, %d columns: share inside, each lake once; above and below the interval; median width, m\n%-26s", g.name, len(all), "")
		for _, what := range sought {
			table += fmt.Sprintf(" %-26s", what)
		}
		for _, way := range []string{"even", "chosen"} {
			for _, errC := range g.errs {
				paths := each(all, func(_ int, l *lake) []float64 {
					if way == "even" {
						return nil
					}
					return chosen(t, l, 10, errC, 0.1)
				})
				for _, n := range []int{5, 7, 8, 10} {
					set := fmt.Sprintf("%-6s %2d readings, %g C", way, n, errC)
					table += fmt.Sprintf("\n%-26s", set)
					results := each(all, func(i int, l *lake) [5]cover {
						depths := paths[i]
						if way == "even" {
							depths = l.Even(n)
						}
						return covered(t, l, depths[:min(n, len(depths))], errC)
					})
					for k := range sought {
						of, sum := byLake{}, cover{}
						for i, l := range all {
							of.join(l.Lake(), results[i][k])
							sum.join(results[i][k])
							if k == 0 {
								planes.join(l.Lake(), results[i][k])
							}
						}
						table += g.check(t, set, k, of, sum)
					}
				}
			}
		}
		if worst, most := planes.extremes(50 * float64(8*len(g.errs))); worst != "" {
			low, high := planes[worst].share(), planes[most].share()
			table += fmt.Sprintf("\nthe thermocline, all sets together: from %.3f in lake %s to %.3f in lake %s", low, worst, high, most)
			if !testing.Short() && (low < g.worst || high > g.most) {
				t.Errorf("%s: inside %.3f in lake %s, %.3f in lake %s, outside the %.3f to %.3f reached before", g.name, low, worst, high, most, g.worst, g.most)
			}
		}
		t.Log(table)
	}
}

// each works on lakes side by side, and keeps their order.
func each[T any](all []*lake, do func(int, *lake) T) []T {
	out := make([]T, len(all))
	var wg sync.WaitGroup
	for part := range runtime.NumCPU() {
		wg.Go(func() {
			for i := part; i < len(all); i += runtime.NumCPU() {
				out[i] = do(i, all[i])
			}
		})
	}
	wg.Wait()
	return out
}

func (c *cover) join(o cover) {
	c.n += o.n
	c.inside += o.inside
	c.above += o.above
	c.below += o.below
	c.held += o.held
	c.width, c.gap = append(c.width, o.width...), append(c.gap, o.gap...)
}
