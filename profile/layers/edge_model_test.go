package layers

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// marked is the edge model of a column with no skin, and the thermocline's
// interval.
func marked(z, t []float64) (*edgeModel, int) {
	f := newGradients(z, t)
	plane := f.greatestRise(0)
	c := new(edgeModel)
	c.apply(f, 0, plane)
	return c, plane
}

// Chances by hand: ln(0.1 + 0.9) is 0, so that the logits are the bare numbers.
// logistic(-3) = 0.0474258732, logistic(2.7 - 3) = 0.4255574832,
// logistic(0.9) = 0.7109495026, logistic(0.9 + 2.7) = 0.9734030064.
func TestEdgeModelByHand(t *testing.T) {
	// 0.9 C/m is not steep over 1 m, and is over 2 m (1.8 C); 5 C/m below that.
	c := new(edgeModel)
	c.apply(newGradients([]float64{0, 1, 3, 4, 8}, []float64{20, 19.1, 17.3, 12.3, 12.3}), 0, 2)
	near(t, "the first metre", c.top.probability(0), 0.0474258732, 1e-9)
	near(t, "the next two", c.top.probability(1), (1-0.0474258732)*(1-math.Pow(1-0.4255574832, 2)), 1e-9)

	// from 3 m on every 2 m below fall 0.9 C/m, as far as 10 m
	c.apply(newGradients([]float64{0, 3, 4, 5, 7, 8, 10, 12}, []float64{20, 20, 15, 14.1, 12.3, 11.4, 9.6, 9.6}), 0, 1)
	near(t, "stopping in the steepest metre", c.bottom.probability(0), 1-0.9734030064, 1e-9)
	near(t, "stopping in the next, which is not steep", c.bottom.probability(1), 0.9734030064*(1-0.7109495026), 1e-9)
	near(t, "stopping in the 2 m after, which are", c.bottom.probability(2), 0.9734030064*0.7109495026*(1-math.Pow(0.9734030064, 2)), 1e-9)
}

// Between two places half the tops lie where half of each place's chance counts above
// it: 4 C/m has the odds e^(-3 + 1.1*ln(4.1) + 2.7) = 3.497630, the upper place so a
// chance of 0.777661, and (0.5 - 0.777661/2) / 0.5 = 0.222339.
func TestEdgeModelInOneInterval(t *testing.T) {
	c := new(edgeModel)
	c.apply(newGradients([]float64{2, 3}, []float64{20, 16}), 0, 0)
	top, _ := c.medians()
	near(t, "half the tops", top, 2.222339, 1e-6)
}

// Water warmer below, which is stable under 4 C, falls as little as still water: the
// chance of going on is logistic(0.9 + 1.1*ln(0.1)) = 0.163441.
func TestEdgeModelUnderFourDegrees(t *testing.T) {
	c := new(edgeModel)
	c.apply(newGradients([]float64{0, 1, 2, 3, 4, 5}, []float64{12, 4, 2, 2.5, 3, 3.5}), 0, 0)
	stopped, on := c.bottom.probability(2), c.bottom.survival(3)
	near(t, "going on", on/(on+stopped), 0.163441, 1e-6)
}

// However many places there are, each has the chance that the formulas give.
func TestEdgeModelOfManyPlaces(t *testing.T) {
	z, temps := tanh(6, 0.05)
	c, plane := marked(z, temps)
	f := newGradients(z, temps)
	logistic := func(logit, fall float64, i int) float64 {
		if f.steep(i) {
			logit += 2.7
		}
		return 1 / (1 + math.Exp(-logit-1.1*math.Log(0.1+fall)))
	}
	left := 1.0
	for i := 0; i <= plane; i++ {
		stay := math.Pow(1-logistic(-3, f.fall[i], i), f.width(i))
		near(t, fmt.Sprintf("top at %.2f m", z[i]), c.top.probability(i), left*(1-stay), 1e-12)
		left *= stay
	}
	left = 1
	for i := plane; i+1 < len(z); i++ {
		below := len(z) - 1
		for below > i && z[below] > z[i+1]+2+1e-9 {
			below--
		}
		on := math.Pow(logistic(0.9, (temps[i+1]-temps[below])/2, i), f.width(i))
		near(t, fmt.Sprintf("bottom at %.2f m", z[i]), c.bottom.probability(i-plane), left*(1-on), 1e-12)
		left *= on
	}
}

