package forecast

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"
)

// levels are the temperatures whose depths are forecast, C: where water begins to suit the
// fish of the table.
var levels = []float64{12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24}

// hideLevels hides every drop for every level, with -short for some.
func hideLevels(tb testing.TB, least, most float64, few bool) (out []hidden) {
	for i, c := range levels {
		if testing.Short() && i%4 != 3 {
			continue
		}
		out = append(out, hide(tb, isotherm(c), least, most, few)...)
	}
	return out
}

// fitted are the coefficients of each lake from all others, and of all.
type fitted struct {
	without map[string]coefficients
	all     coefficients
}

var fits = struct {
	sync.Mutex
	of map[string]fitted
}{of: map[string]fitted{}}

// fitsOf are those of the thermocline or of the isotherms, on drops 8 to 21 days before.
func fitsOf(tb testing.TB, name string) fitted {
	fits.Lock()
	defer fits.Unlock()
	f, ok := fits.of[name]
	if !ok {
		var all []hidden
		share := 0.80
		switch name {
		case "thermocline":
			all = hide(tb, thermocline{}, 8, 21, false)
		case "isotherm":
			all = hideLevels(tb, 8, 21, false)
		case "mixed layer":
			all = hideMixed(tb, 8, 21)
			share = 0.85 // of all, for three quarters in the worse group
		}
		f = fitted{without(all, share), fit(all, share)}
		fits.of[name] = f
	}
	return f
}

// The coefficients in the code are those that all lakes give.
func TestFitted(t *testing.T) {
	t.Parallel()
	for name, have := range map[string]coefficients{"thermocline": ofThermocline, "isotherm": ofIsotherm, "mixed layer": ofMixed} {
		if testing.Short() && name == "isotherm" {
			continue // fitted on all levels
		}
		f := fitsOf(t, name)
		t.Logf("%s: %.3f, scale %.3f", name, f.all.change, f.all.scale)
		for i, c := range f.all.change {
			if math.Abs(c-have.change[i]) > 0.0006 {
				t.Errorf("%s, coefficient %d: fitted %.4f, the code has %g", name, i+1, c, have.change[i])
			}
		}
		if math.Abs(f.all.scale-have.scale) > 0.006 {
			t.Errorf("%s, scale: fitted %.4f, the code has %g", name, f.all.scale, have.scale)
		}
	}
}

// score is what a way of forecasting reached in one group of lakes.
type score struct {
	misses map[string][]float64 // m, of each way
	lakes  map[string][]float64 // ours, of each lake
	held   map[string][2]float64
	half   []float64
	first  [2]float64 // held and number in a lake's first year
}

const (
	same     = "same as last time"
	constant = "sinks 3.5 cm a day"
	ours     = "this package"
)

func scoreOf(all []hidden, group string, f map[string]coefficients) score {
	s := score{misses: map[string][]float64{}, lakes: map[string][]float64{}, held: map[string][2]float64{}}
	for _, h := range all {
		if h.group != group {
			continue
		}
		best, half := h.of(f[h.lake])
		miss := math.Abs(best - h.truth)
		s.misses[same] = append(s.misses[same], math.Abs(h.same-h.truth))
		s.misses[constant] = append(s.misses[constant], math.Abs(h.same+0.035*h.days-h.truth))
		s.misses[ours] = append(s.misses[ours], miss)
		s.lakes[h.lake] = append(s.lakes[h.lake], miss)
		s.half = append(s.half, half)
		in := 0.0
		if miss <= half {
			in = 1
		}
		s.held[h.lake] = [2]float64{s.held[h.lake][0] + in, s.held[h.lake][1] + 1}
		if h.first {
			s.first = [2]float64{s.first[0] + in, s.first[1] + 1}
		}
	}
	return s
}

func quantile(v []float64, p float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	s := slices.Sorted(slices.Values(v))
	return s[min(int(p*float64(len(s))), len(s)-1)]
}

// share is that of the intervals that held.
func (s score) share() float64 {
	in, n := 0.0, 0.0
	for _, h := range s.held {
		in, n = in+h[0], n+h[1]
	}
	return in / n
}

// worst are the lakes, of ten forecasts or more, with the greatest median miss and with the
// least and greatest share held.
func (s score) worst() (missM float64, lake string, least, most float64) {
	least = 1
	for _, name := range slices.Sorted(maps.Keys(s.lakes)) {
		if len(s.lakes[name]) < 10 {
			continue
		}
		if m := quantile(s.lakes[name], 0.5); m > missM {
			missM, lake = m, name
		}
		held := s.held[name][0] / s.held[name][1]
		least, most = math.Min(least, held), math.Max(most, held)
	}
	return missM, lake, least, most
}

