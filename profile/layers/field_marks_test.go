package layers

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/internal/measured"
)

// score adds up how well metalimnia agree with those that field crews marked.
type score struct{ n, overlap, top, bottom, both float64 }

// add counts one lake; ok is false where no metalimnion was found.
func (s *score) add(top, bottom float64, c measured.Cast, ok bool) {
	s.n++
	if !ok {
		return
	}
	t, b := c.Mark["T"], c.Mark["B"]
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

// unbroken is another rule: the steepest interval of at least 1 C/m, and those around
// it as long as they fall 1 C/m too.
func unbroken(c profile.Column) (top, bottom float64, ok bool) {
	fall := func(i int) float64 {
		a, b := c.At(i), c.At(i+1)
		return (a.TempC - b.TempC) / (b.DepthM - a.DepthM)
	}
	first := 0
	for i := 1; i+1 < c.Len(); i++ {
		if fall(i) > fall(first) {
			first = i
		}
	}
	last := first
	if c.Len() < 2 || fall(first) < SteepCPerM-1e-9 {
		return 0, 0, false
	}
	for first > 0 && fall(first-1) >= SteepCPerM-1e-9 {
		first--
	}
	for last+2 < c.Len() && fall(last+1) >= SteepCPerM-1e-9 {
		last++
	}
	return c.At(first).DepthM, c.At(last + 1).DepthM, true
}

// asked is our answer for a column, where it is layered, with the edge model's chances.
func asked(c *edgeModel, col profile.Column) (top, bottom float64, ok bool) {
	l := Find(col, WithoutIntervals)
	if l.Structure != Layered {
		return 0, 0, false
	}
	f := newGradients(l.Curve.z, l.Curve.t)
	c.apply(f, l.Curve.reading[l.start], f.greatestRise(l.Curve.reading[l.start]))
	top, bottom = l.MetalimnionTop.Best, l.MetalimnionBottom.Best
	return top, bottom, true
}

// held counts how often the middle 80 % of the chances hold what a crew marked.
type held struct{ n, top, bottom, topM, bottomM float64 }

func (h *held) add(c *edgeModel, lake measured.Cast) {
	in := func(r [2]float64, mark string) float64 {
		if v := lake.Mark[mark]; r[0]-1e-9 <= v && v <= r[1]+1e-9 {
			return 1
		}
		return 0
	}
	top, bottom := c.middle80()
	h.n++
	h.top += in(top, "T")
	h.bottom += in(bottom, "B")
	h.topM += top[1] - top[0]
	h.bottomM += bottom[1] - bottom[0]
}

// Crews marked the top and the bottom of the metalimnion on a reading: U.S. EPA,
// National Lakes Assessment 2007 and 2017. The four numbers of the edge model, and
// overlapWorth, were chosen on 2007; 2017 was held out. The floors are what was
// reached, rounded down to 0.005.
func TestFieldMarks(t *testing.T) {
	t.Parallel()
	all := measured.Casts(t, "nla_marked.csv")
	table := fmt.Sprintf("\n%-16s %5s  %7s %7s %7s %7s\n", "", "lakes", "overlap", "top", "bottom", "both")
	ranges := fmt.Sprintf("\n%-16s %5s  %s\n", "the middle 80 %", "lakes", "holds the top, the bottom; mean width in m")
	c := new(edgeModel)
	for _, year := range []struct {
		name, in string
		floor    [4]float64
	}{
		{"2007 (fitted)", "_2007", [4]float64{0.675, 0.905, 0.845, 0.805}},
		{"2017 (held out)", "_2017", [4]float64{0.715, 0.950, 0.890, 0.880}},
		{"both", "", [4]float64{0.695, 0.930, 0.870, 0.845}},
	} {
		var ours, rule, zone score
		var h held
		for _, lake := range all {
			if !strings.Contains(lake.Name, year.in) {
				continue
			}
			col := lake.Column(t)
			top, bottom, ok := asked(c, col)
			ours.add(top, bottom, lake, ok)
			if ok {
				h.add(c, lake)
			}
			top, bottom, ok = plain(col)
			rule.add(top, bottom, lake, ok)
			top, bottom, ok = unbroken(col)
			zone.add(top, bottom, lake, ok)
		}
		table += fmt.Sprintf("%-16s %5.0f  %7.3f\n", year.name, ours.n, ours.shares())
		table += fmt.Sprintf("%-16s %5s  %7.3f\n%-16s %5s  %7.3f\n", "  plain rule", "", rule.shares(), "  unbroken zone", "", zone.shares())
		ranges += fmt.Sprintf("%-16s %5.0f  %.3f %.3f; %.2f %.2f\n", year.name, h.n, h.top/h.n, h.bottom/h.n, h.topM/h.n, h.bottomM/h.n)
		for i, got := range ours.shares() {
			what := [4]string{"overlap", "top", "bottom", "both"}[i]
			if got < year.floor[i] {
				t.Errorf("%s: %s %.3f, below the %.3f reached before", year.name, what, got, year.floor[i])
			}
			if best := max(rule.shares()[i], zone.shares()[i]); got <= best {
				t.Errorf("%s: %s %.3f, not above another rule's %.3f", year.name, what, got, best)
			}
		}
		if h.top < 0.8*h.n || h.bottom < 0.8*h.n {
			t.Errorf("%s: 80 %% of the chances hold %.3f of the tops and %.3f of the bottoms", year.name, h.top/h.n, h.bottom/h.n)
		}
	}
	t.Log(table + ranges)
}

// The same with each lake counted once, whatever its visits, and lake by lake kind: by the
// thickness of the zone that the crew marked, which no column tells beforehand. The worst
// are zones of 1 m, and among them ponds whose break lies within a metre of the surface:
// those are called a skin, and get no metalimnion. The spread is that of random halves
// of the lakes: a change by less has shown nothing. The floors are what was reached.
func TestFieldMarksByThickness(t *testing.T) {
	t.Parallel()
	all := measured.Casts(t, "nla_marked.csv")
	type answer struct {
		measured.Cast
		top, bottom float64
		ok          bool
	}
	lakes := map[string][]answer{}
	c := new(edgeModel)
	for _, lake := range all {
		top, bottom, ok := asked(c, lake.Column(t))
		name, _, _ := strings.Cut(lake.Name, "_20")
		lakes[name] = append(lakes[name], answer{lake, top, bottom, ok})
	}
	names := slices.Sorted(maps.Keys(lakes))
	tally := func(names []string, in func(thickM float64) bool) (once score, none, topM, bottomM float64) {
		found := 0.0
		for _, name := range names {
			var visits score
			for _, a := range lakes[name] {
				if !in(a.Mark["B"] - a.Mark["T"]) {
					continue
				}
				visits.add(a.top, a.bottom, a.Cast, a.ok)
				if !a.ok {
					none++
					continue
				}
				found++
				topM, bottomM = topM+a.top-a.Mark["T"], bottomM+a.bottom-a.Mark["B"]
			}
			if visits.n > 0 {
				s := visits.shares()
				once.n++
				once.overlap, once.top, once.bottom, once.both = once.overlap+s[0], once.top+s[1], once.bottom+s[2], once.both+s[3]
			}
		}
		return once, none, topM / found, bottomM / found
	}
	table := "\neach lake once      lakes overlap, top, bottom, both within 1 m; without an answer; top and bottom off, m"
	for _, x := range []struct {
		name              string
		overM, toM        float64
		overlap, both, no float64 // floors, and the most without an answer
	}{
		{"all", -1, 99, 0.690, 0.835, 28}, {"up to 1 m thick", -1, 1, 0.36, 0.65, 22}, {"1 to 2 m", 1, 2, 0.68, 0.83, 6},
		{"2 to 4 m", 2, 4, 0.76, 0.885, 2}, {"over 4 m", 4, 99, 0.79, 0.87, 1},
	} {
		s, none, topM, bottomM := tally(names, func(m float64) bool { return m > x.overM+1e-9 && m <= x.toM+1e-9 })
		got := s.shares()
		table += fmt.Sprintf("\n%-18s %5.0f  %.3f; %2.0f; %+.2f %+.2f", x.name, s.n, got, none, topM, bottomM)
		if got[0] < x.overlap || got[3] < x.both || none > x.no {
			t.Errorf("%s: overlap %.3f, both %.3f, %v without an answer, worse than the %v, %v and %v reached before", x.name, got[0], got[3], none, x.overlap, x.both, x.no)
		}
	}
	rng := rand.New(rand.NewPCG(1, 0))
	var overlap, both []float64
	for range 20 {
		rng.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
		s, _, _, _ := tally(names[:len(names)/2], func(float64) bool { return true })
		overlap, both = append(overlap, s.shares()[0]), append(both, s.shares()[3])
	}
	table += fmt.Sprintf("\n20 random halves: overlap %.3f to %.3f, both %.3f to %.3f", slices.Min(overlap), slices.Max(overlap), slices.Min(both), slices.Max(both))
	t.Log(table)
}

// No column is called layered whose temperatures span less than 1 C.
func TestNothingInventedInEvenColumns(t *testing.T) {
	t.Parallel()
	even := 0
	for _, file := range []string{"nla_unmarked.csv", "nla_marked.csv", "cascade_dense.csv", "virginia.csv"} {
		for _, c := range measured.Casts(t, file) {
			col := c.Column(t)
			low, high := math.Inf(1), math.Inf(-1)
			for _, p := range col.Points() {
				low, high = math.Min(low, p.TempC), math.Max(high, p.TempC)
			}
			if high-low >= 1 {
				continue
			}
			even++
			if l := Find(col); l.Structure == Layered {
				t.Errorf("%s, %s: %v in %v to %v C", file, c.Name, l, low, high)
			}
		}
	}
	t.Logf("%d columns span less than 1 C", even)
	if even == 0 {
		t.Error("no column spans less than 1 C: nothing was tested")
	}
}
