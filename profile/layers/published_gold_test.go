package layers

import "testing"

// publishedGold is what follows from the numbers of one published cast by the plain
// definitions, as read, nothing left out. Casts: Carpenter et al., Cascade Project at
// North Temperate Lakes LTER, Environmental Data Initiative knb-lter-ntl.352.
type publishedGold struct {
	name     string
	fall     [2]float64 // interval of the fastest fall of temperature
	rise     [2]float64 // of the fastest rise of density
	first    [2]float64 // first to last interval of 1 C/m
	unbroken [2]float64 // those around the fastest fall
	dense    [2]float64 // of 0.1 kg/m3 per metre; 0 where not derived
	mixed    [4]float64 // 0.2, 0.5, 0.8 and 1 C below the first reading; 0 where not derived
}

var publishedGolds = []publishedGold{
	{"P1", [2]float64{3, 4}, [2]float64{2, 3}, [2]float64{2, 4}, [2]float64{2, 4}, [2]float64{2, 4}, [4]float64{1.6667, 2.0625, 2.1562, 2.2188}},
	// 6-7 m falls 1.1 C/m below 0.4 C/m
	{"P2", [2]float64{2.5, 3}, [2]float64{2.5, 3}, [2]float64{2.5, 7}, [2]float64{2.5, 5}, [2]float64{}, [4]float64{2.5, 2.5417, 2.5833, 2.6111}},
	{"P3", [2]float64{3, 3.5}, [2]float64{3, 3.5}, [2]float64{2, 7}, [2]float64{2, 7}, [2]float64{2, 6}, [4]float64{2.1111, 2.2778, 2.4444, 2.5312}},
	{"P4", [2]float64{1.5, 2}, [2]float64{1.5, 2}, [2]float64{.5, 3.5}, [2]float64{.5, 3.5}, [2]float64{.5, 3}, [4]float64{.625, .8125, 1, 1.0303}},
	{"P5", [2]float64{3, 3.5}, [2]float64{3, 3.5}, [2]float64{2.5, 7}, [2]float64{2.5, 7}, [2]float64{}, [4]float64{2.1667, 2.5357, 2.6429, 2.7143}},
	// the skin of 0-0.5 m falls 1.2 C/m
	{"P6", [2]float64{5, 5.5}, [2]float64{5, 5.5}, [2]float64{0, 9}, [2]float64{4.5, 9}, [2]float64{}, [4]float64{.1667, .4167, 1, 2.5}},
	// 6.5-7 and 9-9.5 m fall exactly 1 C/m
	{"P7", [2]float64{7.5, 8}, [2]float64{7, 7.5}, [2]float64{6.5, 10}, [2]float64{6.5, 10}, [2]float64{}, [4]float64{6.5, 6.8, 7.0238, 7.0714}},
	{"P10", [2]float64{4, 4.5}, [2]float64{4, 4.5}, [2]float64{3.5, 8}, [2]float64{3.5, 8}, [2]float64{}, [4]float64{}},
}

func TestPublishedGold(t *testing.T) {
	for _, g := range publishedGolds {
		c := goldCast(t, g.name)
		lines := Thermoclines(c.Depths, c.Temps)
		near(t, g.name+": "+FallMiddle, answer(t, lines, FallMiddle), (g.fall[0]+g.fall[1])/2, 1e-9)
		near(t, g.name+": "+RiseMiddle, answer(t, lines, RiseMiddle), (g.rise[0]+g.rise[1])/2, 1e-9)
		for _, name := range []string{Parabola, Cubic, RiseCentre} {
			if z := answer(t, lines, name); !(z >= g.rise[0] && z <= g.rise[1]) {
				t.Errorf("%s: %s at %v m, want within %v", g.name, name, z, g.rise)
			}
		}
		// A step sees the whole column: it need only lie in the break.
		if z := answer(t, lines, StepCentre); !(z >= g.unbroken[0] && z <= g.unbroken[1]) {
			t.Errorf("%s: %s at %v m, want within %v", g.name, StepCentre, z, g.unbroken)
		}
		edges := Edges(c.Depths, c.Temps)
		for i, want := range [][2]float64{g.first, g.unbroken, g.dense} {
			if got := [2]float64{edges[i].TopM, edges[i].BottomM}; want[1] > 0 && got != want {
				t.Errorf("%s: %s: %v m, want %v", g.name, edges[i].Name, got, want)
			}
		}
		for i, a := range MixedLayers(c.Depths, c.Temps)[:4] {
			if g.mixed[i] > 0 {
				near(t, g.name+": "+a.Name, a.DepthM, g.mixed[i], 5.1e-5)
			}
		}
	}
}

// P8 is 5.0 C all through: there is nothing for any method to find. P9 is 4.2 over
// 4.6 and 4.5 C, and never colder than its first reading.
func TestPublishedGoldMixed(t *testing.T) {
	for _, name := range []string{"P8", "P9"} {
		c := goldCast(t, name)
		answers := MixedLayers(c.Depths, c.Temps)
		if name == "P8" {
			answers = append(answers, Thermoclines(c.Depths, c.Temps)...)
		}
		for _, a := range answers {
			if a.OK || a.DepthM != 0 {
				t.Errorf("%s: %s at %v m", name, a.Name, a.DepthM)
			}
		}
		for _, e := range Edges(c.Depths, stable(c.Temps)) {
			if e.OK && e.Name != StepEdges {
				t.Errorf("%s: %s, %v to %v m", name, e.Name, e.TopM, e.BottomM)
			}
		}
	}
}

// P11's steepest fall, 5.4 C/m, begins at 3.5 m.
func TestPublishedGoldP11(t *testing.T) {
	c := goldCast(t, "P11")
	lines := Thermoclines(c.Depths, c.Temps)
	near(t, "P11: "+FallMiddle, answer(t, lines, FallMiddle), 3.75, 1e-9)
	near(t, "P11: "+RiseCentre, answer(t, lines, RiseCentre), 3.75, .25)
}

// answer gives the depth of a method's answer, or ends the test.
func answer(tb testing.TB, answers []Answer, name string) float64 {
	tb.Helper()
	for _, a := range answers {
		if a.Name == name {
			if !a.OK {
				tb.Errorf("%s: found nothing", name)
			}
			return a.DepthM
		}
	}
	tb.Fatalf("no method %q", name)
	return 0
}