// Every drop is hidden in turn and forecast from each drop 8 to 21 days before, each lake by
// coefficients from all other lakes. Ours has to be better than both simple ways in each
// group of lakes, and the intervals have to hold in 75 to 85 %. The floors are what was
// reached, rounded outwards.
func TestMethods(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, fit       string
		hide            func(least, most float64, few bool) []hidden
		cascade, others float64 // greatest median miss, m
	}{
		{"thermocline", "thermocline", func(a, b float64, few bool) []hidden { return hide(t, thermocline{}, a, b, few) }, 0.28, 0.51},
		{"depth of 19 C", "isotherm", func(a, b float64, few bool) []hidden { return hide(t, isotherm(19), a, b, few) }, 0.17, 0.34},
		{"depths of 12 to 24 C", "isotherm", func(a, b float64, few bool) []hidden { return hideLevels(t, a, b, few) }, 0.15, 0.34},
	} {
		var b strings.Builder
		fmt.Fprintf(&b, "\n%s: median miss, and that of four fifths, m", c.name)
		for _, kind := range []struct {
			name        string
			few         bool
			least, most float64
			lowest      float64 // shares held
			highest     float64
		}{
			{"8 to 21 days ahead", false, 8, 21, 0.75, 0.85},
			{"1 to 7 days", false, 1, 7, 0.73, 0.87},
			{"22 to 35 days", false, 22, 35, 0.73, 0.90},
			{"8 to 21 days, from drops of 8 readings", true, 8, 21, 0.75, 0.95},
			{"1 to 7 days, from drops of 8 readings", true, 1, 7, 0.73, 0.90},
			{"22 to 35 days, from drops of 8 readings", true, 22, 35, 0.75, 0.99},
		} {
			if testing.Short() && kind.least != 8 {
				continue
			}
			all := c.hide(kind.least, kind.most, kind.few)
			for _, group := range []string{"Cascade", "Virginia"} {
				s := scoreOf(all, group, fitsOf(t, c.fit).without)
				if len(s.half) < 25 { // Cascade was read every fortnight
					continue
				}
				fmt.Fprintf(&b, "\n  %s, %s, %d forecasts", kind.name, group, len(s.half))
				median := map[string]float64{}
				for _, way := range []string{same, constant, ours} {
					median[way] = quantile(s.misses[way], 0.5)
					fmt.Fprintf(&b, "; %s %.2f %.2f", way, median[way], quantile(s.misses[way], 0.8))
				}
				miss, lake, least, most := s.worst()
				fmt.Fprintf(&b, "; worst lake %s %.2f; interval +- %.2f holds %.3f, in a lake %.2f to %.2f, in its first year %.0f of %.0f",
					lake, miss, quantile(s.half, 0.5), s.share(), least, most, s.first[0], s.first[1])
				if median[ours] >= median[same] || median[ours] >= median[constant] {
					t.Errorf("%s, %s, %s: ours %.3f m, the same %.3f, constant %.3f", c.name, kind.name, group, median[ours], median[same], median[constant])
				}
				if v := s.share(); v < kind.lowest || v > kind.highest {
					t.Errorf("%s, %s, %s: the intervals hold in %.3f, outside %.2f to %.2f", c.name, kind.name, group, v, kind.lowest, kind.highest)
				}
				floor := c.cascade
				if group == "Virginia" {
					floor = c.others
				}
				if kind.least == 8 && !kind.few && median[ours] > floor && !testing.Short() {
					t.Errorf("%s, %s: median miss %.3f m, above the %.2f reached before", c.name, group, median[ours], floor)
				}
			}
		}
		t.Log(b.String())
	}
}

// The same with each group of lakes forecast by coefficients from the other group alone.
func TestOtherGroup(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name         string
		train, shown []hidden
		aims         map[string]float64 // m
	}{
		{"thermocline", hide(t, thermocline{}, 8, 21, false), hide(t, thermocline{}, 8, 21, false), map[string]float64{"Cascade": 0.30, "Virginia": 0.55}},
		{"depth of 19 C", hideLevels(t, 8, 21, false), hide(t, isotherm(19), 8, 21, false), map[string]float64{"Cascade": 0.30, "Virginia": 0.38}},
	} {
		for _, group := range []string{"Cascade", "Virginia"} {
			f := fit(slices.DeleteFunc(slices.Clone(c.train), func(h hidden) bool { return h.group == group }), 0.80)
			by := map[string]coefficients{}
			for _, h := range c.shown {
				by[h.lake] = f
			}
			s := scoreOf(c.shown, group, by)
			median := quantile(s.misses[ours], 0.5)
			t.Logf("%s, %s by the other group: %.3f m (same %.3f), intervals hold %.2f", c.name, group, median, quantile(s.misses[same], 0.5), s.share())
			if median > c.aims[group] {
				t.Errorf("%s, %s: median miss %.3f m, over the aim of %.2f", c.name, group, median, c.aims[group])
			}
		}
	}
}