// Figures of a separate program in Python that follows the two formulas at edgeModel with
// powers (1-p)^dz, and tries every pair of places and midpoints against every pair of
// marks, without pooling or leaving out rare ones.
func TestEdgeModelAgainstPlainSearch(t *testing.T) {
	for _, x := range []struct {
		name         string
		z, t         []float64
		start, plane int
		thermoclineM float64
		top, bottom  []float64
		stops, pair  [2]float64
		low, high    [2]float64
	}{
		{
			"every metre",
			[]float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12},
			[]float64{22, 22, 21.8, 21.5, 20.6, 17.5, 14.2, 12.0, 10.9, 10.3, 9.9, 9.7, 9.6}, 0, 4, 5.2,
			[]float64{0.003939149152, 0.013017352628, 0.017544237202, 0.045789645506, 0.668630936412, 0.251078679100},
			[]float64{0.008560062360, 0.014424456454, 0.027451626054, 0.043427711444, 0.477491880742, 0.279192108100, 0.114506353531, 0.029234218015, 0.005711583300},
			[2]float64{4.185698064, 8.442430938}, [2]float64{4, 9},
			[2]float64{3.119269907, 7.106926289}, [2]float64{5, 9.960370575},
		},
		{
			"uneven, under a skin",
			[]float64{0, 0.5, 1.5, 3, 4, 4.5, 6, 8, 11},
			[]float64{26, 24, 23.8, 22.9, 21, 19, 16.6, 14.5, 13.6}, 1, 4, 4.4,
			[]float64{0.013068832709, 0.047771731898, 0.576266392728, 0.191778560684, 0.171114481981},
			[]float64{0.008258512486, 0.033861129112, 0.128785703854, 0.825474820587, 0.003619833961},
			[2]float64{3.393274478, 7.649392368}, [2]float64{3.5, 7},
			[2]float64{1.803083893, 5.879877891}, [2]float64{4.460201058, 10.289417083},
		},
		{
			"every 2 m",
			[]float64{0, 2, 4, 6, 8, 10, 12},
			[]float64{20, 20, 19.5, 13, 9, 8, 7.9}, 0, 2, 4.9,
			[]float64{0.007862781407, 0.030413420169, 0.895145681803, 0.066578116620},
			[]float64{0.023730868520, 0.087256124270, 0.291925377565, 0.581137614599, 0.015950015046},
			[2]float64{4.058856639, 9.113552266}, [2]float64{4, 9.0},
			[2]float64{2.332471512, 6.344331875}, [2]float64{5.722535964, 11.383507627},
		},
	} {
		t.Run(x.name, func(t *testing.T) {
			f := newGradients(x.z, x.t)
			if got := f.greatestRise(x.start); got != x.plane {
				t.Fatalf("the steepest interval is %d, want %d", got, x.plane)
			}
			c := new(edgeModel)
			c.apply(f, x.start, x.plane)
			for i, want := range x.top {
				near(t, fmt.Sprintf("top at place %d", i), c.top.probability(i), want, 1e-12)
			}
			for i, want := range x.bottom {
				near(t, fmt.Sprintf("bottom at place %d", i), c.bottom.probability(i), want, 1e-12)
			}
			top, bottom := c.medians()
			near(t, "half the tops", top, x.stops[0], 1e-8)
			near(t, "half the bottoms", bottom, x.stops[1], 1e-8)
			tops, bottoms := c.middle80()
			for i, end := range [2][2]float64{x.low, x.high} {
				near(t, fmt.Sprintf("end %d of the tops", i), tops[i], end[0], 1e-8)
				near(t, fmt.Sprintf("end %d of the bottoms", i), bottoms[i], end[1], 1e-8)
			}
			top, bottom = c.choose(x.thermoclineM)
			near(t, "top", top, x.pair[0], 1e-12)
			near(t, "bottom", bottom, x.pair[1], 1e-12)
		})
	}
}

// breaks draws columns that fall, of any spacing, and a thermocline in the steepest
// interval.
func breaks(t *rapid.T, most int, steps ...float64) (z, temps []float64) {
	depth, temp := rapid.Float64Range(0, 5).Draw(t, "first depth"), rapid.Float64Range(15, 30).Draw(t, "first temp")
	scale := rapid.SampledFrom([]float64{0.3, 1}).Draw(t, "scale of falls") // gentle ones leave the marks in doubt
	for range min(most, rapid.SampledFrom([]int{30, 12, 60, 5, 3, 2}).Draw(t, "places")) {
		z, temps = append(z, depth), append(temps, temp)
		dz := rapid.SampledFrom(steps).Draw(t, "step") * rapid.Float64Range(1, 1.5).Draw(t, "times")
		depth += dz
		temp = math.Max(4, temp-dz*scale*rapid.SampledFrom([]float64{0.5, 0.2, 0.9, 0.05, 1.5, 0, 4}).Draw(t, "fall"))
	}
	if temps[0] == temps[len(temps)-1] {
		temps[len(temps)-1]--
	}
	return z, temps
}

