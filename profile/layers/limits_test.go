package layers

import (
	"fmt"
	"testing"

	"coldseam/profile/water"
)

// Each limit of the definitions, from both sides.
func TestLimits(t *testing.T) {
	metre := []float64{0, 1, 2, 3, 4, 5, 6}
	for _, c := range []struct {
		name          string
		depths, temps []float64
		want          Structure
		skinM         float64
	}{
		{"1.5 C in all", metre, []float64{20, 20, 20, 20, 18.9, 18.7, 18.5}, Layered, 0},
		{"1.4 C in all", metre, []float64{20, 20, 20, 20, 18.9, 18.7, 18.6}, Mixed, 0},
		{"1 C per metre", metre, []float64{20, 20, 20, 20, 19, 18.5, 18}, Layered, 0},
		{"0.9 C per metre", metre, []float64{20, 20, 20, 20, 19.1, 18.5, 18}, Mixed, 0},
		{"1 C in a wide interval", []float64{0, 2, 4, 6}, []float64{20, 20, 19, 18.5}, Layered, 0},
		{"0.9 C in a wide interval", []float64{0, 2, 4, 6}, []float64{20, 20, 19.1, 18.5}, Mixed, 0},
		{"a skin from 1 m", metre, []float64{20, 20, 19, 19, 19, 19, 19}, SkinOnly, 2},
		{"no skin from 2 m", metre, []float64{20, 20, 20, 18, 18, 18, 18}, Layered, 0},
		{"a skin of 0.5 C", metre, []float64{20, 19.5, 19.5, 19.5, 19.5, 19.5, 19.5}, SkinOnly, 1},
		{"no skin of 0.4 C", metre, []float64{20, 19.6, 19.6, 19.6, 19.6, 19.6, 19.6}, Mixed, 0},
		{"nothing read above 1.5 m: a skin", []float64{1.5, 2, 3, 4}, []float64{20, 19, 19, 19}, SkinOnly, 2},
		{"nothing read above 2 m: no skin", []float64{2, 2.5, 3, 4}, []float64{20, 19, 19, 19}, Mixed, 0},
		{"a skin of 2 C with nothing below", metre, []float64{20, 18, 18, 18, 18, 18, 18}, SkinOnly, 1},
		{"2.1 C with nothing below is the break", metre, []float64{20.1, 18, 18, 18, 18, 18, 18}, Layered, 0},
		{"a skin of 4 C over a break", metre, []float64{24, 20, 20, 20, 15, 14, 14}, Layered, 1},
		{"4.1 C over a break is a break", metre, []float64{24.1, 20, 20, 20, 15, 14, 14}, Layered, 0},
		{"under it at most half its fall", metre, []float64{20, 19, 18.5, 18.3, 18.2, 18.2, 18.2}, SkinOnly, 1},
		{"under it more than half its fall", metre, []float64{20, 19, 18.4, 18, 17.7, 17.5, 17.4}, Layered, 0},
		{"inverse by 0.5 C", metre, []float64{1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.5}, Inverse, 0},
		{"inverse by 0.4 C is nothing", metre, []float64{1, 1.1, 1.2, 1.3, 1.4, 1.4, 1.4}, Mixed, 0},
	} {
		l := Find(metres(t, c.depths, c.temps))
		if l.Structure != c.want {
			t.Errorf("%s: %v, want %s", c.name, l, c.want)
		}
		near(t, c.name+": skin", l.SkinM, c.skinM, 1e-9)
	}
}

// The thermocline is the middle, weighted by their rise, of the unbroken run of metres around
// the steepest that rise at least 0.94 as fast: found here by going down the curve in steps
// of 5 mm.
func TestAlike(t *testing.T) {
	z := []float64{0, 2, 3, 4, 5, 6, 8}
	for _, temps := range [][]float64{
		{26, 26, 24.85, 23.65, 22.38, 21.04, 21.04}, // four metres that rise by 0.3 kg/m3 each (Tanaka et al. 2001)
		{21, 21, 18, 14.6, 14.5, 14.5, 14.5}, {21, 21, 18, 14.9, 14.8, 14.8, 14.8},
		{21, 21, 18, 15.6, 15.5, 15.5, 15.5}, {21, 21, 18, 17, 16.9, 16.9, 16.9},
	} {
		l := Find(metres(t, z, temps))
		const step = 0.005
		var rises []float64
		best := 0
		for i := 0; float64(i)*step <= 7; i++ {
			top := float64(i) * step
			rises = append(rises, water.Density(l.Curve.At(top+1))-water.Density(l.Curve.At(top)))
			if rises[i] > rises[best] {
				best = i
			}
		}
		first, last := best, best
		for first > 0 && rises[first-1] >= 0.94*rises[best] {
			first--
		}
		for last+1 < len(rises) && rises[last+1] >= 0.94*rises[best] {
			last++
		}
		sum, weight := 0.0, 0.0
		for i := first; i <= last; i++ {
			sum, weight = sum+rises[i]*(float64(i)*step+0.5), weight+rises[i]
		}
		near(t, fmt.Sprintf("%v", temps), l.Thermocline.Best, sum/weight, 0.03)
	}
}

