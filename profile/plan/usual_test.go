package plan

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/catches"
	"coldseam/profile/fish"
)

// caughtAt is a book of n fish of a kind taken in Alder Kettle, between two temperatures, C.
func caughtAt(key string, n int, fromC, toC float64) (taken []catches.Taken) {
	for i := range n {
		c := fromC + (toC-fromC)*float64(i)/float64(max(1, n-1))
		taken = append(taken, catches.Taken{Fish: key, Count: 1, Water: "Alder Kettle", DepthM: profile.Some(4), TempC: profile.Some(c)})
	}
	return taken
}

// july is a drop of July with the band from 15 ft down and oxygen measured in it, whose
// start is near 18 ft.
func july() profile.Drop { return withOxygen(unmeasured(), 8, 8, 8, 8, 8, 8, 8, 7, 6) }

// kettle is a drop of July with oxygen measured at 20 ft, so that the band's best bet is
// from 15 to 20 ft, and its start near 16 ft.
func kettle() profile.Drop {
	d := withOxygen(feet(0, 73.4, 2, 73.2, 5, 72.9, 10, 72.3, 13, 70.1, 15, 66.4, 17, 61.9, 20, 57.6, 25, 52.5, 29, 50.7), -1, -1, -1, -1, -1, -1, -1, 6.2)
	d.Bottom, d.Deepest, d.Secchi = profile.Some(31*ft), profile.Some(38*ft), profile.Some(9*ft)
	return d
}

// unmeasured is the same drop without oxygen: it is unknown in all of the band.
func unmeasured() profile.Drop {
	d := feet(0, 74, 5, 73.5, 10, 72, 13, 70, 15, 66, 17, 62, 20, 58, 25, 53, 29, 51)
	d.Bottom = profile.Some(31 * ft)
	return d
}

// TestUsualMovesTheStart: invented books, and where the start goes for them, if anywhere.
func TestUsualMovesTheStart(t *testing.T) {
	for _, tc := range []struct {
		name  string
		drop  profile.Drop
		fish  string
		taken []catches.Taken
		want  Heed
	}{
		{"no book", july(), "rainbow", nil, NoOpinion},
		{"seven fish", july(), "rainbow", caughtAt("rainbow", 7, 14, 15), NoOpinion},
		{"many of another fish", july(), "rainbow", caughtAt("perch", 30, 14, 15), NoOpinion},
		{"cooler water", kettle(), "rainbow", caughtAt("rainbow", 14, 15, 16), Deeper},
		{"cooler water, deeper than common practice", july(), "rainbow", caughtAt("rainbow", 14, 10, 10.5), Apart},
		{"a little warmer water", july(), "rainbow", caughtAt("rainbow", 14, 14, 15), Shallower},
		{"cooler water, oxygen unknown", unmeasured(), "rainbow", caughtAt("rainbow", 14, 14, 15), Apart},
		{"warmer water", july(), "rainbow", caughtAt("rainbow", 30, 17.5, 18.5), Shallower},
		{"what the start has", july(), "rainbow", caughtAt("rainbow", 14, 12.5, 13.5), Agrees},
		{"warmer than any of the band", july(), "rainbow", caughtAt("rainbow", 14, 21, 23), Absent},
		{"colder than they like", july(), "rainbow", caughtAt("rainbow", 14, 4, 6), Absent},
		{"contradictory", july(), "rainbow", append(caughtAt("rainbow", 7, 6, 7), caughtAt("rainbow", 7, 18, 19)...), Contradicts},
		{"no band", feet(0, 80, 5, 79, 10, 78, 15, 78), "rainbow", caughtAt("rainbow", 14, 14, 15), NoWater},
		{"one layer", metres(0, 15, 3, 15, 6, 15, 9, 14.9), "rainbow", caughtAt("rainbow", 14, 14, 15), Agrees},
	} {
		in := input(t, tc.drop, tc.fish)
		without, err := Make(in)
		if err != nil {
			t.Fatal(err)
		}
		in.Taken = tc.taken
		p, err := Make(in)
		if err != nil {
			t.Fatal(err)
		}
		heed, by := p.Heed()
		t.Logf("%s: %s from %.2f m, %.1f C, by %.2f m", tc.name, heed, without.Band.Start.Best, p.Layers.Curve.At(without.Band.Start.Best), by)
		moved := p.Band.Start.Best - without.Band.Start.Best
		if heed != tc.want {
			t.Errorf("%s: %s, want %s (from %.2f m, %.1f C, by %.2f m)", tc.name, heed, tc.want, without.Band.Start.Best, p.Layers.Curve.At(without.Band.Start.Best), moved)
		}
		switch heed {
		case Deeper, Shallower:
			if by < 0.2 || math.Abs(math.Abs(moved)-by) > 1e-9 || (moved > 0) != (heed == Deeper) {
				t.Errorf("%s: by %.2f m, and the start moved %.2f m", tc.name, by, moved)
			}
		default:
			if moved != 0 || by != 0 || p.Band.WithoutM.Known {
				t.Errorf("%s: the start moved %.2f m", tc.name, moved)
			}
		}
		p.Usual = nil
		if tc.want == NoOpinion && !reflect.DeepEqual(p, without) {
			t.Errorf("%s: the plan is another", tc.name)
		}
	}
}

