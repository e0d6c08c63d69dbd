package check

import (
	"testing"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// flagged gives the readings of a drop that are used no more, or disagree, by their place.
func flagged(depthsM, tempsC []float64) (left, disagree []int) {
	var d profile.Drop
	for i := range depthsM {
		d.Readings = append(d.Readings, profile.Reading{Depth: depthsM[i], DepthUnit: unit.Metre, Temp: tempsC[i], TempUnit: unit.Celsius})
	}
	d = Of(d).Drop()
	for i, r := range d.Readings {
		if !r.Used() {
			left = append(left, i)
		}
		if r.Flag == profile.RepeatDisagrees {
			disagree = append(disagree, i)
		}
	}
	return left, disagree
}

// TestSpikeAndRepeatLimits: a reading 2 C outside both neighbours, and readings of one
// depth 1 F apart, are what the limits let pass (common practice); a little more is not.
func TestSpikeAndRepeatLimits(t *testing.T) {
	for _, c := range []struct {
		temp float64
		want int
	}{{21.95, 0}, {22.05, 1}, {16.05, 0}, {15.95, 1}} {
		left, _ := flagged([]float64{0, 3, 6}, []float64{20, c.temp, 18})
		if len(left) != c.want || c.want == 1 && left[0] != 1 {
			t.Errorf("%v C between 20 and 18: left out %v, want %d", c.temp, left, c.want)
		}
	}
	for _, c := range []struct {
		again float64
		want  int
	}{{19.46, 0}, {19.42, 2}, {20.54, 0}, {20.58, 2}} {
		if _, disagree := flagged([]float64{0, 3, 3, 6}, []float64{21, 20, c.again, 18}); len(disagree) != c.want {
			t.Errorf("20 and %v C at one depth: %v disagree, want %d", c.again, disagree, c.want)
		}
	}
}

// TestCulprit: where the first reading is too cold for all below it, it is the odd one,
// and so is a last one that is too warm for all above it.
func TestCulprit(t *testing.T) {
	for _, c := range []struct {
		temps []float64
		want  int
	}{{[]float64{12, 24, 20, 19}, 0}, {[]float64{24, 18, 13, 21}, 3}, {[]float64{22, 21, 28, 20}, 2}} {
		if left, _ := flagged([]float64{0, 3, 6, 9}, c.temps); len(left) != 1 || left[0] != c.want {
			t.Errorf("%v: left out %v, want %d", c.temps, left, c.want)
		}
	}
}
