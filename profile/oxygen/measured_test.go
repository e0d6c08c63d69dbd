package oxygen

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/layers"
)

// Oxygen hidden, in layered columns that cross 5 mg/L: Below against what was measured,
// from all readings and from 8 and 5 even ones; in held-out casts beside the metalimnion's
// top and its interval, for the first two: finding it takes most of the time. The floors
// are what was reached in lakes that nothing was fitted on, rounded outwards.
func TestMeasuredLakes(t *testing.T) {
	floors := map[string]struct{ safe, given [3]float64 }{
		"NLA, held out":          {[3]float64{.89, .885, .885}, [3]float64{1.36, 1.35, 1.44}},
		"NLA unmarked, held out": {[3]float64{.925, .94, .88}, [3]float64{1.24, 1.29, 1.34}},
		"Cascade, held out":      {[3]float64{.955, .95, .945}, [3]float64{1.15, 1.12, 1.29}},
		"Virginia, held out":     {[3]float64{.90, .91, .92}, [3]float64{1.95, 1.745, 1.95}},
	}
	all := lakes(t)
	var b strings.Builder
	b.WriteString(meaning)
	for i, n := range []int{0, 8, 5} {
		fmt.Fprintf(&b, "\n\n%-23s %s", []string{"all readings", "8 even readings", "5 even readings"}[i], heads)
		named, top := map[string]*tally{}, map[string]*tally{}
		for _, g := range groups {
			named[g], top[g] = &tally{}, &tally{}
		}
		for j := range all {
			l := &all[j]
			z, how := l.crossing(5)
			if how != crosses || l.whole.Layers.Structure != layers.Layered {
				continue
			}
			in := l.thinned(t, n)
			e, ok := Below(in)
			named[l.group()].add(l, e, ok, z, 5)
			if l.fitted || n == 5 {
				continue
			}
			e = profile.Estimate{}
			m := layers.Find(in.Column).MetalimnionTop
			if m != nil {
				e = *m
			}
			top[l.group()].add(l, e, m != nil, z, 5)
		}
		for _, g := range groups {
			s := named[g]
			fmt.Fprintf(&b, "\n%-23s %v", g, s)
			if top[g].n > 0 {
				fmt.Fprintf(&b, "\n%23s %v", "metalimnion's top", top[g])
			}
			f, ok := floors[g]
			if !ok {
				continue
			}
			if s.safeShare() < f.safe[i] {
				t.Errorf("%s, %d readings: %.3f safe, below the %.3f reached before", g, n, s.safeShare(), f.safe[i])
			}
			if m := median(s.given); m > f.given[i] {
				t.Errorf("%s, %d readings: %.3f m given away, above the %.3f reached before", g, n, m, f.given[i])
			}
		}
	}
	t.Log(b.String())
}

// The same at other needs, from all readings.
func TestNeeds(t *testing.T) {
	const floor = 0.88 // safe, of each held-out set at each need
	all := lakes(t)
	var b strings.Builder
	for _, need := range []float64{3, 4, 6, 6.5, 7} {
		fmt.Fprintf(&b, "\n%-23s %s", fmt.Sprintf("%g mg/L", need), heads)
		for _, g := range groups {
			var s tally
			for j := range all {
				l := &all[j]
				z, how := l.crossing(need)
				if l.group() != g || how != crosses || l.whole.Layers.Structure != layers.Layered {
					continue
				}
				in := l.whole
				in.NeedMgL = need
				e, ok := Below(in)
				s.add(l, e, ok, z, need)
			}
			fmt.Fprintf(&b, "\n%-23s %v", g, s)
			if strings.HasSuffix(g, "held out") && s.safeShare() < floor {
				t.Errorf("%g mg/L, %s: %.3f safe, below %v", need, g, s.safeShare(), floor)
			}
		}
	}
	t.Log(b.String())
}

// Is Low as safe in every season and over every water? Held-out casts that cross 5 mg/L,
// each lake counting once in a line. The season is the reason to try for a rule on the
// date: see the package comment for why there is none.
func TestSeasons(t *testing.T) {
	const floor = 0.79
	all := lakes(t)
	var b strings.Builder
	for _, x := range []struct {
		name string
		of   func(*lake) float64
		ends []float64
	}{
		{"day of the year", func(l *lake) float64 { return float64(l.day) }, []float64{0, 165, 196, 227, 258, 366}},
		{"coldest water, C", func(l *lake) float64 { return slices.Min(l.Temps) }, []float64{-1, 6, 10, 15, 20, 40}},
		{"deepest reading, m", (*lake).Bottom, []float64{0, 5, 8, 12, 20, 200}},
	} {
		for i := range x.ends[1:] {
			count, safe := map[string]float64{}, map[string]float64{}
			var given []float64
			for j := range all {
				l := &all[j]
				z, how := l.crossing(5)
				if v := x.of(l); l.fitted || how != crosses || l.whole.Layers.Structure != layers.Layered || v < x.ends[i] || v >= x.ends[i+1] {
					continue
				}
				e, ok := Below(l.whole)
				count[l.water]++
				safe[l.water] += one(ok && e.Low <= z)
				given = append(given, z-e.Low)
			}
			share := 0.0
			for lake, n := range count {
				share += safe[lake] / n / float64(len(count))
			}
			fmt.Fprintf(&b, "\n%-18s %3.0f to %3.0f: %3d columns of %3d lakes, %3.0f %% safe, gives away %.2f m", x.name, x.ends[i], x.ends[i+1], len(given), len(count), 100*share, median(given))
			if share < floor {
				t.Errorf("%s from %v: %.3f safe", x.name, x.ends[i], share)
			}
		}
	}
	t.Log(b.String())
}

