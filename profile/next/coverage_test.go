package next

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
)

// cover counts how often an interval holds the dense column's answer.
type cover struct {
	n, inside     float64
	width, gap    []float64 // of the interval, and of the two readings around the best answer
	between, held float64   // those two readings' own share
}

func (c *cover) add(low, high, gapLow, gapHigh, truth float64) {
	c.n++
	if low <= truth && truth <= high {
		c.inside++
	}
	if gapLow <= truth && truth <= gapHigh {
		c.held++
	}
	c.width, c.gap = append(c.width, high-low), append(c.gap, gapHigh-gapLow)
}

func (c *cover) miss() { c.n++ }

func (c cover) share() float64 { return c.inside / c.n }

func (c cover) String() string {
	return fmt.Sprintf("%5.3f %5.2f /%5.3f %5.2f", c.share(), middleOf(c.width), c.held/c.n, middleOf(c.gap))
}

func middleOf(v []float64) float64 {
	s := slices.Sorted(slices.Values(v))
	if len(s) == 0 {
		return math.NaN()
	}
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// chosen gives n depths as the advice asks for them, past its enough.
func chosen(tb testing.TB, l *lake, n int, errC, errM float64) []float64 {
	depths := []float64{}
	for len(depths) < n {
		c := l.Read(tb, append(depths, l.Depths[0])[:max(1, len(depths))], errC, errM)
		if len(depths) == 0 {
			first, _ := l.ends(footM)
			depths = append(depths, first)
			continue
		}
		z, ok := onward(tb, l, c, footM)
		if !ok {
			break
		}
		depths = append(depths, z)
	}
	return depths
}

// The 80 % intervals of the break and of the depth of 19 C against the dense columns,
// over the ways and numbers of readings.
func TestCoverage(t *testing.T) {
	fitted := map[string]bool{"L": true, "R": true, "BVR": true}
	var all []*lake
	for _, file := range []string{"cascade_dense.csv", "virginia.csv"} {
		all = append(all, lakes(t, file)...)
	}
	byLake := map[string]map[string]*cover{}
	casts := map[string]int{}
	for _, l := range all {
		casts[l.Lake()]++
	}
	table := "\nshare inside and median width, m / the same of the two readings around it\n" +
		fmt.Sprintf("%-26s %-26s%-26s %-26s%s\n", "", "break: fitted lakes", "other lakes", "19 C: fitted lakes", "other lakes")
	for _, way := range []string{"even", "chosen"} {
		for _, errC := range []float64{0.1, 0.3} {
			for _, n := range []int{5, 7, 8, 10} {
				var brk, level [2]cover
				set := fmt.Sprintf("%-6s %2d readings, %g C", way, n, errC)
				for _, l := range all {
					depths := l.Even(n)
					if way == "chosen" {
						depths = chosen(t, l, n, errC, 0.1)
					}
					found := layers.Find(l.Read(t, depths, errC, 0.1))
					one := cover{}
					if e := found.Thermocline; e != nil {
						i := slices.IndexFunc(found.Curve.Depths, func(z float64) bool { return z >= e.Best })
						i = min(max(i, 1), len(depths)-1)
						one.add(e.Low, e.High, found.Curve.Depths[i-1], found.Curve.Depths[i], l.truth.Thermocline)
					} else {
						one.miss()
					}
					who := 1
					if fitted[l.Lake()] {
						who = 0
					}
					brk[who].join(one)
					if casts[l.Lake()] >= 50 {
						if byLake[l.Lake()] == nil {
							byLake[l.Lake()] = map[string]*cover{}
						}
						if byLake[l.Lake()][set] == nil {
							byLake[l.Lake()][set] = &cover{}
						}
						byLake[l.Lake()][set].join(one)
					}
					if z, ok := found.Curve.Crossing(levelC, found.Curve.Top(), found.Curve.Bottom()); ok && l.falls {
						e := found.Curve.Doubt(z, levelC)
						i := slices.IndexFunc(found.Curve.Depths, func(d float64) bool { return d >= z })
						i = max(i, 1)
						level[who].add(e.Low, e.High, found.Curve.Depths[i-1], found.Curve.Depths[i], l.levelM)
					}
				}
				table += fmt.Sprintf("%-26s %v  %v   %v  %v\n", set, brk[0], brk[1], level[0], level[1])
			}
		}
	}
	for _, name := range slices.Sorted(func(yield func(string) bool) {
		for k := range byLake {
			if !yield(k) {
				return
			}
		}
	}) {
		var sum cover
		low, high := 1.0, 0.0
		for _, c := range byLake[name] {
			sum.join(*c)
			low, high = math.Min(low, c.share()), math.Max(high, c.share())
		}
		table += fmt.Sprintf("lake %-4s %3d casts: break inside %.3f in all, %.2f to %.2f in the single sets\n", name, casts[name], sum.share(), low, high)
	}
	t.Log(table)
}

func (c *cover) join(o cover) {
	c.n += o.n
	c.inside += o.inside
	c.held += o.held
	c.width, c.gap = append(c.width, o.width...), append(c.gap, o.gap...)
}

var _ = measured.Missing
