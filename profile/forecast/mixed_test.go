package forecast

import (
	"math"
	"testing"
)

// hideMixed hides every drop in turn and forecasts its mixed layer's temperature.
func hideMixed(tb testing.TB, least, most float64) (out []hidden) {
	all := lakes(tb)
	for i, target := range all {
		for j := i - 1; j >= 0 && all[j].lake == target.lake; j-- {
			days := target.dense.When.Sub(all[j].dense.When).Hours() / 24
			if days < least || days > most {
				continue
			}
			w, err := newWater(Input{Day: target.dense.When, Drops: []Drop{all[j].dense}})
			if err != nil {
				continue
			}
			out = append(out, hidden{lake: target.lake, group: target.group, days: days, same: w.last().Layers.MixedTempC,
				features: w.warming(), doubt: w.mixedDoubt(), truth: target.dense.Layers.MixedTempC})
		}
	}
	return out
}

// The mixed layer's temperature, each lake by coefficients from all others.
func TestMixedLayer(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		least, most, lowest, highest float64
	}{{1, 7, 0.75, 0.9}, {8, 21, 0.75, 0.9}, {22, 35, 0.75, 0.92}} {
		all := hideMixed(t, c.least, c.most)
		for _, group := range []string{"Cascade", "Virginia"} {
			s := scoreOf(all, group, fitsOf(t, "mixed layer").without)
			if len(s.half) < 25 {
				continue
			}
			_, _, least, most := s.worst()
			t.Logf("%g to %g days, %s, %d: %.2f C, the same %.2f; +- %.2f holds %.3f, in a lake %.2f to %.2f", c.least, c.most, group, len(s.half),
				quantile(s.misses[ours], 0.5), quantile(s.misses[same], 0.5), quantile(s.half, 0.5), s.share(), least, most)
			if v := s.share(); math.IsNaN(v) || v < c.lowest || v > c.highest {
				t.Errorf("%g to %g days, %s: holds %.3f", c.least, c.most, group, v)
			}
		}
	}
}