// Columns that are not layered: how often a depth is named, and how often oxygen falls
// under 5 mg/L all the same.
func TestNotLayered(t *testing.T) {
	all := lakes(t)
	var b strings.Builder
	for _, s := range []layers.Structure{layers.Mixed, layers.SkinOnly, layers.Inverse} {
		var n, named, namedShort, safe, short float64
		var above []float64
		for j := range all {
			l := &all[j]
			z, how := l.crossing(5)
			if l.whole.Layers.Structure != s || how == low {
				continue
			}
			n++
			e, ok := Below(l.whole)
			switch {
			case ok:
				named++
				namedShort += one(how == crosses)
				safe += one(how == crosses && e.Low <= z)
			case how == crosses:
				short++
				above = append(above, l.Bottom()-z)
			}
		}
		fmt.Fprintf(&b, "\n%-10s %3.0f columns: a depth named in %2.0f, %2.0f of them run short, %2.0f safe; of the other %3.0f, %2.0f run short, in the median %.1f m above the deepest reading",
			s, n, named, namedShort, safe, n-named, short, median(above))
		if s == layers.Inverse && named > 0 {
			t.Errorf("a depth named in %v inverse columns", named)
		}
		if safe < 0.9*namedShort {
			t.Errorf("%s: %v of %v safe", s, safe, namedShort)
		}
	}
	t.Log(b.String())
}

// Readings that end above the lake's deepest water: the fall is then less, and Low
// shallower.
func TestCutOff(t *testing.T) {
	all := lakes(t)
	var b strings.Builder
	for _, x := range []struct {
		name string
		at   func(*lake) float64
	}{
		{"metalimnion's bottom", func(l *lake) float64 { return l.whole.Layers.MetalimnionBottom.Best }},
		{"thermocline", func(l *lake) float64 { return l.whole.Layers.Thermocline.Best }},
		{"20 ft", func(*lake) float64 { return 20 * footM }},
	} {
		fmt.Fprintf(&b, "\n%-23s %s", "to "+x.name, heads)
		for _, g := range groups {
			var s tally
			not := 0
			for j := range all {
				l := &all[j]
				z, how := l.crossing(5)
				if l.group() != g || how != crosses || l.whole.Layers.Structure != layers.Layered || x.at(l) >= l.Bottom() {
					continue
				}
				if e, ok := Below(l.cut(t, x.at(l))); ok {
					s.add(l, e, true, z, 5)
				} else {
					not++
				}
			}
			fmt.Fprintf(&b, "\n%-23s %v, and %d without a depth", g, s, not)
			if strings.HasSuffix(g, "held out") && s.safeShare() < 0.915 {
				t.Errorf("to %s, %s: %.3f safe", x.name, g, s.safeShare())
			}
		}
	}
	t.Log(b.String())
}

// Anchored where oxygen is down to 1 mg/L, as over black mud: readings to there, with
// and without the word of it. In the columns that are not layered the factors were not
// fitted either.
func TestBlackMud(t *testing.T) {
	all := lakes(t)
	var b strings.Builder
	fmt.Fprintf(&b, "\n%-23s %s", "", heads)
	const notLayered = "not layered, any set"
	for _, g := range append(slices.Clone(groups), notLayered) {
		var with, without tally
		for j := range all {
			l := &all[j]
			z, how := l.crossing(5)
			gone, ok := layers.Linear(l.z, l.v, goneMgL)
			group := l.group()
			if l.whole.Layers.Structure != layers.Layered {
				group = notLayered
			}
			if group != g || how != crosses || !ok {
				continue
			}
			in := l.cut(t, gone)
			in.NeedMgL, in.Bottom = 5, profile.Some(gone)
			e, ok := Below(in)
			without.add(l, e, ok, z, 5)
			in.AnchorBlack = true
			e, ok = Below(in)
			with.add(l, e, ok, z, 5)
		}
		fmt.Fprintf(&b, "\n%-23s %v\n%23s %v", g, with, "nothing said of mud", without)
		floor := 0.905
		if g == notLayered {
			floor = 0.73
		}
		if !strings.HasSuffix(g, ", fitted") && with.safeShare() < floor {
			t.Errorf("%s: %.3f safe, below %v", g, with.safeShare(), floor)
		}
	}
	t.Log(b.String())
}