// TestUsualWeighs: more fish, and surer ones, move the start further, and never past the
// temperature at which they were taken.
func TestUsualWeighs(t *testing.T) {
	in := input(t, kettle(), "rainbow")
	last, lastC := 0.0, 99.0
	for _, n := range []int{8, 16, 32, 400} {
		in.Taken = caughtAt("rainbow", n, 15.4, 15.6)
		p, err := Make(in)
		if err != nil {
			t.Fatal(err)
		}
		c := p.Layers.Curve.At(p.Band.Start.Best)
		if p.Band.Start.Best <= last || c >= lastC || c < 15.4 {
			t.Errorf("%d fish: start at %.2f m, %.1f C, after %.2f m, %.1f C", n, p.Band.Start.Best, c, last, lastC)
		}
		last, lastC = p.Band.Start.Best, c
	}
	for i := range in.Taken {
		in.Taken[i].ErrC = 6
	}
	p, err := Make(in)
	if err != nil {
		t.Fatal(err)
	}
	if p.Band.Start.Best >= last {
		t.Errorf("fish in doubt move the start as far: %.2f m", p.Band.Start.Best)
	}
}

// TestUsualStaysSafe: whatever the water and the book, the start and the fly stay in the
// band's safe part, no deeper than oxygen is likely or was measured, above black mud, out of
// water in which trout are stressed, and on this side of 25 ft, wherever they were there
// without the book.
func TestUsualStaysSafe(t *testing.T) {
	moved := 0
	for range 5 { // few of the drops drawn have room to move in
		rapid.Check(t, func(t *rapid.T) { staysSafe(t, &moved) })
		if moved > 0 || t.Failed() {
			return
		}
	}
	t.Error("no book moved a start")
}

func staysSafe(t *rapid.T, moved *int) {
	var pairs []float64
	z, c := 0.0, rapid.SampledFrom([]float64{8, 14, 17, 19, 20, 21, 22, 23, 24, 26, 28}).Draw(t, "surface")
	for range rapid.IntRange(3, 10).Draw(t, "readings") {
		pairs = append(pairs, z, c)
		z += rapid.Float64Range(0.3, 2.5).Draw(t, "step")
		c = math.Max(0, c-rapid.SampledFrom([]float64{-0.5, 0, 0.2, 0.5, 1, 1, 1.5, 2, 3, 4}).Draw(t, "fall"))
	}
	d := metres(pairs...)
	oxygen := rapid.SampledFrom([][]float64{nil, {9}, {9}, {1, 5, 8, 8, 8, 9, 10}}).Draw(t, "oxygen")
	for i := range d.Readings {
		if oxygen != nil {
			d.Readings[i].Oxygen = profile.Some(rapid.SampledFrom(oxygen).Draw(t, "mg/L"))
		}
	}
	if rapid.Bool().Draw(t, "bottom") {
		d.Bottom = profile.Some(z)
	}
	if rapid.IntRange(0, 3).Draw(t, "mud") == 0 {
		d.Anchor = "black, smells"
	}
	d.Sky = rapid.SampledFrom([]string{"", "clear", "dusk", "overcast"}).Draw(t, "sky")
	f := rapid.SampledFrom(fish.All()).Draw(t, "fish")
	in := Input{Drop: d, Fish: f, ClearanceM: ClearanceM}
	was, err := Make(in)
	if err != nil {
		return
	}
	low := rapid.SampledFrom([]float64{-6, -4, -3, -2, -1, 1, 1.5, 2, 3, 5}).Draw(t, "caught at") // beside the start
	if was.Band.Found {
		low += was.Layers.Curve.At(was.Band.Start.Best)
	}
	in.Taken = caughtAt(f.Key, rapid.IntRange(8, 60).Draw(t, "fish caught"), low, low+rapid.Float64Range(0, 3).Draw(t, "range"))
	p, err := Make(in)
	if err != nil {
		t.Fatal(err)
	}
	if !p.Band.WithoutM.Known {
		if p.Band.Start != was.Band.Start || p.Band.WaterM != was.Band.WaterM {
			t.Fatalf("the start moved without a word: %+v, %+v", was.Band.Start, p.Band.Start)
		}
		return
	}
	*moved++
	start, last := p.Band.Start.Best, p.Column.Last().DepthM
	top, bottom := p.Band.Safe(last)
	betTop, betBottom, bet := p.Band.BestBet(last)
	temp := p.Layers.Curve.At(start)
	cut, over := p.OverMud()
	for what, wrong := range map[string]bool{
		"out of the band":          start < top || start > bottom || p.FlyM() < top-0.01 || p.FlyM() > bottom+0.01,
		"out of the best bet":      bet == band.UpperPart && start > betBottom && was.Band.Start.Best <= betBottom || bet == band.UpperPart && p.FlyM() > math.Max(betBottom, was.FlyM())+0.01 || bet == band.UpperPart && start < betTop,
		"deeper, oxygen unknown":   bet == band.NoPart && start > was.Band.Start.Best,
		"below what was measured":  p.Band.Oxygen && start > math.Max(last, was.Band.Start.Best),
		"over mud":                 over && start > cut,
		"into warm water":          f.Salmonid && temp >= 20,
		"across 25 ft":             start > PressureM && was.Band.Start.Best <= PressureM,
		"into water that is cold":  p.Band.Cold && !was.Band.Cold,
		"by less than is worth it": math.Abs(start-p.Band.WithoutM.Value) < 0.2,
		"from another start":       p.Band.WithoutM.Value != was.Band.Start.Best,
		"another band":             p.Band.Top != was.Band.Top || p.Band.Bottom != was.Band.Bottom,
	} {
		if wrong {
			t.Fatalf("%s: from %.2f to %.2f m, fly %.2f m, %.1f C; band %.2f to %.2f, best bet %s to %.2f\n%+v", what, was.Band.Start.Best, start, p.FlyM(), temp, top, bottom, bet, betBottom, pairs)
		}
	}
}
