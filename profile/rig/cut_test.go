package rig

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// lengths gives what the parts of a kind add up to, in feet, by the stock's names.
func lengths(parts []Part) (butt, taper, tippet float64) {
	for _, p := range parts {
		switch p.Name[0] {
		case 'b':
			butt += p.LengthM / ft
		case 't':
			if len(p.Name) > 1 && p.Name[1] == 'a' {
				taper += p.LengthM / ft
			} else {
				tippet += p.LengthM / ft
			}
		}
	}
	return butt, taper, tippet
}

// Common practice: about 2 ft of butt, a tapered leader of 9 to 12 ft, the rest
// tippet; under 13 ft no butt and a tapered leader cut back to leave 2 ft of tippet.
func TestCut(t *testing.T) {
	for _, c := range []struct{ leader, butt, taper, tippet float64 }{
		{1, 0, 0, 1},
		{2, 0, 0, 2},
		{9, 0, 7, 2},
		{10, 0, 8, 2},
		{12.5, 0, 9, 3.5},
		{13, 2, 9, 2},
		{15, 2, 9, 4},
		{16.5, 2, 9, 5.5},
		{17, 2, 12, 3},
		{19, 2, 12, 5},
		{25, 2, 12, 11},
		{30, 2, 12, 16},
	} {
		butt, taper, tippet := lengths(Cut(c.leader*ft, StepFtM, DefaultStock()))
		near(t, "butt in feet", butt, c.butt, 1e-9)
		near(t, "tapered leader in feet", taper, c.taper, 1e-9)
		near(t, "tippet in feet", tippet, c.tippet, 1e-9)
	}
}

func TestCutInMetres(t *testing.T) {
	for _, c := range []struct{ leader, butt, taper, tippet float64 }{
		{3.9, 0, 2.7, 1.2},
		{3, 0, 2.3, 0.7}, // at least 2 ft of tippet is 0.7 m in tenths
		{4, 0.6, 2.7, 0.7},
		{5.7, 0.6, 3.7, 1.4},
	} {
		butt, taper, tippet := lengths(Cut(c.leader, StepM, DefaultStock()))
		near(t, "butt in metres", butt*ft, c.butt, 1e-9)
		near(t, "tapered leader in metres", taper*ft, c.taper, 1e-9)
		near(t, "tippet in metres", tippet*ft, c.tippet, 1e-9)
	}
}

func TestCutOfNothing(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct{ leader, step float64 }{
		{0, StepM}, {-1, StepM}, {nan, StepM}, {inf, StepM}, {5, 0}, {5, -1}, {5, nan}, {0.01, StepM},
	} {
		if parts := Cut(c.leader, c.step, DefaultStock()); parts != nil {
			t.Errorf("leader %v in steps of %v: %v, want no parts", c.leader, c.step, parts)
		}
	}
}

// stocks draws boxes as they come: empty, several of a kind, spools without a
// length or a diameter, tapered leaders of any length.
func stocks(t *rapid.T) []Piece {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Piece {
		return Piece{
			Kind:       rapid.SampledFrom([]PieceKind{Butt, Tapered, Tippet, "", "other"}).Draw(t, "kind"),
			LengthM:    rapid.SampledFrom([]float64{0, -1, 0.01, 0.9, 2.7432, 3.6576, 4.572, 30, math.NaN(), math.Inf(1)}).Draw(t, "length"),
			DiameterMM: rapid.Float64Range(0, 0.6).Draw(t, "diameter"),
		}
	}), 0, 6).Draw(t, "stock")
}

func TestPartsSumToTheLeader(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]float64{StepFtM, StepM}).Draw(t, "step")
		leader := rapid.Float64Range(0.01, 40).Draw(t, "leader")
		sum := 0
		for _, p := range Cut(leader, step, stocks(t)) {
			n := math.Round(p.LengthM / step)
			if n < 1 || math.Abs(p.LengthM-n*step) > 1e-9 {
				t.Fatalf("%s of %v m is no whole number of steps of %v m", p.Name, p.LengthM, step)
			}
			sum += int(n)
		}
		if want := int(math.Round(leader / step)); sum != want {
			t.Fatalf("parts of %d steps, leader of %d", sum, want)
		}
	})
}

// With an ordinary box the end is tippet, at least 2 ft of it where the leader is
// that long, and a leader under 13 ft has no butt.
func TestPartsOfAnOrdinaryBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]float64{StepFtM, StepM}).Draw(t, "step")
		leader := float64(rapid.IntRange(1, 90).Draw(t, "steps")) * step
		parts := Cut(leader, step, DefaultStock())
		butt, taper, tippet := lengths(parts)
		if leader >= 2*ft+step && tippet < 2-1e-9 {
			t.Fatalf("%v m: %.2f ft of tippet", leader, tippet)
		}
		if leader < 13*ft-step && butt > 0 {
			t.Fatalf("%v m: a butt", leader)
		}
		if leader >= 13*ft+step && (math.Abs(butt-2) > 0.1 || taper < 8.8 || taper > 12.2) {
			t.Fatalf("%v m: butt %.2f ft, tapered leader %.2f ft", leader, butt, taper)
		}
	})
}

// No input makes Find pass the water's rule or the angler's casting, or panic.
func TestFindStaysWithinTheLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Input{
			WaterM:    rapid.Float64Range(0, 30).Draw(t, "water"),
			Suspended: rapid.Bool().Draw(t, "suspended"),
			Kind:      rapid.SampledFrom([]Kind{"", LongLeader, Hung, Sinking}).Draw(t, "kind"),
			StepM:     rapid.SampledFrom([]float64{StepFtM, StepM}).Draw(t, "step"),
			Tackle:    Tackle{Stock: stocks(t), LongestM: rapid.Float64Range(1, 30).Draw(t, "longest"), RodM: RodM},
		}
		in.FlyM = in.WaterM * rapid.Float64Range(0, 1).Draw(t, "share")
		in.Rules.MaxLeaderM = rapid.SampledFrom([]float64{0, 1, 5.4864, 5.5, 8}).Draw(t, "cap")
		in.Rules.NoIndicator = rapid.Bool().Draw(t, "no indicator")
		r := Find(in)
		if r.LeaderM > in.LongestM+1e-6 || in.Rules.MaxLeaderM > 0 && r.LeaderM > in.Rules.MaxLeaderM+1e-6 {
			t.Fatalf("leader of %v m passes the longest or the cap", r.LeaderM)
		}
		if in.Rules.NoIndicator && r.Kind == Hung {
			t.Fatal("hung where indicators are forbidden")
		}
		if !r.Reachable && r.ReachM > in.FlyM+1e-6 {
			t.Fatalf("not reachable, yet it reaches %v m of %v", r.ReachM, in.FlyM)
		}
	})
}
