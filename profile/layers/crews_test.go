package layers

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"coldseam/profile"
)

// score adds up how well metalimnia agree with those that field crews marked.
type score struct{ n, overlap, top, bottom, both float64 }

// add counts one lake; ok is false where no metalimnion was found.
func (s *score) add(top, bottom float64, c cast, ok bool) {
	s.n++
	if !ok {
		return
	}
	t, b := c.mark["T"], c.mark["B"]
	if all := math.Max(bottom, b) - math.Min(top, t); all > 0 {
		s.overlap += math.Max(0, math.Min(bottom, b)-math.Max(top, t)) / all
	}
	goodTop, goodBottom := math.Abs(top-t) <= 1+1e-9, math.Abs(bottom-b) <= 1+1e-9
	if goodTop {
		s.top++
	}
	if goodBottom {
		s.bottom++
	}
	if goodTop && goodBottom {
		s.both++
	}
}

// shares are the mean overlap (intersection over union), and the shares of lakes
// with the top, the bottom and both within 1 m.
func (s score) shares() [4]float64 {
	return [4]float64{s.overlap / s.n, s.top / s.n, s.bottom / s.n, s.both / s.n}
}

// plain is the rule to beat: the first and the last interval of at least 1 C/m.
func plain(c profile.Column) (top, bottom float64, ok bool) {
	for i := 1; i < c.Len(); i++ {
		a, b := c.At(i-1), c.At(i)
		if (a.TempC-b.TempC)/(b.DepthM-a.DepthM) >= SteepCPerM-1e-9 {
			if !ok {
				top, ok = a.DepthM, true
			}
			bottom = b.DepthM
		}
	}
	return top, bottom, ok
}

// Crews marked the top and the bottom of the metalimnion on a reading: U.S. EPA,
// National Lakes Assessment 2007 and 2017. Limits of the zone (bridgeM, tailM and
// bridgeShare) were chosen on 2007 only. The floors are what was reached, rounded
// down to 0.005.
func TestCrews(t *testing.T) {
	all := casts(t, "nla_marked.csv", 0.25)
	table := fmt.Sprintf("\n%-12s %5s %8s %8s %8s %8s\n", "", "lakes", "overlap", "top", "bottom", "both")
	for _, year := range []struct {
		name, in string
		floor    [4]float64
	}{
		{"2007 and 2017", "", [4]float64{0.695, 0.900, 0.845, 0.800}},
		{"2007", "_2007", [4]float64{0.680, 0.870, 0.825, 0.765}},
		{"2017", "_2017", [4]float64{0.705, 0.925, 0.865, 0.830}},
	} {
		var ours, rule score
		for _, c := range all {
			if !strings.Contains(c.name, year.in) {
				continue
			}
			col := c.column(t)
			l := Find(col)
			if l.Structure == Layered {
				ours.add(l.MetaTop.Best, l.MetaBottom.Best, c, true)
			} else {
				ours.add(0, 0, c, false)
			}
			top, bottom, ok := plain(col)
			rule.add(top, bottom, c, ok)
		}
		table += fmt.Sprintf("%-13s %4.0f %8.3f\n%-13s %4s %8.3f\n", year.name, ours.n, ours.shares(), "  plain rule", "", rule.shares())
		for i, got := range ours.shares() {
			what := [4]string{"overlap", "top", "bottom", "both"}[i]
			if got < year.floor[i] {
				t.Errorf("%s: %s %.3f, below the %.3f reached before", year.name, what, got, year.floor[i])
			}
			if plain := rule.shares()[i]; year.in == "" && got <= plain {
				t.Errorf("%s: %s %.3f, not above the plain rule's %.3f", year.name, what, got, plain)
			}
		}
	}
	t.Log(table)
}

// No column is called layered whose temperatures span less than 1 C.
func TestNothingInventedInEvenColumns(t *testing.T) {
	even := 0
	for _, file := range []string{"nla_unmarked.csv", "nla_marked.csv", "cascade_dense.csv", "virginia.csv"} {
		for _, c := range casts(t, file, 0.25) {
			col := c.column(t)
			low, high := math.Inf(1), math.Inf(-1)
			for _, p := range col.Points() {
				low, high = math.Min(low, p.TempC), math.Max(high, p.TempC)
			}
			if high-low >= 1 {
				continue
			}
			even++
			if l := Find(col); l.Structure == Layered {
				t.Errorf("%s, %s: %v in %v to %v C", file, c.name, l, low, high)
			}
		}
	}
	t.Logf("%d columns span less than 1 C", even)
	if even == 0 {
		t.Error("no column spans less than 1 C: nothing was tested")
	}
}
