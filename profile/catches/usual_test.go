package catches

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
)

// at are rainbow taken in Alder Kettle at temperatures, C, each 1 m deeper for a degree
// less than 20, with no doubt about them.
func at(temps ...float64) (taken []Taken) {
	for _, c := range temps {
		taken = append(taken, Taken{Fish: "rainbow", Count: 1, Water: "Alder Kettle", DepthM: profile.Some(20 - c), TempC: profile.Some(c)})
	}
	return taken
}

func with(taken []Taken, change func(t *Taken)) []Taken {
	for i := range taken {
		change(&taken[i])
	}
	return taken
}

// TestUsual: invented books and what they say. The medians, ranges and weights are worked
// out by hand from the rules of the package comment.
func TestUsual(t *testing.T) {
	elsewhere := func(t *Taken) { t.Water = "Marl Hole" }
	eight := []float64{14, 14.5, 15, 15, 15.5, 16, 16, 16.5}
	for _, tc := range []struct {
		name  string
		taken []Taken
		want  Usual
		ok    bool
	}{
		{"none", nil, Usual{}, false},
		{"seven", at(eight[1:]...), Usual{}, false},
		// six of eight: 14.5 to 16; depths 4 to 5.5, the middle half of them by halves of two
		{"eight", at(eight...), Usual{Here: true, In: 6, Of: 8, LowC: 14.5, HighC: 16, MedianC: 15.25, ShallowM: 4, DeepM: 5, Weight: 0.5}, true},
		{"eight elsewhere", with(at(eight...), elsewhere), Usual{In: 6, Of: 8, LowC: 14.5, HighC: 16, MedianC: 15.25, ShallowM: 4, DeepM: 5, Weight: 0.5}, true},
		{"eight here, more elsewhere", append(at(eight...), with(at(4, 4, 4, 4, 4, 4, 4, 4, 4), elsewhere)...),
			Usual{Here: true, In: 6, Of: 8, LowC: 14.5, HighC: 16, MedianC: 15.25, ShallowM: 4, DeepM: 5, Weight: 0.5}, true},
		{"seven here, one elsewhere", append(at(eight[1:]...), with(at(eight[0]), elsewhere)...),
			Usual{In: 6, Of: 8, LowC: 14.5, HighC: 16, MedianC: 15.25, ShallowM: 4, DeepM: 5, Weight: 0.5}, true},
		{"another fish", with(at(eight...), func(t *Taken) { t.Fish = "perch" }), Usual{}, false},
		{"of no name", with(at(eight...), func(t *Taken) { t.Fish = "" }), Usual{}, false},
		{"without a depth", with(at(eight...), func(t *Taken) { t.DepthM, t.TempC = profile.Optional{}, profile.Optional{} }), Usual{}, false},
		{"without a temperature", with(at(eight...), func(t *Taken) { t.TempC = profile.Optional{} }), Usual{}, false},
		{"one line of twenty", with(at(15), func(t *Taken) { t.Count = 20 }), Usual{}, false},
		{"three lines of three", with(at(15, 15, 15), func(t *Taken) { t.Count = 3 }), // 9 of 9, weight 9/17
			Usual{Here: true, In: 9, Of: 9, LowC: 15, HighC: 15, MedianC: 15, ShallowM: 5, DeepM: 5, Weight: 9.0 / 17}, true},
		{"eight alike and two far off", at(15, 15, 15, 15, 15, 15, 15, 15, 4, 22),
			Usual{Here: true, In: 8, Of: 10, LowC: 15, HighC: 15, MedianC: 15, ShallowM: 5, DeepM: 5, Weight: 10.0 / 18}, true},
		{"contradictory", at(8, 8, 8, 8, 8, 20, 20, 20, 20, 20),
			Usual{Here: true, In: 10, Of: 10, LowC: 8, HighC: 20, MedianC: 14, ShallowM: 0, DeepM: 12, Weight: 10.0 / 18, Contradict: true}, true},
		{"in doubt by 1 C", with(at(eight...), func(t *Taken) { t.ErrC = 1 }), // each counts a half: 4/12
			Usual{Here: true, In: 6, Of: 8, LowC: 14.5, HighC: 16, MedianC: 15.25, ShallowM: 4, DeepM: 5, Weight: 1.0 / 3}, true},
	} {
		got, ok := UsualOf(tc.taken, "rainbow", " alder kettle")
		if tc.ok {
			tc.want.Fish = "rainbow"
		}
		got.Weight, tc.want.Weight = math.Round(got.Weight*1e9), math.Round(tc.want.Weight*1e9)
		if got != tc.want || ok != tc.ok {
			t.Errorf("%s: %+v, %v\nwant %+v", tc.name, got, ok, tc.want)
		}
	}
	if _, ok := UsualOf(with(at(eight...), func(t *Taken) { t.Fish = "" }), "", "Alder Kettle"); ok {
		t.Error("a fish of no name has an opinion")
	}
}