func TestEdgeModelKeepsOrder(t *testing.T) {
	c := new(edgeModel)
	rapid.Check(t, func(t *rapid.T) {
		z, temps := breaks(t, 60, 0.3, 0.05, 1, 3, 20)
		f := newGradients(z, temps)
		plane := f.greatestRise(0)
		c.apply(f, 0, plane)
		for _, s := range []*edge{&c.top, &c.bottom} {
			sum := 0.0
			for i := range s.hazard {
				p := s.probability(i)
				if !(p >= 0 && p <= 1) {
					t.Fatalf("a chance of %v", p)
				}
				sum += p
			}
			if math.Abs(sum-1) > 1e-12 || len(s.z) != len(s.hazard) {
				t.Fatalf("chances of %d places at %d depths add up to %v", len(s.hazard), len(s.z), sum)
			}
		}
		first, last := z[0], z[len(z)-1]
		thermoclineM := rapid.Float64Range(first, last).Draw(t, "thermocline") // in any interval
		top, bottom := c.choose(thermoclineM)
		if !(first <= top && top <= thermoclineM && thermoclineM <= bottom && bottom <= last) {
			t.Fatalf("top %v, thermocline %v, bottom %v, in %v to %v m", top, thermoclineM, bottom, first, last)
		}
		halfTop, halfBottom := c.medians()
		tops, bottoms := c.middle80()
		for _, d := range [][]float64{
			{first, tops[0], halfTop, tops[1], z[plane+1]},
			{z[plane], bottoms[0], halfBottom, bottoms[1], last},
		} {
			if !slices.IsSorted(d) {
				t.Fatalf("out of order: %v", d)
			}
		}
	})
}

func TestEdgeModelOfDeeperColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z, temps := breaks(t, 60, 0.3, 0.05, 1, 3)
		d := float64(rapid.IntRange(1, 100).Draw(t, "deeper"))
		c, plane := marked(z, temps)
		thermoclineM := (z[plane] + z[plane+1]) / 2
		deep := slices.Clone(z)
		for i := range deep {
			deep[i] += d
		}
		e := new(edgeModel)
		f := newGradients(deep, temps)
		if f.greatestRise(0) != plane {
			return // another interval as steep to the last digit
		}
		e.apply(f, 0, plane)
		tops, bottoms := c.top.bins(nil), c.bottom.bins(nil)
		tops, bottoms = tops[:len(tops)-1], bottoms[:len(bottoms)-1]
		at, ab := c.choose(thermoclineM)
		bt, bb := e.choose(thermoclineM + d)
		a, b := worth(at, ab, tops, bottoms), worth(bt-d, bb-d, tops, bottoms)
		if (math.Abs(at+d-bt) > 1e-9 || math.Abs(ab+d-bb) > 1e-9) && math.Abs(a-b) > 1e-8 {
			t.Fatalf("%v to %v m; %v m deeper, %v to %v m", at, ab, d, bt, bb)
		}
		at, ab = c.medians()
		bt, bb = e.medians()
		if math.Abs(at+d-bt) > 1e-6 || math.Abs(ab+d-bb) > 1e-6 {
			t.Fatalf("stops %v, %v m; %v m deeper, %v, %v m", at, ab, d, bt, bb)
		}
	})
}

// tanh is a column from 0 to 20 m whose break is centred on 7.3 m.
func tanh(halfM, stepM float64) (z, temps []float64) {
	for i := 0; float64(i)*stepM < 20+equal; i++ {
		z = append(z, float64(i)*stepM)
		temps = append(temps, 14.5-7.5*math.Tanh((z[i]-7.3)/halfM))
	}
	return z, temps
}

func TestEdgeModelKeepsItsMemory(t *testing.T) {
	f := newGradients(tanh(2, 0.5))
	plane := f.greatestRise(0)
	c := new(edgeModel)
	if n := testing.AllocsPerRun(100, func() {
		c.apply(f, 0, plane)
		c.choose(7.3)
		c.medians()
		c.middle80()
	}); n != 0 {
		t.Errorf("%v allocations in a crew used before", n)
	}
}

func BenchmarkEdgeModel(b *testing.B) {
	for _, x := range []struct {
		name  string
		count int
		step  float64
	}{
		{"16 every 1 m", 16, 1}, {"25 every 0.65 m", 25, 0.65}, {"200 every 0.1 m", 200, 0.1}, {"6000 every 0.05 m", 6000, 0.05},
	} {
		var z, temps []float64
		for i := range x.count {
			z = append(z, float64(i)*x.step)
			temps = append(temps, 14.5-7.5*math.Tanh((z[i]-6.3)/2)-z[i]/50)
		}
		f := newGradients(z, temps)
		plane := f.greatestRise(0)
		c := new(edgeModel)
		c.apply(f, 0, plane)
		for _, what := range []struct {
			name string
			do   func()
		}{{"choose", func() { c.choose(6.3) }}, {"stops", func() { c.medians() }}, {"range80", func() { c.middle80() }}, {"marks", func() {}}} {
			b.Run(x.name+"/marks and "+what.name, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					c.apply(f, 0, plane)
					what.do()
				}
			})
		}
	}
}