// Slowly colder water in one line: 0.5 C below 20 C is at 2.5 m.
func TestMixedLayerOfALine(t *testing.T) {
	l := Find(metres(t, []float64{0, 1, 2, 3, 4, 5}, []float64{20, 19.8, 19.6, 19.4, 19.2, 19}))
	near(t, "0.2 C per metre", l.MixedLayer.Best, 2.5, 1e-9)
}

// A pooled reading is doubtful by what it was pooled away.
func TestPooledReadingsAreDoubtful(t *testing.T) {
	k := newCurve(metres(t, []float64{0, 1, 2, 3}, []float64{20, 18, 21, 15}))
	for i, want := range []float64{0.25, 1.5, 1.5, 0.25} {
		near(t, "half-width of a pooled reading's error", k.ErrC[i], want, 1e-9)
	}
	near(t, "the mean of the two", k.At(1.5), 19.5, 1e-9)
}

// Water of 6 C over equally light water under 4 C falls fast and is no break: there
// is nothing to keep it apart.
func TestEquallyLightIsNoBreak(t *testing.T) {
	low, high := 0.0, water.MaxDensityTempC
	for range 80 {
		if mid := (low + high) / 2; water.Density(mid) < water.Density(6) {
			low = mid
		} else {
			high = mid
		}
	}
	near(t, "as light as 6 C", low, 2, 0.1)
	if f := newGradients([]float64{2, 3}, []float64{6, low}); f.steep(0) {
		t.Errorf("6 C over %v C is called steep, with a rise of %v kg/m3", low, f.rise[0])
	}
}

// Warmer water below, under 4 C, is stable and no break, however fast its density
// rises: from 2.5 to 3.9 C it rises faster than from 6 to 2.5 C.
func TestWarmerBelowIsNoBreak(t *testing.T) {
	l := Find(metres(t, []float64{0, 2, 3, 4, 5}, []float64{6, 6, 2.5, 3.9, 3.9}))
	if l.Structure != Layered || l.Thermocline.Best < 2 || l.Thermocline.Best > 3 || l.SteepestCPerM <= 0 {
		t.Errorf("%v, falling %v C/m, want a thermocline within 2 to 3 m", l, l.SteepestCPerM)
	}
}

// Neighbours that share the thermocline without being steep draw it above the steep
// zone; the metalimnion's top is never below it.
func TestTopGoesWithTheThermocline(t *testing.T) {
	l := Find(metres(t, []float64{0, 1, 2, 3, 4, 5, 6}, []float64{25, 25, 24.01, 23.02, 22, 21.9, 21.9}))
	top, plane := *l.MetalimnionTop, *l.Thermocline
	if plane.Best >= 3 {
		t.Fatalf("thermocline %+v, want it above 3 m", plane)
	}
	if top.Best > plane.Best || top.Low > top.Best || top.High < top.Best {
		t.Errorf("top %+v with the thermocline at %+v", top, plane)
	}
}

// A fall in a first gap of 6 m may be the break itself; the same fall within 2 m is a skin.
func TestWideFirstGapIsNoSkin(t *testing.T) {
	temps := []float64{24, 21.5, 21.3, 14, 9, 8}
	if l := Find(metres(t, []float64{0.3, 6.8, 10, 13, 16, 20}, temps)); l.SkinM != 0 {
		t.Errorf("a skin down to %v m", l.SkinM)
	}
	near(t, "a skin", Find(metres(t, []float64{0.3, 2, 10, 13, 16, 20}, temps)).SkinM, 2, 1e-9)
}