// TestShortest: the shortest range is that of trying all pairs, and the median is that of
// each value written out as often as it weighs.
func TestShortest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var vs []weighed
		var all []float64
		for range rapid.IntRange(1, 9).Draw(t, "n") {
			v, w := float64(rapid.IntRange(0, 30).Draw(t, "v")), rapid.IntRange(1, 3).Draw(t, "w")
			vs = append(vs, weighed{v, float64(w)})
			for range w {
				all = append(all, v)
			}
		}
		sum := sorted(vs)
		low, high := shortest(vs, usualShare*sum)
		within := func(from, to float64) (n float64) {
			for _, v := range all {
				if v >= from && v <= to {
					n++
				}
			}
			return n
		}
		if within(low, high) < usualShare*sum {
			t.Fatalf("%v to %v holds too few of %v", low, high, all)
		}
		for _, a := range all {
			for _, b := range all {
				if b >= a && b-a < high-low && within(a, b) >= usualShare*sum {
					t.Fatalf("%v to %v is shorter than %v to %v", a, b, low, high)
				}
			}
		}
		less, more := 0, 0
		median := quantile(vs, sum, 0.5)
		for _, v := range all {
			if v < median {
				less++
			} else if v > median {
				more++
			}
		}
		if 2*less > len(all) || 2*more > len(all) {
			t.Fatalf("%v is no median of %v", median, all)
		}
	})
}

// TestTally: fish are counted, not lines, each thing by itself, the fish taken most often
// first.
func TestTally(t *testing.T) {
	taken := []Taken{
		{Fish: "perch", Count: 4, Date: "2026-08-02", Time: "06:40", DepthM: profile.Some(4), TempC: profile.Some(19), BelowM: profile.Some(-1), Part: BestBet},
		{Fish: "rainbow", Count: 1, Date: "2026-07-18 14:20", Time: "18:10", DepthM: profile.Some(5), TempC: profile.Some(16), BelowM: profile.Some(0.5), Part: BestBet},
		{Fish: "rainbow", Count: 2, Date: "2026-07-18 14:20", DepthM: profile.Some(3), Part: Above},
		{Fish: "rainbow", Count: 2, Time: "x"},
	}
	got := TallyBy(taken)
	if len(got) != 2 || got[0].Fish != "rainbow" || got[1].Fish != "perch" {
		t.Fatalf("%+v", got)
	}
	r := got[0]
	if r.Count != 5 || r.NoDepth != 2 || r.Depth != (Spread{3, 3, 3, 5, 3, 5}) || r.Temp.N != 1 || r.Below.N != 1 ||
		r.Parts[Above] != 2 || r.Parts[BestBet] != 1 || r.Months[6] != 3 || r.NoMonth != 2 || r.Hours[18] != 1 || r.NoHour != 4 {
		t.Errorf("%+v", r)
	}
	if p := got[1]; p.Count != 4 || p.Months[7] != 4 || p.Hours[6] != 4 || p.Below.Median != -1 {
		t.Errorf("%+v", p)
	}
	if got := TallyBy(nil); got != nil {
		t.Errorf("of none: %+v", got)
	}
}
